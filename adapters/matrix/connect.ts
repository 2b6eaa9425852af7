import { createClient, Filter, type MatrixClient } from 'matrix-js-sdk';
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
  return createClient({
    baseUrl: homeserver,
    ...session,
    logger,
    store: new SyncStore(place),
    fetchFn: wholeState(place.token !== undefined),
    ...(recovery ? { cryptoCallbacks: recovery.callbacks } : {}),
  });
}

/**
 * With nothing but a token the SDK does not know which rooms are encrypted, nor who is in them, after a restart: its
 * first question is for the whole state.
 */
function wholeState(restarted: boolean): typeof fetch {
  let first = restarted;
  return (resource, options) => {
    const url = new URL(resource instanceof Request ? resource.url : resource);
    if (!first || !url.pathname.endsWith('/sync')) return fetch(resource, options);
    url.searchParams.set('full_state', 'true');
    return fetch(url, options).then((response) => {
      if (response.ok) first = false;
      return response;
    });
  };
}

/** More than anybody asks while the bot restarts; what is beyond is fetched page by page. */
export const timelineLimit = 100;

/** Nobody's presence, typing or receipts. */
export const filterFor = (userId: string): Filter =>
  Filter.fromJson(userId, '', {
    presence: { types: [] },
    room: { timeline: { limit: timelineLimit }, ephemeral: { types: [] } },
  } as Parameters<typeof Filter.fromJson>[2]);
