/** Two radii are drawn and dimensioned as one where no tape could tell them apart. */
export const same = (one_m: number, other_m: number): boolean => Math.abs(one_m - other_m) < 1e-5;
