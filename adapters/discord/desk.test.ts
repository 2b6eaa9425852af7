import { setTimeout as sleep } from 'node:timers/promises';
import { type APIInteraction, DiscordAPIError } from 'discord.js';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Reply } from '../../commands/card.ts';
import type { Ask } from '../../commands/command.ts';
import { inProcessMemory } from '../../commands/memory.ts';
import { commands } from '../../commands/registry.ts';
import { sampleCard } from '../terminal/sample-card.ts';
import { createDesk, type DeskParts, type Told } from './desk.ts';
import type { Door, First } from './door.ts';
import type { Message } from './message/payload.ts';

type Sent =
  | { readonly did: 'first'; readonly first: First }
  | { readonly did: 'edit'; readonly message: Message }
  | { readonly did: 'remove' }
  | { readonly did: 'call'; readonly channel: string | undefined; readonly message: Message }
  | { readonly did: 'followUp'; readonly message: Message; readonly ephemeral: boolean };

/** Everything the desk sends, in order, and what it logs and counts. */
let sent: Sent[];
let logged: { readonly what: string; readonly about: Record<string, unknown> }[];
let told: Told[];
let states: Map<string, unknown>;

const door: Door = {
  first: async (_to, first) => void sent.push({ did: 'first', first }),
  edit: async (_to, message) => void sent.push({ did: 'edit', message }),
  remove: async () => void sent.push({ did: 'remove' }),
  followUp: async (_to, message, ephemeral) => void sent.push({ did: 'followUp', message, ephemeral }),
  call: async (_asker, channel, message) => void sent.push({ did: 'call', channel, message }),
};
const note = (about: object, what: string) => void logged.push({ what, about: about as Record<string, unknown> });
const card: Reply = { kind: 'card', card: sampleCard };
const error: Reply = {
  kind: 'error',
  error: { code: 'unfit', what: 'too hot', expected: 'less', example: 'mix 30 L' },
  cautions: sampleCard.cautions,
};

const desk = (more: Partial<DeskParts> = {}) =>
  createDesk({
    door,
    commands,
    answer: async () => card,
    picture: async () => undefined,
    memory: inProcessMemory(),
    states: {
      put: async (id, value) => void states.set(id, value),
      get: async (id) => states.get(id),
    },
    handled: { first: async () => true },
    budget: { take: () => ({ wait_s: 0 }) },
    now: () => new Date(0),
    log: { info: note, warn: note, error: note },
    tell: (what) => void told.push(what),
    defer_ms: 20,
    ...more,
  });

let count = 0;
const interaction = (data: object, more: object = {}) =>
  ({
    id: String(++count),
    application_id: '1',
    type: 2,
    token: 'secret',
    guild_id: '7',
    channel: { id: '8' },
    context: 0,
    locale: 'en-US',
    member: { user: { id: '9' }, permissions: '0' },
    data: { type: 1, ...data },
    ...more,
  }) as unknown as APIInteraction;
const mix = () => interaction({ name: 'mix', options: [{ type: 3, name: 'amount', value: '30 L' }] });
const pressOf = (custom_id: string) => interaction({ custom_id, component_type: 2 }, { type: 3 });
/** Not before something stands in its place: nothing here depends on a busy machine's clock. */
const deferred = async () => {
  const before = sent.length;
  while (sent.length === before) await sleep(2);
};
const slowly = (reply: Reply) => async () => {
  await deferred();
  return reply;
};
const saidIn = (message: Message | undefined): string => JSON.stringify(message?.embeds);
const firstMessage = () => {
  const [one] = sent;
  return one?.did === 'first' && one.first.kind === 'message' ? one.first : undefined;
};

beforeEach(() => {
  [sent, logged, told, states] = [[], [], [], new Map()];
});

describe('when an answer comes', () => {
  test('at once: as the first answer', async () => {
    await desk().handle(mix());
    expect(sent).toHaveLength(1);
    expect(firstMessage()).toMatchObject({ ephemeral: false });
    expect(told).toMatchObject([{ kind: 'command', command: 'mix', outcome: 'answered' }]);
  });

  test('later: deferred in time, then edited in', async () => {
    await desk({ answer: slowly(card) }).handle(mix());
    expect(sent.map(({ did }) => did)).toEqual(['first', 'edit']);
    expect(sent[0]).toMatchObject({ first: { kind: 'defer', ephemeral: false } });
    expect(told).toMatchObject([{ outcome: 'deferred' }]);
  });

  test('later and wrong: the public placeholder goes, the asker alone reads what was wrong', async () => {
    await desk({ answer: slowly(error) }).handle(mix());
    expect(sent.map(({ did }) => did)).toEqual(['first', 'remove', 'followUp']);
    expect(sent[2]).toMatchObject({ ephemeral: true });
  });

  test('what is private from the start is deferred privately', async () => {
    await desk({ answer: slowly(card) }).handle(interaction({ name: 'mydata' }));
    expect(sent[0]).toMatchObject({ first: { kind: 'defer', ephemeral: true } });
    expect(sent[1]?.did).toBe('edit');
  });

  test('after its token has gone: nothing is sent on its way, and the bot itself says so', async () => {
    let time_ms = 0;
    const now = () => new Date(time_ms);
    const answer = async () => {
      await deferred();
      time_ms = 15 * 60_000 + 1;
      return card;
    };
    await desk({ answer, now }).handle(mix());
    expect(sent.map(({ did }) => did)).toEqual(['first', 'call']);
    expect(logged).toMatchObject([{ what: 'an answer came after its time to be delivered' }]);
  });
});

