import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { REST } from 'discord.js';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { register } from '../../adapters/discord/register.ts';
import { rangesFollow } from '../../commands/early.ts';
import { commands } from '../../commands/registry.ts';
import { linesBefore } from '../contract/prepared.ts';
import { type Peer, type Seen, type SeenMessage, startDiscordPeer, type Who } from '../peers/discord/peer.ts';
import { slashOf } from '../peers/discord/typed.ts';
import { openBot } from './discord-bot.ts';

/** The bot at the loopback platform, which judges everything that is sent. */
let peer: Peer;
let bot: Awaited<ReturnType<typeof openBot>>;
let data: string;

const open = () => openBot(peer, { data });

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

/** The whole answer, in the place of typical values if those came first. */
const done = (seen: Seen) =>
  seen.until(
    ({ messages }) =>
      messages.some(({ loading, deleted }) => !loading && !deleted) && !words(seen).includes(rangesFollow),
    60_000,
  );
const asked = async (line: string, who: Who = {}) => done(await peer.slash(slashOf(line), who));
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
    const names = commands.flatMap(({ name, onMessage }) => [name.split(' ')[0], onMessage?.label ?? []].flat());
    expect(new Set(peer.commands.map(({ name }) => name))).toEqual(new Set(names));
    const again = await register({ rest: new REST({ api: peer.rest }).setToken(peer.token), commands });
    expect(again).toEqual({ differences: [], unknown: [] });
  });
});

describe('every example of every command', () => {
  const examples = commands.flatMap(({ name, examples: all }) => all.map(({ line }) => [name, line] as const));
  test.each(examples)('%s: %s', async (name, line) => {
    const who = { user: line, place: 'bot-dm' } as const;
    for (const earlier of linesBefore(name)) await asked(earlier, who);
    const seen = await asked(line, who);
    expect(seen.error).toBeUndefined();
    expect(shown(seen).embeds).toHaveLength(1);
    expect(shown(seen).embeds[0]?.description ?? shown(seen).content).toMatch(/^\*\*.+/);
    expect(words(seen)).not.toContain('That went wrong here');
    // A share's code is somebody else's: made up in the example.
    if (name !== 'build copy') expect(words(seen)).not.toContain('Expected');
  });
});

describe('buttons', () => {
  test('a follow-up is asked, and speaks of the message it stands on', async () => {
    const who = { user: 'follow', place: 'bot-dm' } as const;
    const first = await asked('mix 30 L', who);
    await asked('mix 99 L', who);
    const other = await press(first, 'The same in castable', who);
    expect(words(other)).toContain('You gave');
    expect(words(other)).toMatch(/amount 30 L/);
  });

  test('the working is for the asker alone', async () => {
    const working = await press(await asked('mix 30 L', { user: 'work' }), 'Show the working', { user: 'work' });
    expect(shown(working).ephemeral).toBe(true);
    expect(words(working)).toContain('The working');
    const [file, ...others] = shown(working).attachments;
    expect(others).toEqual([]);
    expect(file?.name).toBe('why-mix.md');
    expect(new TextDecoder().decode(file?.bytes)).toMatch(
      /^# How `mix 30 L` was worked out\n[\s\S]*\n## To repeat it\n/,
    );
  });

  test('the other units replace the answer for who asked, and are a private answer for others', async () => {
    const first = await asked('mix 30 L', { user: 'units' });
    const other = await press(first, 'In US units', { user: 'other' });
    expect(shown(other).ephemeral).toBe(true);
    expect(shown(other).embeds[0]?.description).toMatch(/^\*\*.* lb/);
    const mine = await press(first, 'In US units', { user: 'units' });
    expect(mine.error).toBeUndefined();
    expect(shown(first).embeds[0]?.description).toMatch(/^\*\*.* lb/);
    expect(idOf(first, 'In metric')).toMatch(/^t1:u:/);
  });

  test('an answer can be taken back to oneself and shared again, by who asked', async () => {
    const who = { user: 'shy' };
    const first = await asked('mix 30 L', who);
    const refused = await press(first, 'For me only', { user: 'nosy' });
    expect(words(refused)).toContain('Only who asked');
    const pressed = await peer.press(first, idOf(first, 'For me only'), who);
    const own = await pressed.until(({ messages }) => messages.some(({ ephemeral }) => ephemeral));
    expect(shown(own).ephemeral).toBe(true);
    expect(first.messages.at(-1)?.deleted).toBe(true);
    expect(shown(await press(own, 'Share', who)).ephemeral).toBe(false);
  });

  test('mean the same after a restart', async () => {
    const who = { user: 'patient', place: 'bot-dm' } as const;
    const first = await asked('mix 30 L', who);
    await bot.stop();
    bot = await open();
    const after = await press(first, 'The same in castable', who);
    expect(words(after)).toMatch(/amount 30 L/);
  });
});

