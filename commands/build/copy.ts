import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import type { Command } from '../command.ts';
import { text } from '../options.ts';
import { said } from '../said.ts';
import { lineOf } from '../source.ts';
import { keeping } from './family.ts';
import { readName } from './find.ts';
import { checkRoom } from './room.ts';

const options = z.strictObject({
  code: text({ label: 'code of a shared build', most: 40 }),
  as: text({ label: 'name for your copy', most: 80 }).optional(),
});

export const buildCopy = {
  ...keeping,
  name: 'build copy',
  summary: 'Copy a build that someone shared, by its code.',
  options,
  subject: 'code',
  examples: [{ line: 'build copy K7M2P9QX as=our lining', says: 'a copy of your own, under your name' }],
  async answer({ code, as }, { asker, now, memory, commands }) {
    const shared = await memory.sharedBuild(code);
    if (!shared) throw unknownCode(code);
    const name = readName(as ?? shared.name, 'as');
    const own = await memory.build(asker, name);
    if (own) throw nameTaken(own.name);
    await checkRoom(asker, name, memory);
    await memory.saveBuild(asker, { name, ask: shared.ask }, now);
    return said(`Copied as ${name}: yours to change, and no longer tied to the one it is from.`, {
      notes: [lineOf(shared.ask, commands)],
      next: [{ label: 'its answer', line: `build show ${name}` }],
    });
  },
} satisfies Command<typeof options>;

const unknownCode = (code: string) =>
  new AskError({
    code: 'unknown-name',
    what: `no build is shared under "${code}"`,
    expected: 'the eight letters and digits that build share gave',
    example: 'build list',
  });

const nameTaken = (name: string) =>
  new AskError({
    code: 'refused',
    what: `you have a build called ${name} already`,
    expected: 'another name by as=',
    example: `copy of ${[...name].slice(0, 32).join('').trim()}`,
    option: 'as',
  });