describe('when something fails', () => {
  test('the asker gets an id and what can hurt, the log the same id and the trace', async () => {
    const fault = new RangeError('boom');
    await desk({ answer: () => Promise.reject(fault) }).handle(mix());
    const id = logged[0]?.about.fault;
    expect(id).toMatch(/^[0-9a-f]{8}$/);
    expect(logged[0]?.about.err).toBe(fault);
    expect(firstMessage()).toMatchObject({ ephemeral: true });
    expect(saidIn(firstMessage()?.message)).toContain(`logged as ${id}`);
    expect(saidIn(firstMessage()?.message)).toContain('What can hurt');
    expect(saidIn(firstMessage()?.message)).not.toContain('boom');
    expect(told).toMatchObject([{ outcome: 'failed' }]);
  });

  test('a message the platform will not have becomes a plain one', async () => {
    const refusal = new DiscordAPIError({ message: 'Invalid Form Body', code: 50035 }, 50035, 400, 'POST', '', {});
    let calls = 0;
    const picky: Door = {
      ...door,
      first: async (to, first) => {
        if (++calls === 1) throw refusal;
        await door.first(to, first);
      },
    };
    await desk({ door: picky }).handle(mix());
    expect(saidIn(firstMessage()?.message)).toContain('logged as');
  });

  test('a lost way back ends that answer only', async () => {
    const broken = { ...door, first: () => Promise.reject(new Error('Unknown interaction')) };
    await desk({ door: broken }).handle(mix());
    expect(logged).toMatchObject([{ what: 'an answer could not be delivered' }]);
  });

  test('a picture that cannot be drawn leaves the answer', async () => {
    await desk({ picture: () => Promise.reject(new Error('no font')) }).handle(mix());
    expect(saidIn(firstMessage()?.message)).toContain('15 kg clay');
  });

  test('without the store the answer goes without buttons', async () => {
    const failing = { put: () => Promise.reject(new Error('gone')), get: () => Promise.reject(new Error('gone')) };
    const down = desk({ states: failing, handled: { first: () => Promise.reject(new Error('gone')) } });
    await down.handle(mix());
    expect(firstMessage()?.message.components).toEqual([]);
    sent = [];
    await down.handle(pressOf('t1:n:abc:0'));
    expect(saidIn(firstMessage()?.message)).toContain('just now');
  });

  test('a store that hangs holds an answer up for less than the platform’s three seconds', async () => {
    const never = () => new Promise<never>(() => {});
    const begun = performance.now();
    await desk({ states: { put: never, get: never }, handled: { first: never }, defer_ms: 1500 }).handle(mix());
    expect(performance.now() - begun).toBeLessThan(2500);
    expect(firstMessage()?.message.components).toEqual([]);
  });
});

describe('a line that is taken apart', () => {
  const asked: Ask[] = [];
  const hearing = () =>
    desk({
      async answer(ask) {
        asked.push(ask);
        return card;
      },
    });
  const settle = (options: Readonly<Record<string, string>>) =>
    interaction({
      name: 'settle',
      options: Object.entries(options).map(([name, value]) => ({ type: 3, name, value })),
    });
  const optionsAsked = () => asked.at(-1)?.options;

  test('comes in its parts, or whole in the first field', async () => {
    const one = hearing();
    await one.handle(settle({ one: 'mix 30 L', other: 'mix 30 L recipe=castable', third: 'mix 40 L', by: 'cost' }));
    expect(optionsAsked()).toEqual({
      one: 'mix 30 L',
      other: 'mix 30 L recipe=castable',
      third: 'mix 40 L',
      by: 'cost',
    });
    await one.handle(settle({ one: 'mix 30 L vs mix 40 L by=cost' }));
    expect(optionsAsked()).toEqual({ line: 'mix 30 L vs mix 40 L by=cost' });
  });

  test('is changed in the same fields', async () => {
    const one = hearing();
    await one.handle(settle({ one: 'mix 30 L', other: 'mix 40 L' }));
    const [state] = states.keys();
    sent = [];
    await one.handle(pressOf(`t1:c:${state}:`));
    expect(JSON.stringify(sent[0])).toContain('"custom_id":"other"');
    const filled = { one: 'mix 30 L', other: 'mix 50 L', third: '', fourth: '', by: 'cost' };
    const components = Object.entries(filled).map(([custom_id, value]) => ({
      type: 18,
      component: { type: 4, custom_id, value },
    }));
    await one.handle(interaction({ custom_id: `t1:m:${state}:`, components }, { type: 5 }));
    expect(optionsAsked()).toEqual({ one: 'mix 30 L', other: 'mix 50 L', by: 'cost' });
  });
});

