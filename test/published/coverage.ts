import { triangleAt } from '../../core/doubt/triangle.ts';
import type { Spread } from '../../core/materials/spread.ts';
import type { Cause } from './coverage-why.ts';

/** A published value beside the central 95 % that the program has for it. */
export interface Covered {
  readonly subject: string;
  readonly quantity: string;
  readonly low: number;
  readonly high: number;
  /** The bounds that our datum never leaves, where it has such. */
  readonly least?: number;
  readonly most?: number;
  readonly theirs: number;
  /** Half of the last digit that is printed: a rounded value is inside where what it may stand for is. */
  readonly half_digit: number;
  readonly unit: string;
  readonly source: string;
  /** Our number does not come from that table, nor both of them from memory. */
  readonly independent: boolean;
  /** Why it is outside, where it is. */
  readonly outside?: { readonly cause: Cause; readonly says: string };
}

export const isInside = ({ low, high, theirs, half_digit }: Covered): boolean =>
  theirs + half_digit >= low && theirs - half_digit <= high;

/** Central 95 % of what is drawn as a triangle, and the triangle's own ends. */
export const bandOf = (spread: Spread) => ({
  low: triangleAt(spread, 0.025),
  high: triangleAt(spread, 0.975),
  least: spread.low,
  most: spread.high,
});

/** Inside the bounds, if not inside the 95 %. */
export const isBounded = ({ low, high, least = low, most = high, ...row }: Covered): boolean =>
  isInside({ ...row, low: least, high: most });

export interface Share {
  readonly inside: number;
  readonly of: number;
}

/** How many are inside: of all, and of those whose datum of ours is independent. */
export function coverageOf(rows: readonly Covered[]): { readonly all: Share; readonly independent: Share } {
  const share = (some: readonly Covered[]): Share => ({ inside: some.filter(isInside).length, of: some.length });
  return { all: share(rows), independent: share(rows.filter(({ independent }) => independent)) };
}
