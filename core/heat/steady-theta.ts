import type { Curve } from '../materials/material.ts';
import type { End } from '../materials/spread.ts';

/** Least conductivity beyond a table, as a share of its last row: the same line as `at` in core/materials. */
const FLOOR = 0.1;

/** θ(T) = ∫ k dT of one curve at one end of its range, W/m, zero at its first row, and the way back. */
export interface Theta {
  readonly of: (T_K: number) => number;
  /** Temperature of a θ. */
  readonly back: (theta_W_m: number) => number;
}

interface Segment {
  /** The segment holds to here, in T and in θ. */
  readonly until_K: number;
  readonly until_W_m: number;
  /** k = k0 + slope (T − T0), and θ at T0. */
  readonly from_K: number;
  readonly from_W_m: number;
  readonly k_W_mK: number;
  readonly slope: number;
}

/**
 * Exact for conductivity linear between rows and carried on beyond them as `at` does. A `mean` curve (of a test slab)
 * is taken as if it were local: right where it is near a straight line, too high where it bends up (fibre blanket from
 * 100 to 1000 °C: 7 % more than its own mean says), which errs to the hot side.
 */
export function thetaOf(curve: Curve, end: End = 'typical'): Theta {
  const segments = segmentsOf(curve, end);
  const last = segments[segments.length - 1]!;
  return {
    of: (T_K) => {
      const s = segments.find(({ until_K }) => T_K <= until_K) ?? last;
      const rise = T_K - s.from_K;
      return s.from_W_m + rise * (s.k_W_mK + (s.slope * rise) / 2);
    },
    back: (theta_W_m) => {
      const s = segments.find(({ until_W_m }) => theta_W_m <= until_W_m) ?? last;
      const gained = theta_W_m - s.from_W_m;
      // The root of slope/2 x² + k x = gained that goes over to gained/k; never below 0 where k stays positive.
      return s.from_K + (2 * gained) / (s.k_W_mK + Math.sqrt(Math.max(0, s.k_W_mK ** 2 + 2 * s.slope * gained)));
    },
  };
}

/** A constant below, the rows, the line carried on, and a constant above it where the line falls to its floor. */
function segmentsOf(curve: Curve, end: End): readonly Segment[] {
  const T = curve.T_K;
  const segments: Segment[] = [];
  const n = T.length;
  const slopeOf = (y: readonly number[], i: number) => (n < 2 ? 0 : (y[i + 1]! - y[i]!) / (T[i + 1]! - T[i]!));
  const carriedOn = (row: number, slope: number, direction: 1 | -1) => {
    const k = curve.typical[row]!;
    const falling = slope * direction < 0;
    return { k, slope, floor_K: falling ? T[row]! - ((1 - FLOOR) * k) / slope : direction * Number.POSITIVE_INFINITY };
  };
  const theta = (k: number, slope: number, rise: number) => rise * (k + (slope * rise) / 2);

  const below = carriedOn(0, slopeOf(curve.typical, 0), -1);
  const above = carriedOn(n - 1, slopeOf(curve.typical, Math.max(n - 2, 0)), 1);
  if (Number.isFinite(below.floor_K)) {
    const from_W_m = theta(below.k, below.slope, below.floor_K - T[0]!);
    segments.push({
      until_K: below.floor_K,
      until_W_m: from_W_m,
      from_K: below.floor_K,
      from_W_m,
      k_W_mK: FLOOR * below.k,
      slope: 0,
    });
  }
  segments.push({ until_K: T[0]!, until_W_m: 0, from_K: T[0]!, from_W_m: 0, k_W_mK: below.k, slope: below.slope });
  let from_W_m = 0;
  for (let i = 0; i < n - 1; i++) {
    const slope = slopeOf(curve[end], i);
    const k_W_mK = curve[end][i]!;
    const until_W_m = from_W_m + theta(k_W_mK, slope, T[i + 1]! - T[i]!);
    segments.push({ until_K: T[i + 1]!, until_W_m, from_K: T[i]!, from_W_m, k_W_mK, slope });
    from_W_m = until_W_m;
  }
  const floored_W_m = from_W_m + theta(above.k, above.slope, above.floor_K - T[n - 1]!);
  segments.push({
    until_K: above.floor_K,
    until_W_m: Number.isFinite(above.floor_K) ? floored_W_m : Number.POSITIVE_INFINITY,
    from_K: T[n - 1]!,
    from_W_m,
    k_W_mK: above.k,
    slope: above.slope,
  });
  if (Number.isFinite(above.floor_K)) {
    segments.push({
      until_K: Number.POSITIVE_INFINITY,
      until_W_m: Number.POSITIVE_INFINITY,
      from_K: above.floor_K,
      from_W_m: floored_W_m,
      k_W_mK: FLOOR * above.k,
      slope: 0,
    });
  }
  return segments;
}
