import { createClient, Filter, type ISyncResponse, type MatrixClient } from 'matrix-js-sdk';
import { type Logger, logger as sdkLogger } from 'matrix-js-sdk/lib/logger.js';
import type { Recovery } from './cross-sign.ts';
import type { Log } from './ports.ts';
import type { Session } from './session.ts';
import { type SyncPlace, SyncStore } from './sync-store.ts';

/** What the SDK has to say may hold what people wrote: only its first words go on, and only where all is logged. */
export function quietLogger(log: Log): Logger {
  const told = (...said: readonly unknown[]) => log.debug({ said: String(said[0]).slice(0, 120) }, 'the SDK says');
  const nothing = () => {};
  const quiet: Logger = {
    trace: nothing,
    debug: nothing,
    info: nothing,
    warn: told,
    error: told,
    getChild: () => quiet,
  };
  // Parts of it use a logger of the module instead, or a child of that.
  Object.assign(sdkLogger, quiet, { log: nothing });
  return quiet;
}

export function clientFor(
  {
    homeserver,
    session,
    recovery,
    logger,
  }: { homeserver: string; session: Session; recovery: Recovery | undefined; logger: Logger },
  place: SyncPlace,
): MatrixClient {
  const { fetchFn, whole } = sparing(place.token !== undefined);
  const received: SyncPlace['received'] = (response, since) => place.received(whole(response), since);
  return createClient({
    baseUrl: homeserver,
    ...session,
    logger,
    store: new SyncStore({ ...place, received }),
    fetchFn,
    ...(recovery ? { cryptoCallbacks: recovery.callbacks } : {}),
  });
}

/**
 * What people say is kept from the SDK: it would decrypt all of it, the bot's own words too, and never let go of it.
 * Whoever takes in the response gets it `whole`.
 *
 * With nothing but a token the SDK does not know which rooms are encrypted, nor who is in them, after a restart: its
 * first question is for the whole state.
 */
function sparing(restarted: boolean): {
  readonly fetchFn: typeof fetch;
  readonly whole: (spared: ISyncResponse) => ISyncResponse;
} {
  let first = restarted;
  let last: ISyncResponse | undefined;
  return {
    async fetchFn(resource, options) {
      const url = new URL(resource instanceof Request ? resource.url : resource);
      if (!url.pathname.endsWith('/sync')) return fetch(resource, options);
      if (first) url.searchParams.set('full_state', 'true');
      const response = await fetch(url, options);
      if (!response.ok) return response;
      const body = (await response.json()) as ISyncResponse;
      first = false;
      last = body;
      return Response.json(spared(body));
    },
    whole: (response) => (last?.next_batch === response.next_batch ? last : response),
  };
}

/** Only what changes a room's state. */
function spared(response: ISyncResponse): ISyncResponse {
  if (!response.rooms?.join) return response;
  const join = Object.entries(response.rooms.join).map(([id, room]) => {
    const events = room.timeline.events.filter((event) => 'state_key' in event);
    return [id, { ...room, timeline: { ...room.timeline, events } }] as const;
  });
  return { ...response, rooms: { ...response.rooms, join: Object.fromEntries(join) } };
}

/** More than anybody asks while the bot restarts; what is beyond is fetched page by page. */
export const timelineLimit = 100;

/** Nobody's presence, typing or receipts. */
export const filterFor = (userId: string): Filter =>
  Filter.fromJson(userId, '', {
    presence: { types: [] },
    room: { timeline: { limit: timelineLimit }, ephemeral: { types: [] } },
  } as Parameters<typeof Filter.fromJson>[2]);
