import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import type { Command } from '../command.ts';
import { text } from '../options.ts';
import { said } from '../said.ts';
import { buildFor, buildOption, dayOf, logFamily } from './family.ts';
import { entryWords } from './words.ts';

const options = z.strictObject({
  entry: text({ label: 'its number in log list', most: 12 }),
  build: buildOption,
});

export const logDrop = {
  ...logFamily,
  name: 'log drop',
  summary: 'Forget one entry of a build’s log.',
  options,
  subject: 'entry',
  examples: [{ line: 'log drop 1', says: 'by its number in log list' }],
  hazards: [],
  figures: {},
  async answer({ entry: typed, build: named }, context) {
    const { memory, asker, units } = context;
    const { build, assumed } = await buildFor(named, context);
    const entries = await memory.entries(asker, build.name);
    const number = /^#?(\d{1,4})$/.exec(typed)?.[1];
    const found = entries.find(({ id }) => id === typed.toUpperCase()) ?? entries[Number(number ?? 0) - 1];
    if (!found) throw notThere(typed, build.name, entries.length);
    await memory.dropEntry(asker, found.id);
    return said(
      `Dropped from the log of ${build.name}: ${found.kind} of ${dayOf(found)}, ${entryWords(found, units)}.`,
      {
        assumed,
        next: [{ label: 'what is left', line: `log list ${build.name}` }],
      },
    );
  },
} satisfies Command<typeof options>;

const notThere = (typed: string, name: string, count: number) =>
  new AskError({
    code: 'unknown-name',
    what: `the log of ${name} has no entry ${typed.slice(0, 12)}${count === 0 ? ', nor any other' : ''}`,
    expected: count === 0 ? 'something logged before' : `a number from 1 to ${count}, as log list shows them`,
    example: `log list ${name}`,
  });
