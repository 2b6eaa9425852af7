import { beforeEach, describe, expect, test } from 'vitest';
import { sampleCard } from '../terminal/sample-card.ts';
import { createDesk } from './desk.ts';
import type { Door } from './door.ts';
import type { RawEvent } from './read.ts';

/** What the desk asks, and what it keeps. */
let asked: string[];
let kept: Map<string, unknown>;
let events: Map<string, RawEvent | 'secret'>;

const said = (event_id: string, body: string, more: object = {}): RawEvent => ({
  event_id,
  room_id: '!r',
  sender: '@ann:here',
  type: 'm.room.message',
  origin_server_ts: 0,
  content: { msgtype: 'm.text', body, ...more },
});
const replyTo = (event_id: string) => ({ 'm.relates_to': { 'm.in_reply_to': { event_id } } });

const door: Door = {
  fetch: async (_room, id) => events.get(id),
  send: async (_room, _content, txn) => `$${txn}`,
  upload: async () => ({}),
  redact: async () => {},
  typing: async () => {},
  sendOpenly: async () => '$open',
  isHeldBack: () => false,
};

async function handled(event: RawEvent, direct = false): Promise<boolean> {
  events.set(event.event_id, event);
  const desk = createDesk({
    door,
    states: { put: async (id, value) => void kept.set(id, value), get: async (id) => kept.get(id) },
    budget: { take: () => ({ wait_s: 0 }) },
    now: () => new Date(0),
    log: { debug: () => {}, info: () => {}, warn: () => {}, error: () => {} },
    me: '@bot:here',
    prefix: '!teemer',
    place: () => ({ direct, mayModerate: true, names: ['teemer'] }),
    readsSecrets: true,
    isCommand: () => false,
    isOnMessage: (line) => line.trim().toLowerCase() === 'weigh',
    isPrivate: () => false,
    answer: async (line) => {
      asked.push(line);
      return { kind: 'card', card: { ...sampleCard, next: [] } };
    },
    last: async () => undefined,
    recall: async () => {},
    files: async () => [],
  });
  const concerns = await desk.concerns(event);
  await desk.handle({ room: '!r', event: event.event_id, sender: event.sender }, 1);
  return concerns;
}

beforeEach(() => {
  [asked, kept, events] = [[], new Map(), new Map()];
  events.set('$theirs', said('$theirs', 'lump burns 300 °F hotter\nand is dry'));
});

describe('a message that is answered with "weigh"', () => {
  test.each(['weigh', 'Weigh', '!teemer weigh', 'teemer: weigh'])('"%s" asks about its words', async (words) => {
    expect(await handled(said('$q', words, replyTo('$theirs')))).toBe(true);
    expect(asked.map((line) => line.toLowerCase())).toEqual(['weigh lump burns 300 °f hotter; and is dry']);
  });

  test('may itself quote another, which is not weighed', async () => {
    events.set('$theirs', said('$theirs', '> <@bea:here> 9 kg\n\nlump burns 300 °F hotter', replyTo('$older')));
    await handled(said('$q', '> <@ann:here> lump\n\nweigh', replyTo('$theirs')));
    expect(asked).toEqual(['weigh lump burns 300 °F hotter']);
  });

  test.each([
    ['is gone', undefined],
    ['can’t be decrypted', 'secret' as const],
    ['is a picture', said('$theirs', 'x', {})],
  ])('that %s is nothing to weigh', async (_, theirs) => {
    events.delete('$theirs');
    if (theirs) events.set('$theirs', theirs === 'secret' ? theirs : { ...theirs, type: 'm.sticker' });
    await handled(said('$q', 'weigh', replyTo('$theirs')));
    expect(asked.map((line) => line.trim())).toEqual(['weigh']);
  });

  test('is read as far as a line goes', async () => {
    events.set('$theirs', said('$theirs', 'lump burns 300 °F hotter. '.repeat(200)));
    await handled(said('$q', 'weigh', replyTo('$theirs')));
    expect(asked[0]!.length).toBe(1000);
  });

  test('leaves no words of itself behind', async () => {
    await handled(said('$q', 'weigh', replyTo('$theirs')));
    expect(JSON.stringify([...kept])).not.toContain('lump');
  });

  test('other talk, and "weigh" about nothing, is left alone', async () => {
    expect(await handled(said('$a', 'weigh your lining first', replyTo('$theirs')))).toBe(false);
    expect(await handled(said('$b', 'weigh'))).toBe(false);
    expect(asked).toEqual([]);
  });
});
