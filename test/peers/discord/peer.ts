import { once } from 'node:events';
import { type Clock, realClock } from './clock.ts';
import { keepCommands, type RegisteredCommand } from './commands.ts';
import { type Gateway, openGateway } from './gateway.ts';
import { openInteractions } from './interactions.ts';
import { keepLimits } from './limits.ts';
import { type Member, memberOf } from './member.ts';
import { keepMessages } from './messages.ts';
import { openCourt } from './refusal.ts';
import { openRest } from './rest.ts';
import { routesOf } from './routes.ts';
import { playedBack, type Seen, type Sight, sightOf } from './seen.ts';
import { createWorld, type Doors, type Place, type Who } from './world.ts';

export type { Seen, SeenAttachment, SeenMessage } from './seen.ts';

export type { RegisteredCommand, Who };

export interface PeerOptions {
  /** How many shards the peer recommends, and how many servers there are: one on each. */
  shards?: number;
  applicationId?: string;
  /** The time of the 3 s and the 15 min. Rate limits and heartbeats keep the machine's time, as the client does. */
  clock?: Clock;
  heartbeat_ms?: number;
  /** Shards that may identify in the same 5 s. */
  maxConcurrency?: number;
  /** Identifies a day. */
  sessionStarts?: number;
  /** The time that identifies are told apart by, in ms; the machine's, as the client keeps it. */
  identifyTime?: () => number;
  /** Requests are not counted. */
  unlimited?: boolean;
}

/**
 * The platform as the bot meets it, on loopback: REST and gateway, with members who do things and see what comes of them.
 * Every rule that is broken on the way is noted in `violations`.
 */
export interface Peer extends Member {
  /** For `rest.api` of the client, which appends the version itself. */
  readonly rest: string;
  readonly token: string;
  readonly applicationId: string;
  /** Servers the bot is in, one on each shard. */
  readonly guilds: readonly string[];
  readonly commands: readonly RegisteredCommand[];
  readonly seen: readonly Seen[];
  readonly violations: readonly string[];
  /** Shards that identified and that resumed, in order. */
  readonly sessions: Pick<Gateway, 'identified' | 'resumed'>;
  /** The id of a member, for messages the bot sends by itself. */
  userId(name: string): string;
  /** The channel of a place. */
  channelId(who: Who): string;
  readonly doors: Doors;
  /** As if the minutes had passed for which messages are known by them. */
  forgetNonces(): void;
  readonly faults: Pick<Gateway, 'drop' | 'invalidSession' | 'loseHeartbeats' | 'replayOnResume'> & {
    rateLimit(count: number): void;
    serverErrors(count: number): void;
    /** What comes next is done, and then said to have failed. */
    lostAnswers(count: number): void;
  };
  /** What the members saw, as text. */
  print(): string;
  close(): Promise<void>;
}

export async function startDiscordPeer(options: PeerOptions = {}): Promise<Peer> {
  const { shards = 1, applicationId, clock = realClock } = options;
  const token = 'bG9vcGJhY2s.b25seQ.not-a-secret';
  const court = openCourt();
  const world = createWorld({ shards, clock, ...(applicationId ? { applicationId } : {}) });
  const seen: Seen[] = [];
  const sight = (place: Place, did = 'the bot writes by itself'): Sight => {
    const made = sightOf({ id: world.id(), did, place: place.name });
    seen.push(made.seen);
    return made;
  };

  const messages = keepMessages({ world, clock, files: () => `${origin()}/files` });
  const interactions = openInteractions({ clock, court, messages });
  const commands = keepCommands({ world, clock, court });
  const limits = keepLimits(court, { unlimited: options.unlimited ?? false });
  const rest = openRest({
    token,
    court,
    limits,
    routes: routesOf({ world, court, commands, interactions, messages, sight, gateway: () => gateway }),
    file(path) {
      const found = messages.attachment(path[1] ?? '');
      return found && { type: found.contentType || 'application/octet-stream', data: found.bytes };
    },
  });
  const origin = () => {
    const address = rest.server.address();
    return `http://127.0.0.1:${typeof address === 'object' ? address?.port : ''}`;
  };
  const gateway: Gateway = openGateway({
    server: rest.server,
    world,
    token,
    court,
    shards,
    options: {
      heartbeat_ms: options.heartbeat_ms ?? 5000,
      maxConcurrency: options.maxConcurrency ?? 16,
      sessionStarts: options.sessionStarts ?? 1000,
      identifyTime: options.identifyTime ?? (() => performance.now()),
    },
  });
  rest.server.listen(0, '127.0.0.1');
  await once(rest.server, 'listening');

  return {
    ...memberOf({ world, commands, interactions, messages, sight, gateway: () => gateway }),
    rest: `${origin()}/api`,
    token,
    applicationId: world.applicationId,
    guilds: world.guilds.map(({ id }) => id),
    get commands() {
      return commands.all;
    },
    seen,
    violations: court.violations,
    sessions: gateway,
    userId: (name) => world.user(name).id,
    channelId: (who) => world.place(who).channelId,
    doors: world.doors,
    forgetNonces: messages.forgetNonces,
    faults: {
      drop: gateway.drop,
      invalidSession: gateway.invalidSession,
      loseHeartbeats: gateway.loseHeartbeats,
      get replayOnResume() {
        return gateway.replayOnResume;
      },
      set replayOnResume(on) {
        gateway.replayOnResume = on;
      },
      rateLimit: limits.refuseNext,
      serverErrors: rest.failNext,
      lostAnswers: rest.loseNext,
    },
    print: () => playedBack(seen),
    async close() {
      interactions.close();
      gateway.close();
      rest.server.closeAllConnections();
      rest.server.close();
      await once(rest.server, 'close');
    },
  };
}
