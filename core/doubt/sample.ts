import type { Spread } from '../materials/spread.ts';
import { binsOf, type Mover, moversOf } from './movers.ts';
import { centralRange, type Range, rangeError } from './range.ts';
import { shareColumns, type Tie } from './together.ts';
import { trianglesAt } from './triangle.ts';

export type { Mover } from './movers.ts';
export type { Range } from './range.ts';

const MOST_SAMPLES = 4000;
/**
 * Greatest error of a range that has settled, as a share of its width: 1.4 times what as many independent samples of a
 * bell curve leave. Who begins with fewer, since a draw is dear, is content with more; a longer tail asks for more samples.
 */
const settledError = (samples: number): number => 0.96 / Math.sqrt(samples);

/**
 * Pure. It gets the same object every time, refilled: it must not keep it. Where a sample has no answer
 * it gives NaN, and that answer's range is withheld.
 */
export type Model<K extends string, O extends string> = (
  values: Readonly<Record<K, number>>,
) => Readonly<Record<O, number>>;

/** The same over many samples at once, a column an input and an answer: a light model answers many times sooner so. */
export type ColumnModel<K extends string, O extends string> = (
  columns: Readonly<Record<K, Float64Array>>,
  count: number,
) => Readonly<Record<O, Float64Array>>;

export type DoubtQuestion<K extends string, O extends string> = Drawn<K, O> &
  ({ readonly model: Model<K, O> } | { readonly columnModel: ColumnModel<K, O> });

interface Drawn<K extends string, O extends string> {
  readonly inputs: Readonly<Record<K, Spread>>;
  readonly samples?: number;
  /** Answers whose movers are wanted: of all of them where this is not said. */
  readonly moved?: readonly O[];
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
  /** That error is at most 1.4 times what the samples asked for leave of a bell curve: 3 % of 1,000. */
  readonly converged: boolean;
}

/**
 * Runs the model over the inputs' spreads, triangles that are drawn apart unless they go `together`, at fixed Halton
 * points: the same question gives the same range every time. Starts with `samples` and doubles, to at most 4,000, until
 * the standard error of every end of every range, by batch means, is what so many samples make of it where no long tail
 * is: 3 % of the range's width for 1,000, 4 % for 500. What the model itself leaves out is in no range: `model-errors.ts`.
 */
export function sampleDoubt<K extends string, O extends string>(question: DoubtQuestion<K, O>): Doubt<K, O> {
  const { inputs, samples = 1000, together = [], moved } = question;
  if (!Number.isInteger(samples) || samples < 2)
    throw new RangeError(`samples: a whole number from 2, not ${samples}.`);
  const names = Object.keys(inputs) as K[];
  const doubtful = names.filter((name) => inputs[name].low !== inputs[name].high);
  const model = 'columnModel' in question ? question.columnModel : oneByOne(question.model, inputs, doubtful);
  // With nothing in doubt every sample is the same one: two stand for all.
  const first = doubtful.length === 0 ? 2 : samples;
  const most = Math.max(first, MOST_SAMPLES);

  const outputs = new Map<O, Float64Array>();
  let columns: readonly Float64Array[] = [];
  let count = 0;
  const runTo = (target: number): void => {
    columns = shareColumns(doubtful, together, Math.max(target, samples));
    const drawn = Object.fromEntries(
      names.map((name) => {
        const shares = columns[doubtful.indexOf(name)];
        const certain = () => new Float64Array(target - count).fill(inputs[name].typical);
        return [name, shares ? trianglesAt(inputs[name], shares, count, target) : certain()];
      }),
    ) as Record<K, Float64Array>;
    const answers = Object.entries<Float64Array>(model(drawn, target - count)) as [O, Float64Array][];
    for (const [name, results] of answers) outputs.set(name, joined(outputs.get(name), results));
    count = target;
  };

  runTo(first);
  let settled = settledRanges(outputs);
  const allowed = settledError(first);
  while (settled.error > allowed && count * 2 <= most) {
    runTo(count * 2);
    settled = settledRanges(outputs);
  }

  const movesMost = {} as Record<O, Mover<K> | undefined>;
  const movers = {} as Record<O, readonly Mover<K>[]>;
  const bins = binsOf(columns, count);
  for (const [name, results] of outputs) {
    const isWanted = settled.ranges[name] && (moved?.includes(name) ?? true);
    movers[name] = Object.freeze(isWanted ? moversOf(results, doubtful, bins) : []);
    movesMost[name] = movers[name][0];
  }
  return Object.freeze({
    ranges: Object.freeze(settled.ranges),
    movesMost: Object.freeze(movesMost),
    movers: Object.freeze(movers),
    samples: count,
    error: settled.error,
    converged: settled.error <= allowed,
  });
}

/** A model that is asked sample by sample; its first answer says what there is. */
function oneByOne<K extends string, O extends string>(
  model: Model<K, O>,
  inputs: Readonly<Record<K, Spread>>,
  doubtful: readonly K[],
): ColumnModel<K, O> {
  const names = Object.keys(inputs) as K[];
  const values = Object.fromEntries(names.map((name) => [name, inputs[name].typical])) as Record<K, number>;
  let answered: readonly O[] | undefined;
  return (columns, count) => {
    const drawn = doubtful.map((name) => columns[name]);
    let results: Float64Array[] = [];
    for (let sample = 0; sample < count; sample++) {
      for (let at = 0; at < drawn.length; at++) values[doubtful[at]!] = drawn[at]![sample]!;
      const answer = model(values);
      answered ??= Object.keys(answer) as O[];
      if (sample === 0) results = answered.map(() => new Float64Array(count));
      for (let at = 0; at < answered.length; at++) results[at]![sample] = answer[answered[at]!];
    }
    return Object.fromEntries((answered ?? []).map((name, at) => [name, results[at]!])) as Record<O, Float64Array>;
  };
}

function joined(before: Float64Array | undefined, more: Float64Array): Float64Array {
  if (!before) return more;
  const longer = new Float64Array(before.length + more.length);
  longer.set(before);
  longer.set(more, before.length);
  return longer;
}

function settledRanges<O extends string>(outputs: ReadonlyMap<O, Float64Array>) {
  const ranges = {} as Record<O, Range | undefined>;
  let error = 0;
  for (const [name, results] of outputs) {
    ranges[name] = allFinite(results) ? centralRange(results) : undefined;
    if (ranges[name]) error = Math.max(error, rangeError(results, ranges[name]));
  }
  return { ranges, error };
}

function allFinite(results: Float64Array): boolean {
  for (let at = 0; at < results.length; at++) if (!Number.isFinite(results[at])) return false;
  return true;
}
