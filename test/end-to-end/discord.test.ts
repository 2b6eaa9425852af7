import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { REST } from 'discord.js';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { fieldNames, moreOption } from '../../adapters/discord/bodies.ts';
import { slashName } from '../../adapters/discord/names.ts';
import { register } from '../../adapters/discord/register.ts';
import { openDiscord } from '../../bot/discord.ts';
import type { Command } from '../../commands/command.ts';
import { parseLine } from '../../commands/grammar.ts';
import { commands } from '../../commands/registry.ts';
import { type Peer, type Seen, type SeenMessage, startDiscordPeer, type Who } from '../peers/discord/peer.ts';

/** The program's own wiring against the loopback platform, which judges everything that is sent. */
let peer: Peer;
let bot: Awaited<ReturnType<typeof openDiscord>>;
let data: string;

const open = () => {
  const discord = { token: peer.token, api: peer.rest };
  return openDiscord({ log: 'silent', color: false, data, discord });
};

beforeAll(async () => {
  data = await mkdtemp(join(tmpdir(), 'discord-'));
  peer = await startDiscordPeer();
  await register({ rest: new REST({ api: peer.rest }).setToken(peer.token), commands });
  bot = await open();
});
afterAll(async () => {
  await bot?.stop();
  await peer?.close();
  await rm(data, { recursive: true });
});
/** Those of one test, so that the next is judged for itself. */
let judged = 0;
afterEach(() => {
  const mine = peer.violations.slice(judged);
  judged = peer.violations.length;
  expect(mine).toEqual([]);
});

/** A typed line as somebody would fill it into the platform's fields. */
function slashOf(line: string, who: Who = {}): Promise<Seen> {
  const ask = parseLine(line, commands, { asker: '', place: '' });
  const command = commands.find(({ name }) => name === ask.command) as Command;
  const fields = fieldNames(command);
  const known = Object.entries(ask.options).filter(([name]) => fields.includes(name));
  const others = Object.entries(ask.options).filter(([name]) => !fields.includes(name));
  const more = others.map(([name, value]) => `${name}=${value}`).join(' ');
  const options = Object.fromEntries([...known, ...(more === '' ? [] : [[moreOption, more]])]);
  return peer.slash({ ...slashName(command, commands), options }, who);
}

const done = (seen: Seen) => seen.until(({ messages }) => messages.some(({ loading }) => !loading));
const asked = async (line: string, who: Who = {}) => done(await slashOf(line, who));
const shown = (seen: Seen): SeenMessage => seen.messages.findLast(({ deleted, loading }) => !deleted && !loading)!;
const words = (seen: Seen): string => JSON.stringify(shown(seen).embeds) + shown(seen).content;

interface Control {
  readonly label?: string;
  readonly custom_id?: string;
  readonly components?: readonly Control[];
}
const controls = (seen: Seen): readonly Control[] =>
  (shown(seen).components as readonly Control[]).flatMap(({ components = [] }) => components);
const idOf = (seen: Seen, label: string): string => {
  const found = controls(seen).find((control) => control.label === label)?.custom_id;
  if (found === undefined) throw new Error(`no button "${label}" among ${controls(seen).map((one) => one.label)}`);
  return found;
};
const press = async (seen: Seen, label: string, who: Who = {}) => done(await peer.press(seen, idOf(seen, label), who));

describe('registered', () => {
  test('every command of the one list, and nothing is sent again', async () => {
    const names = new Set(commands.map(({ name }) => name.split(' ')[0]));
    expect(new Set(peer.commands.map(({ name }) => name))).toEqual(names);
    const again = await register({ rest: new REST({ api: peer.rest }).setToken(peer.token), commands });
    expect(again).toEqual({ differences: [], unknown: [] });
  });
});

/** Some examples speak of the last question, of what was kept or of a price that was named. */
const before = [
  'mix 30 L',
  'build save club lining',
  'build save club lining for=(mix 30 L spare=5%)',
  'build save small one for=(mix 12 L)',
  'price sand 50 lb $5',
];

describe('every example of every command', () => {
  const examples = commands.flatMap(({ name, examples: all }) => all.map(({ line }) => [name, line] as const));
  test.each(examples)('%s: %s', async (name, line) => {
    const who = { user: line, place: 'bot-dm' } as const;
    const rests = /^(build|price|why|again|mydata)/.test(name);
    for (const earlier of rests ? before : []) await asked(earlier, who);
    const seen = await asked(line, who);
    expect(seen.error).toBeUndefined();
    expect(shown(seen).embeds).toHaveLength(1);
    expect(shown(seen).embeds[0]?.description ?? shown(seen).content).toMatch(/^\*\*.+/);
    expect(words(seen)).not.toContain('That went wrong here');
    // A share's code is somebody else's: made up in the example.
    if (name !== 'build copy') expect(words(seen)).not.toContain('Expected');
  });
});
