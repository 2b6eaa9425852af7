import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import { type Burned, burned } from '../../core/build/log-burn.ts';
import { tally } from '../../core/build/log-tally.ts';
import type { Command } from '../command.ts';
import { burnChart } from './chart.ts';
import { burnIn, type LoggedBurn } from './entry.ts';
import { faceOf } from './face.ts';
import { buildFor, buildOption, dayOf, logFamily } from './family.ts';
import { burnFigures, lifeFigures, logFigures } from './figures.ts';
import { entryWords, othersWords, percent } from './words.ts';

const options = z.strictObject({ build: buildOption });
/** The newest of them: nobody reads more rows, or sees more points. */
const mostRows = 40;

export const logList = {
  ...logFamily,
  name: 'log list',
  summary: 'The log of a build: every entry, efficiency and fuel over its burns, the life of its lining.',
  options,
  subject: 'build',
  slow: true,
  examples: [
    { line: 'log list', says: 'of the newest build' },
    { line: 'log list club lining', says: 'of one by its name' },
  ],
  hazards: ['hot-work'],
  figures: logFigures,
  async answer({ build: typed }, context) {
    const { memory, asker, units } = context;
    const { build, assumed } = await buildFor(typed, context);
    const entries = await memory.entries(asker, build.name);
    if (entries.length === 0)
      return {
        headline: `Nothing is logged of ${build.name} yet.`,
        figures: [],
        assumed,
        sources: [],
        next: [
          { label: 'a weighed bucket of its mix', line: `log bucket 5 L mass=9.1 kg build=${build.name}` },
          { label: 'a burn', line: `log burn 3 kg lump charcoal time=50 min build=${build.name}` },
        ],
      };
    const rows = entries.map((entry, index) => ({ entry, number: index + 1, burn: burnIn(entry) }));
    const all = rows.flatMap(({ burn }) => (burn ? [burn] : []));
    const burns = all
      .map((burn, index) => ({ burn, number: index + 1 }))
      .slice(-mostRows)
      .map((one) => ({ ...one, found: burnedOf(one.burn) }));
    const face = faceOf(build);
    const counted = tally({ burns: all, ...(face ? { face } : {}) });
    const melts = burns.filter(({ found }) => found.efficiency);
    const mean = meanOf(melts.flatMap(({ found: { efficiency } }) => (efficiency ? [efficiency.value] : [])));
    const chart = burnChart(build.name, burns);
    const last = melts.at(-1);
    const working = [...(last?.found.steps() ?? []), ...counted.steps()];
    return {
      headline: headline(build.name, entries.length, all.length, mean),
      figures: [
        ...(last ? burnFigures(last.found).map((one) => ({ ...one, label: `${one.label}, last melt` })) : []),
        ...(all.length > 0 ? lifeFigures(counted) : []),
      ],
      table: {
        columns: ['no.', 'day', 'what', 'metal got'],
        rows: rows
          .slice(-mostRows)
          .map(({ entry, number, burn }) => [
            String(number),
            dayOf(entry),
            entryWords(entry, units),
            efficiencyOf(burns.find((one) => one.burn === burn)?.found),
          ]),
      },
      ...(chart ? { chart } : {}),
      notes: [
        ...(rows.length > mostRows ? [`The ${rows.length - mostRows} before those are in mydata.`] : []),
        ...(melts.length > 0 ? [othersWords] : []),
      ],
      assumed,
      sources: [...new Set([...working.map(({ source }) => source), 'from-memory'])],
      working,
      hazards: {
        facts: [
          ...new Set(
            burns.flatMap(({ burn: { fuel, melted } }) => [
              ...fuel.hazards,
              ...(melted ? ['molten-metal', ...melted.metal.hazards] : []),
            ]),
          ),
        ],
      },
      next: [
        { label: 'take the last one back', line: `log drop ${rows.at(-1)!.entry.id} build=${build.name}` },
        ...(build.ask.command === 'mix'
          ? [{ label: 'the mix, by this log', line: `mix for=${build.name}` }]
          : [
              {
                label: 'the build, by this log',
                line: `${build.ask.command === 'fuel' ? 'fuel' : 'wall'} for=${build.name}`,
              },
            ]),
      ],
    };
  },
} satisfies Command<typeof options>;

function headline(name: string, entries: number, burns: number, mean: number | undefined): string {
  const many = entries === 1 ? 'one entry' : `${entries} entries`;
  const fires = burns === 0 ? '' : burns === 1 ? ', one burn' : `, ${burns} burns`;
  return `Log of ${name}: ${many}${fires}${mean === undefined ? '' : `; metal got ${percent(mean)} of the fuel’s heat on average`}.`;
}

const meanOf = (values: readonly number[]): number | undefined =>
  values.length === 0 ? undefined : values.reduce((sum, one) => sum + one, 0) / values.length;

/** What was possible when it was written may not be by later data: then it counts as a burn and no more. */
function burnedOf(burn: LoggedBurn): Burned {
  try {
    return burned(burn);
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
    const { melted: _, ...empty } = burn;
    return burned(empty);
  }
}

const efficiencyOf = (found: Burned | undefined): string => (found?.efficiency ? percent(found.efficiency.value) : '');
