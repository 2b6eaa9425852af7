/** One base for each doubtful input: two to four sides of an argument together never have more than this many. 79 is left out: it moves with 73. */
export const HALTON_BASES = [
  2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41, 43, 47, 53, 59, 61, 67, 71, 73, 83, 89, 97, 101, 103, 107, 109, 113,
  127, 131, 137, 139, 149, 151, 157, 163, 167,
] as const;

/** The first points lie along a line in the larger bases: start where the largest has run through its digits. */
const SKIPPED = 64;

/** Any fixed number: it makes the same question give the same answer, everywhere and always. */
const SEED = 0x7ee3e4;

/** The digits of a whole number in `base`, mirrored behind the point: 6 = 110₂ gives 0.011₂ = 0.375. */
export function radicalInverse(index: number, base: number): number {
  return mirrored(index, base, (digit) => digit);
}

/**
 * Column `dimension` of the generalised Halton points, at least `count` long, each strictly between 0 and 1.
 * Computed once and kept: every question walks the same points. Read it, never write to it.
 */
export function haltonColumn(dimension: number, count: number): Float64Array {
  const base = HALTON_BASES[dimension];
  if (base === undefined)
    throw new RangeError(`Halton points have ${HALTON_BASES.length} dimensions, not ${dimension + 1}.`);
  const known = columns.get(dimension);
  if (known !== undefined && known.length >= count) return known;
  const permutation = digitPermutation(base);
  const column = Float64Array.from({ length: count }, (_, index) =>
    mirrored(index + SKIPPED, base, (digit) => permutation[digit]!),
  );
  columns.set(dimension, column);
  return column;
}

const columns = new Map<number, Float64Array>();

function mirrored(index: number, base: number, digitFor: (digit: number) => number): number {
  let numerator = 0;
  let denominator = 1;
  for (let rest = index; rest > 0; rest = Math.floor(rest / base)) {
    numerator = numerator * base + digitFor(rest % base);
    denominator *= base;
  }
  return numerator / denominator;
}

/** A shuffle of the digits that leaves 0 in place, so that the endless zeros behind a number stay zeros. */
export function digitPermutation(base: number): readonly number[] {
  const digits = Array.from({ length: base }, (_, digit) => digit);
  const random = mulberry32(SEED + base);
  for (let last = base - 1; last > 1; last--) {
    const other = 1 + Math.floor(random() * last);
    [digits[last], digits[other]] = [digits[other]!, digits[last]!];
  }
  return digits;
}

function mulberry32(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}
