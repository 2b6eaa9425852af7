import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { REST } from 'discord.js';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { register } from '../../adapters/discord/register.ts';
import { reminderRest, reminderSender } from '../../adapters/discord/reminder.ts';
import { openDiscord } from '../../bot/discord.ts';
import type { Running } from '../../bot/serve.ts';
import { openStore } from '../../bot/store/open.ts';
import { reminderOf } from '../../bot/store/reminders.ts';
import { commands } from '../../commands/registry.ts';
import { type Peer, type Seen, type SeenMessage, startDiscordPeer, type Who } from '../peers/discord/peer.ts';
import { slashOf } from '../peers/discord/typed.ts';

/** The bot at the loopback platform, with a clock that is moved on by hand. */
let peer: Peer;
let bot: Running | undefined;
let data: string;
/** A Wednesday, 19:00 in Berlin. */
const wednesday = Date.UTC(2026, 10, 25, 18);
let now_ms = wednesday;
const hour_ms = 3_600_000;

const open = async () => {
  const discord = { token: peer.token, api: peer.rest };
  bot = await openDiscord({ log: 'silent', data, discord }, { now: () => new Date(now_ms), poll_ms: 50 });
};
const close = async () => {
  await bot?.stop();
  bot = undefined;
};

beforeAll(async () => {
  peer = await startDiscordPeer({ unlimited: true });
  await register({ rest: new REST({ api: peer.rest }).setToken(peer.token), commands });
});
afterAll(() => peer.close());
beforeEach(async () => {
  data = mkdtempSync(join(tmpdir(), 'teemer-reminders-'));
  now_ms = wednesday;
  for (const door of Object.values(peer.doors)) door.clear();
  await open();
});
let judged = 0;
afterEach(async () => {
  await close();
  rmSync(data, { recursive: true, force: true });
  const mine = peer.violations.slice(judged);
  judged = peer.violations.length;
  expect(mine).toEqual([]);
});

const done = (seen: Seen) => seen.until(({ messages }) => messages.some(({ loading }) => !loading), 25_000);
const asked = async (line: string, who: Who = {}) => done(await peer.slash(slashOf(line), who));
const shown = (seen: Seen): SeenMessage => seen.messages.findLast(({ deleted, loading }) => !deleted && !loading)!;
const words = (seen: Seen): string => JSON.stringify(shown(seen).embeds) + shown(seen).content;

/** Reminders as they arrived, since a moment of the test. */
const arrived = (since = 0) => peer.seen.slice(since).filter((seen) => words2(seen).includes('Reminder '));
const words2 = (seen: Seen) => (seen.did.startsWith('the bot writes') && seen.messages.length > 0 ? words(seen) : '');

async function next(since: number): Promise<Seen> {
  for (let tries = 0; tries < 3000; tries++) {
    const [first] = arrived(since);
    if (first) return first;
    await sleep(10);
  }
  throw new Error(`no reminder came:\n${peer.print().slice(-2000)}`);
}

/** Long enough for a second one to come, were there any: what is looked for after it is that nothing was. */
const settled = () => sleep(250);

/** Nothing waits for them any more: what was due is sent and marked, or given up. */
const allOver = (user: string) =>
  expect
    .poll(
      async () => {
        const store = await openStore({ data });
        const waiting = await store.memory.reminders(`discord:${peer.userId(user)}`);
        await store.close();
        return waiting;
      },
      { timeout: 30_000, interval: 100 },
    )
    .toEqual([]);

test('a reminder comes once, at its time, where it was asked for, with what can hurt and what must hold', async () => {
  const set = await asked('remind saturday 9am light the small fire zone=Europe/Berlin', { user: 'ann' });
  expect(words(set)).toContain('I will remind you on Saturday 28 November 2026, 9:00');
  expect(words(set)).toContain('in this channel');
  const since = peer.seen.length;
  now_ms = Date.UTC(2026, 10, 28, 7, 59, 50);
  await settled();
  expect(arrived(since)).toEqual([]);
  now_ms = Date.UTC(2026, 10, 28, 8, 0, 1);
  const seen = await next(since);
  await settled();
  expect(arrived(since)).toHaveLength(1);
  expect(seen.place).toBe('#furnace');
  const message = shown(seen);
  expect(message.content).toBe(`<@${peer.userId('ann')}>`);
  const said = words(seen);
  for (const part of [
    'light the small fire',
    'What can hurt',
    'Local fire and gas rules',
    'First make sure',
    'someone stays with it',
  ]) {
    expect(said).toContain(part);
  }
  expect(said).not.toContain('I was away');
  expect(said).not.toContain('repeat');

  // Its button sets another.
  const button = (message.components as unknown as { components: { label: string; custom_id: string }[] }[])[0]!
    .components[0]!;
  expect(button.label).toBe('Again in an hour');
  const pressed = await done(await peer.press(seen, button.custom_id, { user: 'ann' }));
  expect(words(pressed)).toContain('I will remind you on Saturday 28 November 2026, 10:00');
});

