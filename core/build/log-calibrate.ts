import type { Tie } from '../doubt/together.ts';
import type { Spread } from '../materials/spread.ts';
import type { Step, WithSteps } from '../step.ts';
import { bentLine, type Draw, type Line } from './log-line.ts';
import { type Belief, begin, type Found, take } from './log-update.ts';

/** Something measured of one build, which the draws of a model predict. */
export interface Reading {
  /** In the reader's words, with its day: `bucket of 2026-04-12`. */
  readonly name: string;
  readonly value: number;
  /** Suffix of its unit in a step: `kg_m3`, `K`, `kg`. */
  readonly unit: string;
  /** One standard error of the reading itself. */
  readonly error: number;
  /** What the model may be off by, all readings of that name alike: weighing again does not mend it. */
  readonly model?: { readonly name: string; readonly error: number };
  readonly predicted: (draw: Draw) => number;
  /** Taken by its logarithm: what is never below zero and off by shares. Errors are in the unit of the value all the same. */
  readonly logarithm?: true;
}

/** What became of a reading: middles and standard deviations in its own unit, or in logarithms where it was taken so. */
export interface TakenReading extends Omit<Reading, 'predicted'> {
  /** Before any reading. */
  readonly estimate: number;
  readonly spread: number;
  /** Once every reading is in. */
  readonly after: number;
  readonly left: number;
  /** As it met them: the same, by the readings before it. */
  readonly met: { readonly estimate: number; readonly spread: number };
  /** How far it lay from what was known before it, in standard deviations of both together. */
  readonly off: number;
  /** It contradicts the model where not: nothing was narrowed by it. */
  readonly used: boolean;
}

export interface Calibration extends WithSteps {
  readonly readings: readonly TakenReading[];
  /** Of each input, as the readings leave it. Never wider than it was. */
  readonly spreads: Readonly<Record<string, Spread>>;
  /** A draw of the inputs as they were, moved to where the readings put it. */
  readonly draw: (draw: Draw) => Draw;
}

/** Beyond the central 95 % of what was known and of the reading together it contradicts. */
export const CONTRADICTS = 2;

/**
 * Bayes' rule for readings of what a model predicts from doubtful inputs, in the linear Gaussian form: the model as a
 * straight line in its inputs by central differences one standard deviation to each side (its bend is counted as error
 * of the reading), gain = spread² ÷ (spread² + error²), and the draws moved by the square-root update, which leaves them
 * exactly the mean and the covariance that the rule asks for. A measured input is the same with the input as the model:
 * then a triangle stays a triangle. Draws keep to the hard bounds of their spreads.
 *
 * Weights on the draws would say the same where a reading is vague; where it is sharp they leave a handful of a thousand
 * draws, and this does not. A reading worse than the estimate changes nothing, an exact one fixes what it reads, their
 * order does not matter, and no input gets wider. What lies beyond two standard deviations is not used, and told: of two
 * readings that contradict each other the first counts. What the model has no finite answer for is left out.
 * Source: conjugate normal update; Whitaker and Hamill 2002.
 */
