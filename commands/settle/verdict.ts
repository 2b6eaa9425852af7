import { flipSearch, flipsOf } from '../../core/doubt/flip.ts';
import type { Mover, Range } from '../../core/doubt/sample.ts';
import { type Measured, shareOf, weighSides } from '../../core/doubt/sides.ts';
import { triangleAt } from '../../core/doubt/triangle.ts';
import type { Spread } from '../../core/materials/spread.ts';
import type { SiUnit } from '../../core/quantity/figure.ts';
import type { Doubted } from '../command.ts';
import { type AskedSide, doubtOf, type Reading } from './ask-side.ts';
import type { Measure } from './measures.ts';
import type { FlipOption } from './read.ts';

/** Odds between these are nobody's win. */
export const tooClose = { low: 0.4, high: 0.6 } as const;

/** A doubt that moves the difference, and where in its range the verdict would turn. */
export interface Turning extends Mover<string> {
  /** Where it is now, as likely as not. */
  readonly typical: number;
  readonly unit: SiUnit | undefined;
  /** Nothing where no value of it turns the verdict. */
  readonly flips: number | undefined;
  /** From its typical value to the low (−1) or the high (1) end of its range: for what has no unit. */
  readonly way: number;
}

export interface Verdict {
  readonly measure: Measure;
  readonly winner: number;
  readonly second: number;
  /** Share of the samples in which each side is best. `undefined` where not every side could be sampled. */
  readonly shares: readonly number[] | undefined;
  /** Share in which the winner beats the second. */
  readonly odds: number | undefined;
  /** Standard error of the odds, from batches of the samples. */
  readonly odds_error: number;
  readonly close: boolean;
  /** How much better the winner is than the second: typical, and the central 95 %; never of one sign by force. */
  readonly lead: number;
  readonly lead_range: Range | undefined;
  readonly measured: Measured | undefined;
  readonly turnings: readonly Turning[];
}

export interface Verdicts {
  readonly all: readonly Verdict[];
  readonly samples: number;
  /** Standard error of the worst end of the worst range, as a share of its width. */
  readonly error: number;
  readonly converged: boolean;
}

const mostTurnings = 6;
const leastShare = 0.01;
/** Of the width of an input: finer than anyone can measure it. */
const flipAccuracy = 1e-3;

export function weighAll(sides: readonly AskedSide[], measures: readonly Measure[]): Verdicts {
  const typicals = sides.map(({ doubted }) => doubted?.model(typicalOf(doubted)));
  const sampled = measures.map(({ figures }) =>
    figures.every(({ id }, index) => Number.isFinite(typicals[index]?.[id] ?? Number.NaN)),
  );
  const outputs = measures.flatMap((_, index) => (sampled[index] ? [`${index}`] : []));
  const weighed =
    outputs.length === 0
      ? undefined
      : weighSides({
          outputs,
          samples: Math.max(...sides.map(({ doubted }) => doubted!.samples)),
          sides: sides.map(({ doubted }, side) => ({
            inputs: doubted!.inputs,
            together: doubted!.together ?? [],
            model: (draw) => {
              const answer = doubted!.model(draw);
              return Object.fromEntries(
                outputs.map((output) => [output, answer[measures[Number(output)]!.figures[side]!.id] ?? Number.NaN]),
              );
            },
          })),
        });
  return {
    all: measures.map((measure, index) => verdictOf(sides, measure, weighed?.measured[`${index}`])),
    samples: weighed?.samples ?? 0,
    error: weighed?.error ?? 0,
    converged: weighed?.converged ?? true,
  };
}

export const typicalOf = ({ inputs }: Doubted): Record<string, number> =>
  Object.fromEntries(Object.entries(inputs).map(([name, { typical }]) => [name, typical]));

