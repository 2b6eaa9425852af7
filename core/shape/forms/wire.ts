import { HOOK_m, type LidWires } from './lid.ts';
import type { Cone } from './sector.ts';

/** One tie: twice round both meshes and a twist. Common practice, no source. */
export const TIE_m = 0.1;
const STEEL_kg_m3 = 7850;

/** One row of the list of wires to cut. */
export interface WireCut {
  readonly name: 'clip' | 'tie' | 'radial wire' | 'ring';
  readonly count: number;
  readonly cut_m: number;
}

export interface WireInput {
  /** Middle of the rammed wall. */
  readonly middle: Cone;
  /** Between the two shells. */
  readonly wall_m: number;
  readonly clip_spacing_m: number;
  /** Seams to tie, all of them together, and the edge of the bottom. */
  readonly seams_m: number;
  readonly lid: LidWires;
}

/** Clips at most a spacing apart, up the wall and round its middle: rows × clips a row. Derived. */
export function clipsCount({ middle, clip_spacing_m }: Pick<WireInput, 'middle' | 'clip_spacing_m'>): number {
  const rows = Math.max(2, Math.ceil(middle.height_m / clip_spacing_m));
  const round_m = Math.PI * (middle.bottom_radius_m + middle.top_radius_m);
  return rows * Math.max(3, Math.ceil(round_m / clip_spacing_m));
}

/** Every wire to cut. A clip is as long as the wall is thick, plus a hook at both ends; lengths in m. */
export function wireCuts(input: WireInput): readonly WireCut[] {
  const { wall_m, seams_m, clip_spacing_m, lid } = input;
  return [
    { name: 'clip', count: clipsCount(input), cut_m: wall_m + 2 * HOOK_m },
    { name: 'tie', count: Math.ceil(seams_m / clip_spacing_m), cut_m: TIE_m },
    { name: 'radial wire', count: lid.radial.count, cut_m: lid.radial.cut_m },
    ...lid.rings.map(({ cut_m }): WireCut => ({ name: 'ring', count: 1, cut_m })),
  ];
}

export const wireLength_m = (cuts: readonly WireCut[]): number =>
  cuts.reduce((sum, { count, cut_m }) => sum + count * cut_m, 0);

/** Wire is sold by weight too: π d² / 4 × length × 7850 kg/m³. */
export const wireMass_kg = ({ length_m, wire_m }: { length_m: number; wire_m: number }): number =>
  (Math.PI / 4) * wire_m ** 2 * length_m * STEEL_kg_m3;