describe('forms', () => {
  test('a wall asked without layers opens one, a line a layer', async () => {
    const who = { user: 'mason', place: 'bot-dm' } as const;
    const form = await peer.slash({ name: 'wall', options: { hot: '1000 °C' } }, who);
    expect(form.state).toBe('modal');
    const answer = await done(
      await peer.submit(form, { layers: '1 in castable\n2.5 in perlite', hot: '1000 °C' }, who),
    );
    expect(words(answer)).toContain('layers, hot side first 1 in castable; 2.5 in perlite');
  });

  test('an answer can be changed in one that holds what was given', async () => {
    const who = { user: 'changer', place: 'bot-dm' } as const;
    const form = await peer.press(
      ...[await asked('mix 30 L', who)].map((seen) => [seen, idOf(seen, 'Change')] as const)[0]!,
      who,
    );
    expect(form.state).toBe('modal');
    expect(JSON.stringify(form.modal)).toContain('"value":"30 L"');
    const answer = await done(await peer.submit(form, { amount: '40 L' }, who));
    expect(words(answer)).toMatch(/amount 40 L/);
  });
});

describe('mistakes', () => {
  test('are said to the asker alone, with what can hurt and a line that works', async () => {
    const wrong = await asked('mix 3 volts', { user: 'wrong' });
    expect(shown(wrong).ephemeral).toBe(true);
    expect(words(wrong)).toContain('What can hurt');
    expect(words(wrong)).toContain('Expected');
    const label = controls(wrong).find((control) => control.label?.startsWith('Try: '))?.label ?? '';
    const right = await press(wrong, label, { user: 'wrong' });
    expect(words(right)).not.toContain('Expected');
  });

  test('a choice that is none is offered as a menu', async () => {
    const who = { user: 'chooser' };
    await asked('mix 30 L', who);
    const wrong = await asked('again ram=medium', who);
    const menu = controls(wrong).find((control) => control.custom_id?.startsWith('t1:v:'))?.custom_id ?? '';
    const right = await done(await peer.select(wrong, menu, ['light'], who));
    expect(words(right)).toContain('rammed how light');
  });

  test('what is typed comes back without pinging or formatting anything', async () => {
    const seen = await asked('stuff @everyone **x** <@1> [a](https://b.example)', { user: 'rude' });
    expect(words(seen)).not.toMatch(/@everyone|<@1>|[^\\]\[a\]/);
  });

  test('one who asks too fast is told when, and what can hurt, and first aid is answered all the same', async () => {
    const who = { user: 'hasty', place: 'bot-dm' } as const;
    // At once: one after the other, a slow machine would ask no faster than is answered.
    const all = await Promise.all(Array.from({ length: 13 }, () => asked('mix 30 L', who)));
    const refused = all.find((seen) => words(seen).includes('there is room again in'));
    expect(words(refused!)).toContain('What can hurt');
    expect(words(await asked('emergency burns', who))).not.toContain('there is room again');
  });
});

