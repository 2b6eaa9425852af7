import { existsSync, rmSync } from 'node:fs';
import { join as path } from 'node:path';
import { ClientEvent, HttpApiEvent, type MatrixClient, SyncState } from 'matrix-js-sdk';
import type { Reach } from '../../commands/reach.ts';
import type { Sender } from '../../commands/remind/due.ts';
import { clientFor, filterFor, quietLogger } from './connect.ts';
import { crossSign, recoveryIn } from './cross-sign.ts';
import { type CryptoHome, snapshotHome } from './crypto-home.ts';
import { createDesk, type DeskParts } from './desk.ts';
import { clientDoor } from './door.ts';
import { writeSecret } from './files.ts';
import { createInbox, invitation } from './inbox.ts';
import { Later, laterOf } from './later.ts';
import type { Log, Questions } from './ports.ts';
import { createQueue } from './queue.ts';
import type { RawEvent } from './read.ts';
import { reachIn, reminderSender } from './reminder.ts';
import { isEmpty, join, leave, mayInvite, placeIn } from './rooms.ts';
import { type Credentials, openSession } from './session.ts';

export interface MatrixParts extends Omit<DeskParts, 'door' | 'me' | 'place' | 'readsSecrets'> {
  readonly account: Credentials;
  /** Who may invite, see `mayInvite`. */
  readonly allow: readonly string[];
  /** For the session and the keys; without it encrypted rooms can't be read. */
  readonly folder: string | undefined;
  readonly questions: Questions;
}

export interface Matrix {
  readonly userId: string;
  isConnected(): boolean;
  /** Sends a reminder that is due. */
  readonly remind: Sender;
  /** How people in a room can be called later. */
  reach(room: string): Reach;
  /** Answers what was asked, keeps what it has to, and leaves. Timers of the SDK may outlive it: end the process. */
  stop(): Promise<void>;
}

/** A room's events are kept in memory up to this many. */
const mostEvents = 200;
const keep_s = 400 * 86_400;
const leave_ms = 8000;

