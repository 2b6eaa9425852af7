import type { Point } from '../drawing.ts';
import { boxOf } from '../forms/outline.ts';

/** A piece by the upright box round it, m. */
export interface Flat {
  readonly name: string;
  readonly width_m: number;
  readonly height_m: number;
}

/** Where the box of a piece lies on the roll: x along the roll from its end, y across it. */
export interface Placement {
  readonly name: string;
  readonly at: Point;
  /** By a quarter turn to the left, so that its height lies along the roll. */
  readonly turned: boolean;
  readonly along_m: number;
  readonly across_m: number;
}

export interface Packing {
  readonly placements: readonly Placement[];
  readonly length_m: number;
}

/** Front of what is taken: over this stretch across the roll, everything up to `reach` along it. */
interface Step {
  readonly from: number;
  readonly to: number;
  readonly reach: number;
}

/** Ends that differ by less are the same end. */
const HAIR_m = 1e-9;

/**
 * Places every piece on a roll of one width, each where it ends earliest, lying or turned, the large ones first; of
 * four orders of "large" the shortest roll wins. Not the least possible, but near it for the few pieces of a furnace.
 * Lengths in m. A piece wider than the roll both ways has to be split before: it gets no place and `undefined` comes back.
 */
export function packOnRoll(pieces: readonly Flat[], roll_m: number): Packing | undefined {
  const sizes: readonly ((piece: Flat) => number)[] = [
    ({ width_m, height_m }) => width_m * height_m,
    ({ width_m, height_m }) => Math.max(width_m, height_m),
    ({ width_m, height_m }) => Math.min(width_m, height_m),
    ({ width_m, height_m }) => width_m + height_m,
  ];
  let best: Packing | undefined;
  for (const size of sizes) {
    const packing = packInOrder(
      [...pieces].sort((a, b) => size(b) - size(a)),
      roll_m,
    );
    if (packing === undefined) return undefined;
    if (best === undefined || packing.length_m < best.length_m - HAIR_m) best = packing;
  }
  return best;
}

function packInOrder(pieces: readonly Flat[], roll_m: number): Packing | undefined {
  let front: readonly Step[] = [{ from: 0, to: roll_m, reach: 0 }];
  const placements: Placement[] = [];
  for (const piece of pieces) {
    const ways = [false, true].flatMap((turned) => placesOf(piece, turned, front, roll_m));
    const first = ways.reduce<Placement | undefined>(
      (best, way) => (!best || endsBefore(way, best) ? way : best),
      undefined,
    );
    if (first === undefined) return undefined;
    placements.push(first);
    front = advanced(front, first);
  }
  return { placements, length_m: Math.max(0, ...placements.map(endOf)) };
}

const endOf = ({ at, along_m }: Placement): number => at[0] + along_m;

function endsBefore(one: Placement, other: Placement): boolean {
  const ahead = endOf(one) - endOf(other);
  return Math.abs(ahead) > HAIR_m ? ahead < 0 : one.at[0] > other.at[0] + HAIR_m;
}

/** Against either edge of every step of the front. */
function placesOf(
  { name, width_m, height_m }: Flat,
  turned: boolean,
  front: readonly Step[],
  roll_m: number,
): Placement[] {
  const [along_m, across_m] = turned ? [height_m, width_m] : [width_m, height_m];
  return front
    .flatMap(({ from, to }) => [from, to - across_m])
    .filter((low) => low >= 0 && low + across_m <= roll_m + HAIR_m)
    .map((low) => {
      const under = front.filter(({ from, to }) => from < low + across_m - HAIR_m && to > low + HAIR_m);
      return { name, at: [Math.max(...under.map(({ reach }) => reach)), low], turned, along_m, across_m };
    });
}

function advanced(front: readonly Step[], placed: Placement): readonly Step[] {
  const [low, high] = [placed.at[1], placed.at[1] + placed.across_m];
  const left = front.flatMap(({ from, to, reach }) => [
    { from, to: Math.min(to, low), reach },
    { from: Math.max(from, high), to, reach },
  ]);
  return [...left.filter(({ from, to }) => to - from > HAIR_m), { from: low, to: high, reach: endOf(placed) }];
}

/** An outline of a piece, moved and turned to its place; `within` is the outline that its box was taken from. */
export function placed(
  points: readonly Point[],
  within: readonly Point[],
  { at, turned }: Placement,
): readonly Point[] {
  const { left, bottom, top } = boxOf(within);
  return points.map(([x, y]) =>
    turned ? [at[0] + top - y, at[1] + x - left] : [at[0] + x - left, at[1] + y - bottom],
  );
}
