import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { openStore } from '../../bot/store/open.ts';
import type { NewReminder } from '../../commands/memory-weeks.ts';
import { type Bot, makeBot } from '../peers/matrix-bot.ts';
import { type Synapse, startSynapse, synapseMissing } from '../peers/synapse.ts';
import { type Asker, answerTo, type Heard, openAsker } from '../peers/synapse-asker.ts';

/** Reminders through a real homeserver, the program in a process of its own. */
describe.skipIf(synapseMissing())('reminders on Matrix', { timeout: 120_000 }, () => {
  let synapse: Synapse;
  let bot: Bot;
  let data: string;
  let ann: Asker;

  beforeAll(async () => {
    synapse = await startSynapse();
    data = mkdtempSync(join(tmpdir(), 'teemer-reminders-'));
    bot = await makeBot(synapse, { file: 'test/peers/unhurried-bot.ts', env: { TEEMER_DATA: data } });
    await bot.start();
    ann = await openAsker(synapse, 'ann', { encrypted: true });
  }, 120_000);
  afterAll(async () => {
    ann?.leave();
    await bot?.stop('SIGKILL');
    await synapse?.remove();
    if (data) rmSync(data, { recursive: true, force: true });
  });

  const reminded = (room: string, what: string, asker = ann) => asker.heard.filter(isReminder(room, what));
  const isReminder = (room: string, what: string) => (heard: Heard) =>
    heard.room === room &&
    heard.sender === bot.userId &&
    heard.content.msgtype === 'm.text' &&
    bodyOf(heard).includes(what);
  const bodyOf = ({ content }: Heard) => String(content.body);
  const ask = async (room: string, line: string) =>
    bodyOf(await ann.hear(answerTo(bot.userId, await ann.say(room, line)), 60_000));
  /** Whatever came with what was asked before would be there: it has answered something that was asked after it. */
  const answers = (room: string) => ask(room, 'mix 30 L');
  /** Until the reminder that says so is marked as sent. */
  const marked = async (what: string) => {
    const file = new DatabaseSync(join(data, 'teemer.sqlite'));
    const open = file.prepare('select count(*) as open from outbox where sent_at is null and body like ?');
    await vi.waitFor(() => expect(open.get(`%${what}%`)).toEqual({ open: 0 }), { timeout: 20_000, interval: 50 });
    file.close();
  };

  /** As it stands in the store after it was set a while ago. */
  async function setBefore(room: string, more: Partial<NewReminder> = {}): Promise<void> {
    const store = await openStore({ data });
    const given = {
      place: `matrix:${room}`,
      dueAt: noonYesterday(),
      zone: 'Europe/Berlin',
      what: 'light the small fire',
      holds: ['no rain into it'],
      facts: ['hot-work'],
    };
    await store.memory.setReminders(`matrix:${ann.userId}`, [{ ...given, ...more }]);
    await store.close();
  }

  test.each([
    ['plain', false],
    ['encrypted', true],
  ])('comes once, in a %s room, names its asker and says what can hurt', async (what, encrypted) => {
    const room = await ann.room([bot.userId], { encrypted });
    expect(await ask(room, `remind in 0.1 min light the ${what} fire`)).toContain('I will remind you on');
    const heard = await ann.hear(isReminder(room, `light the ${what} fire`), 30_000);
    await marked(`light the ${what} fire`);
    await answers(room);
    expect(reminded(room, `light the ${what} fire`)).toHaveLength(1);
    expect(heard.wasEncrypted).toBe(encrypted);
    expect(heard.content['m.mentions']).toEqual({ user_ids: [ann.userId] });
    expect(heard.relation.rel_type).toBeUndefined();
    for (const part of ['What can hurt', 'Local fire and gas rules', 'First make sure', 'someone stays with it']) {
      expect(bodyOf(heard)).toContain(part);
    }
    // Its numbers can be asked below it.
    const number = await ann.react(room, heard.id, '1️⃣');
    const again = await ann.hear(
      (one) =>
        one.room === room &&
        one.content.msgtype === 'm.notice' &&
        one.id !== number &&
        bodyOf(one).includes('I will remind you on') &&
        JSON.stringify(one.content).includes(heard.id),
      30_000,
    );
    expect(bodyOf(again)).toContain(`light the ${what} fire`);
  });

  test('one that fell due while the bot was away comes once, late, and not again after it was killed', async () => {
    const room = await ann.room([bot.userId]);
    await bot.stop();
    await setBefore(room);
    await bot.start();
    const heard = await ann.hear(isReminder(room, 'light the small fire'), 30_000);
    expect(bodyOf(heard)).toMatch(/Due yesterday, 1[12]:00; I was away\./);
    await marked('light the small fire');
    await bot.stop('SIGKILL');
    await bot.start();
    await answers(room);
    expect(reminded(room, 'light the small fire')).toHaveLength(1);
  });

  test('one that was sent long ago and not marked is found in the room', async () => {
    const room = await ann.room([bot.userId]);
    await bot.stop();
    await setBefore(room, { what: 'weigh the lining' });
    const file = new DatabaseSync(join(data, 'teemer.sqlite'));
    const row = file.prepare("select id, body from outbox where body like '%weigh the lining%'").get() as {
      id: number;
      body: string;
    };
    await bot.start();
    await ann.hear(isReminder(room, 'weigh the lining'), 30_000);
    await marked('weigh the lining');
    await bot.stop();
    // As a process left it that died before it could say so; under another key, so that the homeserver knows nothing.
    file
      .prepare(
        "update outbox set sent_at = null, body = ?, leased_until = 1, attempts = 1, key = 'reminder:OTHER' where id = ?",
      )
      .run(row.body, row.id);
    await bot.start();
    await marked('weigh the lining');
    await answers(room);
    expect(reminded(room, 'weigh the lining')).toHaveLength(1);
    expect(file.prepare('select sent_at from outbox where id = ?').get(row.id)).not.toEqual({ sent_at: null });
    file.close();
  });

  test('from a room that the bot is no longer in it comes where the two are alone; without such a room it is given up', async () => {
    await ann.room([bot.userId]);
    await bot.stop();
    await setBefore('!elsewhere:teemer.test', { what: 'look at the pot' });
    const store = await openStore({ data });
    const place = 'matrix:!elsewhere:teemer.test';
    const given = { place, dueAt: new Date(Date.now() - 1000), zone: 'UTC', what: 'look at it', holds: [], facts: [] };
    await store.memory.setReminders('matrix:@nobody:teemer.test', [given]);
    await bot.start();
    const heard = await ann.hear((one) => one.sender === bot.userId && bodyOf(one).includes('look at the pot'), 30_000);
    expect(bodyOf(heard)).toContain('I may no longer write where you asked for it.');
    await expect.poll(() => store.memory.reminders('matrix:@nobody:teemer.test'), { timeout: 20_000 }).toEqual([]);
    await store.close();
  });
});

/** Noon of the day before by the calendar in Berlin, or eleven in winter: at any hour, and where clocks were changed. */
function noonYesterday(): Date {
  const today = new Intl.DateTimeFormat('sv-SE', { timeZone: 'Europe/Berlin', dateStyle: 'short' }).format(new Date());
  return new Date(Date.parse(`${today}T10:00:00Z`) - 86_400_000);
}
