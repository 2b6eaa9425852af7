import { addDays, daysBetween, plainDay, shortDay } from '../../core/dry/calendar.ts';
import { coalJump, coalStages } from '../../core/dry/data/charcoal.ts';
import { formatBoth, formatFigure, formatSi } from '../../core/quantity/format.ts';
import type { Assumption } from '../card.ts';
import type { AnswerContext } from '../command.ts';
import { figuresOf } from './figures.ts';
import type { DryOptions } from './options.ts';
import { usual } from './question.ts';
import type { DryWork } from './work.ts';

export interface DryParts {
  readonly work: DryWork;
  readonly options: DryOptions;
  readonly context: AnswerContext;
}

function lossADay(water_kg_m2s: number, units: AnswerContext['units']): string {
  const daily_kg_m2 = water_kg_m2s * 86_400;
  return units === 'US'
    ? `${formatSi(daily_kg_m2 * FOOT_m ** 2, 'kg', units)} of water from a square foot`
    : `${formatSi(daily_kg_m2, 'kg', units)} of water from a square metre`;
}

const FOOT_m = 0.3048;
const percent = (share: number): string => `${Number((share * 100).toPrecision(2))} %`;
const count = (days: number): string => `${days} ${days === 1 ? 'day' : 'days'}`;

/** The day a drying fire may be lit, and the first on which it may be dry already. */
export function fireDays({ question, ready_days, plan }: DryWork) {
  const warm = plan.find(({ id }) => id === 'warm')!;
  const early = Math.min(warm.day_offset, Math.max(Math.ceil(ready_days.low - 1e-9), question.happened?.day ?? 0));
  return { warm, early: addDays(question.from, early), early_offset: early };
}

export function headlineOf({ work, context }: DryParts): string {
  const { question, firing, weighed, ready_days } = work;
  const { warm, early, early_offset } = fireDays(work);
  const figures = figuresOf(work);
  const said = (id: string) => {
    const { lead, range } = formatFigure(figures.find((one) => one.id === `dry.${id}`)!, context.units);
    return range === undefined ? lead : `${lead} (${range})`;
  };
  const first = firing.stages[0]!;
  const where = question.kind.before === 'air-dry' ? `, ${question.place.name}` : '';
  const best = early_offset < warm.day_offset ? ` (at best from ${shortDay(early)})` : '';
  // The late end has passed: what it is like today says more than the calendar.
  const since = addDays(question.from, Math.ceil(ready_days.high));
  const when =
    !question.happened && !weighed && since < question.today
      ? `${question.size} of ${question.name}${where} has had its days since ${plainDay(since)}: lit if scale, hand and cold glass say so too`
      : `No fire in ${question.size} of ${question.name}${where} before ${plainDay(warm.at)}${best}`;
  const fire = `then ${said('fire')} of first fire, the first ${said('first_hold')} no hotter than ${formatBoth(first.to_K, 'K', context.units)}`;
  if (question.happened?.what === 'steams')
    return `Steam: do not go hotter, hold where it is until cold glass over the vent stays clear. If it goes out before that: lit again from ${plainDay(warm.at)}, by the whole schedule, ${said('fire')}.`;
  const told = weighed
    ? weighed.verdict === 'dry'
      ? `Dry by the scale. `
      : weighed.verdict === 'wet'
        ? `Still wet: ${percent(weighed.loss_per_day.typical)} of its mass goes each day. `
        : weighed.verdict === 'wetter'
          ? `It has taken up water. `
          : `Too close to call by this scale. `
    : question.happened?.what === 'rained'
      ? 'Rain puts it back to the start. '
      : '';
  return `${told}${when}, ${fire}.`;
}

