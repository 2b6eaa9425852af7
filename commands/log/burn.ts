import { AskError } from '../../core/ask-error.ts';
import { type Burned, burned } from '../../core/build/log-burn.ts';
import { tally } from '../../core/build/log-tally.ts';
import type { Figure, UnitSystem } from '../../core/quantity/figure.ts';
import { formatFigure } from '../../core/quantity/format.ts';
import type { AnswerContext, Command } from '../command.ts';
import { readSubject } from '../melt/subject.ts';
import type { LogEntry } from '../memory-weeks.ts';
import { about } from '../options.ts';
import { burnIn, type LoggedBurn } from './entry.ts';
import { faceOf } from './face.ts';
import { addEntry, buildFor, logFamily, momentOf } from './family.ts';
import { burnFigures, lifeFigures, logFigures } from './figures.ts';
import { readFuelUsed } from './fuel-used.ts';
import { type BurnOptions, burnOptions } from './options.ts';
import { burnWords, othersWords, percent, toldOf } from './words.ts';

export const logBurn = {
  ...logFamily,
  name: 'log burn',
  summary: 'Log a burn: fuel, metal and time give its efficiency, and this build’s fuel is reckoned by it.',
  options: burnOptions,
  subject: 'fuel',
  examples: [
    { line: 'log burn 3.2 kg lump charcoal melted=2 kg aluminium time=50 min', says: 'of the newest build, today' },
    {
      line: 'log burn 7 lb propane melted=20 lb brass melts=2 time=2 h build=club lining on=yesterday',
      says: 'two crucibles in a row, the build by its name',
    },
    {
      line: 'log burn 2 kg briquettes time=3 h shell=60 °C',
      says: 'fired empty, and how hot the shell was at its end',
    },
  ],
  hazards: ['hot-work'],
  figures: logFigures,
  async answer(options, context) {
    const { units } = context;
    const burn = burnOf(options, context);
    const found = about('fuel', () => burned(burn));
    const where = await buildFor(options.build, context);
    const at = await momentOf(options.on, context);
    await addEntry(where, { kind: 'burn', at, data: dataOf(burn) }, context);
    const { build } = where;
    const burns = (await context.memory.entries(context.asker, build.name)).flatMap((entry) => burnIn(entry) ?? []);
    const face = faceOf(build);
    const counted = tally({ burns, ...(face ? { face } : {}) });
    const [efficiency] = burnFigures(found);
    const working = [...found.steps(), ...counted.steps()];
    return {
      headline: `Burn ${burns.length} of ${build.name}: ${burnWords(burn, units)}${efficiencyWords(found, efficiency, units)}.`,
      figures: [...burnFigures(found), ...lifeFigures(counted)],
      notes: [...notesOf(found), ...(found.efficiency ? [othersWords] : [])],
      assumed: [
        ...where.assumed,
        ...(burn.melted && !options.pour
          ? [{ text: 'poured as is usual for the metal', override: 'pour=720 °C' }]
          : []),
        ...(burn.melted && !options.melts ? [{ text: 'one melt, from cold', override: 'melts=2' }] : []),
      ],
      sources: [...new Set([...working.map(({ source }) => source), 'from-memory'])],
      working,
      hazards: {
        facts: [...burn.fuel.hazards, ...(burn.melted ? ['molten-metal', ...burn.melted.metal.hazards] : [])],
      },
      next: [
        { label: 'all of its log', line: `log list ${build.name}` },
        ...(burn.melted && build.ask.command !== 'mix'
          ? [
              {
                label: 'the next melt’s fuel, by this log',
                line: `fuel ${burn.fuel.id.replaceAll('-', ' ')} for=${build.name}`,
              },
            ]
          : []),
        { label: 'the shell as well', line: `log shell 60 °C at=1 h build=${build.name}` },
      ],
    };
  },
} satisfies Command<typeof burnOptions>;

function burnOf(options: BurnOptions, { units, commands }: Pick<AnswerContext, 'units' | 'commands'>): LoggedBurn {
  const { fuel, fuel_kg } = readFuelUsed(options.fuel.text, units);
  const { melted, melts, time, pour, hot, shell, worn } = options;
  return {
    fuel,
    fuel_kg,
    ...(melted
      ? { melted: { ...metalOf(melted.text, { units, commands }), ...(pour ? { pour_K: pour.si } : {}) } }
      : {}),
    melts: Math.round(melts?.si ?? 1),
    ...(time ? { time_s: time.si } : {}),
    ...(hot ? { hot_K: hot.si } : {}),
    ...(shell ? { shell_K: shell.si } : {}),
    ...(worn ? { worn_m: worn.si } : {}),
  };
}

function metalOf(said: string, { units, commands }: Pick<AnswerContext, 'units' | 'commands'>) {
  const { alloy, amount } = inMelted(() => readSubject({ said, metal: undefined, units, commands }));
  const mass_kg = amount.dimension === 'mass' ? amount.si : amount.si * alloy.liquid_density_kg_m3.typical;
  return { metal: alloy, mass_kg };
}

/** What a melt says of its own option is said of this one. */
function inMelted<T>(read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw error instanceof AskError && error.option === 'melt' ? error.with({ option: 'melted' }) : error;
  }
}

/** As it is kept: SI, the unit in the key. */
function dataOf({ fuel, fuel_kg, melted, melts, time_s, hot_K, shell_K, worn_m }: LoggedBurn): LogEntry['data'] {
  return {
    fuel: fuel.id,
    fuel_kg,
    ...(melted ? { metal: melted.metal.id, melted_kg: melted.mass_kg, melts_count: melts } : {}),
    ...(melted?.pour_K === undefined ? {} : { pour_K: melted.pour_K }),
    ...(time_s === undefined ? {} : { time_s }),
    ...(hot_K === undefined ? {} : { hot_K }),
    ...(shell_K === undefined ? {} : { shell_K }),
    ...(worn_m === undefined ? {} : { worn_m }),
  };
}

function efficiencyWords(found: Burned, figure: Figure | undefined, units: UnitSystem): string {
  if (!found.efficiency || !figure) return '';
  const { lead, range } = formatFigure(figure, units);
  return `, of whose heat the metal got ${lead}${range === undefined ? '' : ` (${range})`}; told of such melts: ${toldOf(found)}`;
}

function notesOf({ efficiency, told }: Burned): readonly string[] {
  if (!efficiency) return ['Nothing was melted: what it burned went into the lining and out of the vent.'];
  if (efficiency.range.low > told.high)
    return [
      `More than is told of such melts even at its low end (${percent(efficiency.range.low)}): weigh fuel and metal once more, or say melts= if there were several.`,
    ];
  if (efficiency.range.high < told.low)
    return [
      `Less than is told of such melts even at its high end (${percent(efficiency.range.high)}): a small charge, a cold or heavy lining, or fuel that was left over.`,
    ];
  return [];
}
