import {
  ClientEvent,
  createClient,
  EventType,
  type MatrixClient,
  type MatrixEvent,
  MatrixEventEvent,
  MsgType,
  Preset,
  RelationType,
  RoomEvent,
  SyncState,
  Visibility,
} from 'matrix-js-sdk';
import { logger as sdkLogger } from 'matrix-js-sdk/lib/logger.js';
import { rangesFollow } from '../../commands/early.ts';
import type { Synapse } from './synapse.ts';

/** Something that was said in a room, in the clear. */
export interface Heard {
  readonly id: string;
  readonly room: string;
  readonly sender: string;
  readonly type: string;
  readonly content: Readonly<Record<string, unknown>>;
  readonly relation: { readonly rel_type?: string; readonly event_id?: string };
  readonly wasEncrypted: boolean;
  readonly failed: boolean;
  readonly shield: number | undefined;
}

/** A person with a client of their own. */
export interface Asker {
  readonly userId: string;
  readonly client: MatrixClient;
  /** Everything heard, oldest first. */
  readonly heard: readonly Heard[];
  /** A room with others invited; resolves once they are in. */
  room(others: readonly string[], given?: { encrypted?: boolean; name?: string }): Promise<string>;
  say(room: string, text: string, more?: object): Promise<string>;
  /** New words in the place of earlier ones. */
  edit(room: string, event: string, text: string): Promise<string>;
  react(room: string, event: string, key: string): Promise<string>;
  /** The first that fits, heard or still to come. */
  hear(fits: (heard: Heard) => boolean, patience_ms?: number): Promise<Heard>;
  /** Everything that is still to be heard. */
  listen(each: (heard: Heard) => void): void;
  leave(): void;
}

const quiet = { trace() {}, debug() {}, info() {}, warn() {}, error() {}, getChild: () => quiet };

export async function openAsker(synapse: Synapse, user: string, { encrypted = false } = {}): Promise<Asker> {
  Object.assign(sdkLogger, quiet, { log() {} });
  const { userId, password } = await synapse.register(user);
  const { access_token, device_id } = await createClient({ baseUrl: synapse.url, logger: quiet }).loginRequest({
    type: 'm.login.password',
    identifier: { type: 'm.id.user', user },
    password,
  });
  const client = createClient({
    baseUrl: synapse.url,
    userId,
    accessToken: access_token,
    deviceId: device_id,
    logger: quiet,
  });
  if (encrypted) await client.initRustCrypto({ useIndexedDB: false });
  const heard: Heard[] = [];
  const waiting = new Set<() => void>();
  const listeners: ((heard: Heard) => void)[] = [];

  const take = async (event: MatrixEvent) => {
    const shield = encrypted ? await client.getCrypto()?.getEncryptionInfoForEvent(event) : undefined;
    const one: Heard = {
      id: event.getId() ?? '',
      room: event.getRoomId() ?? '',
      sender: event.getSender() ?? '',
      type: event.getType(),
      content: event.getOriginalContent(),
      relation: event.getRelation() ?? (event.getWireContent()['m.relates_to'] as Heard['relation']) ?? {},
      wasEncrypted: event.isEncrypted(),
      failed: event.isDecryptionFailure(),
      shield: shield?.shieldColour,
    };
    heard.push(one);
    for (const look of waiting) look();
    for (const listen of listeners) listen(one);
  };
  client.on(RoomEvent.Timeline, async (event, _room, toStart) => {
    if (toStart || event.status) return;
    await client.decryptEventIfNeeded(event);
    if (event.isDecryptionFailure()) event.once(MatrixEventEvent.Decrypted, () => void take(event));
    else await take(event);
  });
  const ready = new Promise<void>((resolve) => {
    client.on(ClientEvent.Sync, (state) => void (state === SyncState.Prepared && resolve()));
  });
  await client.startClient({ initialSyncLimit: 50, pollTimeout: 10_000 });
  await ready;

  const send = async (room: string, type: EventType, content: object): Promise<string> =>
    (await client.sendEvent(room, null, type as never, content as never)).event_id;
  const members = (room: string) => client.getRoom(room)?.getJoinedMemberCount() ?? 0;

  const asker: Asker = {
    userId,
    client,
    heard,
    async room(others, { encrypted: secret = false, name } = {}) {
      const { room_id } = await client.createRoom({
        invite: [...others],
        preset: Preset.TrustedPrivateChat,
        visibility: Visibility.Private,
        ...(name === undefined ? {} : { name }),
        initial_state: secret
          ? [{ type: EventType.RoomEncryption, state_key: '', content: { algorithm: 'm.megolm.v1.aes-sha2' } }]
          : [],
      });
      await until(() => members(room_id) === others.length + 1, `${others} in ${room_id}`);
      return room_id;
    },
    say: (room, text, more = {}) => send(room, EventType.RoomMessage, { msgtype: MsgType.Text, body: text, ...more }),
    edit: (room, event, text) =>
      send(room, EventType.RoomMessage, {
        msgtype: MsgType.Text,
        body: `* ${text}`,
        'm.new_content': { msgtype: MsgType.Text, body: text },
        'm.relates_to': { rel_type: RelationType.Replace, event_id: event },
      }),
    react: (room, event, key) =>
      send(room, EventType.Reaction, { 'm.relates_to': { rel_type: RelationType.Annotation, event_id: event, key } }),
    async hear(fits, patience_ms = 20_000) {
      const found = () => heard.find(fits);
      return found() ?? (await until(found, 'what was to be heard', patience_ms, waiting));
    },
    listen: (each) => void listeners.push(each),
    leave: () => client.stopClient(),
  };
  return asker;
}

