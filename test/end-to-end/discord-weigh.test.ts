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

  test('of several, each is a button, and what it says is as private until it is shared', async () => {
    const seen = await weighed('lump burns 300 °F hotter.\n2 kg of propane melts 10 kg of bronze', { user: 'dot' });
    expect(shown(seen).ephemeral).toBe(true);
    expect(buttons(seen).map(({ label }) => label)).toEqual([
      'Lump burns 300 °F hotter',
      '2 kg of propane melts 10 kg of bronze',
    ]);
    const first = await peer.press(seen, buttons(seen)[1]!.custom_id, { user: 'dot' });
    const answer = await settled(first, /samples/);
    expect(words(answer)).toContain('bronze');
    expect(shown(answer).ephemeral).toBe(true);
    const share = buttons(answer).find(({ label }) => label === 'Share')!;
    const shared = await settled(await peer.press(answer, share.custom_id, { user: 'dot' }), /It comes to/);
    expect(shown(shared).ephemeral).toBe(false);
  });

  test('of one, what is pressed for all to see is', async () => {
    const seen = await settled(await weighed('lump burns 300 °F hotter', { user: 'ivy' }), /samples/);
    const open = buttons(seen).find(({ label }) => label === 'For all to see')!;
    expect(shown(await settled(await peer.press(seen, open.custom_id, { user: 'ivy' }), /samples/)).ephemeral).toBe(
      false,
    );
  });

  test('of a statement too long for a button, it says what to type', async () => {
    const long = `2.0000000000000 kg of propane melts 10.${'0'.repeat(40)} kg of bronze`;
    const seen = await weighed(`lump burns 300 °F hotter\n${long}`, { user: 'jan' });
    expect(buttons(seen).map(({ label }) => label)).toEqual(['Lump burns 300 °F hotter']);
    expect(words(seen)).toContain(`so to be typed: /claim statement:${long}`);
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

  test.each([
    ['one statement', 'Well, lump burns 317.25 °F hotter. The xyzzyplugh took 3 weekends.', /samples/],
    ['several', 'lump burns 317.25 °F hotter. 2 kg of propane melts 10.25 kg of bronze', /2 statements/],
  ])('and nothing of the message is kept, neither of its statements nor of the rest: %s', async (_, written, fits) => {
    await settled(await weighed(written, { user: 'hal' }), fits);
    const secrets = ['317.25', '10.25', 'xyzzyplugh'];
    for (const file of await readdir(data, { recursive: true, withFileTypes: true }))
      if (file.isFile())
        expect(
          await readFile(join(file.parentPath, file.name)).then((bytes) =>
            secrets.filter((one) => bytes.includes(one)),
          ),
          file.name,
        ).toEqual([]);
  });
});
