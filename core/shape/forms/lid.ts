import { formatTape } from '../../quantity/tape.ts';
import type { Line, Point } from '../drawing.ts';
import type { LidShape } from '../furnace.ts';
import { length, level, rowOf, upright } from './marks.ts';
import { arc, boxOf, circle, rectangle } from './outline.ts';
import type { Piece } from './piece.ts';
import { bentLength_m } from './sector.ts';

/** Wires stop short of the vent, so that no steel is in the flame. Common practice, no source. */
export const VENT_COVER_m = 0.015;
/** Bent over at each end of a wire that has to hold on to something. Common practice, no source. */
export const HOOK_m = 0.025;

export interface LidWires {
  readonly radial: { readonly count: number; readonly from_m: number; readonly to_m: number; readonly cut_m: number };
  readonly rings: readonly { readonly radius_m: number; readonly cut_m: number }[];
}

/**
 * Wires in the middle of the lid: radial ones from beside the vent to the rim hoop with a hook there, rings that share
 * the way between evenly, closed by two hooks. Lengths in m. Common practice for the number, derived for the lengths.
 */
export function lidWires(lid: LidShape, { radial_wires, rings }: { radial_wires: number; rings: number }): LidWires {
  const from_m = Math.min(lid.vent_radius_m + VENT_COVER_m, lid.radius_m);
  const way = lid.radius_m - from_m;
  return {
    radial: { count: radial_wires, from_m, to_m: lid.radius_m, cut_m: way + HOOK_m },
    rings: Array.from({ length: rings }, (_, n) => {
      const radius_m = from_m + (way * (n + 1)) / (rings + 1);
      return { radius_m, cut_m: 2 * Math.PI * radius_m + 2 * HOOK_m };
    }),
  };
}

/** A strip bent to a hoop, the lap added to its length, m. */
function hoop(name: string, round_m: number, width_m: number, overlap_m: number): Piece {
  const outline = rectangle({ left: 0, right: round_m + overlap_m, bottom: 0, top: width_m });
  const row = rowOf(boxOf(outline));
  const seam: Point[] = [
    [round_m, 0],
    [round_m, width_m],
  ];
  return {
    name,
    kind: 'strip',
    from: 'mesh',
    outline,
    holes: [],
    lines: [{ kind: 'line', name: 'seam: the other edge comes here', stroke: 'fold', points: seam }],
    marks: () => [
      level('once round', [0, round_m], 0, -row),
      ...(overlap_m > 0 ? [level('lap', [round_m, round_m + overlap_m], width_m, width_m + row)] : []),
      upright('width', [0, width_m], 0, -row),
    ],
    says: (units) =>
      `${name}: a strip ${formatTape(round_m, units)} once round, ${formatTape(width_m, units)} wide, and ${formatTape(overlap_m, units)} of lap`,
  };
}

/** Hoops that the lid is cast between: round its rim (inside the hoop) and round its vent (outside the hoop). */
export function lidHoops(lid: LidShape, sheet_m: number, overlap_m: number): readonly Piece[] {
  const rim_m = bentLength_m({ inside_diameter_m: 2 * lid.radius_m, sheet_m });
  const vent_m = bentLength_m({ inside_diameter_m: 2 * (lid.vent_radius_m - sheet_m), sheet_m });
  return [
    hoop('lid rim hoop', rim_m, lid.thickness_m, overlap_m),
    hoop('vent hoop', vent_m, lid.thickness_m, overlap_m),
  ];
}

const ringNames: readonly (readonly string[])[] = [
  [],
  ['ring'],
  ['inner ring', 'outer ring'],
  ['inner ring', 'middle ring', 'outer ring'],
];

/** The lid from above, with its vent and the wires to bend on it. */
export function lidPattern(lid: LidShape, wires: LidWires): Piece {
  const outline = circle({ radius_m: lid.radius_m });
  const row = rowOf(boxOf(outline));
  const at = (radius: number, turn: number): Point => [radius * Math.cos(turn), radius * Math.sin(turn)];
  const step = (2 * Math.PI) / wires.radial.count;
  const radials = Array.from({ length: wires.radial.count }, (_, n): Line => {
    const points = [at(wires.radial.from_m, n * step), at(wires.radial.to_m, n * step)];
    return { kind: 'line', name: 'radial wire', stroke: 'wire', points };
  });
  const rings = wires.rings.map(({ radius_m }): Line => {
    const points = arc({ centre: [0, 0], radius_m, from_rad: 0, to_rad: 2 * Math.PI });
    return { kind: 'line', name: 'wire ring', stroke: 'wire', points };
  });
  return {
    name: 'lid wires',
    kind: 'ring',
    from: 'wire',
    outline,
    holes: [circle({ radius_m: lid.vent_radius_m })],
    lines: [...radials, ...rings],
    marks: () => [
      level('vent', [-lid.vent_radius_m, lid.vent_radius_m], 0, -lid.radius_m - row),
      ...wires.rings.map(({ radius_m }, n) =>
        level(ringNames[wires.rings.length]?.[n] ?? 'ring', [-radius_m, radius_m], 0, -lid.radius_m - (n + 2) * row),
      ),
      level('lid', [-lid.radius_m, lid.radius_m], 0, -lid.radius_m - (wires.rings.length + 2) * row),
      length('wire stops short', at(lid.vent_radius_m, step / 2), at(wires.radial.from_m, step / 2)),
      { kind: 'angle', name: '', corner: [0, 0], from: at(lid.radius_m, step), to: at(lid.radius_m, 2 * step) },
    ],
    says: (units) =>
      `lid wires: ${wires.radial.count} radial wires and ${wires.rings.length} rings in a lid ${formatTape(2 * lid.radius_m, units)} across with a vent of ${formatTape(2 * lid.vent_radius_m, units)}`,
  };
}
