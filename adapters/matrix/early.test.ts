import { setTimeout as sleep } from 'node:timers/promises';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Reply } from '../../commands/card.ts';
import { sampleCard } from '../terminal/sample-card.ts';
import type { DeskParts } from './desk.ts';
import { sampleDesk, sampleDoor, sampleQuestion } from './sample-desk.ts';

/** What is sent, in order: the transaction, whether it takes the place of another, and its first line. */
let sent: { readonly txn: string; readonly edits: string | undefined; readonly says: string }[];

interface Content {
  readonly body: string;
  readonly 'm.new_content'?: { readonly body: string };
  readonly 'm.relates_to'?: { readonly rel_type: string; readonly event_id: string };
}

const door = sampleDoor({
  fetch: async () => sampleQuestion('wall 2 in perlite'),
  send: async (_room, content, txn) => {
    const { body, 'm.new_content': anew, 'm.relates_to': to } = content as Content;
    const edits = to?.rel_type === 'm.replace' ? to.event_id : undefined;
    sent.push({ txn, edits, says: (anew?.body ?? body).split('\n')[0] ?? '' });
    return `$${txn}`;
  },
});
const saying = (headline: string) => ({ ...sampleCard, headline, cautions: [] });
const final: Reply = { kind: 'card', card: saying('whole') };
/** When something happens: at once, once so many messages are seen, or never. Nothing here depends on a busy machine's clock. */
type When = number | 'never';
const seenAre = async (count: number) => {
  while (sent.length < count) await sleep(2);
};

const answering =
  (early_at: When, end_at: number, end: Reply | Error): DeskParts['answer'] =>
  async (_line, _who, early) => {
    if (early_at !== 'never') {
      await seenAre(early_at);
      early?.(saying('typical'));
    }
    await seenAre(end_at);
    if (end instanceof Error) throw end;
    return end;
  };

const handled = async (answer: DeskParts['answer'], more: Partial<DeskParts> = {}) => {
  const desk = sampleDesk({ door, answer, early_ms: 5, patience_ms: 60_000, ...more });
  await desk.handle({ room: '!r', event: '$q', sender: '@ann:here' }, 1);
  return desk;
};

beforeEach(() => {
  sent = [];
});

const first = { txn: '$q.wait', edits: undefined };
const last = { txn: '$q.answer', edits: '$$q.wait', says: 'whole' };

describe('typical values, while the whole answer is worked out', () => {
  test('stand first, and give way to the whole answer', async () => {
    await handled(answering(0, 1, final));
    expect(sent).toEqual([{ ...first, says: 'typical' }, last]);
  });

  test('are not shown where the whole answer is there soon enough', async () => {
    await handled(answering(0, 0, final), { early_ms: 60_000 });
    expect(sent).toEqual([{ txn: '$q.answer', edits: undefined, says: 'whole' }]);
  });

  test('take the place of the word that it takes a little, where they took long themselves', async () => {
    await handled(answering(1, 2, final), { patience_ms: 10 });
    expect(sent).toEqual([
      { ...first, says: 'Working on it …' },
      { txn: '$q.early', edits: '$$q.wait', says: 'typical' },
      last,
    ]);
  });

  test('are never there for an answer that has none', async () => {
    await handled(answering('never', 1, final), { patience_ms: 10 });
    expect(sent).toEqual([{ ...first, says: 'Working on it …' }, last]);
  });

  test('give way to a word that it went wrong', async () => {
    await handled(answering(0, 1, new RangeError('no room')));
    expect(sent).toHaveLength(2);
    expect(sent[1]).toMatchObject({ txn: '$q.answer', edits: '$$q.wait' });
    expect(sent[1]!.says).toContain('went wrong here');
  });

  test('are left out where the homeserver wants less of the bot', async () => {
    await handled(
      async (...asked) => {
        await sleep(30);
        return answering(0, 0, final)(...asked);
      },
      { door: { ...door, isHeldBack: () => true } },
    );
    expect(sent).toEqual([{ txn: '$q.answer', edits: undefined, says: 'whole' }]);
  });
});
