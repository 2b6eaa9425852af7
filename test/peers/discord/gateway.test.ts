import { once } from 'node:events';
import { GatewayIntentBits, type Interaction, REST, SlashCommandBuilder } from 'discord.js';
import { afterEach, describe, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { startBareBot } from './bare-bot.ts';
import { shardOf } from './gateway.ts';
import { type Peer, type PeerOptions, startDiscordPeer } from './peer.ts';

const stops: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const stop of stops.splice(0).toReversed()) await stop();
});

async function start(options?: PeerOptions): Promise<Peer> {
  const peer = await startDiscordPeer(options);
  stops.push(peer.close);
  return peer;
}

/** A bot that answers every command by its count and has its command registered. */
async function counting(peer: Peer, options: Parameters<typeof startBareBot>[2] = {}) {
  const handled: string[] = [];
  const answer = async (interaction: Interaction) => {
    handled.push(interaction.id);
    if (interaction.isChatInputCommand()) await interaction.reply(`answer ${handled.length}`);
  };
  const bot = await startBareBot(peer, answer, options);
  stops.push(bot.stop);
  await bot.client.application.commands.set([new SlashCommandBuilder().setName('mix').setDescription('d')]);
  return { ...bot, handled };
}

describe('a connection that is lost', () => {
  test('is resumed, and what happened meanwhile comes once', async () => {
    const peer = await start();
    const bot = await counting(peer);
    const before = await peer.slash({ name: 'mix' });
    peer.faults.drop();
    const meanwhile = await peer.slash({ name: 'mix' });
    expect([before, meanwhile].map(({ messages }) => messages[0]?.content)).toEqual(['answer 1', 'answer 2']);
    expect([peer.sessions.identified, peer.sessions.resumed]).toEqual([[0], [0]]);
    expect(bot.handled).toHaveLength(2);
    expect([peer.violations, bot.faults]).toEqual([[], []]);
  });

  test('hands over again what was handled, if asked to: a bot that forgets answers twice and is found out', async () => {
    const peer = await start();
    const bot = await counting(peer);
    await peer.slash({ name: 'mix' });
    peer.faults.replayOnResume = true;
    peer.faults.drop();
    await expect.poll(() => bot.faults.length, { timeout: 5000 }).toBe(1);
    expect(bot.handled[0]).toBe(bot.handled[1]);
    expect(bot.faults).toMatchObject([{ code: 40060 }]);
    expect(peer.violations).toEqual(['ada: /mix: callback: acknowledged twice']);
  });

  test('is noticed by its silence', async () => {
    const peer = await start({ heartbeat_ms: 300 });
    const bot = await counting(peer);
    peer.faults.loseHeartbeats();
    const seen = await peer.slash({ name: 'mix' });
    expect(seen.messages[0]?.content).toBe('answer 1');
    expect(peer.sessions.resumed).toEqual([0]);
    expect([peer.violations, bot.faults]).toEqual([[], []]);
  });
});

describe('an invalid session', () => {
  test('that can be resumed is resumed', async () => {
    const peer = await start();
    const bot = await counting(peer);
    peer.faults.invalidSession(true);
    await expect.poll(() => peer.sessions.resumed, { timeout: 5000 }).toEqual([0]);
    expect((await peer.slash({ name: 'mix' })).messages[0]?.content).toBe('answer 1');
    expect([peer.sessions.identified, peer.violations, bot.faults]).toEqual([[0], [], []]);
  });

  test('that cannot is begun anew, in its time; what happens meanwhile is lost and nobody is blamed', async () => {
    const peer = await start();
    const bot = await counting(peer);
    peer.faults.invalidSession(false);
    const lost = await peer.slash({ name: 'mix' });
    expect(lost.error).toBe('The application did not respond');
    await expect.poll(() => peer.sessions.identified, { timeout: 10_000 }).toEqual([0, 0]);
    expect((await peer.slash({ name: 'mix' })).messages[0]?.content).toBe('answer 1');
    expect([peer.sessions.resumed, peer.violations, bot.faults]).toEqual([[], [], []]);
  });
});

describe('several shards', () => {
  test('each hears its own servers, direct messages come to the first', async () => {
    const peer = await start({ shards: 3 });
    const shards: number[] = [];
    const bot = await startBareBot(
      peer,
      async (interaction) => {
        shards.push(interaction.guild?.shardId ?? -1);
        if (interaction.isChatInputCommand()) await interaction.reply('a');
      },
      { shards: 'auto' },
    );
    stops.push(bot.stop);
    await bot.client.application.commands.set([new SlashCommandBuilder().setName('mix').setDescription('d')]);
    expect(peer.guilds.map((guild) => shardOf(guild, 3))).toEqual([0, 1, 2]);
    for (const guild of [2, 0, 1]) await peer.slash({ name: 'mix' }, { guild });
    await peer.slash({ name: 'mix' }, { place: 'bot-dm' });
    expect(shards).toEqual([2, 0, 1, -1]);
    expect(peer.sessions.identified.toSorted()).toEqual([0, 1, 2]);
    peer.faults.drop();
    await expect.poll(() => peer.sessions.resumed.toSorted(), { timeout: 5000 }).toEqual([0, 1, 2]);
    expect([peer.violations, bot.faults]).toEqual([[], []]);
  });

  test('a second program on a shard is turned away within 5 s of the first', async () => {
    let time_ms = 0;
    const peer = await start({ identifyTime: () => time_ms });
    await counting(peer);
    time_ms = 4999;
    await identify(await opened(peer), peer);
    expect(peer.violations).toEqual(['gateway: shard 0 identified within 5 s of shard 0']);
    time_ms += 5000;
    await identify(await opened(peer), peer);
    expect(peer.violations).toHaveLength(1);
  });

  test('a program that is stopped and started again goes on at once', async () => {
    const peer = await start();
    const first = await counting(peer);
    await first.stop();
    const second = await counting(peer);
    expect((await peer.slash({ name: 'mix' })).messages[0]?.content).toBe('answer 1');
    expect([peer.violations, first.faults, second.faults]).toEqual([[], [], []]);
  });
});

