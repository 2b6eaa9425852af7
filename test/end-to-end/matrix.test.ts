import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { decryptFile, type FileKeys } from '../../adapters/matrix/encrypted-file.ts';
import { picturesOf } from '../../adapters/picture/pictures.ts';
import { pngOf } from '../../adapters/picture/png.ts';
import { layout_px } from '../../adapters/picture/theme.ts';
import type { Card } from '../../commands/card.ts';
import { commands } from '../../commands/registry.ts';
import { conversation } from '../contract/conversation.ts';
import { linesBefore } from '../contract/prepared.ts';
import { type Bot, makeBot } from '../peers/matrix-bot.ts';
import { python, type Synapse, startSynapse, synapseMissing } from '../peers/synapse.ts';
import {
  type Asker,
  answerTo,
  type Heard,
  openAsker,
  type Shown,
  saidSince,
  seenAsRoomOfSeveral,
  until,
  wholeAnswer,
} from '../peers/synapse-asker.ts';
import { scenario } from './scenario.ts';

/** A real homeserver on loopback, the program in a process of its own, and people with clients of two makers. */
const patience_ms = 60_000;

describe.skipIf(synapseMissing())('on Matrix', { timeout: 240_000 }, () => {
  let synapse: Synapse;
  let bot: Bot;
  let data: string;
  let ann: Asker;

  beforeAll(async () => {
    synapse = await startSynapse();
    data = mkdtempSync(join(tmpdir(), 'teemer-matrix-'));
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

  const answer = (asker: Asker, question: string) => wholeAnswer(asker, { bot: bot.userId, question, patience_ms });

  const ask = async (asker: Asker, room: string, line: string, more: object = {}) =>
    answer(asker, await asker.say(room, line, more));

  /** Answers to a question, the word that it is worked on not counted twice: there must be one. */
  const countOf = (asker: Asker, question: string) => asker.heard.filter(answerTo(bot.userId, question)).length;

  /** What was said since, once everything was answered that was asked before. */
  const since = (asker: Asker, room: string, before = asker.heard.length) =>
    saidSince(asker, { bot: bot.userId, room, before });

  test('every example of every command, in a direct room, without an address', async () => {
    const dan = await openAsker(synapse, 'dan');
    const room = await dan.room([bot.userId]);
    const here = conversation();
    const lines = commands.flatMap(({ name, examples }) => [...linesBefore(name), ...examples.map(({ line }) => line)]);
    for (const line of lines) {
      const reply = await here(line);
      const { shown, content } = await ask(dan, room, line);
      const says = reply.kind === 'card' ? reply.card.headline : reply.error.what.slice(1);
      // Saved and shared builds have another code here, and what is dated another day.
      if (!/^(?:build|dry|forget|log|mydata|remind)/.test(line))
        expect(shown.body.replace(/\s+/g, ' '), line).toContain(says.replace(/\s+/g, ' ').trim());
      for (const { text } of reply.kind === 'card' ? reply.card.cautions : reply.cautions)
        expect(shown.body, line).toContain(text);
      expect(content['m.mentions'], line).toEqual({ user_ids: [dan.userId] });
      expect(shown.formatted_body, line).not.toMatch(/<(?:script|img|details)/);
    }
    dan.leave();
  });

  describe('in a room of several', () => {
    let bob: Asker;
    let room: string;
    beforeAll(async () => {
      bob = await openAsker(synapse, 'bob');
      room = await ann.room([bot.userId]);
      await ann.client.invite(room, bob.userId);
      await bob.client.joinRoom(room);
      await seenAsRoomOfSeveral(bob, bot.userId, room);
    }, 60_000);
    afterAll(() => bob?.leave());

    test('answers to its prefix and its name, and stays out of other talk', async () => {
      const quiet = [
        await bob.say(room, 'mix 30 L'),
        await bob.say(room, 'what does teemer say: mix 30 L'),
        await bob.say(room, '!teemer mix 30 L', { msgtype: 'm.notice' }),
      ];
      expect((await ask(bob, room, '!teemer mix 30 L')).shown.body).toContain('fills 30 L');
      expect((await ask(bob, room, 'teemer: mix 31 L')).shown.body).toContain('fills 31 L');
      expect((await ask(bob, room, `${bot.userId} mix 32 L`)).shown.body).toContain('fills 32 L');
      expect((await ask(bob, room, '!teemer')).shown.body).toContain('help');
      await since(bob, room);
      for (const question of quiet) expect(countOf(bob, question)).toBe(0);
    });

    test('answers in the thread of the question, and to what follows there without an address', async () => {
      const root = await bob.say(room, 'talk about linings');
      const inThread = {
        'm.relates_to': {
          rel_type: 'm.thread',
          event_id: root,
          is_falling_back: true,
          'm.in_reply_to': { event_id: root },
        },
      };
      const first = await ask(bob, room, '!teemer mix 33 L', inThread);
      expect(first.content['m.relates_to']).toMatchObject({
        rel_type: 'm.thread',
        event_id: root,
        is_falling_back: true,
      });
      const talk = await bob.say(room, 'that is a lot of sand', inThread);
      const next = await ask(bob, room, 'again damp=10%', inThread);
      expect(next.shown.body).toContain('damp');
      const number = await ask(bob, room, '3', inThread);
      expect(number.shown.body).toMatch(/How mix came/);
      expect(countOf(bob, talk)).toBe(0);
    });

    test('a reaction and a reply with a number ask what stands below an answer', async () => {
      const first = await ask(bob, room, '!teemer mix 34 L');
      await ann.react(room, first.id, '1️⃣');
      const followed = await ann.hear(
        ({ sender, content }) =>
          sender === bot.userId &&
          JSON.stringify(content['m.mentions']) === JSON.stringify({ user_ids: [ann.userId] }) &&
          String(content.body).startsWith('Dense castable'),
        patience_ms,
      );
      expect(followed.relation).toMatchObject({ rel_type: 'm.thread' });
      const reply = { 'm.relates_to': { 'm.in_reply_to': { event_id: first.id } } };
      const why = await ask(bob, room, `> <${bot.userId}> quoted\n\n3`, reply);
      expect(why.shown.body).toMatch(/How mix came/);
      await ann.hear(({ id }) => id === why.id);
      // The working as a file comes after it.
      await ann.hear(({ room: where, content }) => where === room && content.msgtype === 'm.file');
      // What was said so far has come to Ann too.
      await since(ann, room);
      const last = ann.heard.length;
      await ann.react(room, first.id, '👍');
      await ann.react(room, first.id, '9️⃣');
      expect(await since(ann, room, last)).toEqual([]);
    });

    test('an edited question has its answer edited; nobody else can, and edits of edits are none', async () => {
      const question = await bob.say(room, '!teemer size can 20 gal crucible=6 in x 8 in');
      const first = await answer(bob, question);
      const picture = await bob.hear(({ content }) => content.msgtype === 'm.image');
      const edit = await bob.edit(room, question, '!teemer mix 36 L');
      const replaced = await bob.hear(
        ({ relation, content }) =>
          relation.rel_type === 'm.replace' &&
          relation.event_id === first.id &&
          String((content['m.new_content'] as Shown).body).includes('fills 36 L'),
      );
      expect(replaced.content.body).toMatch(/^\* Clay/);
      await bob.hear(({ type, content }) => type === 'm.room.redaction' && content.redacts === picture.id);
      await since(ann, room);
      const before = ann.heard.length;
      await ann.edit(room, question, '!teemer mix 37 L');
      await bob.edit(room, edit, '!teemer mix 38 L');
      await since(bob, room);
      const said = await since(ann, room, before);
      // Bob's answer to what was asked last; nothing of the edits.
      expect(said.filter(({ content }) => !String(content.body).includes('99 L'))).toEqual([]);
      // What was no question before becomes one.
      const talk = await bob.say(room, 'mix 39 L');
      await bob.edit(room, talk, '!teemer mix 39 L');
      expect((await answer(bob, talk)).shown.body).toContain('fills 39 L');
    });

    test('what is for one alone is not told there', async () => {
      const { shown } = await ask(bob, room, '!teemer mydata');
      expect(shown.body).toContain('for you alone');
    });
  });

  test('comes when invited, and leaves where nobody is left', async () => {
    const room = await ann.room([bot.userId]);
    await ann.client.leave(room);
    const joined = async () => {
      const { accessToken } = await sessionOf(data);
      const answer = await fetch(`${synapse.url}/_matrix/client/v3/joined_rooms`, {
        headers: { authorization: `Bearer ${accessToken}` },
      });
      return ((await answer.json()) as { joined_rooms: string[] }).joined_rooms;
    };
    for (let tries = 0; tries < 100 && (await joined()).includes(room); tries++) await sleep(100);
    expect(await joined()).not.toContain(room);
  });

  describe.each([
    ['plain', false],
    ['encrypted', true],
  ])('in a %s room', (_kind, encrypted) => {
    test('a picture comes with its words and its size, and is the one that is drawn', async () => {
      const room = await ann.room([bot.userId], { encrypted });
      const line = 'size can 20 gal crucible=6 in x 8 in';
      const { shown, wasEncrypted, shield } = await ask(ann, room, line);
      expect(wasEncrypted).toBe(encrypted);
      if (encrypted) expect(shield).toBe(0);
      expect(shown.body).toContain('bore');
      const image = await ann.hear(({ room: where, content }) => where === room && content.msgtype === 'm.image');
      expect(image.wasEncrypted).toBe(encrypted);
      const { file, url, body, info } = image.content as unknown as ImageContent;
      const address = client(synapse, file?.url ?? url ?? '');
      const answered = await fetch(address, { headers: { authorization: `Bearer ${ann.client.getAccessToken()}` } });
      const loaded = new Uint8Array(await answered.arrayBuffer());
      if (file) expect(() => pngSize(loaded)).toThrow('no PNG');
      const bytes = file ? decryptFile(loaded, file) : loaded;
      const reply = await conversation()(line);
      const card = (reply as { card: Card }).card;
      const [drawn] = picturesOf(card);
      const expected = pngOf(await drawn!.svg({ units: card.units, theme: 'light' }), { width_px: layout_px });
      expect(sha256(bytes)).toBe(sha256(expected));
      expect(info).toEqual({ mimetype: 'image/png', size: expected.length, ...pngSize(expected) });
      expect(body).toBe(drawn!.alt);
    });

    test('after a restart, what was missed is answered: fifteen of fifteen, once each', async () => {
      const room = await ann.room([bot.userId], { encrypted });
      await ask(ann, room, 'mix 10 L');
      expect(await bot.stop()).toBe(0);
      const missed: string[] = [];
      for (let at = 0; at < 15; at++) missed.push(await ann.say(room, `mix ${20 + at} L`));
      await bot.start();
      for (const [at, question] of missed.entries()) {
        expect((await answer(ann, question)).shown.body).toContain(`fills ${20 + at} L`);
      }
      await since(ann, room);
      expect(missed.map((question) => countOf(ann, question))).toEqual(missed.map(() => 1));
    });

    test('killed in the middle of an answer, it gives it after all, once', async () => {
      const room = await ann.room([bot.userId], { encrypted });
      const questions: string[] = [];
      for (const wait_ms of [100, 300, 900]) {
        questions.push(
          await ann.say(room, 'size can 20 gal crucible=6 in x 8 in'),
          await ann.say(room, `mix ${wait_ms} L`),
        );
        await sleep(wait_ms);
        await bot.stop('SIGKILL');
        await bot.start();
      }
      for (const question of questions) {
        const { shown, failed } = await answer(ann, question);
        expect(shown.body).toMatch(/Fits|fills/);
        expect(failed).toBe(false);
      }
      await since(ann, room);
      expect(questions.map((question) => countOf(ann, question))).toEqual(questions.map(() => 1));
    });

    test('killed while a number is answered, it answers the line that the number meant, once', async () => {
      const room = await ann.room([bot.userId], { encrypted });
      // Those below it are slow: another crucible.
      const first = await ask(ann, room, 'size can 20 gal crucible=6 in x 8 in');
      expect(first.shown.body).toContain('1. again crucible=5 in x 6 in');
      const number = await ann.say(room, '1');
      // Typical values, or a word that it takes a little: what stood in the answer's place when the number was lost.
      await ann.hear(answerTo(bot.userId, number), patience_ms);
      await bot.stop('SIGKILL');
      await bot.start();
      const { shown } = await answer(ann, number);
      expect(shown.body).toMatch(/5 in × 6 in|127 mm/);
      await since(ann, room);
      expect(countOf(ann, number)).toBe(1);
    });

    test('the homeserver goes and comes back: nothing is lost, nothing said twice', async () => {
      const room = await ann.room([bot.userId], { encrypted });
      await ask(ann, room, 'mix 10 L');
      const questions = [await ann.say(room, 'size can 20 gal crucible=6 in x 8 in'), await ann.say(room, 'mix 51 L')];
      await synapse.stop('SIGKILL');
      // Once for as long as it takes to wait longer and longer.
      await sleep(encrypted ? 60_000 : 3000);
      await synapse.start();
      ann.client.retryImmediately();
      for (const question of questions) expect((await answer(ann, question)).shown.body).toMatch(/Fits|fills/);
      expect((await ask(ann, room, 'mix 52 L')).shown.body).toContain('fills 52 L');
      await since(ann, room);
      expect(questions.map((question) => countOf(ann, question))).toEqual([1, 1]);
    });

    test('another client: asks, reads, and opens the picture', async () => {
      const user = `nio-${encrypted ? 'secret' : 'open'}`;
      const { password } = await synapse.register(user);
      const script = fileURLToPath(new URL('../peers/matrix_asker.py', import.meta.url));
      const lines = ['mix 40 L', 'size can 20 gal crucible=6 in x 8 in', 'stuff vermiculite'];
      const kind = encrypted ? 'encrypted' : 'plain';
      const given = [script, synapse.url, `@${user}:${synapse.name}`, password, bot.userId, kind, ...lines];
      const { stdout } = await promisify(execFile)(python, given, { maxBuffer: 1e8, timeout: 120_000 });
      const { said, notices, pictures, unread } = JSON.parse(stdout) as NioHeard;
      expect(unread).toEqual([]);
      const bodies = notices.map(({ body }) => body).join('\n');
      for (const wanted of ['fills 40 L', 'Fits', 'conductivity']) expect(bodies).toContain(wanted);
      for (const { secret } of notices) expect(secret).toBe(encrypted);
      for (const question of Object.values(said)) {
        const to = notices.filter(({ content }) => content['m.relates_to']?.['m.in_reply_to']?.event_id === question);
        expect(to).toHaveLength(1);
      }
      const reply = await conversation()(lines[1]!);
      const card = (reply as { card: Card }).card;
      const [drawn] = picturesOf(card);
      const expected = pngOf(await drawn!.svg({ units: card.units, theme: 'light' }), { width_px: layout_px });
      expect(pictures.map((one) => one.sha256)).toContain(sha256(expected));
    });
  });

  test('a hundred and twenty questions while it is away, more than a sync brings: each answered once', async () => {
    const room = await ann.room([bot.userId]);
    expect(await bot.stop()).toBe(0);
    const questions: string[] = [];
    for (let at = 0; at < 120; at++) questions.push(await ann.say(room, `mix ${at + 1} L`));
    await bot.start();
    for (const [at, question] of questions.entries()) {
      expect((await answer(ann, question)).shown.body).toContain(`amount ${at + 1} L`);
    }
    await since(ann, room);
    expect(questions.filter((question) => countOf(ann, question) !== 1)).toEqual([]);
    expect(bot.log()).toContain('read back what was missed');
  });

  describe('a bot of its own that is choosy', () => {
    let choosy: Bot;
    let asker: Asker;
    beforeAll(async () => {
      asker = await openAsker(synapse, 'fay');
      choosy = await makeBot(synapse, {
        user: 'choosy',
        env: { MATRIX_ALLOW: asker.userId, TEEMER_PREFIX: '!c' },
      });
    }, 60_000);
    afterAll(async () => {
      asker?.leave();
      await choosy?.stop('SIGKILL');
    });

    test('lets history be, follows only who may invite, and refuses encrypted rooms in words', async () => {
      // In the room before it ever ran: what was asked there was not asked of it.
      const { access_token } = await loginOf(synapse, 'choosy');
      const { room_id } = await asker.client.createRoom({ invite: [choosy.userId] });
      await fetch(`${synapse.url}/_matrix/client/v3/join/${room_id}`, {
        method: 'POST',
        headers: { authorization: `Bearer ${access_token}` },
        body: '{}',
      });
      const old = await asker.say(room_id, 'mix 30 L');
      await choosy.start();
      const fresh = await asker.say(room_id, '!c mix 31 L');
      await asker.hear(answerTo(choosy.userId, fresh), patience_ms);
      expect(asker.heard.filter(answerTo(choosy.userId, old))).toEqual([]);

      const secret = await asker.room([choosy.userId], { encrypted: true });
      await fetch(`${synapse.url}/_matrix/client/v3/rooms/${secret}/send/m.room.encrypted/1`, {
        method: 'PUT',
        headers: { authorization: `Bearer ${asker.client.getAccessToken()}` },
        body: JSON.stringify({ algorithm: 'm.megolm.v1.aes-sha2', session_id: 'x', ciphertext: 'x' }),
      });
      await asker.hear(({ content }) => String(content.body).includes('cannot read encrypted rooms'), patience_ms);

      const { room_id: refused } = await ann.client.createRoom({ invite: [choosy.userId] });
      const mine = () => ann.client.getRoom(refused)?.getMember(choosy.userId)?.membership;
      await until(() => mine() === 'leave', 'the invitation to be refused');
      expect(choosy.log()).toContain('may not invite');
      expect(await choosy.stop()).toBe(0);
    });
  });

  test('a message that cannot be decrypted is told so, in words, once', async () => {
    const room = await ann.room([bot.userId], { encrypted: true });
    const lost = () =>
      fetch(`${synapse.url}/_matrix/client/v3/rooms/${room}/send/m.room.encrypted/${Math.random()}`, {
        method: 'PUT',
        headers: { authorization: `Bearer ${ann.client.getAccessToken()}` },
        body: JSON.stringify({
          algorithm: 'm.megolm.v1.aes-sha2',
          sender_key: 'lost',
          device_id: 'LOST',
          session_id: 'lost',
          ciphertext: 'AwgAEpABm6',
        }),
      });
    await lost();
    await lost();
    const told = ({ room: where, sender, content }: Heard) =>
      where === room && sender === bot.userId && String(content.body).includes('could not decrypt');
    await ann.hear(told, patience_ms);
    expect((await ask(ann, room, 'mix 12 L')).shown.body).toContain('fills 12 L');
    // By then the other one was given up waiting for as well.
    await until(() => bot.log().split('could not be decrypted').length > 2, 'both to be noticed', patience_ms);
    await since(ann, room);
    expect(ann.heard.filter(told)).toHaveLength(1);
  });

  test('the evening of the club in an encrypted room, with a restart in the middle', async () => {
    const room = await ann.room([bot.userId], { encrypted: true, name: 'Millpond casters' });
    for (const [at, { line, shows, warns, pictures }] of scenario.entries()) {
      if (at === 1) {
        expect(await bot.stop()).toBe(0);
        await bot.start();
      }
      const { shown, id, wasEncrypted } = await ask(ann, room, line);
      expect(wasEncrypted).toBe(true);
      const text = shown.body.replace(/\s+/g, ' ');
      for (const wanted of shows) expect(text, line).toMatch(wanted);
      expect(text, line).toMatch(warns);
      if (pictures)
        await ann.hear(({ content, relation }) => content.msgtype === 'm.image' && relation.event_id !== id);
    }
  });

  test('a second process of the account waits, and answers when the first is killed, once', async () => {
    const room = await ann.room([bot.userId], { encrypted: true });
    const program = { file: 'test/peers/unhurried-bot.ts', env: { TEEMER_DATA: data } };
    const second = await makeBot(synapse, { ...program, like: bot });
    const connected = second.start();
    try {
      await until(() => second.log().includes('another process answers'), 'the second to wait');
      expect((await ask(ann, room, 'mix 71 L')).shown.body).toContain('fills 71 L');
      const questions = [await ann.say(room, 'size can 20 gal crucible=6 in x 8 in'), await ann.say(room, 'mix 72 L')];
      expect(second.log()).not.toContain('connected');
      await bot.stop('SIGKILL');
      await connected;
      for (const question of questions) {
        const { shown, failed, shield } = await answer(ann, question);
        expect(shown.body).toMatch(/Fits|fills/);
        expect({ failed, shield }).toEqual({ failed: false, shield: 0 });
      }
      await since(ann, room);
      expect(questions.map((question) => countOf(ann, question))).toEqual([1, 1]);
    } finally {
      connected.catch(() => {});
      await second.stop();
      await bot.start();
    }
  });

  test('a new machine with nothing but the recovery key: another device, and no red shield', async () => {
    expect(await bot.stop()).toBe(0);
    const before = (await sessionOf(data)).deviceId;
    for (const name of ['keys', 'session.json']) rmSync(join(data, 'matrix', name));
    await bot.start();
    expect((await sessionOf(data)).deviceId).not.toBe(before);
    const room = await ann.room([bot.userId], { encrypted: true });
    const { shown, shield } = await ask(ann, room, 'mix 61 L');
    expect(shown.body).toContain('fills 61 L');
    expect(shield).toBe(0);
  });

  test('its keys, session and recovery key are readable by nobody else, and stay out of the log', () => {
    for (const name of ['keys', 'session.json', 'recovery-key']) {
      const file = join(data, 'matrix', name);
      expect(statSync(file).mode & 0o777).toBe(0o600);
      expect(bot.log()).not.toContain(readFileSync(file, 'utf8').trim().slice(0, 40));
    }
    expect(bot.log()).not.toMatch(/mix \d+ L|amount/);
  });
});

interface ImageContent {
  readonly file?: FileKeys & { readonly url: string };
  readonly url?: string;
  readonly body: string;
  readonly info: object;
}

interface NioHeard {
  readonly said: Readonly<Record<string, string>>;
  readonly notices: readonly {
    readonly body: string;
    readonly secret: boolean;
    readonly content: { readonly 'm.relates_to'?: { readonly 'm.in_reply_to'?: { readonly event_id?: string } } };
  }[];
  readonly pictures: readonly { readonly sha256: string }[];
  readonly unread: readonly string[];
}

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

const client = ({ url }: Synapse, mxc: string): string =>
  `${url}/_matrix/client/v1/media/download/${mxc.slice('mxc://'.length)}`;

function pngSize(bytes: Uint8Array): { w: number; h: number } {
  if (Buffer.from(bytes.subarray(1, 4)).toString('latin1') !== 'PNG') throw new Error('no PNG');
  const view = new DataView(bytes.buffer, bytes.byteOffset);
  return { w: view.getUint32(16), h: view.getUint32(20) };
}

async function loginOf({ url }: Synapse, user: string): Promise<{ access_token: string }> {
  const identifier = { type: 'm.id.user', user };
  const body = JSON.stringify({ type: 'm.login.password', identifier, password: `${user} of the Millpond casters` });
  return (await (await fetch(`${url}/_matrix/client/v3/login`, { method: 'POST', body })).json()) as {
    access_token: string;
  };
}

const sessionOf = async (data: string) =>
  JSON.parse(readFileSync(join(data, 'matrix', 'session.json'), 'utf8')) as { accessToken: string; deviceId: string };