describe('once', () => {
  test('an interaction that is delivered again is not answered again', async () => {
    const one = desk();
    const again = mix();
    await Promise.all([one.handle(again), one.handle(again)]);
    expect(sent).toHaveLength(1);
  });

  test('nor by another process', async () => {
    const ids = new Set<string>();
    const handled = { first: async (id: string) => !ids.has(id) && ids.add(id) !== undefined };
    const again = mix();
    await desk({ handled }).handle(again);
    await desk({ handled }).handle(again);
    expect(sent).toHaveLength(1);
  });
});

describe('a private answer', () => {
  const followed: Reply = {
    kind: 'card',
    card: { ...sampleCard, next: [{ label: 'dry it', line: 'dry clay 2 in' }] },
  };
  const flags = { message: { flags: 64 } };
  const press = (custom_id: string) => interaction({ custom_id, component_type: 2 }, { type: 3, ...flags });
  const shown = (message: Message | undefined) => JSON.stringify(message?.components);
  const last = () => sent.at(-1);

  test('turned to other units takes its own place, and is still one to be shared', async () => {
    for (const answer of [async () => followed, slowly(followed)]) {
      const one = desk({ answer });
      await one.handle(mix());
      const state = [...states.keys()].at(-1);
      sent = [];
      await one.handle(press(`t1:u:${state}:US`));
      const said = last();
      const message =
        said?.did === 'first' && said.first.kind === 'update'
          ? said.first.message
          : said?.did === 'edit'
            ? said.message
            : undefined;
      expect(shown(message)).toContain('"Share"');
      expect(shown(message)).not.toContain('For me only');
    }
  });

  test('answers privately what is pressed on it or changed in it', async () => {
    const one = desk({ answer: async () => followed });
    await one.handle(mix());
    const [state] = states.keys();
    const filled = { custom_id: 'amount', value: '40 L' };
    const form = { custom_id: `t1:m:${state}:`, components: [{ type: 18, component: { type: 4, ...filled } }] };
    const menu = { custom_id: `t1:v:${state}:ram`, component_type: 3, values: ['light'] };
    for (const asked of [
      press(`t1:n:${state}:0`),
      interaction(form, { type: 5, ...flags }),
      interaction(menu, { type: 3, ...flags }),
      press('t1:l:r:mix 30 L'),
    ]) {
      sent = [];
      await one.handle(asked);
      expect(firstMessage()).toMatchObject({ ephemeral: true });
      expect(shown(firstMessage()?.message)).toContain('"Share"');
    }
    sent = [];
    await one.handle(press('t1:l:all:mix 30 L'));
    expect(firstMessage()).toMatchObject({ ephemeral: false });
  });

  test('is not what a mistake in an open question is: mended, that is for everybody', async () => {
    let reply: Reply = error;
    const one = desk({ answer: async () => reply });
    await one.handle(mix());
    expect(firstMessage()).toMatchObject({ ephemeral: true });
    const state = [...states.keys()].at(-1);
    reply = followed;
    sent = [];
    await one.handle(press(`t1:n:${state}:0`));
    expect(firstMessage()).toMatchObject({ ephemeral: false });
    // But of a question that was asked in private.
    reply = error;
    await one.handle(press('t1:l:r:mix 30 L'));
    const quiet = [...states.keys()].at(-1);
    reply = followed;
    sent = [];
    await one.handle(press(`t1:n:${quiet}:0`));
    expect(firstMessage()).toMatchObject({ ephemeral: true });
  });
});