test('what is echoed calls nobody else, and shows as it was typed', async () => {
  await asked('remind in 1 h @everyone <@123456789012345678> **light** [x](http://a.example) zone=Europe/Berlin', {
    user: 'eve',
  });
  const since = peer.seen.length;
  now_ms += hour_ms;
  const said = words(await next(since));
  expect(said).not.toMatch(/@everyone|<@123|http:\/\//);
});

test('one that fell due while the bot was away comes once, and says that it is late', async () => {
  await asked('remind saturday 9am light the small fire zone=Europe/Berlin', { user: 'ann' });
  await close();
  now_ms = Date.UTC(2026, 10, 29, 12);
  const since = peer.seen.length;
  await open();
  expect(words(await next(since))).toContain('Due yesterday, 9:00; I was away.');
  await close();
  await open();
  await settled();
  expect(arrived(since)).toHaveLength(1);
});

test('one that was taken back does not come', async () => {
  await asked('remind in 1 h weigh the lining', { user: 'dan' });
  await asked('remind in 2 h look at it', { user: 'dan' });
  expect(words(await asked('remind drop 1', { user: 'dan' }))).toContain('Taken back: weigh the lining');
  const since = peer.seen.length;
  now_ms += 2 * hour_ms;
  expect(words(await next(since))).toContain('look at it');
  await settled();
  expect(arrived(since)).toHaveLength(1);
});

describe('where the bot is no member', () => {
  const elsewhere = { user: 'fay', place: 'user-install' } as const;

  test('it comes in direct messages, which are tried first', async () => {
    const set = await asked('remind in 1 h weigh the lining', elsewhere);
    expect(words(set)).toContain('I have sent a first one to see that they arrive');
    const first = peer.seen.filter((seen) => seen.place === 'direct messages with fay');
    expect(first).toHaveLength(1);
    expect(words(first[0]!)).toContain('Your reminders will come here');
    const again = await asked('remind in 2 h weigh it again', elsewhere);
    expect(words(again)).not.toContain('I have sent');
    const since = peer.seen.length;
    now_ms += hour_ms;
    expect((await next(since)).place).toBe('direct messages with fay');
  });

  test('and they are closed, it says so when it is set, and gives a file for the calendar', async () => {
    peer.doors.closed.add(peer.userId('gus'));
    const set = await asked('remind in 1 h weigh the lining', { ...elsewhere, user: 'gus' });
    expect(words(set)).toContain('you take no direct messages from me');
    expect(words(set)).toContain('Noted for');
    const [file] = shown(set).attachments;
    expect(file?.name).toBe('reminder.ics');
    expect(new TextDecoder().decode(file?.bytes)).toMatch(/^BEGIN:VCALENDAR\r\n.*DTSTART:20261125T190000Z\r\n/s);
  });
});

test('in direct messages it comes there', async () => {
  const set = await asked('remind in 1 h weigh the lining', { user: 'hal', place: 'bot-dm' });
  expect(words(set)).toContain('I write to you here');
  const since = peer.seen.length;
  now_ms += hour_ms;
  expect((await next(since)).place).toBe('direct messages with hal');
});

describe('a channel that is closed since', () => {
  test.each(['gone', 'shut'] as const)('(%s): it comes in direct messages instead', async (how) => {
    await asked('remind in 1 h weigh the lining', { user: 'ida' });
    peer.doors[how].add(peer.channelId({}));
    const since = peer.seen.length;
    now_ms += hour_ms;
    const seen = await next(since);
    expect(seen.place).toBe('direct messages with ida');
    expect(words(seen)).toContain('I may no longer write where you asked for it.');
  });

  test('and so are direct messages: it is given up', async () => {
    await asked('remind in 1 h weigh the lining', { user: 'jon' });
    peer.doors.gone.add(peer.channelId({}));
    peer.doors.closed.add(peer.userId('jon'));
    const since = peer.seen.length;
    now_ms += hour_ms;
    await allOver('jon');
    expect(arrived(since)).toEqual([]);
  });
});

test('limits and faults of the platform delay it, and nothing else', async () => {
  await asked('remind in 1 h weigh the lining', { user: 'kim' });
  const since = peer.seen.length;
  peer.faults.serverErrors(2);
  now_ms += hour_ms;
  await next(since);
  await asked('remind in 1 h weigh it again', { user: 'kim' });
  const later = peer.seen.length;
  peer.faults.rateLimit(2);
  now_ms += hour_ms;
  await next(later);
  await settled();
  expect(arrived(since)).toHaveLength(2);
});

/** Sent by a process that died before it could say so. */
describe('one that was sent and not marked', () => {
  const dies = async (user: string) => {
    await asked('remind in 1 h weigh the lining', { user });
    await close();
    now_ms += hour_ms;
    const since = peer.seen.length;
    const store = await openStore({ data });
    const [claimed] = await store.outbox.claim('reminders:discord', { now: new Date(now_ms), lease_s: 60, limit: 1 });
    const rest = reminderRest({ token: peer.token, api: peer.rest });
    const send = reminderSender({ rest, now: () => new Date(now_ms), log: { warn() {} } });
    const reminder = reminderOf(claimed?.body);
    expect(await send({ reminder, key: claimed?.key ?? '' })).toEqual({ kind: 'sent' });
    rest.clearHashSweeper();
    rest.clearHandlerSweeper();
    await store.close();
    expect(arrived(since)).toHaveLength(1);
    return since;
  };

  test('a moment ago: the platform knows it by its key', async () => {
    const since = await dies('lea');
    now_ms += 61_000;
    await open();
    await allOver('lea');
    await close();
    expect(arrived(since)).toHaveLength(1);
  });

  test('long ago: it is found in the channel', async () => {
    const since = await dies('max');
    now_ms += hour_ms;
    await open();
    await allOver('max');
    await close();
    expect(arrived(since)).toHaveLength(1);
  });

  test('long ago, where the bot may not read: sent once more, and it says so', async () => {
    const since = await dies('ned');
    peer.doors.unread.add(peer.channelId({}));
    now_ms += hour_ms;
    // The loopback platform keeps its own time, by which the key is still known.
    const store = await openStore({ data });
    await store.close();
    const before = peer.seen.length;
    peer.forgetNonces();
    await open();
    const again = await next(before);
    expect(words(again)).toContain('This may be a repeat');
    await allOver('ned');
    await settled();
    expect(arrived(since)).toHaveLength(2);
  });
});
