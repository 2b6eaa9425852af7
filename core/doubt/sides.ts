import type { Spread } from '../materials/spread.ts';
import { shareError } from './range.ts';
import { type Mover, type Range, sampleDoubt } from './sample.ts';
import type { Tie } from './together.ts';
import { triangleAt } from './triangle.ts';

/** One of the things that are compared. It gives NaN where a sample has no answer. */
export interface Side<O extends string> {
  readonly inputs: Readonly<Record<string, Spread>>;
  readonly model: (values: Readonly<Record<string, number>>) => Readonly<Record<O, number>>;
  readonly together?: readonly Tie<string>[];
}

export interface Difference {
  /** Central 95 % of one side less the other; `undefined` where a sample had no answer, or nothing is in doubt. */
  readonly range: Range | undefined;
  /** Inputs that move the difference, the one that moves it most first. */
  readonly movers: readonly Mover<string>[];
}

/** One measure of all sides over the same samples. */
export interface Measured {
  readonly values: readonly Float64Array[];
  readonly ranges: readonly (Range | undefined)[];
  /** Share of the samples in which one side is below another; ties count half, a side without an answer is never below. */
  readonly below: (one: number, other: number) => number;
  /** Standard error of that share, by batch means. */
  readonly belowError: (one: number, other: number) => number;
  /** Share of the samples in which each side is the lowest (or the highest); ties are split. They add up to 1. */
  readonly best: (end: 'lowest' | 'highest') => readonly number[];
  readonly difference: (one: number, other: number) => Difference;
}

export interface Weighed<O extends string> {
  readonly measured: Readonly<Record<O, Measured>>;
  readonly samples: number;
  /** As of `sampleDoubt`, of the sides' own ranges and of those of their differences. */
  readonly error: number;
  readonly converged: boolean;
}

/**
 * All sides under the same doubt: an input of one name is drawn once for all of them, so that doubt they share cancels.
 * Where its spread differs from side to side, each takes the same share of its own.
 */
export function weighSides<O extends string>({
  sides,
  outputs,
  samples = 1000,
}: {
  readonly sides: readonly Side<O>[];
  readonly outputs: readonly O[];
  readonly samples?: number;
}): Weighed<O> {
  const inputs = sharedInputs(sides);
  const draws = sides.map((side) => drawFor(side, inputs));
  const kept = new Map(outputs.map((output) => [output, sides.map((): number[] => [])]));
  const keys = outputs.map((output) => keysOf(output));
  const doubt = sampleDoubt({
    inputs,
    samples,
    // What two sides both say of one input is said once: the first to speak of it is heard.
    together: sides.flatMap((side) => side.together ?? []),
    model: (values): Record<string, number> => {
      const answers = sides.map(({ model }, index) => model(draws[index]!(values)));
      const found: Record<string, number> = {};
      for (const [at, output] of outputs.entries()) {
        const columns = kept.get(output)!;
        for (const [index, answer] of answers.entries()) {
          columns[index]!.push(answer[output]);
          found[keys[at]!.side(index)] = answer[output];
          for (let other = index + 1; other < sides.length; other++)
            found[keys[at]!.less(index, other)] = answer[output] - answers[other]![output];
        }
      }
      return found;
    },
  });
  const measured = Object.fromEntries(
    outputs.map((output, at): [O, Measured] => {
      const values = kept.get(output)!.map((column) => Float64Array.from(column));
      const { side, less } = keys[at]!;
      return [
        output,
        {
          values,
          ranges: values.map((_, index) => doubt.ranges[side(index)]),
          below: (one, other) => shareBelow(values[one]!, values[other]!),
          belowError: (one, other) =>
            shareError(
              (from, to) => shareBelow(values[one]!.subarray(from, to), values[other]!.subarray(from, to)),
              values[one]!.length,
            ),
          best: (end) => shareBest(values, end === 'lowest' ? 1 : -1),
          difference: (one, other) => {
            const turned = one > other;
            const key = turned ? less(other, one) : less(one, other);
            const range = doubt.ranges[key];
            return {
              range: range && (turned ? { low: -range.high, high: -range.low } : range),
              movers: doubt.movers[key] ?? [],
            };
          },
        },
      ];
    }),
  ) as Record<O, Measured>;
  const [first] = outputs;
  return {
    measured,
    samples: first === undefined ? 0 : (measured[first].values[0]?.length ?? 0),
    error: doubt.error,
    converged: doubt.converged,
  };
}

const keysOf = (output: string) => ({
  side: (index: number) => `${output}:${index}`,
  less: (one: number, other: number) => `${output}:${one}-${other}`,
});

const isExact = ({ low, high }: Spread): boolean => low === high;

/** Every input once, by the first spread of it that is one. */
function sharedInputs(sides: readonly Side<string>[]): Record<string, Spread> {
  const inputs: Record<string, Spread> = {};
  for (const side of sides)
    for (const [name, spread] of Object.entries(side.inputs)) {
      const known = inputs[name];
      if (known === undefined || isExact(known)) inputs[name] = spread;
    }
  return inputs;
}

/** A side's own values of what was drawn for all; refilled, as the samples themselves are. */
function drawFor(side: Side<string>, shared: Readonly<Record<string, Spread>>) {
  const entries = Object.entries(side.inputs);
  const own: Record<string, number> = {};
  return (values: Readonly<Record<string, number>>): Readonly<Record<string, number>> => {
    for (const [name, spread] of entries) {
      const drawn = values[name]!;
      const from = shared[name]!;
      own[name] = same(spread, from) ? drawn : triangleAt(spread, shareOf(from, drawn));
    }
    return own;
  };
}

const same = (one: Spread, other: Spread): boolean =>
  one === other || (one.low === other.low && one.typical === other.typical && one.high === other.high);

/** How much of the triangle lies below a value: the inverse of `triangleAt`. */
export function shareOf({ low, typical, high }: Spread, value: number): number {
  if (high === low) return 0.5;
  if (value <= low) return 0;
  if (value >= high) return 1;
  return value < typical
    ? (value - low) ** 2 / ((high - low) * (typical - low))
    : 1 - (high - value) ** 2 / ((high - low) * (high - typical));
}

function shareBelow(one: Float64Array, other: Float64Array): number {
  let below = 0;
  for (let at = 0; at < one.length; at++) below += pointsOf(one[at]!, other[at]!);
  return below / one.length;
}

function pointsOf(one: number, other: number): number {
  const lost = Number.isNaN(one);
  if (lost || Number.isNaN(other)) return lost === Number.isNaN(other) ? 0.5 : lost ? 0 : 1;
  return one < other ? 1 : one > other ? 0 : 0.5;
}

function shareBest(values: readonly Float64Array[], sign: 1 | -1): readonly number[] {
  const count = values[0]?.length ?? 0;
  const wins = values.map(() => 0);
  for (let at = 0; at < count; at++) {
    const row = values.map((column) => (Number.isNaN(column[at]!) ? Number.POSITIVE_INFINITY : sign * column[at]!));
    const least = Math.min(...row);
    const winners = row.filter((value) => value === least).length;
    for (const [index, value] of row.entries()) if (value === least) wins[index]! += 1 / winners;
  }
  return wins.map((won) => won / count);
}
