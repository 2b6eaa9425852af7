import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { REST } from 'discord.js';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { register } from '../../adapters/discord/register.ts';
import { openDiscord } from '../../bot/discord.ts';
import type { Running } from '../../bot/serve.ts';
import { commands } from '../../commands/registry.ts';
import { type Peer, type Seen, type SeenMessage, startDiscordPeer, type Who } from '../peers/discord/peer.ts';
import { slashOf } from '../peers/discord/typed.ts';
import { type Bot, makeBot } from '../peers/matrix-bot.ts';
import { type Postgres, postgresMissing, startPostgres } from '../peers/postgres.ts';
import { type Synapse, startSynapse, synapseMissing } from '../peers/synapse.ts';
import { type Asker, type Heard, openAsker } from '../peers/synapse-asker.ts';

/**
 * The club's newcomer, week by week: from the first question to a furnace, its checklist ticked by two people, and the
 * reminders of its drying, through a restart. The same on both platforms and in both homes of the store.
 */
type Home = { readonly data: string } | { readonly databaseUrl: string };

/** Lets the first reminder that waits fall due, as weeks would. */
async function letWeeksPass(home: Home, now_ms: number): Promise<void> {
  const statement = (due: string) =>
    `update outbox set due_at = ${due} where id = (select id from outbox where sent_at is null and channel like 'reminders:%' order by due_at, id limit 1)`;
  if ('data' in home) {
    const file = new DatabaseSync(join(home.data, 'teemer.sqlite'), { timeout: 5000 });
    file.exec(statement(String(now_ms)));
    file.close();
    return;
  }
  const client = new pg.Client({ connectionString: home.databaseUrl });
  await client.connect();
  await client.query(statement(String(now_ms)));
  await client.end();
}

const homes = ['a folder', 'PostgreSQL'] as const;
let postgres: Postgres | undefined;
let folder: string;
const homeIn = async (kind: (typeof homes)[number]): Promise<Home> =>
  kind === 'a folder' ? { data: mkdtempSync(join(folder, 'home-')) } : { databaseUrl: await postgres!.database() };

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'teemer-weeks-'));
  if (!postgresMissing()) postgres = await startPostgres({ durable: false });
}, 60_000);
afterAll(async () => {
  await postgres?.remove();
  rmSync(folder, { recursive: true, force: true });
});

describe.each(homes)('on Discord, kept in %s', (kind) => {
  let peer: Peer;
  let bot: Running;
  let home: Home;
  let now_ms = Date.UTC(2026, 2, 2, 18);
  const open = async () => {
    const config = { log: 'silent', discord: { token: peer.token, api: peer.rest }, ...home } as const;
    bot = await openDiscord(config, { now: () => new Date(now_ms), poll_ms: 50 });
  };
  beforeEach(async () => {
    peer = await startDiscordPeer({ unlimited: true });
    await register({ rest: new REST({ api: peer.rest }).setToken(peer.token), commands });
  });
  afterEach(async () => {
    await bot?.stop();
    await peer.close();
  });

  const done = (seen: Seen) => seen.until(({ messages }) => messages.some(({ loading }) => !loading), 25_000);
  const shown = (seen: Seen): SeenMessage => seen.messages.findLast(({ deleted, loading }) => !deleted && !loading)!;
  const words = (seen: Seen): string => JSON.stringify(shown(seen).embeds) + shown(seen).content;
  const asked = async (line: string, who: Who) => done(await peer.slash(slashOf(line), who));
  const press = async (seen: Seen, label: string, who: Who) => {
    const rows = shown(seen).components as readonly { components: readonly { label?: string; custom_id?: string }[] }[];
    const all = rows.flatMap(({ components }) => components);
    const found = all.find((one) => one.label?.toLowerCase() === label.toLowerCase());
    if (!found?.custom_id) throw new Error(`no button "${label}" among ${all.map((one) => one.label)}`);
    return done(await peer.press(seen, found.custom_id, who));
  };
  const reminders = (since: number) =>
    peer.seen
      .slice(since)
      .filter((seen) => seen.did.startsWith('the bot writes') && seen.messages.length > 0)
      .map(words);

  test.skipIf(kind === 'PostgreSQL' && postgresMissing())(
    'from the first question to a reminder of its drying',
    {
      timeout: 90_000,
    },
    async () => {
      const [ann, ben] = [{ user: 'ann' }, { user: 'ben' }];
      home = await homeIn(kind);
      await open();
      let at = await asked('start', ann);
      for (const label of ['aluminium', 'a 20 gal can', 'outdoors, on soil or sand']) at = await press(at, label, ann);
      await bot.stop();
      await open();
      for (const label of ['I don’t know yet', '$250']) at = await press(at, label, ann);
      expect(words(at)).toContain('Kept as first furnace');

      expect(words(await asked('checklist tick 1.1', ben))).toContain('1 of');
      await bot.stop();
      await open();
      const list = await asked('checklist', ann);
      expect(words(list)).toContain('another');
      // Everybody there may press its buttons.
      expect(shown(list).ephemeral).toBe(false);
      expect(words(await asked('checklist tick first melt', ann))).toMatch(/rests on|before|first/i);

      await asked('remind for=(dry for=first furnace) at=8:00 zone=Europe/Berlin', ann);
      await bot.stop();
      const since = peer.seen.length;
      now_ms += 60_000;
      await letWeeksPass(home, now_ms);
      await open();
      await expect.poll(() => reminders(since).length, { timeout: 10_000 }).toBe(1);
      expect(reminders(since)[0]).toContain('A damp lining bursts');
      expect(peer.violations).toEqual([]);
    },
  );
});

