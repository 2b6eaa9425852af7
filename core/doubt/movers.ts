import { haltonColumn } from './halton.ts';

/** An input, and how much of an answer's variance it explains on its own (0 to 1). */
export interface Mover<K extends string> {
  readonly input: K;
  readonly share: number;
}

const BINS = 20;

/**
 * Which of twenty equally likely slices of each input every sample fell in. Read off the shares it was drawn at, since
 * the triangle only stretches them: no ranking is needed, and of Halton's own it is the same for every question.
 */
export const binsOf = (columns: readonly Float64Array[], count: number): readonly Uint8Array[] =>
  columns.map((column, dimension) =>
    column === haltonColumn(dimension, count) ? haltonBins(dimension, count) : slices(column),
  );

const slices = (column: Float64Array): Uint8Array =>
  Uint8Array.from(column, (share) => Math.min(BINS - 1, Math.floor(share * BINS)));

function haltonBins(dimension: number, count: number): Uint8Array {
  const known = binColumns.get(dimension);
  if (known !== undefined && known.length >= count) return known;
  const column = slices(haltonColumn(dimension, count));
  binColumns.set(dimension, column);
  return column;
}

const binColumns = new Map<number, Uint8Array>();
const binSums = new Float64Array(BINS);
const binCounts = new Uint32Array(BINS);

/**
 * The correlation ratio: the variance of the answer's mean from slice to slice, over all of its variance. Of inputs that
 * go together each is given what they share, and the shares may add up to more than 1.
 */
export function moversOf<K extends string>(
  results: Float64Array,
  inputs: readonly K[],
  bins: readonly Uint8Array[],
): readonly Mover<K>[] {
  const count = results.length;
  let sum = 0;
  for (let at = 0; at < count; at++) sum += results[at]!;
  const mean = sum / count;
  let squares = 0;
  for (let at = 0; at < count; at++) squares += (results[at]! - mean) ** 2;
  // What is left of a constant after rounding is not variance.
  if (squares <= count * (1e-12 * mean) ** 2) return [];

  const apart = results.map((result) => result - mean);
  const movers = inputs.map((input, dimension): Mover<K> => {
    const column = bins[dimension]!;
    binSums.fill(0);
    binCounts.fill(0);
    for (let at = 0; at < count; at++) {
      const bin = column[at]!;
      binSums[bin]! += apart[at]!;
      binCounts[bin]!++;
    }
    let between = 0;
    for (let bin = 0; bin < BINS; bin++) if (binCounts[bin]! > 0) between += binSums[bin]! ** 2 / binCounts[bin]!;
    return Object.freeze({ input, share: Math.min(1, between / squares) });
  });
  return movers.sort((a, b) => b.share - a.share);
}