export function calibrate({
  inputs,
  readings,
  together = [],
}: {
  readonly inputs: Readonly<Record<string, Spread>>;
  readonly readings: readonly Reading[];
  readonly together?: readonly Tie<string>[];
}): Calibration {
  const names = Object.keys(inputs).filter((name) => inputs[name]!.high > inputs[name]!.low);
  const moments = names.map((name) => momentsOf(inputs[name]!));
  const middle: Record<string, number> = Object.fromEntries(
    Object.entries(inputs).map(([name, spread]) => [name, momentsOf(spread).mean]),
  );
  let belief = begin(names, together);
  const lines = new Map<Reading['predicted'], Line | undefined>();
  const lineOf = ({ predicted, logarithm }: Reading): Line | undefined => {
    const scaled = logarithm ? (draw: Draw) => Math.log(predicted(draw)) : predicted;
    if (!lines.has(predicted)) lines.set(predicted, bentLine(scaled, { names, moments, middle }));
    return lines.get(predicted);
  };
  const judged = readings.flatMap((reading) => {
    const line = lineOf(reading);
    if (!line) return [];
    const found = take(belief, { ...onScale(reading), line, most: CONTRADICTS });
    belief = found.belief;
    return [{ reading, line, found }];
  });
  const taken = judged.map(
    ({ reading: { predicted: _, ...reading }, line, found: { off, used, before } }): TakenReading => ({
      ...reading,
      estimate: line.at,
      spread: deviationOf(line, begin(names, together)),
      after: line.at + line.slopes.reduce((sum, slope, at) => sum + slope * belief.mean[at]!, 0),
      left: deviationOf(line, belief),
      met: { estimate: before.estimate, spread: before.spread },
      off,
      used,
    }),
  );
  const bounded = (name: string, value: number) => Math.min(inputs[name]!.high, Math.max(inputs[name]!.low, value));
  const spreads = Object.fromEntries(
    Object.entries(inputs).map(([name, spread]) => {
      const at = names.indexOf(name);
      return [name, at === -1 ? spread : narrowed(spread, moments[at]!, belief, at, (value) => bounded(name, value))];
    }),
  );
  return Object.freeze({
    readings: taken,
    spreads,
    draw: (draw: Draw) => {
      if (!judged.some(({ found }) => found.used)) return draw;
      const z = names.map((name, at) => (draw[name]! - moments[at]!.mean) / moments[at]!.deviation);
      const moved: Record<string, number> = { ...draw };
      for (const [at, name] of names.entries()) {
        const { mean, deviation } = moments[at]!;
        const row = belief.map[at]!;
        let sum = belief.mean[at]!;
        for (let other = 0; other < z.length; other++) sum += row[other]! * z[other]!;
        moved[name] = bounded(name, mean + deviation * sum);
      }
      return moved;
    },
    steps: (): readonly Step[] =>
      judged.flatMap(({ reading, found: { used, before } }) => (used ? [stepOf(reading, before)] : [])),
  });
}

function stepOf({ name, unit, ...reading }: Reading, { estimate, spread, error, gain }: Found['before']): Step {
  const { value } = onScale(reading);
  const key = (word: string) => `${word}_${reading.logarithm ? 'count' : unit}`;
  return {
    formula: `calibrated by the ${name}${reading.logarithm ? `, in logarithms of ${unit}` : ''}: gain = spread² ÷ (spread² + error²); calibrated = estimate + gain × (reading − estimate); left = spread × √(1 − gain)`,
    inputs: { [key('reading')]: value, [key('error')]: error, [key('estimate')]: estimate, [key('spread')]: spread },
    gives: {
      gain,
      [key('calibrated')]: estimate + gain * (value - estimate),
      [key('left')]: spread * Math.sqrt(1 - gain),
    },
    source: 'whitaker-hamill-2002',
  };
}

/** As it is reckoned with. */
function onScale({ value, error, model, logarithm }: Pick<Reading, 'value' | 'error' | 'model' | 'logarithm'>) {
  if (!logarithm) return { value, error, ...(model ? { model } : {}) };
  return {
    value: Math.log(value),
    error: error / value,
    ...(model ? { model: { ...model, error: model.error / value } } : {}),
  };
}

/** Mean and standard deviation of a triangle. */
export function momentsOf({ low, typical, high }: Spread): { readonly mean: number; readonly deviation: number } {
  const mean = (low + typical + high) / 3;
  // As differences: the usual sum of squares loses a narrow triangle of large numbers.
  const [left, right] = [typical - low, high - typical];
  return { mean, deviation: Math.sqrt((left * left + left * right + right * right) / 18) };
}

const deviationOf = ({ slopes }: Line, { covariance }: Belief): number =>
  Math.sqrt(
    Math.max(
      0,
      slopes.reduce(
        (sum, slope, at) => sum + slope * slopes.reduce((s, other, to) => s + other * covariance[at]![to]!, 0),
        0,
      ),
    ),
  );

function narrowed(
  { low, typical, high }: Spread,
  { mean, deviation }: { readonly mean: number; readonly deviation: number },
  { mean: moved, covariance }: Belief,
  at: number,
  bounded: (value: number) => number,
): Spread {
  const factor = Math.sqrt(Math.max(0, covariance[at]![at]!));
  const to = (value: number) => bounded(mean + deviation * moved[at]! + factor * (value - mean));
  return { low: to(low), typical: to(typical), high: to(high) };
}
