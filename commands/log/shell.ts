import { AskError } from '../../core/ask-error.ts';
import { formatBoth, formatSi } from '../../core/quantity/format.ts';
import type { Command } from '../command.ts';
import { addEntry, buildFor, logFamily, momentOf } from './family.ts';
import { logFigures } from './figures.ts';
import { type ShellOptions, shellOptions } from './options.ts';

export const logShell = {
  ...logFamily,
  name: 'log shell',
  summary: 'Log how hot the shell was at a moment of a firing: wall for=<build> reckons with it.',
  options: shellOptions,
  subject: 'shell',
  examples: [
    { line: 'log shell 65 °C at=1 h', says: 'an hour after lighting, the fire still burning' },
    {
      line: 'log shell 180 °F at=2 h out=80 min hot=1850 °F air=70 °F build=club lining on=2025-12-12',
      says: 'after the fire went out, with what else was read',
    },
  ],
  hazards: ['hot-work', 'hot-steel'],
  figures: logFigures,
  async answer(options, context) {
    const { units } = context;
    const { shell, at, out, hot, air } = options;
    refuseImpossible(options);
    const where = await buildFor(options.build, context);
    const day = await momentOf(options.on, context);
    const data = {
      shell_K: shell.si,
      after_s: at.si,
      ...(out ? { out_s: out.si } : {}),
      ...(hot ? { hot_K: hot.si } : {}),
      ...(air ? { air_K: air.si } : {}),
    };
    await addEntry(where, { kind: 'shell', at: day, data }, context);
    const { build } = where;
    return {
      headline: `Shell of ${build.name}: ${formatBoth(shell.si, 'K', units)}, ${formatSi(at.si, 's', units)} after lighting.`,
      figures: [],
      notes: ['Black matt paint or tape under the thermometer reads true; bright metal reads far too cold.'],
      assumed: [
        ...where.assumed,
        ...(out ? [] : [{ text: 'the fire still burning then', override: 'out=50 min' }]),
        ...(hot ? [] : [{ text: 'the bore as hot as the question says that asks', override: 'hot=1000 °C' }]),
        ...(air ? [] : [{ text: 'air as it usually is', override: 'air=12 °C' }]),
      ],
      sources: ['from-memory'],
      hazards: { facts: [], numbers: { shell_K: shell.si } },
      next: [
        ...(build.ask.command === 'mix'
          ? []
          : [{ label: 'the wall, by this reading', line: `wall for=${build.name}` }]),
        { label: 'all of its log', line: `log list ${build.name}` },
      ],
    };
  },
} satisfies Command<typeof shellOptions>;

function refuseImpossible({ shell, hot, air, at, out }: ShellOptions): void {
  const refuse = (what: string, expected: string, option: string, example: string) => {
    throw new AskError({ code: 'impossible', what, expected, example, option });
  };
  if (hot && hot.si <= shell.si)
    refuse(
      `a shell of ${shell.text} is as hot as its bore of ${hot.text}`,
      'a bore hotter than the shell',
      'hot',
      `${Math.round(shell.si - 273.15 + 500)} °C`,
    );
  if (air && air.si > shell.si + 2)
    refuse(
      `a shell of ${shell.text} is colder than the air of ${air.text} round it`,
      'a shell at least as warm as the air',
      'air',
      `${Math.floor(shell.si - 273.15)} °C`,
    );
  if (out && at.si > out.si + 48 * 3600)
    refuse(
      `${at.text} after lighting the furnace has been out for more than two days`,
      'a reading while it is warm',
      'at',
      '2 h',
    );
}
