import type { Spread } from '../materials/spread.ts';

/** The value below which `share` (0 to 1) of the triangle lies. Never leaves the spread's bounds. */
export function triangleAt({ low, typical, high }: Spread, share: number): number {
  const width = high - low;
  if (width === 0) return low;
  const rise = typical - low;
  const value =
    share * width < rise
      ? low + Math.sqrt(share * width * rise)
      : high - Math.sqrt((1 - share) * width * (high - typical));
  return value < low ? low : value > high ? high : value;
}

/** `triangleAt` of each share from `from` to before `to`: a question draws thousands. */
export function trianglesAt(spread: Spread, shares: Float64Array, from: number, to: number): Float64Array {
  const { low, typical, high } = spread;
  const same: Spread = { low, typical, high };
  const drawn = new Float64Array(to - from);
  for (let at = from; at < to; at++) drawn[at - from] = triangleAt(same, shares[at]!);
  return drawn;
}