function verdictOf(sides: readonly AskedSide[], measure: Measure, measured: Measured | undefined): Verdict {
  const sign = measure.better === 'lowest' ? -1 : 1;
  const { figures } = measure;
  const shares = measured?.best(measure.better);
  const order = figures
    .map((_, index) => index)
    .toSorted(
      (a, b) => (shares ? shares[b]! - shares[a]! : 0) || sign * (figures[b]!.value - figures[a]!.value) || a - b,
    );
  const [winner = 0, second = 1] = order;
  const beats = measured && (sign < 0 ? measured.below(winner, second) : measured.below(second, winner));
  const difference = sign < 0 ? measured?.difference(second, winner) : measured?.difference(winner, second);
  const lead = figures[sign < 0 ? second : winner]!.value - figures[sign < 0 ? winner : second]!.value;
  return {
    measure,
    winner,
    second,
    shares,
    odds: beats,
    odds_error: measured?.belowError(winner, second) ?? 0,
    close: beats === undefined ? lead === 0 : beats >= tooClose.low && beats <= tooClose.high,
    lead,
    lead_range: difference?.range,
    measured,
    turnings: difference
      ? turningsOf(
          [
            { doubted: sides[winner]!.doubted!, id: figures[winner]!.id },
            { doubted: sides[second]!.doubted!, id: figures[second]!.id },
          ],
          difference.movers,
        )
      : [],
  };
}

/** One of two that are held against each other, and the output that is. */
export interface Held {
  readonly doubted: Doubted;
  readonly id: string;
}

/** Each input that moves the difference of two, and where in its range that difference turns. */
export function turningsOf(pair: readonly [Held, Held], movers: readonly Mover<string>[]): readonly Turning[] {
  // What only a third side depends on moves nothing between these two.
  const between = movers.filter(({ input }) => pair.some(({ doubted }) => isDoubtful(doubted.inputs[input])));
  return between
    .filter(({ share }) => share >= leastShare)
    .slice(0, mostTurnings)
    .map((mover): Turning => {
      const owner = pair.find(({ doubted }) => isDoubtful(doubted.inputs[mover.input])) ?? pair[0]!;
      const spread = owner.doubted.inputs[mover.input]!;
      // All others as likely as not; where both sides have it, both at the same share of their own spread.
      const difference = (value: number): number => {
        const share = shareOf(spread, value);
        const [a = Number.NaN, b = Number.NaN] = pair.map(({ doubted, id }) => {
          const own = doubted.inputs[mover.input];
          const draw = own ? { [mover.input]: triangleAt(own, share) } : {};
          return doubted.model({ ...typicalOf(doubted), ...draw })[id];
        });
        return a - b;
      };
      const flips = flipsOf({ difference, low: spread.low, high: spread.high, slices: 6, accuracy: flipAccuracy });
      const near = flips.toSorted((a, b) => Math.abs(a - spread.typical) - Math.abs(b - spread.typical))[0];
      return {
        ...mover,
        typical: spread.typical,
        unit: owner.doubted.units[mover.input],
        flips: near,
        way: near === undefined ? 0 : wayTo(spread, near),
      };
    });
}

const isDoubtful = (spread: Spread | undefined): boolean => spread !== undefined && spread.high > spread.low;

const wayTo = ({ low, typical, high }: Spread, value: number): number =>
  value < typical ? -(typical - value) / (typical - low) : value > typical ? (value - typical) / (high - typical) : 0;

/** Values of a numeric option, of all sides alike, at which winner and second are typically even. */
export async function flipsOfOption(
  { winner, second, measure: { figures } }: Verdict,
  sides: readonly AskedSide[],
  { low, high, option, text }: FlipOption,
  context: Reading,
): Promise<readonly number[]> {
  const at = async (value: number) => {
    const [a = Number.NaN, b = Number.NaN] = await Promise.all(
      [winner, second].map(async (index) => {
        const { ask } = sides[index]!;
        const doubted = await doubtOf({ ...ask, options: { ...ask.options, [option]: text(value) } }, context);
        return doubted?.model(typicalOf(doubted))[figures[index]!.id];
      }),
    );
    return a - b;
  };
  const search = flipSearch({ low, high, slices: 8, accuracy: flipAccuracy });
  let step = search.next();
  while (!step.done) step = search.next(await at(step.value));
  return step.value;
}
