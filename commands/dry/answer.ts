import { isoDay, plainDay } from '../../core/dry/calendar.ts';
import { formatSi } from '../../core/quantity/format.ts';
import type { Step } from '../../core/step.ts';
import type { Table } from '../card.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { dryChart } from './chart.ts';
import { figuresOf } from './figures.ts';
import type { DryOptions } from './options.ts';
import { dryQuestion } from './question.ts';
import { assumptionsOf, coalRows, type DryParts, fireDays, headlineOf, notesOf } from './words.ts';
import { workOut } from './work.ts';

/** As many as stand in one row of buttons. */
const mostNext = 5;

export function dryAnswer(options: DryOptions, context: AnswerContext): Answer {
  const question = dryQuestion(options, context);
  const work = workOut(question);
  const parts: DryParts = { work, options, context };
  const working = workingOf(parts);
  const { material, kind } = question;
  return {
    headline: headlineOf(parts),
    figures: figuresOf(work),
    table: tableOf(parts),
    chart: dryChart(parts),
    notes: notesOf(parts),
    assumed: assumptionsOf(parts),
    doubt: doubtOf(parts),
    sources: [
      ...new Set([
        ...working.map(({ source }) => source),
        work.firing.source,
        kind.wait_s.source,
        kind.strength_Pa.source,
        'studio-fog-test',
        'common-practice',
      ]),
    ],
    working,
    handsOver: handsOver(parts),
    hazards: {
      facts: [
        ...(material?.hazards ?? []),
        ...(question.heat === 'charcoal' ? ['charcoal'] : []),
        ...(kind.before === 'cure' ? ['caustic'] : []),
        ...(work.hurried ? ['fast-firing'] : []),
      ],
      ...(work.wet_share === undefined ? {} : { numbers: { lining_water: work.wet_share } }),
    },
    plan: work.plan,
    next: nextLines(parts),
  };
}

function workingOf({ work }: DryParts): readonly Step[] {
  const { water, air, limit, firing, weighed } = work;
  return [...water.steps(), ...(air?.steps() ?? []), ...(weighed?.steps() ?? []), ...limit.steps(), ...firing.steps()];
}

function doubtOf({ work }: DryParts): string {
  if (work.weighed) return 'the scale and how many days lie between the weighings';
  const moves = work.doubt.movesMost.ready;
  if (!work.air) return 'how dense and how wet it was mixed: the days are a rule of thumb, not worked out';
  return moves
    ? `${moves.input} (${Math.round(moves.share * 100)} % of the spread of the days)`
    : 'nothing that was sampled';
}

/** Dated steps first, then the fire itself by the hour. */
function tableOf({ work, context }: DryParts): Table {
  const hours = (s: number) => formatSi(Math.round(s / 900) * 900, 's', context.units, 'hours');
  const dated = work.plan.map(({ at, what, doneWhen }) => [plainDay(at), what, doneWhen]);
  return { columns: ['when', 'do', 'done when'], rows: [...dated, ...fireRows()] };

  function fireRows(): readonly (readonly string[])[] {
    if (work.question.heat === 'charcoal') {
      return coalRows(work).map(({ coal, from_s, to_s }) => [
        `fire, ${hours(from_s)} to ${hours(to_s)}`,
        `${coal.put_in}. ${coal.see}.`,
        coal.go_on,
      ]);
    }
    let from_s = 0;
    return work.firing.stages.map(({ to_K, ramp_s, hold_s, watch, from_K }) => {
      const start_s = from_s;
      from_s += ramp_s.typical + hold_s.typical;
      const rate = formatSi(((to_K - from_K) / Math.max(1, ramp_s.typical)) * 3600, 'dK', context.units);
      const hold = hold_s.typical > 0 ? `, hold ${formatSi(hold_s.typical, 's', context.units, 'hours')}` : '';
      return [
        `fire, ${hours(start_s)} to ${hours(from_s)}`,
        `to ${formatSi(to_K, 'K', context.units)} at ${rate} an hour${hold}`,
        watch,
      ];
    });
  }
}

/** What `wall`, `mix` and a reminder take, as it would be typed. */
function handsOver({ work, options }: DryParts): Readonly<Record<string, string>> {
  const { question } = work;
  const { warm } = fireDays(work);
  const { layers, amount, recipe, bore, height } = options;
  return {
    ...(layers?.thickness ? { layers: layers.text } : {}),
    ...(question.measured ? { thickness: `${Number((question.thickness_m * 1000).toFixed(2))} mm` } : {}),
    ...(recipe === undefined ? {} : { recipe }),
    ...(amount ? { amount: amount.text } : {}),
    ...(bore ? { bore: bore.text } : {}),
    ...(height ? { height: height.text } : {}),
    from: isoDay(question.from),
    lit: isoDay(warm.at),
  };
}

function nextLines({ work, context, options }: DryParts): NonNullable<Answer['next']> {
  const { question } = work;
  const known = (name: string) => context.commands.some((one) => one.name === name);
  const dries = question.kind.before === 'air-dry';
  return [
    ...(question.heat === 'thermometer'
      ? [{ label: 'without a thermometer', line: 'again heat=charcoal' }]
      : [{ label: 'by a thermometer', line: 'again heat=thermometer' }]),
    ...(dries && question.place.id !== 'indoors' ? [{ label: 'dried indoors', line: 'again where=indoors' }] : []),
    ...(question.happened ? [] : [{ label: 'it got rained on', line: 'again happened=rained' }]),
    ...(options.layers?.thickness && known('wall')
      ? [{ label: 'what the shell meets on the first melt', line: 'wall for=last' }]
      : []),
    ...(known('remind') ? [{ label: 'be reminded of each step', line: 'remind for=last' }] : []),
    { label: 'how that was worked out', line: 'why' },
  ].slice(0, mostNext);
}
