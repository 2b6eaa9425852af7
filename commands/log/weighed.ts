import { AskError } from '../../core/ask-error.ts';
import { daysBetween, middayOf } from '../../core/dry/calendar.ts';
import { formatBoth, formatSi } from '../../core/quantity/format.ts';
import type { Command } from '../command.ts';
import { weighingIn } from './entry.ts';
import { addEntry, buildFor, dayOf, logFamily, momentOf } from './family.ts';
import { figure, logFigures } from './figures.ts';
import { weighedOptions } from './options.ts';

export const logWeighed = {
  ...logFamily,
  name: 'log weighed',
  summary: 'Log what the drying lining weighs: two or more weighings tell when it is dry.',
  options: weighedOptions,
  subject: 'mass',
  examples: [
    { line: 'log weighed 31.2 kg', says: 'today' },
    { line: 'log weighed 102 lb empty=33 lb on=2025-12-20', says: 'with its can, on an earlier day' },
  ],
  hazards: ['damp-lining', 'lift'],
  figures: logFigures,
  async answer({ mass, empty, build: typed, on }, context) {
    const { units } = context;
    const net_kg = mass.si - (empty?.si ?? 0);
    if (net_kg <= 0)
      throw new AskError({
        code: 'impossible',
        what: `what is no lining (${empty?.text}) weighs as much as all of it (${mass.text})`,
        expected: 'less for can, bricks and board than for the whole',
        example: formatSi(mass.si / 3, 'kg', units),
        option: 'empty',
      });
    const where = await buildFor(typed, context);
    const at = await momentOf(on, context);
    const { build } = where;
    const earlier = (await context.memory.entries(context.asker, build.name))
      .filter((entry) => entry.kind === 'weighing' && entry.at <= at)
      .at(-1);
    await addEntry(where, { kind: 'weighing', at, data: { mass_kg: net_kg } }, context);
    const before_kg = earlier && weighingIn(earlier);
    const days = earlier ? daysBetween(middayOf(earlier.at), middayOf(at)) : 0;
    const loss = before_kg !== undefined && days > 0 ? (before_kg - net_kg) / net_kg / days : undefined;
    return {
      headline: `Lining of ${build.name}: ${formatBoth(net_kg, 'kg', units)}${loss === undefined || !earlier ? '' : `, ${lossWords(loss)} a day since ${dayOf(earlier)}`}.`,
      figures: [
        figure('log.mass', 'the lining now', net_kg, 'kg'),
        ...(loss === undefined
          ? []
          : [figure('log.loss', 'lost a day', loss, '1', { shown: 'percent', note: 'of its mass' })]),
      ],
      notes: [
        'Practice calls it dry from 0.5 % a day down; log drying goes by the adverse end, the scale’s error counted.',
      ],
      assumed: [
        ...where.assumed,
        ...(empty ? [] : [{ text: 'nothing but lining on the scale', override: 'empty=12 kg' }]),
      ],
      sources: ['common-practice'],
      working:
        loss === undefined || before_kg === undefined
          ? []
          : [
              {
                formula: 'loss a day = (mass before − mass now) ÷ mass now ÷ days between',
                inputs: { mass_before_kg: before_kg, mass_now_kg: net_kg, days_between_count: days },
                gives: { loss_a_day: loss },
                source: 'derived',
              },
            ],
      next: [
        ...(earlier ? [{ label: 'is it dry?', line: `log drying build=${build.name}` }] : []),
        { label: 'all of its log', line: `log list ${build.name}` },
      ],
    };
  },
} satisfies Command<typeof weighedOptions>;

const lossWords = (loss: number): string => {
  const share = Number((Math.abs(loss) * 100).toPrecision(2));
  return loss < 0 ? `${share} % gained` : `${share} % lost`;
};