describe('suggestions', () => {
  const offered = async (name: string, focused: string, typed: string, who: Who = {}) =>
    (await peer.autocomplete({ name, focused, options: { [focused]: typed } }, who)).map(({ value }) => value);

  test('a bare number gets its units, the asker’s first', async () => {
    expect((await offered('mix', 'outside', '14')).slice(0, 3)).toEqual(['14', '14 in', '14 ft']);
    expect((await offered('mix', 'outside', '14', { locale: 'de' })).slice(0, 3)).toEqual(['14', '14 mm', '14 cm']);
  });

  test('names come from the catalogue, behind an amount and earlier layers too', async () => {
    expect(await offered('stuff', 'material', 'perl')).toContain('perlite');
    expect(await offered('wall', 'layers', '1 in castable; 2 in perl')).toContain('1 in castable; 2 in perlite');
    expect(await offered('help', 'command', 'siz')).toContain('size can');
  });

  test('builds of the asker are offered where another answer is wanted', async () => {
    const who = { user: 'builder', place: 'bot-dm' } as const;
    await asked('mix 30 L', who);
    await asked('build save club lining', who);
    expect(await offered('mix', 'for', '', who)).toEqual(['last', 'club lining']);
    expect(await offered('mix', 'for', '', { user: 'stranger', place: 'bot-dm' })).toEqual(['last']);
  });
});

describe('places', () => {
  test.each(['guild', 'bot-dm', 'user-install'] as const)('%s: answered in full', async (place) => {
    const seen = await asked('mix 30 L', { user: `in ${place}`, place });
    expect(words(seen)).toContain('clay');
    expect(shown(seen).ephemeral).toBe(false);
  });

  test('what is private is answered privately', async () => {
    for (const line of ['mydata', 'forget']) {
      expect(shown(await asked(line, { user: 'private' })).ephemeral).toBe(true);
    }
  });

  test('one’s own data comes as a file', async () => {
    const who = { user: 'owner' };
    await asked('mix 30 L', who);
    const [file] = shown(await asked('mydata', who)).attachments;
    expect(file?.name).toBe('mydata.json');
    expect(JSON.parse(Buffer.from(file?.bytes ?? []).toString())).toMatchObject({ lastAsks: [{ command: 'mix' }] });
  });

  test('only moderators set what holds for a whole place', async () => {
    const refused = await asked('units US who=place', { user: 'member' });
    expect(words(refused)).toContain('Expected');
    const allowed = await asked('units metric who=place', { user: 'admin', admin: true });
    expect(words(allowed)).not.toContain('Expected');
    // Nor by changing an own setting into one of the place afterwards.
    await asked('price sand 50 lb $5', { user: 'sly' });
    const sly = await asked('again who=place', { user: 'sly' });
    expect(words(sly)).toContain('Expected');
  });

  test('a picture is attached, described, and shown in the embed', async () => {
    const seen = await asked('wall 1 in castable; 2.5 in perlite hot=1000 °C', { user: 'viewer' });
    const [picture] = shown(seen).attachments;
    expect(picture?.name).toBe('wall.png');
    expect(picture?.description?.length).toBeGreaterThan(20);
    expect(
      Buffer.from(picture?.bytes ?? [])
        .subarray(1, 4)
        .toString(),
    ).toBe('PNG');
  });
});

describe('a bad line', () => {
  test('a dropped connection that delivers again what was answered is answered once', async () => {
    const before = peer.seen.length;
    const first = await asked('mix 30 L', { user: 'dropped' });
    peer.faults.replayOnResume = true;
    const resumed = peer.sessions.resumed.length;
    peer.faults.drop();
    await expect.poll(() => peer.sessions.resumed.length, { timeout: 15_000 }).toBeGreaterThan(resumed);
    const later = await asked('mix 31 L', { user: 'dropped' });
    expect(first.messages).toHaveLength(1);
    expect(later.messages).toHaveLength(1);
    expect(peer.seen.length).toBe(before + 2);
  });

  test('a platform that asks for patience is asked again later', async () => {
    peer.faults.rateLimit(1);
    const seen = await asked('mix 30 L', { user: 'limited', place: 'bot-dm' });
    expect(words(seen)).toContain('clay');
  });

  test('a session that is taken away is begun anew', async () => {
    const begun = peer.sessions.identified.length;
    peer.faults.invalidSession(false);
    await expect.poll(() => peer.sessions.identified.length, { timeout: 20_000 }).toBeGreaterThan(begun);
    expect(words(await asked('mix 30 L', { user: 'renewed', place: 'bot-dm' }))).toContain('clay');
  });

  test('a platform that fails for a moment is asked again', async () => {
    peer.faults.serverErrors(1);
    const seen = await asked('mix 30 L', { user: 'five-hundred', place: 'bot-dm' });
    expect(words(seen)).toContain('clay');
  });
});
