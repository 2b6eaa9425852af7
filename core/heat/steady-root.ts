/**
 * Where a rising function is zero between two bounds, by halving: 60 halvings at most, to a billionth of the larger
 * bound. The caller makes sure that it is below zero at `low` and above at `high`.
 */
export function rootBetween(rising: (x: number) => number, low: number, high: number): number {
  let [below, above] = [low, high];
  const enough = 1e-12 * Math.max(Math.abs(low), Math.abs(high));
  for (let halving = 0; halving < 60 && above - below > enough; halving++) {
    const middle = (below + above) / 2;
    if (rising(middle) < 0) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}
