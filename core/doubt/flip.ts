/**
 * Values between `low` and `high` at which `difference` is nought, in rising order: the points at which a verdict flips.
 * Looked for in `slices` equal steps and bisected to `accuracy` of the width; two flips inside one step are not seen.
 * Where the difference has no number, nothing is found.
 */
export function flipsOf({
  difference,
  low,
  high,
  slices = 12,
  accuracy = 1e-6,
}: {
  readonly difference: (value: number) => number;
  readonly low: number;
  readonly high: number;
  readonly slices?: number;
  readonly accuracy?: number;
}): readonly number[] {
  if (!(high > low)) return [];
  const found: number[] = [];
  let from = low;
  let before = difference(low);
  for (let slice = 1; slice <= slices; slice++) {
    const to = low + ((high - low) * slice) / slices;
    const after = difference(to);
    // A nought at the edge of a step is a flip only where the sign has changed behind it: the next step will tell.
    if (after === 0) continue;
    if (before * after < 0)
      found.push(bisect(difference, { from, to, rising: after > 0, width: accuracy * (high - low) }));
    from = to;
    before = after;
  }
  return found;
}

function bisect(
  difference: (value: number) => number,
  { from, to, rising, width }: { from: number; to: number; rising: boolean; width: number },
): number {
  let low = from;
  let high = to;
  while (high - low > width) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (difference(middle) > 0 === rising) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}
