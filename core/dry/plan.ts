import type { Standing } from '../sources/source.ts';
import { addDays } from './calendar.ts';
import { type StepId, stepTexts } from './data/steps.ts';
import type { DryKind } from './kind.ts';

/** One dated step on the way from a wet lining to its first fire: plain data for a table, a checklist or a reminder. */
export interface PlanStep {
  /** Stable within a plan: `cover`, `open`, `weigh`, `fill`, `warm`, `fire`, `look`. */
  readonly id: string;
  /** Whole days after the day it was rammed. */
  readonly day_offset: number;
  /** Midday UTC of that calendar day: the hour is the reader's affair. */
  readonly at: Date;
  readonly what: string;
  readonly doneWhen: string;
  /** What must be true before this step is begun. A reminder of it repeats them. */
  readonly holds: readonly string[];
  /** Facts of `core/hazard` that hold while this is done. */
  readonly facts: readonly string[];
  readonly standing: Standing;
}

export type Happened = 'rained' | 'late' | 'steams';

export interface PlanInput {
  /** Midday UTC of the day it was rammed or cast. */
  readonly from: Date;
  readonly kind: Pick<DryKind, 'before' | 'wait_s'>;
  /** Days from then until it is dry or hard enough to light a drying fire: typical, and the adverse end. */
  readonly ready_days: { readonly typical: number; readonly high: number };
  readonly heat: 'thermometer' | 'charcoal';
  readonly stays_covered?: boolean;
  /** Loose fill goes behind it. */
  readonly fill?: boolean;
  /** What has come between, and how many days after it was rammed: what lies before it has been done. */
  readonly happened?: { readonly what: Happened; readonly day: number };
  /** From lighting the first fire, the day after the drying fire, until it is cold. */
  readonly until_cold_s: number;
}

const DAY_s = 86_400;

/**
 * The dated steps of a drying, in order of day: cover or cure, air, weigh twice, drying fire at the adverse end of the
 * days, first fire the day after, a look when it is cold. Rain before the fire starts the air-drying anew (`ready_days`
 * counted from that day by the caller); being late moves what is left; steam holds the fire where it is.
 */
export function planOf(input: PlanInput): readonly PlanStep[] {
  const { from, kind, ready_days, happened } = input;
  const ready = Math.max(0, Math.ceil(ready_days.high - 1e-9));
  const since = happened?.day ?? 0;
  const steps: (readonly [StepId, number])[] = [
    ...beforehand(input, ready),
    ...(happened?.what === 'rained' ? [['rain', since] as const] : []),
    ...(happened?.what === 'steams' ? [['steam', since] as const] : []),
    ['warm', ready],
    ...(input.fill ? [['fill', ready + 1] as const] : []),
    ['fire', ready + 1],
    ['look', ready + 1 + Math.max(1, Math.ceil(input.until_cold_s / DAY_s))],
  ];
  const coals = input.heat === 'charcoal' ? ['charcoal'] : [];
  return Object.freeze(
    steps
      .filter(([id, day]) => day >= since || id === 'rain' || id === 'steam')
      .filter(
        ([id]) => happened?.what !== 'steams' || !['moist', 'strip', 'cover', 'weigh', 'weigh-again'].includes(id),
      )
      .toSorted(([, a], [, b]) => a - b)
      .map(([id, day_offset]) => {
        const text = id === 'warm' && kind.before !== 'air-dry' ? 'warm-set' : id;
        const { what, doneWhen, holds, facts, standing } = stepTexts[text];
        const lit = (facts as readonly string[]).includes('hot-work');
        return Object.freeze({
          id,
          day_offset,
          at: addDays(from, day_offset),
          what,
          doneWhen,
          holds,
          facts: Object.freeze([...facts, ...(lit ? coals : [])]),
          standing,
        });
      }),
  );

  function beforehand({ stays_covered }: PlanInput, ready: number): readonly (readonly [StepId, number])[] {
    const wait = Math.max(0, Math.ceil(kind.wait_s.high / DAY_s - 1e-9));
    if (kind.before === 'cure')
      return [
        ['moist', 0],
        ['strip', Math.min(wait, ready)],
      ];
    if (kind.before === 'start soon') return [['wrapped', 0]];
    const start = happened?.what === 'rained' ? since : 0;
    const open = Math.min(start + wait, ready);
    const last = Math.max(open, ready - 1);
    const first = Math.min(last, Math.max(open, Math.min(Math.round(ready_days.typical), last - 2)));
    return [
      ['cover', 0],
      [stays_covered ? 'cover-on' : 'open', open],
      ...(first < last ? ([['weigh', first]] as const) : []),
      ['weigh-again', last],
    ];
  }
}
