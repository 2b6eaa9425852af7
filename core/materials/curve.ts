import type { Curve } from './material.ts';
import type { End } from './spread.ts';

export interface Read {
  readonly value: number;
  /** The temperature lies outside the rows: the line is carried on from the last two and has no range. */
  readonly extrapolated: boolean;
}

/** Linear between rows; outside them the nearest segment of the typical line is carried on, never below a tenth of its end. */
export function at(curve: Curve, T_K: number, end: End = 'typical'): Read {
  const { T_K: T } = curve;
  const last = T.length - 1;
  const extrapolated = T_K < T[0]! || T_K > T[last]!;
  const y = extrapolated ? curve.typical : curve[end];
  if (last === 0) return { value: y[0]!, extrapolated };
  const above = T.findIndex((row) => row >= T_K);
  const i = above === -1 ? last : Math.max(above, 1);
  const slope = (y[i]! - y[i - 1]!) / (T[i]! - T[i - 1]!);
  const value = y[i - 1]! + slope * (T_K - T[i - 1]!);
  const floor = 0.1 * (T_K < T[0]! ? y[0]! : y[last]!);
  return { value: extrapolated ? Math.max(value, floor) : value, extrapolated };
}
