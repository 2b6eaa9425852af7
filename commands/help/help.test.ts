import { expect, it } from 'vitest';
import { answerLine } from '../answer.ts';
import { inProcessMemory } from '../memory.ts';
import { commands } from '../registry.ts';

const ask = (line: string) =>
  answerLine(line, { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() });
const rows = async (line: string) => {
  const reply = await ask(line);
  if (reply.kind === 'error') throw new Error(reply.error.what);
  return reply.card.table?.rows ?? [];
};

it('names every command, a family of memory in one line', async () => {
  const all = await rows('help');
  const text = all.map((row) => row.join(' ')).join('\n');
  for (const { name } of commands) expect(text).toContain(name.split(' ').at(-1));
  expect(all.filter(([name]) => name?.startsWith('build'))).toEqual([
    ['build …', expect.stringContaining('(show, save, list, compare, share, copy, drop)')],
  ]);
  expect(all.length).toBeLessThan(commands.length);
});

it('tells the members of a family apart', async () => {
  const names = (await rows('help build')).map(([name]) => name);
  expect(names).toEqual(commands.map(({ name }) => name).filter((name) => name.startsWith('build ')));
  expect((await rows('help size')).map(([name]) => name)).toContain('size can');
  expect((await rows('help price')).map(([name]) => name)).toContain('what');
  expect((await ask('help nothing')).kind).toBe('error');
});
