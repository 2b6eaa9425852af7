import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Bot, makeBot } from '../peers/matrix-bot.ts';
import { type Synapse, startSynapse, synapseMissing } from '../peers/synapse.ts';
import { type Asker, answerTo, openAsker, seenAsRoomOfSeveral } from '../peers/synapse-asker.ts';

/** What somebody wrote, weighed by a reply to it: a real homeserver, the program, and two people in an encrypted room. */
const patience_ms = 60_000;
const claim = 'lump burns 300 °F hotter';
const secret = 'xyzzyplugh';

describe.skipIf(synapseMissing())('the numbers in somebody’s message on Matrix', { timeout: 240_000 }, () => {
  let synapse: Synapse;
  let bot: Bot;
  let data: string;
  let ann: Asker;
  let bob: Asker;
  let room: string;

  beforeAll(async () => {
    synapse = await startSynapse();
    data = mkdtempSync(join(tmpdir(), 'teemer-weigh-'));
    bot = await makeBot(synapse, { file: 'test/peers/unhurried-bot.ts', env: { TEEMER_DATA: data } });
    await bot.start();
    ann = await openAsker(synapse, 'ann', { encrypted: true });
    bob = await openAsker(synapse, 'bob', { encrypted: true });
    room = await ann.room([bot.userId], { encrypted: true });
    await ann.client.invite(room, bob.userId);
    await bob.client.joinRoom(room);
    await seenAsRoomOfSeveral(ann, bot.userId, room);
  }, 120_000);
  afterAll(async () => {
    ann?.leave();
    bob?.leave();
    await bot?.stop('SIGKILL');
    await synapse?.remove();
    if (data) rmSync(data, { recursive: true, force: true });
  });

  const replyTo = (event_id: string) => ({ 'm.relates_to': { 'm.in_reply_to': { event_id } } });
  /** The words of an answer as they stand in the end. */
  async function weighed(written: string, words: string, fits: RegExp): Promise<string> {
    const theirs = await bob.say(room, written);
    await ann.hear(({ id }) => id === theirs, patience_ms);
    const question = await ann.say(room, words, replyTo(theirs));
    const first = await ann.hear(answerTo(bot.userId, question), patience_ms);
    if (fits.test(String(first.content.body))) return String(first.content.body);
    const last = await ann.hear(
      ({ relation, content }) =>
        relation.rel_type === 'm.replace' &&
        relation.event_id === first.id &&
        fits.test((content['m.new_content'] as { body: string }).body),
      patience_ms,
    );
    return (last.content['m.new_content'] as { body: string }).body;
  }

  test('are judged where there is one statement, by a bare word and by an addressed one', async () => {
    for (const words of ['weigh', '!teemer weigh']) {
      const body = await weighed(`${secret}, believe me. ${claim}`, words, /samples/);
      expect(body).toContain(`“${claim}”`);
      expect(body).toContain('Understood as');
      expect(body).toContain('What can hurt');
    }
  });

  test('are offered by number where there are several', async () => {
    const body = await weighed(`${claim}.\n2 kg of propane melts 10 kg of bronze`, 'weigh', /statements/);
    expect(body).toContain(`claim ${claim}`);
    expect(body).toContain('claim 2 kg of propane melts 10 kg of bronze');
  });

  test('that are none get a friendly word', async () => {
    expect(await weighed('Nice pour!', 'weigh', /no statement/)).toContain('3 kg of charcoal melts 6 kg of aluminium');
  });

  test('and the working of an answer comes as a file beside its main steps', async () => {
    const room = await ann.room([bot.userId]);
    await ann.say(room, 'mix 30 L');
    await ann.hear(({ content }) => String(content.body).includes('fills 30 L'), patience_ms);
    await ann.say(room, 'why');
    const file = await ann.hear(({ content }) => content.msgtype === 'm.file', patience_ms);
    expect(file.content).toMatchObject({ filename: 'why-mix.md', info: { mimetype: 'text/markdown' } });
  });

  test('and nothing of the message is kept or logged', async () => {
    // It writes its keys anew under another name while it runs, so it is read once it has left.
    expect(await bot.stop()).toBe(0);
    expect(bot.log()).not.toContain(secret);
    const kept = readdirSync(data, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
    expect(kept.map(({ name }) => name)).toContain('keys');
    for (const { parentPath, name } of kept)
      expect(readFileSync(join(parentPath, name)).includes(secret), name).toBe(false);
  });
});
