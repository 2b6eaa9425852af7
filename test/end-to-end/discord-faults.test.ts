import { REST } from 'discord.js';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Told } from '../../adapters/discord/desk.ts';
import { type Discord, startDiscord } from '../../adapters/discord/gateway.ts';
import { register } from '../../adapters/discord/register.ts';
import { sampleCard, worstCautions } from '../../adapters/terminal/sample-card.ts';
import { openKept } from '../../bot/discord-store.ts';
import { answerAsk } from '../../commands/answer.ts';
import type { Reply } from '../../commands/card.ts';
import { commands } from '../../commands/registry.ts';
import { type ManualClock, manualClock } from '../peers/discord/clock.ts';
import { type Peer, type Seen, type SeenMessage, startDiscordPeer, type Who } from '../peers/discord/peer.ts';
import { slashOf } from '../peers/discord/typed.ts';

/**
 * What goes wrong at every stage of one answer: before its first callback, between the deferral and the edit, between the
 * question and a button. The core is held at a gate, the time of deadlines stands still until it is moved.
 */
let clock: ManualClock;
let peer: Peer;
let bot: Discord;
/** What an answer waits for before it is given. */
let gate: Gate;
let told: Told[];
let logged: string[];
/** Questions that have come to the core. */
let asked: number;

interface Gate {
  readonly opened: Promise<void>;
  open(): void;
}
function closedGate(): Gate {
  const { promise, resolve } = Promise.withResolvers<void>();
  return { opened: promise, open: resolve };
}
const openGate = (): Gate => ({ opened: Promise.resolve(), open() {} });

const defer_ms = 150;
let reply: ((usual: () => Promise<Reply>) => Promise<Reply>) | undefined;

beforeEach(async () => {
  [clock, gate, told, logged, asked, reply] = [manualClock(), openGate(), [], [], 0, undefined];
  peer = await startDiscordPeer({ clock });
  await register({ rest: new REST({ api: peer.rest }).setToken(peer.token), commands });
  const { memory, handled, states } = await openKept({}, () => {});
  const now = () => new Date(clock.now());
  const note = (_about: object, what: string) => void logged.push(what);
  bot = startDiscord({
    token: peer.token,
    api: peer.rest,
    commands,
    async answer(ask, { asker, place, mayModerate }) {
      asked += 1;
      await gate.opened;
      const usual = () => answerAsk(ask, { asker, place, mayModerate, now: now(), memory });
      return reply ? reply(usual) : usual();
    },
    picture: async () => undefined,
    memory,
    handled,
    states,
    budget: { take: () => ({ wait_s: 0 }) },
    now,
    log: { info: () => {}, warn: note, error: note },
    tell: (what) => void told.push(what),
    defer_ms,
  });
  await bot.ready;
});
afterEach(async () => {
  gate.open();
  await bot.stop();
  await peer.close();
});

const ask = (line = 'mix 30 L', who: Who = {}) => peer.slash(slashOf(line), who);
const done = (seen: Seen) =>
  seen.until(({ messages }) => messages.some(({ loading, deleted }) => !loading && !deleted));
const shown = ({ messages }: Seen): SeenMessage => messages.findLast(({ deleted, loading }) => !deleted && !loading)!;
const words = (seen: Seen): string => shown(seen).content + JSON.stringify(shown(seen).embeds);
const atCore = (count: number) => expect.poll(() => asked, { timeout: 10_000 }).toBe(count);

/** Cuts the connection and waits until the bot has taken its session up again. */
async function dropped(): Promise<void> {
  const { length } = peer.sessions.resumed;
  peer.faults.drop();
  await expect.poll(() => peer.sessions.resumed.length, { timeout: 20_000 }).toBeGreaterThan(length);
}

function idOf(seen: Seen, label: string): string {
  const buttons = shown(seen).components.flatMap(({ components = [] }) => components);
  const found = buttons.find((button) => button.label === label)?.custom_id;
  if (!found) throw new Error(`no button "${label}" among ${buttons.map((one) => one.label).join(', ')}`);
  return found;
}

describe.each([false, true])('the connection drops, what was handled is delivered again: %s', (replay) => {
  beforeEach(() => {
    peer.faults.replayOnResume = replay;
  });

  test('before the first answer: it comes, once', async () => {
    gate = closedGate();
    const asking = ask();
    await atCore(1);
    await dropped();
    gate.open();
    const seen = await done(await asking);
    expect(words(seen)).toContain('clay');
    expect(seen.messages).toHaveLength(1);
    expect(asked).toBe(1);
    expect(peer.violations).toEqual([]);
  });

  test('between the deferral and the answer: it is edited in, once', async () => {
    gate = closedGate();
    const seen = await ask();
    expect(seen.state).toBe('deferred');
    await dropped();
    gate.open();
    await done(seen);
    expect(seen.messages).toMatchObject([{ edits: 0, ephemeral: false, loading: false }]);
    expect(words(seen)).toContain('Silica');
    expect(asked).toBe(1);
    expect(peer.violations).toEqual([]);
  });

  test('between a question and its button: what was pressed meanwhile is answered, once', async () => {
    const first = await done(await ask());
    peer.faults.drop();
    const pressed = await done(await peer.press(first, idOf(first, 'The same in castable')));
    expect(words(pressed)).toContain('What can hurt');
    await expect.poll(() => peer.sessions.resumed.length, { timeout: 20_000 }).toBeGreaterThan(0);
    expect(first.messages).toHaveLength(1);
    expect(pressed.messages).toHaveLength(1);
    expect(asked).toBe(2);
    expect(peer.violations).toEqual([]);
  });
});