describe('a REST interface that is busy or broken', () => {
  test('a 429 is waited for and sent again', async () => {
    const peer = await start();
    const bot = await counting(peer);
    peer.faults.rateLimit(1);
    const began = performance.now();
    const seen = await peer.slash({ name: 'mix' });
    expect(seen.messages[0]?.content).toBe('answer 1');
    expect(performance.now() - began).toBeGreaterThan(500);
    expect([seen.messages.length, peer.violations, bot.faults]).toEqual([1, [], []]);
  });

  test('who does not wait is found out', async () => {
    const peer = await start();
    peer.faults.rateLimit(1000);
    const ask = () => fetch(`${peer.rest}/v10/users/@me`, { headers: { authorization: `Bot ${peer.token}` } });
    const first = await ask();
    expect([first.status, first.headers.get('retry-after')]).toEqual([429, '0.500']);
    await expect.poll(async () => [(await ask()).status, peer.violations.length > 0]).toEqual([429, true]);
    expect(peer.violations[0]).toMatch(/^GET \/users\/@me : sent again \d+ ms before Retry-After was over$/);
  });

  test('a bucket that is empty says until when, and the client keeps to it', async () => {
    const peer = await start();
    const rest = new REST({ api: peer.rest }).setToken(peer.token);
    const began = performance.now();
    for (let count = 0; count < 7; count++) await rest.get('/users/@me');
    expect(performance.now() - began).toBeGreaterThan(900);
    expect(peer.violations).toEqual([]);
  });

  test('a server error is tried again', async () => {
    const peer = await start();
    const bot = await counting(peer);
    peer.faults.serverErrors(2);
    const seen = await peer.slash({ name: 'mix' });
    expect(seen.messages.map(({ content }) => content)).toEqual(['answer 1']);
    expect([peer.violations, bot.faults]).toEqual([[], []]);
  });
});

describe('who identifies badly', () => {
  const hello = { os: 'linux', browser: 'test', device: 'test' };
  test.each<readonly [string, object, number]>([
    ['with a wrong token', { token: 'x' }, 4004],
    ['as a shard that cannot be', { shard: [3, 2] }, 4010],
    ['with a privileged intent', { intents: GatewayIntentBits.MessageContent }, 4014],
    ['with more than 4096 bytes', { properties: { ...hello, os: 'x'.repeat(4096) } }, 4002],
  ])('%s', async (_, wrong, code) => {
    const peer = await start();
    const socket = await opened(peer);
    expect(await identify(socket, peer, wrong)).toBe(code);
    expect(peer.violations).toHaveLength(1);
  });

  test('shards that share a key within 5 s', async () => {
    const identifyTime = () => 0;
    const peer = await start({ shards: 2, maxConcurrency: 1, identifyTime });
    for (const shard of [0, 1]) await identify(await opened(peer), peer, { shard: [shard, 2] });
    expect(peer.violations).toEqual(['gateway: shard 1 identified within 5 s of shard 0']);
    const apart = await start({ shards: 2, maxConcurrency: 2, identifyTime });
    for (const shard of [0, 1]) await identify(await opened(apart), apart, { shard: [shard, 2] });
    expect(apart.violations).toEqual([]);
  });

  test('more often than a day allows', async () => {
    const peer = await start({ shards: 2, sessionStarts: 1 });
    await identify(await opened(peer), peer, { shard: [0, 2] });
    const socket = await opened(peer);
    await identify(socket, peer, { shard: [1, 2] });
    expect(peer.violations).toEqual(['gateway: more than 1 identifies (closed with 4004)']);
  });

  test('or sends more than 120 events in a minute', async () => {
    const peer = await start();
    const socket = await opened(peer);
    for (let count = 0; count < 121; count++) socket.send(JSON.stringify({ op: 1, d: null }));
    expect(await closeCode(socket)).toBe(4008);
  });

  test('or says nothing at all', async () => {
    const peer = await start({ heartbeat_ms: 100 });
    const socket = await opened(peer);
    expect(await closeCode(socket)).toBe(4000);
    expect(peer.violations).toEqual(['gateway: no heartbeat (closed with 4000)']);
  });
});

async function opened(peer: Peer): Promise<WebSocket> {
  const information = await fetch(`${peer.rest}/v10/gateway/bot`, { headers: { authorization: `Bot ${peer.token}` } });
  const { url } = (await information.json()) as { url: string };
  const socket = new WebSocket(`${url}?v=10&encoding=json`);
  await once(socket, 'message');
  return socket;
}

/** Sends an IDENTIFY; the code of the close if that is what comes of it. */
async function identify(socket: WebSocket, peer: Peer, wrong: object = {}): Promise<number | undefined> {
  const properties = { os: 'linux', browser: 'test', device: 'test' };
  const d = { token: peer.token, intents: GatewayIntentBits.Guilds, shard: [0, 1], properties, ...wrong };
  const heard = Promise.race([once(socket, 'message').then(() => undefined), closeCode(socket)]);
  socket.send(JSON.stringify({ op: 2, d }));
  return heard;
}

async function closeCode(socket: WebSocket): Promise<number> {
  const [code] = (await once(socket, 'close')) as [number];
  return code;
}