/** Looks until something is there. */
export async function until<Value>(
  look: () => Value | undefined | false,
  what: string,
  patience_ms = 20_000,
  waiting?: Set<() => void>,
): Promise<Value> {
  const started = Date.now();
  for (;;) {
    const found = look();
    if (found) return found;
    if (Date.now() - started > patience_ms) throw new Error(`waited ${patience_ms} ms in vain for ${what}`);
    await new Promise<void>((resolve) => {
      const timer = setTimeout(done, 50);
      function done() {
        clearTimeout(timer);
        waiting?.delete(done);
        resolve();
      }
      waiting?.add(done);
    });
  }
}

/** An answer of the bot to an event: in its thread, and no edit. */
export const answerTo =
  (bot: string, event: string) =>
  ({ sender, content, relation }: Heard): boolean => {
    const reply = (content['m.relates_to'] as { 'm.in_reply_to'?: { event_id?: string } } | undefined)?.[
      'm.in_reply_to'
    ];
    return (
      sender === bot && relation.rel_type === 'm.thread' && reply?.event_id === event && content.msgtype === 'm.notice'
    );
  };

/** A word that it is worked on, or typical values before their ranges: another comes in its place. */
const isPassing = (body: string) => body.includes('Working on it …') || body.includes(rangesFollow);

/** The two faces of an answer. */
export interface Shown {
  readonly body: string;
  readonly formatted_body: string;
}

/** The answer as it stands in the end. */
export async function wholeAnswer(
  asker: Asker,
  { bot, question, patience_ms = 60_000 }: { bot: string; question: string; patience_ms?: number },
): Promise<Heard & { readonly shown: Shown }> {
  const first = await asker.hear(answerTo(bot, question), patience_ms);
  if (!isPassing(String(first.content.body))) return { ...first, shown: first.content as unknown as Shown };
  const last = await asker.hear(
    ({ relation, content }) =>
      relation.rel_type === 'm.replace' &&
      relation.event_id === first.id &&
      !isPassing((content['m.new_content'] as Shown).body),
    patience_ms,
  );
  return { ...first, shown: last.content['m.new_content'] as Shown };
}

/** What the bot said since `before`, by the time it has answered something that was asked after all of it. */
export async function saidSince(
  asker: Asker,
  { bot, room, before }: { bot: string; room: string; before: number },
): Promise<readonly Heard[]> {
  const last = await asker.say(room, '!teemer mix 99 L');
  const { id } = await wholeAnswer(asker, { bot, question: last });
  return asker.heard
    .slice(before)
    .filter(({ sender, relation }) => sender === bot && relation.event_id !== id)
    .filter((one) => !answerTo(bot, last)(one));
}

/** Until the bot has seen that others are in a room too: then it keeps what is for one alone. */
export async function seenAsRoomOfSeveral(asker: Asker, bot: string, room: string): Promise<void> {
  for (;;) {
    const { shown } = await wholeAnswer(asker, { bot, question: await asker.say(room, '!teemer mydata') });
    if (shown.body.includes('for you alone')) return;
  }
}
