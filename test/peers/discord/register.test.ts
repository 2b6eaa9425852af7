import { REST, Routes, SlashCommandBuilder } from 'discord.js';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { manualClock } from './clock.ts';
import { type Peer, startDiscordPeer } from './peer.ts';

let peer: Peer;
let rest: REST;
const clock = manualClock();

beforeEach(async () => {
  peer = await startDiscordPeer({ clock });
  rest = new REST({ api: peer.rest }).setToken(peer.token);
});
afterEach(() => peer.close());

const named = (name: string) => new SlashCommandBuilder().setName(name).setDescription('d').toJSON();
const everywhere = () => Routes.applicationCommands(peer.applicationId);

test('overwriting replaces all of one scope and keeps the ids of what stays', async () => {
  const first = (await rest.put(everywhere(), { body: [named('mix'), named('wall')] })) as {
    id: string;
    name: string;
  }[];
  const guild = Routes.applicationGuildCommands(peer.applicationId, peer.guilds[0]!);
  await rest.put(guild, { body: [named('mix')] });
  const second = (await rest.put(everywhere(), { body: [named('mix'), named('melt')] })) as typeof first;
  expect(second.map(({ name }) => name)).toEqual(['mix', 'melt']);
  expect(second[0]?.id).toBe(first[0]?.id);
  expect(peer.commands.map(({ name, guild_id }) => [name, guild_id])).toEqual([
    ['mix', peer.guilds[0]],
    ['mix', undefined],
    ['melt', undefined],
  ]);
  expect(peer.violations).toEqual([]);
});

test('one is created, read, changed and deleted', async () => {
  const made = (await rest.post(everywhere(), { body: named('mix') })) as { id: string };
  const one = Routes.applicationCommand(peer.applicationId, made.id);
  await rest.patch(one, { body: { description: 'other' } });
  expect(await rest.get(one)).toMatchObject({ id: made.id, name: 'mix', description: 'other' });
  await rest.delete(one);
  await expect(rest.get(one)).rejects.toMatchObject({ code: 10063 });
  expect(await rest.get(everywhere())).toEqual([]);
  expect(peer.violations).toEqual([]);
});

test('what comes back is what was sent, with what the platform adds', async () => {
  const option = { type: 3, name: 'amount', description: 'd', required: false };
  const body = [{ ...named('mix'), options: [option], integration_types: [0, 1], contexts: [0, 1, 2] }];
  await rest.put(everywhere(), { body });
  const [back] = (await rest.get(everywhere())) as Record<string, unknown>[];
  expect(back).toMatchObject({ name: 'mix', type: 1, integration_types: [0, 1], contexts: [0, 1, 2], nsfw: false });
  expect(back?.options).toEqual([{ type: 3, name: 'amount', description: 'd' }]);
});

test('a wrong set is refused whole', async () => {
  await rest.put(everywhere(), { body: [named('mix')] });
  const wrong = [named('wall'), { ...named('melt'), colour: 1 }];
  await expect(rest.put(everywhere(), { body: wrong })).rejects.toThrow('unknown key colour');
  await expect(rest.put(everywhere(), { body: [named('wall'), named('wall')] })).rejects.toThrow('two chat commands');
  expect(peer.commands.map(({ name }) => name)).toEqual(['mix']);
  expect(peer.violations).toEqual([
    'command melt: body: unknown key colour',
    'commands: two chat commands are called wall',
  ]);
});

test('200 creations a day, and again the day after', async () => {
  const set = (from: number, count: number) => Array.from({ length: count }, (_, i) => named(`c${from + i}`));
  await rest.put(everywhere(), { body: set(0, 100) });
  await rest.put(everywhere(), { body: set(0, 100) });
  await rest.put(everywhere(), { body: set(100, 100) });
  expect(peer.violations).toEqual([]);
  const once = new REST({ api: peer.rest, rejectOnRateLimit: () => true }).setToken(peer.token);
  await expect(once.post(everywhere(), { body: named('more') })).rejects.toThrow();
  expect(peer.violations).toEqual(['more than 200 commands created in a day']);
  clock.advance(86_400_001);
  await rest.put(everywhere(), { body: [named('more')] });
  expect(peer.commands.map(({ name }) => name)).toEqual(['more']);
});

test('nothing without the token', async () => {
  const stranger = new REST({ api: peer.rest }).setToken('wrong');
  await expect(stranger.get(everywhere())).rejects.toMatchObject({ status: 401 });
  expect(peer.violations).toEqual([`GET /api/v10${everywhere()}: without the bot's token`]);
});

test('a member can use only what is registered, where it is offered', async () => {
  const can = {
    type: 1,
    name: 'can',
    description: 'd',
    options: [{ type: 3, name: 'volume', description: 'd', required: true }],
  };
  const body = [
    { ...named('size'), options: [can] },
    { ...named('mix'), contexts: [0] },
  ];
  await rest.put(everywhere(), { body });
  const slash = async (...line: Parameters<Peer['slash']>) => peer.slash(...line);
  await expect(slash({ name: 'melt' })).rejects.toThrow('No command /melt');
  await expect(slash({ name: 'size' })).rejects.toThrow('is not registered: can');
  await expect(slash({ name: 'size', sub: 'can' })).rejects.toThrow('needs volume');
  await expect(slash({ name: 'size', sub: 'can', options: { volume: '1', x: '1' } })).rejects.toThrow('no option x');
  await expect(slash({ name: 'mix' }, { place: 'bot-dm' })).rejects.toThrow('not offered in direct messages with ada');
});
