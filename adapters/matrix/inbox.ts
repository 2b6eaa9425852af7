import { Direction, type IRoomEvent, type ISyncResponse, type MatrixClient } from 'matrix-js-sdk';
import { decrypted } from './door.ts';
import { Later, laterOf } from './later.ts';
import type { Log } from './ports.ts';
import type { Concern, Waiting } from './queue.ts';
import type { RawEvent } from './read.ts';

export interface InboxParts {
  readonly client: () => MatrixClient;
  readonly concerns: (event: RawEvent) => Promise<Concern | undefined>;
  /** Keeps a question; true where it is new. */
  readonly ask: (key: string, question: Waiting, concern?: Concern) => Promise<boolean>;
  /** What was read a moment ago need not be fetched again. */
  readonly remember: (event: RawEvent) => void;
  readonly mayInvite: (inviter: string, room: string) => boolean;
  readonly refuse: (room: string) => void;
  readonly now: () => Date;
  readonly log: Log;
}

type Timeline = ISyncResponse['rooms']['join'][string]['timeline'];
type Stripped = { readonly type: string; readonly state_key?: string; readonly sender: string };

/** The event of an invitation that waits to be followed. */
export const invitation = 'invitation';

/** Asked just before the bot came in: still meant for it. */
const justBefore_ms = 60_000;
/** Where messages were missed, so many pages of a hundred are read back. */
const mostPages = 20;
/** A room whose history the server does not give is passed over after so many tries. */
const roomTries = 5;
/** Clocks of servers are not that far apart. */
const overlap_ms = 5 * 60_000;

const worthReading = new Set(['m.room.message', 'm.room.encrypted', 'm.reaction']);

/** What a sync brings, down to the questions in it. History is none: what was there before the bot is not answered. */
export function createInbox({ client, concerns, ask, remember, mayInvite, refuse, now, log }: InboxParts) {
  /**
   * The newest that was seen of any room, by the servers' clocks; never later than now: one server's clock, which anybody
   * may run, would else decide what is read back in every room.
   */
  let seen_ms = 0;

  return {
    seen: () => seen_ms,
    seenUpTo: (ms: number) => {
      seen_ms = Math.min(ms, now().getTime());
    },
    receive,
  };

  async function receive({ rooms, next_batch }: ISyncResponse, since: string | undefined): Promise<void> {
    const now_ms = now().getTime();
    let newest_ms = seen_ms;
    for (const [room, { invite_state }] of Object.entries(rooms?.invite ?? {})) {
      await invited(room, invite_state.events, next_batch);
    }
    for (const [room, { timeline }] of Object.entries(rooms?.join ?? {})) {
      for (const { origin_server_ts } of timeline.events)
        newest_ms = Math.max(newest_ms, Math.min(origin_server_ts, now_ms));
      if (since === undefined) continue;
      await readRoom(room, timeline);
    }
    seen_ms = newest_ms;
  }

  /** One bad room keeps nobody else waiting for long. A store that is away does: nothing may be lost to that. */
  async function readRoom(room: string, timeline: Timeline): Promise<void> {
    for (let tries = 1; ; tries++) {
      try {
        return await joined(room, timeline);
      } catch (err) {
        if ((err as Error).name === 'StoreError') throw err;
        if (!(laterOf(err) instanceof Later) || tries === roomTries) {
          log.warn({ err, room }, 'a room could not be read');
          return;
        }
        await new Promise((resolve) => setTimeout(resolve, 1000 * tries));
      }
    }
  }

  async function invited(room: string, events: readonly Stripped[], batch: string): Promise<void> {
    const me = client().getSafeUserId();
    const own = events.find(({ type, state_key }) => type === 'm.room.member' && state_key === me);
    const inviter = own?.sender ?? '';
    if (mayInvite(inviter, room)) await ask(`${room}.${batch}`, { room, event: invitation, sender: inviter });
    else {
      log.info({ room, inviter }, 'an invitation from somebody who may not invite');
      refuse(room);
    }
  }

  async function joined(room: string, { events, limited, prev_batch }: Timeline): Promise<void> {
    const came = events.findLast((event) => isJoin(event, client().getSafeUserId()));
    const came_ms = came?.origin_server_ts ?? 0;
    const missed = limited && !came && prev_batch ? await readBack(room, prev_batch, seen_ms - overlap_ms) : [];
    const first = came ? events.indexOf(came) : 0;
    for (const [at, event] of [...missed, ...events].entries()) {
      if (came && at < first && event.origin_server_ts < came_ms - justBefore_ms) continue;
      await consider({ ...event, room_id: room } as RawEvent);
    }
  }

  /** Oldest first, back to what was certainly seen before. */
  async function readBack(room: string, from: string, until_ms: number): Promise<readonly IRoomEvent[]> {
    const found: IRoomEvent[] = [];
    let token: string | undefined = from;
    for (let page = 0; page < mostPages && token !== undefined; page++) {
      const { chunk, end }: { chunk: object[]; end?: string } = await client().createMessagesRequest(
        room,
        token,
        100,
        Direction.Backward,
      );
      const events = chunk as IRoomEvent[];
      const me = client().getSafeUserId();
      const stop = events.findIndex((event) => event.origin_server_ts < until_ms || isJoin(event, me));
      found.push(...(stop < 0 ? events : events.slice(0, stop)));
      token = stop < 0 && events.length > 0 ? end : undefined;
    }
    if (token === undefined) log.info({ room, events: found.length }, 'read back what was missed');
    else log.warn({ room, events: found.length }, 'more was missed than is read back: what is older stays unanswered');
    return found.toReversed();
  }

  async function consider(event: RawEvent): Promise<void> {
    if (!worthReading.has(event.type) || event.state_key !== undefined) return;
    const { event_id, room_id: room = '', sender } = event;
    if (sender === client().getSafeUserId()) return;
    const clear = await decrypted(client(), event);
    const concern = clear === 'secret' ? 'usual' : await concerns(clear);
    if (!concern) return;
    if ((await ask(event_id, { room, event: event_id, sender }, concern)) && clear !== 'secret') remember(clear);
  }
}

/** Coming in; a change of one's name while inside is none. */
function isJoin({ type, content, unsigned, ...event }: IRoomEvent, me: string): boolean {
  if (type !== 'm.room.member' || !('state_key' in event) || event.state_key !== me) return false;
  const before = (unsigned as { prev_content?: { membership?: string } } | undefined)?.prev_content?.membership;
  return (content as { membership?: string }).membership === 'join' && before !== 'join';
}
