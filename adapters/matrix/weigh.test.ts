import { beforeEach, describe, expect, test } from 'vitest';
import { sampleCard } from '../terminal/sample-card.ts';
import type { Concern } from './queue.ts';
import type { RawEvent } from './read.ts';
import { sampleDesk, sampleDoor, sampleQuestion } from './sample-desk.ts';

/** What the desk asks, and what it keeps. */
let asked: string[];
let kept: Map<string, unknown>;
let events: Map<string, RawEvent | 'secret'>;

const said = (event_id: string, body: string, more: object = {}): RawEvent =>
  sampleQuestion(body, { event_id, content: { msgtype: 'm.text', body, ...more } });
const replyTo = (event_id: string) => ({ 'm.relates_to': { 'm.in_reply_to': { event_id } } });

const door = sampleDoor({ fetch: async (_room, id) => events.get(id) });

async function handled(event: RawEvent, direct = false): Promise<Concern | undefined> {
  events.set(event.event_id, event);
  const desk = sampleDesk(
    {
      door,
      place: () => ({ direct, mayModerate: true, names: ['teemer'] }),
      isCommand: () => false,
      isOnMessage: (line) => line.trim().toLowerCase() === 'weigh',
      answer: async (line) => {
        asked.push(line);
        return { kind: 'card', card: { ...sampleCard, next: [] } };
      },
    },
    kept,
  );
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
    expect(await handled(said('$q', words, replyTo('$theirs')))).toBe('usual');
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
    expect(await handled(said('$a', 'weigh your lining first', replyTo('$theirs')))).toBeUndefined();
    expect(await handled(said('$b', 'weigh'))).toBeUndefined();
    expect(asked).toEqual([]);
  });
});
