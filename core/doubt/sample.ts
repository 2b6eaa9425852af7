import type { Spread } from '../materials/spread.ts';
import { binsOf, type Mover, moversOf } from './movers.ts';
import { centralRange, type Range, rangeError } from './range.ts';
import { shareColumns, type Tie } from './together.ts';
import { triangleAt } from './triangle.ts';

export type { Mover } from './movers.ts';
export type { Range } from './range.ts';

const MOST_SAMPLES = 4000;
/** Of a range's width: what 500 independent samples of a bell curve come to. */
const SETTLED_ERROR = 0.03;

export interface DoubtQuestion<K extends string, O extends string> {
  readonly inputs: Readonly<Record<K, Spread>>;
  /**
   * Pure. It gets the same object every time, refilled: it must not keep it. Where a sample has no answer
   * it gives NaN, and that answer's range is withheld.
   */
  readonly model: (values: Readonly<Record<K, number>>) => Readonly<Record<O, number>>;
  readonly samples?: number;
  /** Inputs that go together; all others are drawn apart. */
  readonly together?: readonly Tie<K>[];
}

export interface Doubt<K extends string, O extends string> {
  /** Central 95 %. `undefined` where any sample had no finite answer. */
  readonly ranges: Readonly<Record<O, Range | undefined>>;
  /** `undefined` where the range is, and where nothing moves the answer. */
  readonly movesMost: Readonly<Record<O, Mover<K> | undefined>>;
  /** Every doubtful input, the one that moves the answer most first; empty where `movesMost` has none. */
  readonly movers: Readonly<Record<O, readonly Mover<K>[]>>;
  readonly samples: number;
  /** Standard error of the worst end of the worst range, as a share of that range's width; see `rangeError`. */
  readonly error: number;
  /** That error is three in a hundred at most. */
  readonly converged: boolean;
}

/**
 * Runs the model over the inputs' spreads, triangles that are drawn apart unless they go `together`, at fixed Halton
 * points: the same question gives the same range every time. Starts with `samples` and doubles, to at most 4,000, until
 * the standard error of every end of every range, by batch means, is at most three hundredths of its range's width.
 * What the model itself leaves out is not in a range: see `model-error.ts`.
 */
export function sampleDoubt<K extends string, O extends string>({
  inputs,
  model,
  samples = 1000,
  together = [],
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
  let columns: readonly Float64Array[] = [];
  let count = 0;
  const runTo = (target: number): void => {
    const spreads = doubtful.map((name) => inputs[name]);
    columns = shareColumns(doubtful, together, Math.max(target, samples));
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
  while (settled.error > SETTLED_ERROR && count * 2 <= most) {
    runTo(count * 2);
    settled = settledRanges(outputs);
  }

  const movesMost = {} as Record<O, Mover<K> | undefined>;
  const movers = {} as Record<O, readonly Mover<K>[]>;
  const bins = binsOf(columns, count);
  for (const [name, results] of outputs) {
    movers[name] = Object.freeze(settled.ranges[name] ? moversOf(results, doubtful, bins) : []);
    movesMost[name] = movers[name][0];
  }
  return Object.freeze({
    ranges: Object.freeze(settled.ranges),
    movesMost: Object.freeze(movesMost),
    movers: Object.freeze(movers),
    samples: count,
    error: settled.error,
    converged: settled.error <= SETTLED_ERROR,
  });
}

function grown(kept: Float64Array, length: number): Float64Array {
  const longer = new Float64Array(length);
  longer.set(kept);
  return longer;
}

function settledRanges<O extends string>(outputs: ReadonlyMap<O, Float64Array>) {
  const ranges = {} as Record<O, Range | undefined>;
  let error = 0;
  for (const [name, results] of outputs) {
    ranges[name] = results.every(Number.isFinite) ? centralRange(results) : undefined;
    if (ranges[name]) error = Math.max(error, rangeError(results, ranges[name]));
  }
  return { ranges, error };
}
