import type { Spread } from '../materials/spread.ts';
import { haltonColumn } from './halton.ts';
import { triangleAt } from './triangle.ts';

const MOST_SAMPLES = 4000;
const CENTRAL = { low: 0.025, high: 0.975 } as const;
const SETTLED_SHARE = 0.05;
const BINS = 20;

export interface Range {
  readonly low: number;
  readonly high: number;
}

/** An input, and how much of an answer's variance it explains on its own (0 to 1). */
export interface Mover<K extends string> {
  readonly input: K;
  readonly share: number;
}

export interface DoubtQuestion<K extends string, O extends string> {
  readonly inputs: Readonly<Record<K, Spread>>;
  /**
   * Pure. It gets the same object every time, refilled: it must not keep it. Where a sample has no answer
   * it gives NaN, and that answer's range is withheld.
   */
  readonly model: (values: Readonly<Record<K, number>>) => Readonly<Record<O, number>>;
  readonly samples?: number;
}

export interface Doubt<K extends string, O extends string> {
  /** Central 95 %. `undefined` where any sample had no finite answer. */
  readonly ranges: Readonly<Record<O, Range | undefined>>;
  /** `undefined` where the range is, and where nothing moves the answer. */
  readonly movesMost: Readonly<Record<O, Mover<K> | undefined>>;
  /** Every doubtful input, the one that moves the answer most first; empty where `movesMost` has none. */
  readonly movers: Readonly<Record<O, readonly Mover<K>[]>>;
  /** Half the samples would have given the same ranges, to within a twentieth of their width. */
  readonly converged: boolean;
}

/**
 * Runs the model over the inputs' spreads, taken as independent triangles, at fixed Halton points: the same
 * question gives the same range every time. Starts with `samples` and doubles, to at most 4,000, until settled.
 */
export function sampleDoubt<K extends string, O extends string>({
  inputs,
  model,
  samples = 1000,
}: DoubtQuestion<K, O>): Doubt<K, O> {
  if (!Number.isInteger(samples) || samples < 2)
    throw new RangeError(`samples: a whole number from 2, not ${samples}.`);
  const names = Object.keys(inputs) as K[];
  const doubtful = names.filter((name) => inputs[name].low !== inputs[name].high);
  const values = Object.fromEntries(names.map((name) => [name, inputs[name].typical])) as Record<K, number>;
  // With nothing in doubt every sample is the same one: two stand for all.
  const first = doubtful.length === 0 ? 2 : samples;
  const most = Math.max(first, MOST_SAMPLES);

  const outputs = new Map<O, Float64Array>();
  let count = 0;
  const runTo = (target: number): void => {
    const spreads = doubtful.map((name) => inputs[name]);
    const columns = doubtful.map((_, dimension) => haltonColumn(dimension, Math.max(target, samples)));
    for (const [name, kept] of outputs) outputs.set(name, grown(kept, target));
    for (; count < target; count++) {
      for (let at = 0; at < doubtful.length; at++) {
        values[doubtful[at]!] = triangleAt(spreads[at]!, columns[at]![count]!);
      }
      const answer = model(values);
      if (count === 0) for (const name of Object.keys(answer) as O[]) outputs.set(name, new Float64Array(target));
      for (const [name, results] of outputs) results[count] = answer[name];
    }
  };

  runTo(first);
  let settled = settledRanges(outputs);
  while (!settled.converged && count * 2 <= most) {
    runTo(count * 2);
    settled = settledRanges(outputs);
  }

  const movesMost = {} as Record<O, Mover<K> | undefined>;
  const movers = {} as Record<O, readonly Mover<K>[]>;
  const bins = doubtful.map((_, dimension) => binColumn(dimension, count));
  for (const [name, results] of outputs) {
    movers[name] = Object.freeze(settled.ranges[name] ? moversOf(results, doubtful, bins) : []);
    movesMost[name] = movers[name][0];
  }
  return Object.freeze({
    ranges: Object.freeze(settled.ranges),
    movesMost: Object.freeze(movesMost),
    movers: Object.freeze(movers),
    converged: settled.converged,
  });
}

function grown(kept: Float64Array, length: number): Float64Array {
  const longer = new Float64Array(length);
  longer.set(kept);
  return longer;
}

function settledRanges<O extends string>(outputs: ReadonlyMap<O, Float64Array>) {
  const ranges = {} as Record<O, Range | undefined>;
  let converged = true;
  for (const [name, results] of outputs) {
    if (!results.every(Number.isFinite)) {
      ranges[name] = undefined;
      continue;
    }
    const whole = centralRange(results);
    const half = centralRange(results.subarray(0, results.length >> 1));
    const allowed = SETTLED_SHARE * (whole.high - whole.low);
    if (Math.abs(half.low - whole.low) > allowed || Math.abs(half.high - whole.high) > allowed) converged = false;
    ranges[name] = whole;
  }
  return { ranges, converged };
}

function centralRange(results: Float64Array): Range {
  const sorted = results.slice().sort();
  return Object.freeze({ low: pointOf(sorted, CENTRAL.low), high: pointOf(sorted, CENTRAL.high) });
}

function pointOf(sorted: Float64Array, share: number): number {
  const at = share * (sorted.length - 1);
  const below = Math.floor(at);
  const low = sorted[below]!;
  const high = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return low + (high - low) * (at - below);
}

/**
 * Which of twenty equally likely slices of an input a sample fell in. Read off the Halton point itself, since
 * the triangle only stretches it: no ranking is needed, and it is the same for every question.
 */
function binColumn(dimension: number, count: number): Uint8Array {
  const known = binColumns.get(dimension);
  if (known !== undefined && known.length >= count) return known;
  const column = Uint8Array.from(haltonColumn(dimension, count), (share) => Math.floor(share * BINS));
  binColumns.set(dimension, column);
  return column;
}

const binColumns = new Map<number, Uint8Array>();
const binSums = new Float64Array(BINS);
const binCounts = new Uint32Array(BINS);

/** The correlation ratio: the variance of the answer's mean from slice to slice, over all of its variance. */
function moversOf<K extends string>(
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

  const movers = inputs.map((input, dimension): Mover<K> => {
    const column = bins[dimension]!;
    binSums.fill(0);
    binCounts.fill(0);
    for (let at = 0; at < count; at++) {
      const bin = column[at]!;
      binSums[bin]! += results[at]! - mean;
      binCounts[bin]!++;
    }
    let between = 0;
    for (let bin = 0; bin < BINS; bin++) if (binCounts[bin]! > 0) between += binSums[bin]! ** 2 / binCounts[bin]!;
    return Object.freeze({ input, share: Math.min(1, between / squares) });
  });
  return movers.sort((a, b) => b.share - a.share);
}
