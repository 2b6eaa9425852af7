import { AskError } from '../../core/ask-error.ts';
import { daysBetween, isoDay, middayOf, readDay } from '../../core/dry/calendar.ts';
import { formatBoth } from '../../core/quantity/format.ts';
import type { AnswerContext, Command } from '../command.ts';
import { readWeighings } from '../dry/weighings.ts';
import type { Build } from '../memory.ts';
import { about } from '../options.ts';
import { weighingIn } from './entry.ts';
import { addEntry, buildFor, dayOf, logFamily, momentOf } from './family.ts';
import { figure, logFigures } from './figures.ts';
import { dryingOptions } from './options.ts';

/** What `dry` reads at once. */
const most = 12;

export const logDrying = {
  ...logFamily,
  name: 'log drying',
  summary: 'Log that the lining is dry, if its weighings say so: first fires are held until then.',
  options: dryingOptions,
  subject: 'weighed',
  examples: [
    {
      line: 'log drying 47.003 kg 2025-10-01; 47.002 kg 2025-11-05; 47.002 kg 2025-12-20 rammed=2025-09-01',
      says: 'by weighings that stand still',
    },
  ],
  hazards: ['hot-work', 'damp-lining'],
  figures: logFigures,
  async answer({ weighed, rammed, build: typed, on }, context) {
    const { memory, asker, units } = context;
    const where = await buildFor(typed, context);
    const { build } = where;
    const at = await momentOf(on, context);
    const typedOnes = weighed === undefined ? [] : typedWeighings(weighed, context);
    const kept = (await memory.entries(asker, build.name)).flatMap((entry) => {
      const mass_kg = weighingIn(entry);
      return mass_kg === undefined ? [] : [{ day: dayOf(entry), mass_kg }];
    });
    const byDay = new Map([...kept, ...typedOnes].map((one) => [one.day, one]));
    const all = [...byDay.values()].toSorted((a, b) => a.day.localeCompare(b.day)).slice(-most);
    const [first, ...others] = all;
    const last = others.at(-1);
    if (!first || !last) throw tooFew(all.length, build);
    const from = rammed === undefined ? readDay(first.day) : about('rammed', () => readDay(rammed));
    if (from > readDay(first.day)) throw weighedBefore(isoDay(from), first.day);
    await refuseWet(build, { from, all, at }, context);
    for (const { day, mass_kg } of typedOnes)
      await addEntry(where, { kind: 'weighing', at: readDay(day), data: { mass_kg } }, context);
    const before = others.at(-2) ?? first;
    const days = daysBetween(readDay(before.day), readDay(last.day));
    const loss = (before.mass_kg - last.mass_kg) / last.mass_kg / days;
    await addEntry(where, { kind: 'drying', at, data: { mass_kg: last.mass_kg, loss_per_day: loss } }, context);
    return {
      headline: `Dry on ${isoDay(middayOf(at))}, ${build.name}: by ${all.length} weighings, the last ${formatBoth(last.mass_kg, 'kg', units)}.`,
      figures: [
        figure('log.mass', 'the lining now', last.mass_kg, 'kg'),
        figure('log.loss', 'lost a day', loss, '1', { shown: 'percent', note: 'of its mass' }),
      ],
      notes: ['Dry to the scale is not fired: the first fire still holds at 110 to 150 °C until no steam comes.'],
      assumed: [
        ...where.assumed,
        ...(rammed === undefined
          ? [{ text: `rammed on the day of its first weighing, ${first.day}`, override: 'rammed=2026-03-01' }]
          : []),
      ],
      sources: ['common-practice', 'derived'],
      working: [
        {
          formula: 'loss a day = (mass before − mass last) ÷ mass last ÷ days between',
          inputs: { mass_before_kg: before.mass_kg, mass_last_kg: last.mass_kg, days_between_count: days },
          gives: { loss_a_day: loss },
          source: 'derived',
        },
      ],
      next: [
        { label: 'the first fire, by the hour', line: `dry for=${build.name}` },
        { label: 'all of its log', line: `log list ${build.name}` },
      ],
    };
  },
} satisfies Command<typeof dryingOptions>;

interface Weighing {
  /** `2026-04-12`. */
  readonly day: string;
  readonly mass_kg: number;
}

function typedWeighings(text: string, { units, now }: Pick<AnswerContext, 'units' | 'now'>): readonly Weighing[] {
  const from = middayOf(now);
  return about('weighed', () => readWeighings(text, { from, system: units })).map(({ day, mass_kg }) => {
    if (day > 0 || /\bday\s*\d/i.test(text))
      throw new AskError({
        code: 'unreadable',
        what: 'a log is kept by the calendar, of days that have been',
        expected: 'each mass with its date',
        example: `31.21 kg ${isoDay(new Date(from.getTime() - 7 * 86_400_000))}; 31.2 kg ${isoDay(from)}`,
        option: 'weighed',
      });
    return { day: isoDay(new Date(from.getTime() + day * 86_400_000)), mass_kg };
  });
}

/** Asked of `dry`, which knows the lining: it refuses what is not dry at the adverse end, and says why. */
async function refuseWet(
  build: Build,
  { from, all, at }: { readonly from: Date; readonly all: readonly Weighing[]; readonly at: Date },
  { ask, asker, place }: Pick<AnswerContext, 'ask' | 'asker' | 'place'>,
): Promise<void> {
  // Never three decimals, which could be thousands.
  const weighed = all.map(({ day, mass_kg }) => `${mass_kg.toFixed(4)} kg ${day}`).join('; ');
  const options = { for: build.name, from: isoDay(from), weighed, happened: 'dry', on: isoDay(middayOf(at)) };
  const reply = await ask({ command: 'dry', options, asker, place });
  if (reply.kind === 'card') return;
  const { what, expected } = reply.error;
  throw new AskError({
    code: reply.error.code,
    what,
    expected:
      reply.error.option === 'happened'
        ? 'at most 0.1 % a day, the scale’s error counted: weigh again in some days'
        : expected,
    example: `dry for=${build.name}`,
  });
}

const tooFew = (count: number, { name }: Build) =>
  new AskError({
    code: 'missing',
    what: `${name} has ${count === 0 ? 'no weighing' : 'one weighing'}: what it loses between two tells whether it is dry`,
    expected: 'two or more weighings on different days; a block of the same mix, as thick as the wall, will do',
    example: `log weighed 31.2 kg build=${name}`,
  });

const weighedBefore = (rammed: string, day: string) =>
  new AskError({
    code: 'impossible',
    what: `it was weighed on ${day}, before it was rammed on ${rammed}`,
    expected: 'the day it was rammed, at the latest that of its first weighing',
    example: day,
    option: 'rammed',
  });