export function notesOf({ work, context }: DryParts): readonly string[] {
  const { question, firing, air, plan, limit, weighed } = work;
  const days = daysBetween(question.from, fireDays(work).warm.at);
  const show = (kg: number) => formatBoth(kg, 'kg', context.units);
  const wet = question.behind.some((layer) => layer.wet);
  return [
    question.kind.note,
    ...(air
      ? [
          `An open wet face here loses ${lossADay(air.evaporates_kg_m2s, context.units)} a day; damp from the depth sets the end. ${air.biot > 3 ? 'Here the depth holds it up: wind helps little, a thinner lining much.' : 'Here the air holds it up: wind and warmth help.'}`,
        ]
      : []),
    ...(question.kind.before === 'air-dry'
      ? ['The day is that of the slow end: a scale may let you light it sooner (weighed=).']
      : []),
    ...(wet ? ['What is laid wet behind it dries through its face: its water is counted in.'] : []),
    ...(weighed && weighed.verdict !== 'dry'
      ? [
          weighed.verdict === 'too close to call'
            ? `Weigh it again ${count(Math.ceil(weighed.apart_days))} after the last time: nearer together this scale can't tell.`
            : `Up to ${show(weighed.left_kg.high)} is still free in it.`,
        ]
      : []),
    `Above ${formatBoth(limit.limit_K, 'K', context.units)} steam shut in a wet pore is as strong as the weakest such body: no pore wet, or no hotter.`,
    ...(question.heat === 'charcoal'
      ? [
          `Charcoal cannot hold a temperature: a jump of more than ${formatSi(coalJump.rise_dK, 'dK', context.units)} in ${coalJump.within_s / 60} minutes means coals out. The hours are those of the schedule for a thermometer.`,
        ]
      : []),
    ...(firing.total_s.typical > 12 * 3600
      ? [
          'Long for one day: only after a finished hold may it be closed and left; the next day it starts from cold at the rate of the row that follows (judged).',
        ]
      : []),
    ...(plan.some(({ standing }) => standing === 'common practice')
      ? [
          `The steps are common practice, the schedule is ${firing.standing}${firing.note === undefined ? '' : ` (${firing.note})`}${days > 0 ? ', the days are worked out' : ''}.`,
        ]
      : []),
  ];
}

export function assumptionsOf({ work, options, context }: DryParts): readonly Assumption[] {
  const { question } = work;
  const { units } = context;
  const US = units === 'US';
  const dries = question.kind.before === 'air-dry';
  const rows: (Assumption | false)[] = [
    !options.from && {
      text: `${question.kind.before === 'cure' ? 'cast' : 'rammed'} today, ${plainDay(question.today)}`,
      override: 'from=2026-03-01',
    },
    !question.measured && {
      text: `${question.size} thick, as such linings are: the days go by up to its square`,
      override: US ? 'thickness=1.5 in' : 'thickness=40 mm',
    },
    !question.sized && {
      text: `a bore of ${formatSi(usual.bore_m, 'm', units)}, ${formatSi(usual.height_m, 'm', units)} deep, for the masses`,
      override: US ? 'amount=0.5 cu ft' : 'amount=15 L',
    },
    dries && !options.where && { text: question.place.name, override: 'where=indoors' },
    dries &&
      !options.air && {
        text: `air at ${formatSi(question.air_K, 'K', units)}, day and night`,
        override: US ? 'air=60 °F' : 'air=15 °C',
      },
    dries && !options.humidity && { text: `${percent(question.humidity)} humidity`, override: 'humidity=70%' },
    dries && !options.wind && { text: `wind: ${question.wind}`, override: 'wind=breezy' },
    dries && !options.open && { text: 'open at the bore only', override: 'open=both sides' },
    dries && !options.cover && { text: 'under a cloth for the first two days only', override: 'cover=throughout' },
    !options.heat && { text: 'with a thermometer', override: 'heat=charcoal' },
    !options.hot && {
      text: `fired to ${formatSi(work.firing.stages.at(-1)!.to_K, 'K', units)}`,
      override: US ? 'hot=1800 °F' : 'hot=950 °C',
    },
    work.weighed !== undefined && { text: 'a scale that reads to 50 g' },
  ];
  return rows.filter((row) => row !== false);
}

/** Hours of each coal stage: those of the schedule's stages it stands for. */
export function coalRows({ firing }: DryWork) {
  let from_s = 0;
  return coalStages.flatMap((coal) => {
    const stages = firing.stages.filter(({ id }) => coal.covers.includes(id));
    if (stages.length === 0) return [];
    const lasts_s = stages.reduce((sum, { ramp_s, hold_s }) => sum + ramp_s.typical + hold_s.typical, 0);
    const row = { coal, from_s, to_s: from_s + lasts_s };
    from_s += lasts_s;
    return [row];
  });
}
