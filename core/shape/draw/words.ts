import { formatBoth } from '../../quantity/format.ts';

/** A length for an `alt` or a callout, in both systems. */
export const size = (length_m: number): string => formatBoth(length_m, 'm', 'US');

/** Two radii are drawn and dimensioned as one where no tape could tell them apart. */
export const same = (one_m: number, other_m: number): boolean => Math.abs(one_m - other_m) < 1e-5;
