import { AskError } from '../ask-error.ts';
import type { Spread } from '../materials/spread.ts';
import type { Step, WithSteps } from '../step.ts';

const DAY_s = 86_400;
/** A household scale, each time it is read. From memory. */
export const SCALE_kg = 0.05;
/** Free water at most, share of the dry mass: more is enough to burst it (practice). */
export const DRY_LEFT = 0.01;
/** Loss a day, share of the dry mass, at which practice calls a lining dry: 0.1 to 0.5 %. Judged by the lower. */
export const DRY_LOSS = { low: 0.001, high: 0.005, source: 'common-practice', standing: 'common practice' } as const;

export interface Weighing {
  /** Days after it was rammed. */
  readonly day: number;
  readonly mass_kg: number;
}

export interface WeighedInput {
  readonly weighings: readonly Weighing[];
  readonly dry_kg: number;
  /** How slowly such a lining gives up its last water, worked out for its thickness and the weather. */
  readonly settling_s: Spread;
  readonly scale_kg?: number;
}

export interface Weighed extends WithSteps {
  /** Of the last interval, share of the dry mass a day. Negative where it gained. */
  readonly loss_per_day: Spread;
  /** Free water left at the last weighing; its high end is the one to go by. */
  readonly left_kg: Spread;
  readonly verdict: 'dry' | 'wet' | 'wetter' | 'too close to call';
  /** Days from the last weighing until the adverse end is dry. */
  readonly more_days: number;
  /** How far apart the two weighings must lie for this scale to tell dry from wet. */
  readonly apart_days: number;
  /** From three weighings that slow down; else as it was worked out. */
  readonly settling_s: Spread;
  readonly settling_from: 'weighings' | 'model';
}

/**
 * Dry by the scale: in the end the loss falls as e^(−t/τ), so what is left = loss a day × τ. With three weighings τ is
 * fitted from the last two losses, never below what was worked out at its typical end. Dry enough where even the adverse
 * end (scale error included) loses at most 0.1 % a day and holds at most 1 %.
 * @throws AskError `missing` for fewer than two, `unreadable` for days that do not rise.
 */
export function weighed({ weighings, dry_kg, settling_s, scale_kg = SCALE_kg }: WeighedInput): Weighed {
  const sorted = checked(weighings);
  const [before, last] = sorted.slice(-2) as [Weighing, Weighing];
  const apart_s = (last.day - before.day) * DAY_s;
  const error_kg = Math.SQRT2 * scale_kg;
  const perDay = (lost_kg: number) => ((lost_kg / apart_s) * DAY_s) / dry_kg;
  const lost_kg = before.mass_kg - last.mass_kg;
  const loss_per_day: Spread = {
    low: perDay(lost_kg - error_kg),
    typical: perDay(lost_kg),
    high: perDay(lost_kg + error_kg),
  };
  const fitted_s = fittedSettling_s(sorted, error_kg);
  const tau: Spread =
    fitted_s === undefined
      ? settling_s
      : { low: fitted_s, typical: fitted_s, high: Math.max(fitted_s, settling_s.typical) };
  // The loss belongs to the middle of the interval and has slowed since; its adverse end pretends it has not.
  const left = (loss: number, tau_s: number, slowed: boolean) =>
    Math.max(0, loss) * dry_kg * (tau_s / DAY_s) * (slowed ? Math.exp(-apart_s / 2 / tau_s) : 1);
  const left_kg: Spread = {
    low: left(loss_per_day.low, tau.low, true),
    typical: left(loss_per_day.typical, tau.typical, true),
    high: left(loss_per_day.high, tau.high, false),
  };
  const share = left_kg.high / dry_kg;
  const more_days =
    (tau.high / DAY_s) *
    Math.max(0, Math.log(share / DRY_LEFT), Math.log(Math.max(loss_per_day.high, 1e-12) / DRY_LOSS.low));
  const apart_days = (2 * error_kg) / (DRY_LOSS.low * dry_kg);
  const dry = loss_per_day.high <= DRY_LOSS.low && share <= DRY_LEFT;
  const verdict =
    lost_kg < -error_kg ? 'wetter' : dry ? 'dry' : loss_per_day.low > DRY_LOSS.low ? 'wet' : 'too close to call';
  return {
    loss_per_day,
    left_kg,
    verdict,
    more_days: verdict === 'dry' ? 0 : more_days,
    apart_days,
    settling_s: tau,
    settling_from: fitted_s === undefined ? 'model' : 'weighings',
    steps: (): readonly Step[] => [
      {
        formula: 'loss a day = (mass before − mass last ± both readings of the scale) ÷ days between ÷ dry mass',
        inputs: { before_kg: before.mass_kg, last_kg: last.mass_kg, between_s: apart_s, scale_kg, dry_kg },
        gives: { loss_share: loss_per_day.typical, most_share: loss_per_day.high },
        source: 'derived',
      },
      {
        formula: 'left = loss a day × time in which it falls to 1/e',
        inputs: { falls_to_1_over_e_in_s: tau.typical, at_most_s: tau.high },
        gives: { left_kg: left_kg.typical, at_most_kg: left_kg.high },
        source: 'crank-1975',
      },
    ],
  };
}

function fittedSettling_s(sorted: readonly Weighing[], error_kg: number): number | undefined {
  const [a, b, c] = sorted.slice(-3);
  if (!a || !b || !c) return undefined;
  const [first, second] = [(a.mass_kg - b.mass_kg) / (b.day - a.day), (b.mass_kg - c.mass_kg) / (c.day - b.day)];
  // Differences the scale can't tell from none fit nothing.
  if (b.mass_kg - c.mass_kg <= error_kg || first <= second) return undefined;
  return (((c.day - a.day) / 2) * DAY_s) / Math.log(first / second);
}

function checked(weighings: readonly Weighing[]): readonly Weighing[] {
  if (weighings.length < 2)
    throw new AskError({
      code: 'missing',
      what: `${weighings.length === 1 ? 'one weighing tells' : 'no weighing tells'} nothing of drying`,
      expected: 'two or more, with the day of each',
      example: '31.2 kg day 7; 30.9 kg day 10',
    });
  const wrong = weighings.findIndex(({ day }, index) => index > 0 && day <= weighings[index - 1]!.day);
  if (wrong > 0)
    throw new AskError({
      code: 'unreadable',
      what: `weighing ${wrong + 1} is of day ${weighings[wrong]!.day}, not later than the one before it`,
      expected: 'the oldest first, each on a later day',
      example: '31.2 kg day 7; 30.9 kg day 10',
    });
  return weighings;
}
