import { setTimeout as sleep } from 'node:timers/promises';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import type { Card } from '../../commands/card.ts';
import { sampleCard, worstCautions } from '../terminal/sample-card.ts';
import type { DeskParts } from './desk.ts';
import type { RawEvent } from './read.ts';
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

test('a fault is told with what can hurt in what was asked', async () => {
  const sent: { readonly body: string }[] = [];
  const desk = sampleDesk({
    door: sampleDoor({
      fetch: async () => sampleQuestion('dry can'),
      send: async (_room, content) => `$${sent.push(content as Content)}`,
    }),
    answer: async () => {
      throw new RangeError('no such thing');
    },
    cautions: async (line) => (line === 'dry can' ? worstCautions : []),
  });
  await desk.handle({ room: '!r', event: '$q', sender: '@ann:here' }, 1);
  expect(sent).toHaveLength(1);
  expect(sent[0]!.body).toContain('went wrong here');
  for (const { text } of worstCautions) expect(sent[0]!.body).toContain(text);
});

describe('a question that is taken up again', () => {
  /** What the homeserver has: the same transaction once more is the same message, as it was. */
  let room: Map<string, Content>;
  let redacted: string[];
  let kept: Map<string, unknown>;
  let events: Map<string, RawEvent>;
  let asked: string[];
  /** The process dies at this step. */
  let dies: (step: string) => boolean;

  beforeEach(() => {
    [room, redacted, kept, events, asked] = [new Map(), [], new Map(), new Map(), []];
    dies = () => false;
    dead = false;
  });

  const killed = new Error('killed');
  let dead: boolean;
  const step = (name: string) => {
    dead ||= dies(name);
    if (dead) throw killed;
  };
  const pictured = { ...sampleCard, drawings: [{ id: 'ring', alt: 'a ring' } as never] };
  const cardOf = (line: string): Card =>
    line === 'first'
      ? { ...sampleCard, headline: line, next: [{ line: 'first A', label: '' }] }
      : { ...pictured, headline: line, next: [{ line: `${line} A`, label: '' }] };

  const started = (more: Partial<DeskParts> = {}) =>
    sampleDesk(
      {
        door: sampleDoor({
          fetch: async (_room, id) => events.get(id),
          async send(_room, content, txn) {
            step(`before ${txn}`);
            if (!room.has(txn)) room.set(txn, content as Content);
            step(`after ${txn}`);
            return `$${txn}`;
          },
          redact: async (_room, id) => void redacted.push(id),
        }),
        states: {
          async put(id, value) {
            step(`keep ${id}`);
            kept.set(id, structuredClone(value));
          },
          get: async (id) => kept.get(id),
        },
        async answer(line) {
          asked.push(line);
          return { kind: 'card', card: cardOf(line) };
        },
        files: async ({ card: { headline, drawings } }) =>
          drawings ? [{ name: headline, type: 'image/png', bytes: new Uint8Array(1), alt: headline }] : [],
        ...more,
      },
      kept,
    );
  const say = (event_id: string, body: string, more: object = {}) =>
    events.set(event_id, sampleQuestion(body, { event_id, content: { msgtype: 'm.text', body, ...more } }));
  const edit = (event_id: string, of: string, body: string) =>
    say(event_id, `* ${body}`, {
      'm.new_content': { msgtype: 'm.text', body },
      'm.relates_to': { rel_type: 'm.replace', event_id: of },
    });
  const take = (event: string, attempt = 1, more: Partial<DeskParts> = {}) =>
    started(more).handle({ room: '!r', event, sender: '@ann:here' }, attempt);
  /** Until one process lives to the end of it. */
  async function takenUntilDone(event: string, more: Partial<DeskParts> = {}): Promise<void> {
    for (let attempt = 1; ; attempt++) {
      try {
        return await take(event, attempt, more);
      } catch (error) {
        if (error !== killed) throw error;
        dies = () => false;
        dead = false;
      }
    }
  }
  const files = () => [...room].filter(([txn]) => txn.includes('.file')).map(([, { body }]) => body);

  test('once its answer stands, is not asked a second time', async () => {
    say('$1', 'first');
    await take('$1');
    await take('$1', 2);
    expect(asked).toEqual(['first']);
    expect([...room.keys()]).toEqual(['$1.answer']);
  });

  test('is the same asking, another is another', async () => {
    const names: string[] = [];
    const answer: DeskParts['answer'] = async (line, { asking }) => {
      names.push(asking);
      return { kind: 'card', card: cardOf(line) };
    };
    for (const event of ['$1', '$2']) {
      say(event, 'first');
      dies = (name) => name === `keep matrix:reply:${event}`;
      await takenUntilDone(event, { answer });
    }
    expect(names).toEqual(['$1', '$1', '$2', '$2']);
  });

  test.each(['.wait', '.answer', 'keep matrix:thread', 'keep matrix:last', '.file0'])(
    'a number means the line it meant at first, where the process died at "%s"',
    async (place) => {
      say('$1', 'first');
      await take('$1');
      say('$n', '1');
      dies = (name) => name.startsWith(`after $n${place}`) || name.startsWith(place);
      await takenUntilDone('$n', {
        early_ms: 1,
        patience_ms: 2,
        async answer(line) {
          await sleep(30);
          asked.push(line);
          return { kind: 'card', card: cardOf(line) };
        },
      });
      expect(asked.slice(0, 1)).toEqual(['first']);
      expect(new Set(asked.slice(1))).toEqual(new Set(['first A']));
      expect(files()).toEqual(['first A']);
      say('$m', '1');
      await take('$m');
      expect(asked.at(-1)).toBe('first A A');
    },
  );

  test('while an answer is worked out, a number of somebody else still means the one before', async () => {
    say('$1', 'first');
    await take('$1');
    const long = Promise.withResolvers<void>();
    say('$2', 'second');
    const second = take('$2', 1, {
      early_ms: 1,
      patience_ms: 2,
      async answer(line) {
        await long.promise;
        return { kind: 'card', card: cardOf(line) };
      },
    });
    await vi.waitFor(() => expect(room.has('$2.wait')).toBe(true));
    say('$n', '1');
    await take('$n');
    expect(asked).toEqual(['first', 'first A']);
    long.resolve();
    await second;
  });

  test('gets its pictures, and only those of the words that stand', async () => {
    say('$1', 'second');
    dies = (name) => name === 'before $1.file0';
    await takenUntilDone('$1');
    expect(files()).toEqual(['second']);

    say('$2', 'third');
    let tries = 0;
    dies = (name) => name === 'before $2.file0';
    await takenUntilDone('$2', {
      answer: async () => ({ kind: 'card', card: cardOf(tries++ === 0 ? 'third' : 'of another question') }),
    });
    expect(room.get('$2.answer')?.body).toContain('third');
    expect(files()).toEqual(['second']);
  });

  test('an edit takes away the old pictures and none of its own', async () => {
    say('$1', 'second');
    await take('$1');
    edit('$e', '$1', 'third');
    dies = (name) => name === 'after $e.file0';
    await takenUntilDone('$e');
    await take('$e', 3);
    expect(new Set(redacted)).toEqual(new Set(['$$1.file0']));
    expect(files()).toEqual(['second', 'third']);
    // A try of the question itself comes too late for that.
    await take('$1', 2);
    expect(asked).toEqual(['second', 'third', 'third']);
  });
});

interface Content {
  readonly body: string;
}
