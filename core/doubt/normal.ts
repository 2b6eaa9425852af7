/** Share of the standard normal below `z`. Abramowitz and Stegun 26.2.17, good to 7.5e-8. */
export function normalShare(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const series = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const above = density(z) * series;
  return z < 0 ? above : 1 - above;
}

/**
 * The value below which `share` (0 to 1, both left out) of the standard normal lies: Abramowitz and Stegun 26.2.23, good
 * to 4.5e-4, and one step of Newton from there, which leaves what `normalShare` leaves: 7.5e-8 of the share.
 */
export function normalAt(share: number): number {
  const tail = Math.min(share, 1 - share);
  const t = Math.sqrt(-2 * Math.log(tail));
  const up = t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
  // The tail keeps its digits where 1 less it would not.
  const nearer = up - (tail - normalShare(-up)) / density(up);
  return share < 0.5 ? -nearer : nearer;
}

const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
