import { expect, test } from 'vitest';
import { sampleCard } from '../terminal/sample-card.ts';
import { sampleDesk, sampleDoor, sampleQuestion } from './sample-desk.ts';

const card = async () => ({ kind: 'card', card: sampleCard }) as const;

test('first aid is answered at once, however fast its asker asked before', async () => {
  const sent: string[] = [];
  let event = sampleQuestion('mix 30 L');
  const desk = sampleDesk({
    door: sampleDoor({ fetch: async () => event, send: async (_room, _content, txn) => `$${sent.push(txn)}` }),
    budget: { take: () => ({ wait_s: 3 }) },
    isUrgent: (line) => line.startsWith('emergency'),
    answer: card,
  });
  const handled = () => desk.handle({ room: '!r', event: event.event_id, sender: event.sender }, 1);
  expect(await desk.concerns(event)).toBe('usual');
  await expect(handled()).rejects.toMatchObject({ wait_s: 3 });
  expect(sent).toEqual([]);
  event = sampleQuestion('!teemer emergency burn', { event_id: '$aid' });
  expect(await desk.concerns(event)).toBe('urgent');
  await handled();
  expect(sent).toEqual(['$aid.answer']);
});
