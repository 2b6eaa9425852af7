import { expect, test } from 'vitest';
import { answerLine } from '../../commands/answer.ts';
import { inProcessMemory, type Memory } from '../../commands/memory.ts';
import { onceEach } from './once-each.ts';

const now = new Date(Date.UTC(2026, 3, 12, 9));
const who = { asker: 'matrix:@ann:shed', place: 'matrix:!r:shed', now };
const ask = async (memory: Memory, line: string) => {
  const reply = await answerLine(line, { ...who, memory, reach: async () => ({ kind: 'here', place: who.place }) });
  if (reply.kind === 'error') throw new Error(reply.error.what);
};
const told = async (memory: Memory) => {
  const { builds, entries, reminders } = await memory.kept(who.asker);
  return { builds: builds.length, entries: entries.length, reminders: reminders.length };
};

test.each([
  ['log burn 4 lb lump charcoal', { builds: 1, entries: 1, reminders: 0 }],
  ['remind tomorrow light the fire', { builds: 1, entries: 0, reminders: 1 }],
  ['start aluminium have=20 gal where=outdoors burn=charcoal spend=$250', { builds: 2, entries: 0, reminders: 0 }],
])('"%s" that is asked again by the same asking is done once', async (line, once) => {
  const memory = inProcessMemory();
  await memory.setZone(who.asker, 'Europe/Berlin');
  await ask(memory, 'build save can for=(size can 20 gal)');
  await ask(onceEach(memory, '$1'), line);
  expect(await told(memory)).toEqual(once);
  await ask(onceEach(memory, '$1'), line);
  expect(await told(memory)).toEqual(once);
});

test('each asking adds its own', async () => {
  const memory = inProcessMemory();
  await ask(memory, 'build save can for=(size can 20 gal)');
  for (const asking of ['$1', '$2']) await ask(onceEach(memory, asking), 'log burn 4 lb lump charcoal');
  expect(await told(memory)).toMatchObject({ entries: 2 });
});
