/**
 * Values between `low` and `high` at which a difference is nought, in rising order: the points at which a verdict flips.
 * Looked for in `slices` equal steps and bisected to `accuracy` of the width; two flips inside one step are not seen.
 * Where the difference has no number, nothing is found. Yields the values it wants to know the difference at.
 */
export function* flipSearch({
  low,
  high,
  slices = 12,
  accuracy = 1e-6,
}: FlipRange): Generator<number, number[], number> {
  if (!(high > low)) return [];
  const found: number[] = [];
  let from = low;
  let before = yield low;
  for (let slice = 1; slice <= slices; slice++) {
    const to = low + ((high - low) * slice) / slices;
    const after = yield to;
    // A nought at the edge of a step is a flip only where the sign has changed behind it: the next step will tell.
    if (after === 0) continue;
    if (before * after < 0) found.push(yield* bisect({ from, to, rising: after > 0, width: accuracy * (high - low) }));
    from = to;
    before = after;
  }
  return found;
}

export interface FlipRange {
  readonly low: number;
  readonly high: number;
  readonly slices?: number;
  readonly accuracy?: number;
}

function* bisect({
  from,
  to,
  rising,
  width,
}: {
  from: number;
  to: number;
  rising: boolean;
  width: number;
}): Generator<number, number, number> {
  let low = from;
  let high = to;
  while (high - low > width) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    const above = (yield middle) > 0;
    if (above === rising) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** The same, of a difference that is at hand at once. */
export function flipsOf({
  difference,
  ...range
}: FlipRange & { readonly difference: (value: number) => number }): readonly number[] {
  const search = flipSearch(range);
  let step = search.next();
  while (!step.done) step = search.next(difference(step.value));
  return step.value;
}
