import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { REST } from 'discord.js';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { register } from '../../adapters/discord/register.ts';
import { commands } from '../../commands/registry.ts';
import { type Peer, type Seen, type SeenMessage, startDiscordPeer, type Who } from '../peers/discord/peer.ts';
import { openBot } from './discord-bot.ts';

/** The menu of a message, from the member's hand to the answer, at the loopback platform that judges what is sent. */
const menu = 'Weigh the numbers';
let peer: Peer;
let bot: Awaited<ReturnType<typeof openBot>>;
let data: string;

beforeAll(async () => {
  data = await mkdtemp(join(tmpdir(), 'discord-weigh-'));
  peer = await startDiscordPeer();
  await register({ rest: new REST({ api: peer.rest }).setToken(peer.token), commands });
  bot = await openBot(peer, { data });
});
afterAll(async () => {
  await bot?.stop();
  await peer?.close();
  await rm(data, { recursive: true });
});
let judged = 0;
afterEach(() => {
  const mine = peer.violations.slice(judged);
  judged = peer.violations.length;
  expect(mine).toEqual([]);
});

const done = (seen: Seen) => seen.until(({ messages }) => messages.some(({ loading }) => !loading), 25_000);
const settled = (seen: Seen, words: RegExp) =>
  seen.until(({ messages }) => messages.some(({ embeds }) => words.test(JSON.stringify(embeds))), 25_000);
const weighed = async (written: string, who: Who = {}) => done(await peer.apply(menu, { written }, who));
const shown = (seen: Seen): SeenMessage => seen.messages.findLast(({ deleted, loading }) => !deleted && !loading)!;
const words = (seen: Seen): string => JSON.stringify(shown(seen).embeds);
const buttons = (seen: Seen) =>
  (shown(seen).components as unknown as { components: { label: string; custom_id: string }[] }[]).flatMap(
    ({ components }) => components,
  );

describe('the numbers in somebody’s message', () => {
  test.each([
    ['in a server', {}],
    ['in the bot’s own messages', { place: 'bot-dm' as const }],
    ['where only a person installed it', { place: 'user-install' as const }],
  ])('are weighed %s', async (_, who) => {
    const seen = await settled(await weighed('Well, lump burns 300 °F hotter', { user: 'cid', ...who }), /samples/);
    expect(seen.error).toBeUndefined();
    expect(words(seen)).toContain('lump burns 300 °F hotter');
    expect(words(seen)).toMatch(/Understood as/);
    expect(words(seen)).toContain('What can hurt');
    expect(shown(seen).ephemeral).toBe(!('place' in who) || who.place === 'user-install');
  });

  test('of several, each is a button, and what it says is for all to see', async () => {
    const seen = await weighed('lump burns 300 °F hotter.\n2 kg of propane melts 10 kg of bronze', { user: 'dot' });
    expect(shown(seen).ephemeral).toBe(true);
    expect(buttons(seen).map(({ label }) => label)).toEqual([
      'Lump burns 300 °F hotter',
      '2 kg of propane melts 10 kg of bronze',
    ]);
    const first = await peer.press(seen, buttons(seen)[1]!.custom_id, { user: 'dot' });
    const answer = await settled(first, /It comes to/);
    expect(words(answer)).toContain('bronze');
    expect(shown(answer).ephemeral).toBe(false);
  });

  test('that has none gets a friendly word and examples', async () => {
    for (const written of ['Nice pour!', '']) {
      const seen = await weighed(written, { user: 'eve' });
      expect(shown(seen).ephemeral).toBe(true);
      expect(words(seen)).toContain('no statement with a number');
      expect(buttons(seen).length).toBeGreaterThan(0);
    }
  });

  test('warn of what the message does, and can’t call on anybody', async () => {
    const seen = await weighed('@everyone I cut the propane cylinder, took 2 hours <@123456789012345678>', {
      user: 'fay',
    });
    expect(words(seen)).toContain('**Danger:**');
    expect(shown(seen).ephemeral).toBe(true);
  });

  test('the longest message there can be is answered', async () => {
    const seen = await weighed(`${'the lid cracked after 3 melts. '.repeat(140)}`.slice(0, 4000), { user: 'gus' });
    expect(words(seen)).toContain('no statement with a number');
  });

  test('and nothing of the message is kept', async () => {
    const secret = 'xyzzyplugh';
    await weighed(`${secret} lump burns 300 °F hotter. ${secret} took 3 weekends.`, { user: 'hal' });
    for (const file of await readdir(data, { recursive: true, withFileTypes: true }))
      if (file.isFile())
        expect((await readFile(join(file.parentPath, file.name))).includes(secret), file.name).toBe(false);
  });
});
