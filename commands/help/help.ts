import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import { nearest } from '../../core/materials/nearest.ts';
import type { Command } from '../command.ts';
import { type Manner, typedManner } from '../manner.ts';
import { isOptional, metaOf, text } from '../options.ts';

export const help = {
  name: 'help',
  summary: 'What can be asked, and how.',
  options: z.strictObject({ command: text({ label: 'a command' }).optional() }),
  subject: 'command',
  examples: [
    { line: 'help', says: 'every command in a line' },
    { line: 'help mix', says: "one command's options, examples and figures" },
  ],
  hazards: [],
  figures: {},
  passing: true,
  async answer({ command: wanted }, { commands, manner = typedManner }) {
    const blank = { figures: [], assumed: [], sources: [] };
    if (wanted === undefined) {
      return {
        ...blank,
        headline: manner.opening,
        table: { columns: ['command', 'what it answers'], rows: overview(commands, manner) },
        next: [
          { label: 'how much mix', line: 'mix 1.1 cu ft' },
          { label: 'help on mix', line: 'help mix' },
          { label: 'someone is hurt', line: 'emergency' },
        ],
      };
    }
    const name = String(wanted).toLowerCase();
    const command = commands.find((one) => one.name === name);
    const members = commands.filter((one) => one.name === name || one.name.startsWith(`${name} `));
    if (!command && members.length === 0) throw unknown(name, commands);
    if (!command) {
      return {
        ...blank,
        headline: `${manner.family(name)} …: ${members[0]?.family ?? `${members.length} questions.`}`,
        table: {
          columns: ['command', 'what it answers'],
          rows: members.map((one) => [manner.command(one.name), one.summary]),
        },
        next: members.slice(0, 5).map((one) => ({ label: one.summary, line: `help ${one.name}` })),
      };
    }
    return {
      ...blank,
      headline: `${manner.command(command.name)}: ${command.summary}`,
      table: { columns: ['option', 'what it is'], rows: optionRows(command, manner) },
      notes: [
        ...command.examples.map(({ line, says }) => `${manner.line(line)}   ${says}`),
        ...(members.length > 1
          ? [
              `See also ${members
                .slice(1)
                .map((one) => manner.line(`help ${one.name}`))
                .join(', ')}.`,
            ]
          : []),
        ...(manner.ids ? Object.entries(command.figures).map(([id, label]) => `figure ${id}: ${label}`) : []),
      ],
      next: command.examples.slice(0, 3).map(({ line, says }) => ({ label: says, line })),
    };
  },
} satisfies Command<z.ZodObject>;

/** A line a command; a family that says something of itself takes one for all. */
const overview = (commands: readonly Command[], manner: Manner): readonly (readonly string[])[] =>
  [...Map.groupBy(commands, ({ name, family }) => (family === undefined ? name : stemOf(name)))].map(
    ([stem, members]) => {
      const family = members[0]?.family;
      if (family === undefined) return [manner.command(stem), members[0]?.summary ?? ''];
      const endings = members.flatMap(({ name }) => (name === stem ? [] : [name.slice(stem.length + 1)]));
      return [`${manner.family(stem)} …`, `${family} (${endings.join(', ')})`];
    },
  );

const stemOf = (name: string): string => name.split(' ', 1)[0] ?? name;

function optionRows(command: Command, manner: Manner): readonly (readonly string[])[] {
  return Object.entries(command.options.shape).flatMap(([name, field]) => {
    const place = manner.option(command, name);
    if (place === undefined) return [];
    const meta = metaOf(field as never);
    const kinds = meta.choices?.join(', ') ?? meta.dimensions?.join(' or ') ?? 'words';
    return [[place, `${meta.label} (${kinds})${isOptional(field as never) ? '' : ', needed'}`]];
  });
}

const unknown = (name: string, commands: readonly Command[]) =>
  new AskError({
    code: 'unknown-command',
    what: `there is no command "${name.slice(0, 40)}"`,
    expected: `one of ${commands.map((one) => one.name).join(', ')}`,
    example: `help ${
      nearest(
        name,
        commands.map((one) => one.name),
        1,
      )[0] ?? 'mix'
    }`,
  });
