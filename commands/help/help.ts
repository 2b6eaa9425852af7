import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import { nearest } from '../../core/materials/nearest.ts';
import type { Command } from '../command.ts';
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
  async answer({ command: wanted }, { commands }) {
    const blank = { figures: [], assumed: [], sources: [] };
    if (wanted === undefined) {
      return {
        ...blank,
        headline: 'Ask in your own units: a command, its subject, then options as name=value.',
        table: { columns: ['command', 'what it answers'], rows: commands.map(({ name, summary }) => [name, summary]) },
        next: [
          { label: 'how much mix', line: 'mix 1.1 cu ft' },
          { label: 'help on mix', line: 'help mix' },
          { label: 'someone is hurt', line: 'emergency' },
        ],
      };
    }
    const name = String(wanted).toLowerCase();
    const command = commands.find((one) => one.name === name);
    if (!command) throw unknown(name, commands);
    return {
      ...blank,
      headline: `${command.name}: ${command.summary}`,
      table: { columns: ['option', 'what it is'], rows: optionRows(command) },
      notes: [
        ...command.examples.map(({ line, says }) => `${line}   ${says}`),
        ...Object.entries(command.figures).map(([id, label]) => `figure ${id}: ${label}`),
      ],
      next: command.examples.slice(0, 3).map(({ line, says }) => ({ label: says, line })),
    };
  },
} satisfies Command<z.ZodObject>;

function optionRows(command: Command): readonly (readonly string[])[] {
  return Object.entries(command.options.shape).map(([name, field]) => {
    const meta = metaOf(field as never);
    const kinds = meta.choices?.join(', ') ?? meta.dimensions?.join(' or ') ?? 'words';
    const place = name === command.subject ? name : `${name}=`;
    return [place, `${meta.label} (${kinds})${isOptional(field as never) ? '' : ', needed'}`];
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
