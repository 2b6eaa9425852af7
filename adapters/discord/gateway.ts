import type { EventEmitter } from 'node:events';
import { type APIInteraction, Client, Events, GatewayDispatchEvents } from 'discord.js';
import { createDesk, type DeskParts } from './desk.ts';
import { restDoor } from './door.ts';
import { within } from './within.ts';

/** All shards of one process, or some of those that several processes share. */
export type Shards = number | 'auto' | { readonly ids: readonly number[]; readonly of: number };

export interface DiscordParts extends Omit<DeskParts, 'door'> {
  readonly token: string;
  /** Where the platform's REST is, without its version; the platform's own where it is not given. */
  readonly api?: string | undefined;
  readonly shards?: Shards | undefined;
}

export interface Discord {
  /** Every shard is connected. Rejects where the token or the shards are refused. */
  readonly ready: Promise<void>;
  isConnected(): boolean;
  /** Answers what has been asked, then leaves. */
  stop(): Promise<void>;
}

/** How long a question that is being answered holds up leaving. */
const leave_ms = 8000;

/**
 * The gateway's door. Interactions are taken as they come over the wire and reduced to plain values, so no privileged
 * intent and no cache is needed, and the same desk can serve another door.
 */
export function startDiscord({ token, api, shards = 'auto', ...parts }: DiscordParts): Discord {
  const { log } = parts;
  const client = new Client({
    intents: [],
    allowedMentions: { parse: [] },
    ...(typeof shards === 'object' ? { shards: [...shards.ids], shardCount: shards.of } : shardsOf(shards)),
    ...(api === undefined ? {} : { rest: { api } }),
  });
  const desk = createDesk({ ...parts, door: restDoor(client.rest) });
  const open = new Set<Promise<void>>();
  let stopped = false;

  // The library's own type does not list the event, but documents it.
  (client as EventEmitter).on('raw', (packet: { t: string | null; d: unknown }) => {
    if (packet.t !== GatewayDispatchEvents.InteractionCreate || stopped) return;
    // Taken: the library would make objects of it that nobody reads, before the answer goes out.
    packet.t = null;
    const work = desk.handle(packet.d as APIInteraction).finally(() => open.delete(work));
    open.add(work);
  });
  client.on(Events.Error, (err) => log.error({ err }, 'the gateway failed'));
  client.on(Events.Warn, (said) => log.warn({ said }, 'the gateway warns'));
  client.on(Events.ShardError, (err, shard) => log.warn({ err, shard }, 'a shard’s connection failed'));
  client.on(Events.ShardDisconnect, ({ code }, shard) => log.error({ code, shard }, 'a shard is gone for good'));
  client.on(Events.ShardReconnecting, (shard) => {
    if (!stopped) log.info({ shard }, 'a shard connects again');
  });
  client.on(Events.ShardResume, (shard, replayed) => log.info({ shard, replayed }, 'a shard resumed'));
  client.on(Events.Invalidated, () => log.error({}, 'the session was given up by the platform'));

  const ready = new Promise<void>((resolve, reject) => {
    client.once(Events.ClientReady, () => resolve());
    client.login(token).catch(reject);
  });
  ready.catch(() => {});

  return {
    ready,
    isConnected: () => client.isReady() && client.ws.shards.every(({ status }) => status === 0),
    async stop() {
      stopped = true;
      await within(Promise.allSettled(open), leave_ms, undefined);
      await client.destroy();
    },
  };
}

const shardsOf = (shards: number | 'auto') =>
  shards === 'auto' ? { shards: 'auto' as const } : { shardCount: shards };