describe.skipIf(synapseMissing())('on Matrix', { timeout: 180_000 }, () => {
  let synapse: Synapse;
  let bot: Bot;
  let ann: Asker;
  let ben: Asker;
  beforeAll(async () => {
    synapse = await startSynapse();
    ann = await openAsker(synapse, 'ann', { encrypted: true });
    ben = await openAsker(synapse, 'ben', { encrypted: true });
  }, 120_000);
  afterEach(() => bot?.stop('SIGKILL'));
  afterAll(async () => {
    ann?.leave();
    ben?.leave();
    await synapse?.remove();
  });

  test.each(homes)('kept in %s: from the first question to a reminder of its drying', async (kind) => {
    if (kind === 'PostgreSQL' && postgresMissing()) return;
    const home = await homeIn(kind);
    // The keys of an encrypted room live in the folder in either case.
    const env =
      'data' in home
        ? { TEEMER_DATA: home.data }
        : { TEEMER_DATA: mkdtempSync(join(folder, 'keys-')), DATABASE_URL: home.databaseUrl };
    bot = await makeBot(synapse, { user: `teemer-${homes.indexOf(kind)}`, file: 'test/peers/unhurried-bot.ts', env });
    await bot.start();
    const room = await ann.room([bot.userId], { encrypted: true });
    await ann.client.invite(room, ben.userId);
    await ben.client.joinRoom(room);
    const body = ({ content }: Heard) => String(content.body);
    /** What the bot says with these words after an event, were it by an edit of "working on it". */
    const told = (who: Asker, words: RegExp, event: string) =>
      who.hear(
        (one) =>
          one.room === room &&
          one.sender === bot.userId &&
          words.test(JSON.stringify(one.content)) &&
          who.heard.indexOf(one) > who.heard.findIndex(({ id }) => id === event),
        60_000,
      );
    const answered = async (who: Asker, line: string, words: RegExp) => told(who, words, await who.say(room, line));
    const restart = async () => {
      await bot.stop();
      await bot.start();
    };

    let at = await answered(ann, '!teemer start', /1 of 5/);
    for (const words of [/2 of 5/, /3 of 5/]) {
      const message = at.relation.rel_type === 'm.replace' ? at.relation.event_id : at.id;
      at = await told(ann, words, await ann.react(room, message ?? at.id, '1️⃣'));
    }
    await restart();
    await answered(ann, '!teemer start where=outdoors burn=skip spend=$250', /Kept as first furnace/);
    await answered(ben, '!teemer checklist tick 1.1', /1 of \d+ done/);
    await restart();
    await answered(ann, '!teemer checklist', /another/);
    await answered(ann, '!teemer remind for=(dry for=first furnace) at=8:00 zone=Europe/Berlin', /reminders? of/);
    await bot.stop();
    await letWeeksPass(home, Date.now());
    const isReminder = (one: Heard) =>
      one.room === room &&
      one.sender === bot.userId &&
      one.content.msgtype === 'm.text' &&
      body(one).includes('What can hurt');
    expect(ann.heard.filter(isReminder)).toEqual([]);
    await bot.start();
    expect(body(await ann.hear(isReminder, 60_000))).toContain('A damp lining bursts');
    expect(ann.heard.filter(isReminder)).toHaveLength(1);
  });
});