/** Resolves once what came while it was away is taken in. */
export async function startMatrix({ account, allow, folder, questions, ...parts }: MatrixParts): Promise<Matrix> {
  const { log, now, states } = parts;
  const { homeserver } = account;
  const logger = quietLogger(log);
  const file = (name: string) => (folder === undefined ? undefined : path(folder, name));
  const recovery = folder === undefined ? undefined : recoveryIn(path(folder, 'recovery-key'));
  const crypto = folder === undefined ? undefined : await snapshotHome(path(folder, 'keys'));
  const restored = (await crypto?.restore()) ?? false;
  const session = await onceThere(log, () =>
    openSession(account, { file: file('session.json'), usable: restored, logger }),
  );
  const me = session.userId;
  const mark = `matrix:sync:${me}`;
  const kept = readMark(await states.get(mark, now()));
  const unclean = startsUncleanly(file('running'));
  const recent = new Map<string, RawEvent>();
  let stopping = false;
  let connected = false;

  /** A store that is away holds up what comes in, and loses none of it. */
  async function surely(what: string, work: () => Promise<void>): Promise<void> {
    while (!stopping) {
      try {
        return await work();
      } catch (err) {
        log.error({ err }, what);
        await new Promise((resolve) => setTimeout(resolve, 1000));
      }
    }
  }

  const client: MatrixClient = clientFor(
    { homeserver, session, recovery, logger },
    {
      token: kept?.token,
      received: (response, since) =>
        surely('what came in could not be kept', async () => {
          await inbox.receive(response, since);
          queue.poke();
          tidy(Object.keys(response.rooms?.join ?? {}));
        }),
      save: (token) =>
        surely('where the sync is could not be kept', async () => {
          await crypto?.save();
          await states.put(mark, { token, seen_ms: inbox.seen() }, { now: now(), keep_s });
        }),
    },
  );
  const door = clientDoor(client);
  const desk = createDesk({
    ...parts,
    door: { ...door, fetch: async (room, id) => recent.get(id) ?? door.fetch(room, id) },
    me,
    place: (room, sender) => placeIn(client, room, sender),
    readsSecrets: folder !== undefined,
  });
  const queue = createQueue({
    questions,
    now,
    log,
    handle: (question, attempt) =>
      question.event === invitation ? join(client, question.room, log) : desk.handle(question, attempt),
    over(question) {
      recent.delete(question.event);
      desk.over(question);
    },
  });
  const inbox = createInbox({
    client: () => client,
    concerns: desk.concerns,
    ask: queue.ask,
    remember: (event) => void recent.set(event.event_id, event),
    mayInvite: (inviter, room) => mayInvite(allow, inviter, room),
    refuse: (room) => void leave(client, room, log),
    now,
    log,
  });
  inbox.seenUpTo(kept?.seen_ms ?? now().getTime());

  /** Empty rooms are left, long timelines let go of. */
  function tidy(rooms: readonly string[]): void {
    for (const room of rooms) {
      if (isEmpty(client, room)) void leave(client, room, log);
      const known = client.getRoom(room);
      if (known && known.getLiveTimeline().getEvents().length > mostEvents) known.resetLiveTimeline(null, null);
    }
  }

  client.on(HttpApiEvent.SessionLoggedOut, () =>
    log.error({}, 'the homeserver has ended the session: start the bot again'),
  );
  client.on(ClientEvent.Sync, (state) => {
    connected = state === SyncState.Prepared || state === SyncState.Syncing;
    if (state === SyncState.Reconnecting) log.info({}, 'the homeserver is away');
    if (connected) queue.poke();
  });
  if (crypto) await client.initRustCrypto({ cryptoDatabasePrefix: 'teemer' });
  await crypto?.save();
  const prepared = new Promise<void>((resolve) => {
    client.on(ClientEvent.Sync, (state) => void (state === SyncState.Prepared && resolve()));
  });
  await client.startClient({ filter: filterFor(me), initialSyncLimit: 1, disablePresence: true, pollTimeout: 30_000 });
  // Calls are none of its business.
  client.matrixRTC.stop();
  await prepared;
  if (crypto && recovery) {
    if (unclean && restored) await rewound(client);
    await crossSign(client, recovery, { password: account.password, log }).catch((err) =>
      log.error({ err }, 'the device could not be signed: people see it as unverified'),
    );
    await crypto.save();
  }
  queue.start();
  tidy(client.getRooms().map(({ roomId }) => roomId));

  return {
    userId: me,
    isConnected: () => connected,
    remind: reminderSender({ client, door, states, now }),
    reach: (room) => reachIn(client, room),
    async stop() {
      await Promise.race([queue.stop(), new Promise((resolve) => setTimeout(resolve, leave_ms))]);
      stopping = true;
      client.stopClient();
      await keepKeys(crypto);
      const running = file('running');
      if (running !== undefined) rmSync(running, { force: true });
    },
  };
}

/** A homeserver that is not up yet is waited for. */
async function onceThere<Value>(log: Log, ask: () => Promise<Value>): Promise<Value> {
  for (;;) {
    try {
      return await ask();
    } catch (error) {
      const later = laterOf(error);
      if (!(later instanceof Later)) throw error;
      log.warn({ why: later.message }, 'the homeserver does not answer; it is asked again');
      await new Promise((resolve) => setTimeout(resolve, (later.wait_s ?? 5) * 1000));
    }
  }
}

/** What was sent after the last snapshot has moved a ratchet on that now stands where it was: each begins anew. */
async function rewound(client: MatrixClient): Promise<void> {
  const crypto = client.getCrypto();
  for (const { roomId } of client.getRooms()) {
    if (await crypto?.isEncryptionEnabledInRoom(roomId)) await crypto?.forceDiscardSession(roomId);
  }
}

async function keepKeys(crypto: CryptoHome | undefined): Promise<void> {
  // What the SDK is about to write comes a moment after it was told to stop.
  await new Promise((resolve) => setTimeout(resolve, 50));
  await crypto?.save();
}

/** A file that is there while the bot runs, and stays where it was killed. */
function startsUncleanly(file: string | undefined): boolean {
  if (file === undefined) return false;
  const unclean = existsSync(file);
  writeSecret(file, '');
  return unclean;
}

function readMark(value: unknown): { readonly token: string; readonly seen_ms: number } | undefined {
  const { token, seen_ms } = (value ?? {}) as { token?: unknown; seen_ms?: unknown };
  return typeof token === 'string' && typeof seen_ms === 'number' ? { token, seen_ms } : undefined;
}