describe('a slow core', () => {
  test('is waited for by a deferral that is as public as the answer', async () => {
    gate = closedGate();
    const open = await ask('mix 30 L', { user: 'open' });
    const quiet = await ask('mydata', { user: 'quiet' });
    expect([open, quiet].map(({ state, messages }) => [state, messages[0]?.ephemeral])).toEqual([
      ['deferred', false],
      ['deferred', true],
    ]);
    gate.open();
    await Promise.all([done(open), done(quiet)]);
    await expect.poll(() => told.map(({ outcome }) => outcome)).toEqual(['deferred', 'deferred']);
    expect(peer.violations).toEqual([]);
  });

  test('that finds a mistake takes the public placeholder back, and says it with what can hurt to the asker alone', async () => {
    gate = closedGate();
    const seen = await ask('mix 3 volts');
    expect(seen.messages[0]?.ephemeral).toBe(false);
    gate.open();
    await done(seen);
    expect(seen.messages[0]?.deleted).toBe(true);
    expect(shown(seen).ephemeral).toBe(true);
    expect(words(seen)).toContain('Silica');
    expect(peer.violations).toEqual([]);
  });

  test('that breaks after the deferral does the same, with an id, and the next is answered', async () => {
    gate = closedGate();
    const seen = await ask();
    reply = () => Promise.reject(new RangeError('boom'));
    gate.open();
    await done(seen);
    expect(shown(seen).ephemeral).toBe(true);
    expect(words(seen)).toMatch(/logged as [0-9a-f]{8}/);
    expect(words(seen)).toContain('Silica');
    expect(words(seen)).not.toContain('boom');
    expect(logged).toEqual(['a question could not be answered']);
    reply = undefined;
    expect(words(await done(await ask()))).toContain('clay');
    expect(peer.violations).toEqual([]);
  });

  test('is waited for when the bot is told to leave', async () => {
    gate = closedGate();
    const seen = await ask();
    const leaving = bot.stop();
    gate.open();
    await leaving;
    expect(words(await done(seen))).toContain('clay');
    expect(peer.violations).toEqual([]);
  });

  test('behind a button that turns the answer: the message stands until it is edited', async () => {
    const first = await done(await ask());
    gate = closedGate();
    const turned = await peer.press(first, idOf(first, 'In US units'));
    expect(turned.error).toBeUndefined();
    expect(words(first)).toContain('fills 30 L');
    gate.open();
    await expect.poll(() => words(first)).toMatch(/\d lb/);
    expect(words(first)).toContain('Silica');
    expect(first.messages).toHaveLength(1);
    expect(peer.violations).toEqual([]);
  });
});

describe('a token that lives fifteen minutes', () => {
  test('takes an answer a moment before its end', async () => {
    gate = closedGate();
    const seen = await ask();
    clock.advance(15 * 60_000 - 1000);
    gate.open();
    expect(words(await done(seen))).toContain('clay');
    expect(peer.violations).toEqual([]);
  });

  test.each([
    ['in the channel that it may write in', 'mix 30 L', { user: 'ann' }, '#furnace'],
    ['in its own messages', 'mix 30 L', { user: 'ann', place: 'bot-dm' }, 'direct messages with ann'],
    ['directly, what was private', 'mydata', { user: 'ann' }, 'direct messages with ann'],
    ['directly, where it is no member', 'mix 30 L', { user: 'ann', place: 'user-install' }, 'direct messages with ann'],
  ] as const)('is not tried after it: the bot says so %s, and the next is answered', async (_, line, who, place) => {
    gate = closedGate();
    const seen = await ask(line, who);
    clock.advance(15 * 60_000 + 1000);
    gate.open();
    await expect.poll(() => told).toMatchObject([{ outcome: 'failed' }]);
    expect(logged).toEqual(['an answer came after its time to be delivered']);
    expect(seen.error).toBe('The application did not respond');
    const calls = () => peer.seen.filter(({ did }) => did.startsWith('the bot writes'));
    await expect.poll(() => calls().map((one) => one.place)).toEqual([place]);
    expect(words(calls()[0]!)).toContain('took longer than the fifteen minutes');
    expect(words(calls()[0]!)).toContain(`<@${peer.userId('ann')}>`);
    if (line === 'mix 30 L') expect(words(calls()[0]!)).toContain('What can hurt');
    // What the platform itself holds against it, and nothing sent too late besides.
    expect(peer.violations).toEqual([expect.stringContaining('deferred and never filled within 15 min')]);
    gate = openGate();
    expect(words(await done(await ask()))).toContain('clay');
  });
});

