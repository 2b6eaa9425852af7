import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import type { Ask, Command } from '../command.ts';
import { text } from '../options.ts';
import { said } from '../said.ts';
import { lineOf, readSource } from '../source.ts';
import { changesBetween, keeping, nameOption } from './family.ts';
import { readName } from './find.ts';
import { checkRoom } from './room.ts';

const options = z.strictObject({
  name: nameOption,
  for: text({ label: 'what to keep: last, or a line in parentheses', most: 1000 }).optional(),
});

export const buildSave = {
  ...keeping,
  name: 'build save',
  summary: 'Keep the last question, or another, under a name; each save of a name is a revision.',
  options,
  subject: 'name',
  slow: true,
  examples: [
    { line: 'build save club furnace', says: 'the last question' },
    { line: 'build save small one for=(mix 20 L recipe=castable)', says: 'a question of its own' },
  ],
  async answer({ name: typed, for: source = 'last' }, { asker, place, now, memory, parse, fill, ask, commands }) {
    const name = readName(typed, 'name');
    const here = { command: 'build save', options: { name }, asker, place };
    const { ask: meant } = await readSource(source, here, { memory, parse });
    const kept = await fill(await expanded(meant));
    if (commands.find((one) => one.name === kept.command)?.passing) throw noQuestion(kept.command, name);
    const reply = await ask(kept);
    if (reply.kind === 'error') {
      throw new AskError({ ...reply.error, example: `build save ${name} for=(${reply.error.example})` });
    }
    const [newest] = await memory.revisions(asker, name);
    const line = lineOf(kept, commands);
    const next = [
      { label: 'its answer', line: `build show ${name}` },
      { label: 'a code for others', line: `build share ${name}` },
    ];
    const changes = newest ? changesBetween(newest.ask, kept, commands) : [];
    if (newest && changes.length === 0) {
      const stands = `${newest.name}, revision ${newest.revision}, is this very question already; nothing was kept anew.`;
      return said(stands, { notes: [line], next });
    }
    await checkRoom(asker, name, memory);
    const { revision } = await memory.saveBuild(asker, { name: newest?.name ?? name, ask: kept }, now);
    return said(`Kept as ${newest?.name ?? name}, revision ${revision}.`, { notes: [line, ...changes], next });

    /** `again` and `build show` stand for another question; that one is kept. */
    async function expanded(asked: Ask): Promise<Ask> {
      const command = commands.find((one) => one.name === asked.command);
      return command?.expand ? (await command.expand(asked, { memory, parse, commands })).ask : asked;
    }
  },
} satisfies Command<typeof options>;

const noQuestion = (command: string, name: string) =>
  new AskError({
    code: 'refused',
    what: `${command} is no question whose answer can be kept`,
    expected: 'a question that calculates something',
    example: `build save ${name} for=(mix 30 L)`,
    option: 'for',
  });
