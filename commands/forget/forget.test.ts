import { expect, it } from 'vitest';
import { talk } from '../../test/contract/conversation.ts';
import { answerLine } from '../answer.ts';
import { inProcessMemory } from '../memory.ts';
import { commands } from '../registry.ts';

const lines = [
  'mix 30 L',
  'build save pot',
  'build save pot for=(mix 20 L)',
  'build share pot',
  'price sand 25 kg €4',
  'units metric',
];

it('everything of a person is shown to them as data, deleted by the whole word only, and gone', async () => {
  const { ask, card, memory } = talk();
  for (const line of lines) await card(line);
  const ben = talk({ asker: 'ben', memory });
  for (const line of [...lines, 'price clay 25 kg €4 who=place']) await ben.card(line);
  const shared = (await memory.kept('ann')).shared[0]!.code;

  const before = await card('mydata');
  const shown = JSON.parse(before.attachment!.text);
  expect(shown).toEqual(JSON.parse(JSON.stringify(await memory.kept('ann'))));
  expect(shown.builds).toHaveLength(2);
  expect(before.attachment!.text).not.toContain('ben');

  expect((await card('forget')).headline).toBe(
    'Kept of you: 1 build (2 revisions), 1 code that shares a build, 1 price, your units (metric), 1 last question. ' +
      'Nothing is deleted yet; forget everything deletes it for good.',
  );
  for (const line of ['forget all', 'forget pot', 'forget every thing']) expect((await ask(line)).kind).toBe('error');
  expect(JSON.parse((await card('mydata')).attachment!.text)).toEqual(shown);

  expect((await card('forget EVERYTHING')).headline).toMatch(/^Deleted for good: 1 build/);
  expect(await memory.kept('ann')).toEqual({
    asker: 'ann',
    lastAsks: [],
    builds: [],
    shared: [],
    prices: [],
    drafts: [],
    reminders: [],
    checklists: [],
    entries: [],
  });
  expect((await card('forget')).headline).toBe('Nothing is kept of you.');
  expect((await ask(`build copy ${shared}`)).kind).toBe('error');
  expect((await ask('why')).kind).toBe('error');

  expect((await ben.card('mydata')).attachment!.text).toContain('"20 L"');
  expect((await card('price list')).table?.rows).toHaveLength(1);
});

it('what is told of a person is for them alone', () => {
  const alone = commands.flatMap(({ name, private: one }) => (one ? [name] : []));
  expect(alone).toEqual(['remind list', 'remind drop', 'mydata', 'forget']);
});

it('tells and deletes what weeks of building left', async () => {
  const memory = inProcessMemory();
  const ask = async (line: string) => {
    const reply = await answerLine(line, {
      asker: 'ann',
      place: 'shed',
      now: new Date('2026-03-01T12:00:00Z'),
      memory,
    });
    return reply.kind === 'card' ? reply.card.headline : reply.error.what;
  };
  await ask('mix 30 L');
  await ask('build save club lining');
  await ask('start bronze');
  await ask('zone Europe/Berlin');
  await ask('checklist start club lining');
  await ask('log bucket 5 L mass=9.1 kg');
  await ask('remind in 36 h weigh the lining');
  const list =
    /your time zone \(Europe\/Berlin\), 1 dialogue that was begun, 1 reminder that waits, 1 checklist, 1 entry of your log/;
  expect(await ask('forget')).toMatch(list);
  expect(await ask('forget everything')).toMatch(list);
  expect(await ask('forget')).toBe('Nothing is kept of you.');
});