test('an answer that is gone, to one who takes no direct messages, is in the log alone', async () => {
  peer.doors.closed.add(peer.userId('ann'));
  gate = closedGate();
  await ask('mydata', { user: 'ann' });
  clock.advance(15 * 60_000 + 1000);
  gate.open();
  await expect
    .poll(() => logged)
    .toEqual(['an answer came after its time to be delivered', 'nor could it be said that it is gone']);
});

describe('a platform in trouble', () => {
  test('a storm of refusals: everybody is answered once, and none comes back before they may', async () => {
    peer.faults.rateLimit(5);
    const all = await Promise.all(
      ['ann', 'bea', 'cy', 'dot'].map((user) => ask('mix 30 L', { user, place: 'bot-dm' })),
    );
    for (const seen of all) {
      expect(words(await done(seen))).toContain('clay');
      expect(seen.messages).toHaveLength(1);
    }
    expect(peer.violations).toEqual([]);
  });

  test('refuses and fails while an answer is edited in', async () => {
    gate = closedGate();
    const seen = await ask();
    peer.faults.rateLimit(2);
    peer.faults.serverErrors(1);
    gate.open();
    expect(words(await done(seen))).toContain('clay');
    expect(seen.messages).toMatchObject([{ edits: 0, loading: false }]);
    expect(peer.violations).toEqual([]);
  });

  test('takes a deferral and says that it failed: what is tried again is known to be there, and the answer comes', async () => {
    gate = closedGate();
    peer.faults.lostAnswers(1);
    const seen = await ask();
    expect(seen.state).toBe('deferred');
    gate.open();
    expect(words(await done(seen))).toContain('clay');
    expect(seen.messages).toHaveLength(1);
    expect(logged).toEqual([]);
    expect(peer.violations).toEqual([]);
  });

  test('takes an answer or its removal and says that it failed: nothing is lost, nothing comes twice', async () => {
    peer.faults.lostAnswers(1);
    const first = await done(await ask());
    expect(first.messages).toHaveLength(1);
    gate = closedGate();
    const wrong = await ask('mix 3 volts');
    peer.faults.lostAnswers(1);
    gate.open();
    expect(words(await done(wrong))).toContain('Expected');
    expect(wrong.messages[0]?.deleted).toBe(true);
    await expect.poll(() => told.map(({ outcome }) => outcome)).toEqual(['answered', 'deferred']);
    expect(logged).toEqual([]);
    expect(peer.violations).toEqual([]);
  });

  test.each([true, false])(
    'a session that is no longer valid (may be resumed: %s) loses no answer',
    async (resumable) => {
      gate = closedGate();
      const seen = await ask();
      const sessions = () => peer.sessions.identified.length + peer.sessions.resumed.length;
      const before = sessions();
      peer.faults.invalidSession(resumable);
      gate.open();
      expect(words(await done(seen))).toContain('clay');
      await expect.poll(sessions, { timeout: 20_000 }).toBeGreaterThan(before);
      expect(words(await done(await ask()))).toContain('clay');
      expect(peer.violations).toEqual([]);
    },
  );
});

describe('what can hurt is said', () => {
  const hurts = (seen: Seen) => {
    expect(words(seen)).toContain('What can hurt');
    expect(words(seen)).toContain('Local fire and gas rules');
  };

  test('in an answer, its working, its follow-up, its other units, its form and its sharing', async () => {
    const who = { user: 'ann' };
    const first = await done(await ask('mix 30 L', who));
    hurts(first);
    for (const label of ['Show the working', 'The same in castable', 'How many batches', 'In US units']) {
      const seen = await peer.press(first, idOf(first, label), who);
      hurts(seen.messages.length === 0 ? first : await done(seen));
    }
    const form = await peer.press(first, idOf(first, 'Change'), who);
    hurts(await done(await peer.submit(form, { amount: '40 L' }, who)));
    const taken = await peer.press(first, idOf(first, 'For me only'), who);
    const own = await taken.until(({ messages }) => messages.some(({ ephemeral }) => ephemeral));
    hurts(own);
    hurts(await done(await peer.press(own, idOf(own, 'Share'), who)));
    expect(peer.violations).toEqual([]);
  });

  test('all of it, where it is more than ever: above the longest card nothing of it is dropped', async () => {
    const long = 'a rather long name of a figure of a rather wide furnace ';
    const card = {
      ...sampleCard,
      cautions: worstCautions,
      figures: Array.from({ length: 60 }, (_, at) => ({ ...sampleCard.figures[0]!, label: `${long}${at}` })),
      notes: Array.from({ length: 60 }, (_, at) => `${long.repeat(4)}${at}`),
    };
    reply = async () => ({ kind: 'card', card });
    for (const place of ['guild', 'bot-dm', 'user-install'] as const) {
      const seen = await done(await ask('mix 30 L', { user: place, place }));
      const said = words(seen).replaceAll('\\', '').replaceAll(/\s+/g, ' ');
      for (const { text } of worstCautions) expect(said).toContain(text.slice(0, 40).replaceAll('"', '').trim());
      expect(shown(seen).attachments.map(({ name }) => name)).toContain('mix.txt');
    }
    expect(peer.violations).toEqual([]);
  });
});