test('what somebody else wrote is not kept, and its statements stand in the buttons', async () => {
  const next = [
    { label: 'lump burns', line: 'claim lump burns 300 °F hotter' },
    { label: 'for all', line: 'claim 2 kg of propane melts 10 kg of bronze', forAll: true as const },
    { label: 'long', line: `claim ${'very '.repeat(20)}long` },
  ];
  const weighed: Reply = { kind: 'card', card: { ...sampleCard, command: 'weigh', next } };
  const message = { content: 'lump burns 300 °F hotter' };
  const menu = { type: 3, name: 'Weigh the numbers', target_id: '5', resolved: { messages: { 5: message } } };
  await desk({ answer: async () => weighed }).handle(interaction(menu));
  await desk({ answer: async () => error }).handle(interaction(menu));
  expect(states.size).toBe(0);
  const components = JSON.stringify(firstMessage()?.message.components);
  expect(components).toContain('"custom_id":"t1:l:r:claim lump burns 300 °F hotter"');
  expect(components).toContain('"custom_id":"t1:l:all:claim 2 kg of propane melts 10 kg of bronze"');
  expect(components).not.toContain('very');
  expect(saidIn(firstMessage()?.message)).toContain('to be typed: /claim');
});

describe('buttons', () => {
  test.each(['t0:n:abc:0', 'x', 't1:z:abc:0', 't1:n', 't1:n:abc:0', 't1:n:abc:99'])(
    '%s: an old one says that it is',
    async (id) => {
      await desk().handle(pressOf(id));
      expect(firstMessage()).toMatchObject({ ephemeral: true });
      expect(saidIn(firstMessage()?.message)).toContain('Ask again');
    },
  );

  test('taking back defers at once, removes and answers privately', async () => {
    const one = desk();
    await one.handle(mix());
    const [state] = states.keys();
    sent = [];
    await one.handle(pressOf(`t1:o:${state}:`));
    expect(sent.map(({ did }) => did)).toEqual(['first', 'remove', 'followUp']);
    expect(sent[0]).toMatchObject({ first: { kind: 'defer-update' } });
  });

  test('show all figures of a long answer to whoever asks for them', async () => {
    const figures = Array.from({ length: 30 }, (_, at) => ({ ...sampleCard.figures[0]!, label: `number ${at}` }));
    const one = desk({ answer: async () => ({ kind: 'card', card: { ...sampleCard, figures } }) });
    await one.handle(mix());
    expect(JSON.stringify(firstMessage()?.message.components)).toContain('All figures');
    expect(saidIn(firstMessage()?.message)).not.toContain('number 29');
    const [state] = states.keys();
    sent = [];
    await one.handle(pressOf(`t1:a:${state}:`));
    expect(firstMessage()).toMatchObject({ ephemeral: true });
    expect(saidIn(firstMessage()?.message)).toContain('number 29');
    expect(JSON.stringify(firstMessage()?.message.components)).not.toContain('All figures');
  });

  test('what their ids stand for is kept with its asker, so that it can be forgotten with them', async () => {
    const puts: unknown[] = [];
    const put = async (_id: string, _value: unknown, given: object) => void puts.push(given);
    await desk({ states: { put, get: async () => undefined } }).handle(mix());
    expect(puts).toMatchObject([{ asker: 'discord:9' }]);
  });
});

test('too many at once: refused with what can hurt, first aid never', async () => {
  const busy = desk({ budget: { take: () => ({ wait_s: 7.2 }) } });
  await busy.handle(mix());
  expect(states.size).toBe(0);
  expect(saidIn(firstMessage()?.message)).toContain('room again in 8 s');
  expect(saidIn(firstMessage()?.message)).toContain('What can hurt');
  expect(told).toMatchObject([{ outcome: 'refused' }]);
  sent = [];
  await busy.handle(interaction({ name: 'emergency', options: [{ type: 3, name: 'what', value: 'burns' }] }));
  expect(saidIn(firstMessage()?.message)).toContain('15 kg clay');
});

test('what cannot even be read costs as much as what can', async () => {
  let taken = 0;
  const take = () => {
    taken += 1;
    return { wait_s: taken > 1 ? 7.2 : 0 };
  };
  const busy = desk({ budget: { take } });
  const unread = () =>
    interaction({ name: 'wall', options: [{ type: 3, name: 'more', value: 'nonsense=1 nonsense=2' }] });
  await busy.handle(unread());
  expect(saidIn(firstMessage()?.message)).toContain('Expected');
  expect(taken).toBe(1);
  sent = [];
  await busy.handle(unread());
  expect(saidIn(firstMessage()?.message)).toContain('room again in 8 s');
  expect(saidIn(firstMessage()?.message)).toContain('What can hurt');
});

test('no answer can ping anybody, whatever way it goes', async () => {
  const { bodyOf } = await import('./message/payload.ts');
  await desk().handle(mix());
  expect(bodyOf(firstMessage()!.message, 64)).toMatchObject({ allowed_mentions: { parse: [] }, flags: 64 });
});
