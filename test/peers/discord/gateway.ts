import { randomUUID } from 'node:crypto';
import type { Server } from 'node:http';
import { type WebSocket, WebSocketServer } from 'ws';
import { isRecord } from './judge-message.ts';
import type { Court } from './refusal.ts';
import { guildObject, type World } from './world.ts';

/** The event side (events/gateway): sessions of shards, their events numbered and kept, so that a resumed one misses none. */
export interface Gateway {
  url(): string;
  information(): unknown;
  /**
   * Hands an event to every session of its shard: `now` if a live connection had it, `later` if a session keeps it for a RESUME,
   * `never` if there is none.
   */
  dispatch(event: Outgoing): 'now' | 'later' | 'never';
  /** Cuts the connections; the sessions stay. */
  drop(): void;
  invalidSession(resumable: boolean): void;
  /** The connections of now fall silent: no acknowledgement and no event comes any more, and they stay open. */
  loseHeartbeats(): void;
  /** A RESUME also hands over again the last interaction that the client had already. */
  replayOnResume: boolean;
  readonly identified: readonly number[];
  readonly resumed: readonly number[];
  close(): void;
}

export interface Outgoing {
  readonly t: string;
  readonly d: unknown;
  /** The server it comes from; without one it goes to shard 0. */
  readonly guild?: string;
}

interface Session {
  readonly id: string;
  readonly shard: number;
  readonly shards: number;
  readonly intents: number;
  readonly events: { readonly s: number; readonly t: string; readonly d: unknown }[];
  line?: Line;
}

/** One connection. */
interface Line {
  readonly socket: WebSocket;
  session?: Session;
  silent: boolean;
  received: number[];
  beat: NodeJS.Timeout;
}

const op = {
  dispatch: 0,
  heartbeat: 1,
  identify: 2,
  presence: 3,
  voice: 4,
  resume: 6,
  members: 8,
  invalidSession: 9,
  hello: 10,
  acknowledged: 11,
} as const;

/** Members, presences and message content: each needs the platform's leave. */
const privileged = (1 << 1) | (1 << 8) | (1 << 15);
const identifyEach_ms = 5000;

export interface GatewayOptions {
  readonly heartbeat_ms: number;
  /** Shards that may identify in the same 5 s. */
  readonly maxConcurrency: number;
  /** Identifies a day. */
  readonly sessionStarts: number;
  /** The time that identifies are told apart by, in ms. */
  readonly identifyTime: () => number;
}

export function openGateway(given: {
  readonly server: Server;
  readonly world: World;
  readonly token: string;
  readonly court: Court;
  readonly shards: number;
  readonly options: GatewayOptions;
}): Gateway {
  const { world, court, options } = given;
  const lines = new Set<Line>();
  const sessions = new Map<string, Session>();
  const lastIdentify = new Map<number, { readonly at: number; readonly shard: number }>();
  const farewells = new Set<number>();
  const identified: number[] = [];
  const resumed: number[] = [];
  const sockets = new WebSocketServer({ server: given.server });

  sockets.on('connection', (socket, request) => {
    const query = new URL(request.url ?? '/', 'ws://peer').searchParams;
    const line: Line = { socket, silent: false, received: [], beat: setTimeout(() => {}, 0) };
    lines.add(line);
    socket.on('error', () => {});
    socket.on('close', (code) => closed(line, code));
    socket.on('message', (data) => receive(line, String(data)));
    if (query.get('v') !== '10') return end(line, 4012, `version ${query.get('v')} of the gateway`);
    if (query.get('encoding') !== 'json' || query.has('compress')) {
      return end(line, 4002, 'only plain JSON is spoken here');
    }
    awaitHeartbeat(line);
    send(line, { op: op.hello, d: { heartbeat_interval: options.heartbeat_ms } });
  });

  const send = (line: Line, payload: unknown) => line.socket.send(JSON.stringify(payload));

  function end(line: Line, code: number, why: string): void {
    court.note(`gateway: ${why} (closed with ${code})`);
    line.socket.close(code, why.slice(0, 100));
  }

  function closed(line: Line, code: number): void {
    clearTimeout(line.beat);
    lines.delete(line);
    const { session } = line;
    if (session?.line !== line) return;
    delete session.line;
    // Who says goodbye by 1000 or 1001 gives the session up.
    if (code !== 1000 && code !== 1001) return;
    sessions.delete(session.id);
    farewells.add(session.shard);
  }

  function awaitHeartbeat(line: Line): void {
    clearTimeout(line.beat);
    line.beat = setTimeout(() => {
      // A machine that was busy gets to read what has come meanwhile.
      line.beat = setTimeout(() => {
        if (line.silent) line.socket.terminate();
        else end(line, 4000, 'no heartbeat');
      }, 1000);
    }, options.heartbeat_ms * 2);
  }

  function receive(line: Line, text: string) {
    const now = performance.now();
    line.received = [...line.received.filter((at) => now - at < 60_000), now];
    if (line.received.length > 120) return end(line, 4008, 'more than 120 events in 60 s');
    if (Buffer.byteLength(text) > 4096) return end(line, 4002, 'a payload of more than 4096 bytes');
    const payload: unknown = JSON.parse(text);
    if (!isRecord(payload)) return end(line, 4002, 'a payload that is no object');
    const d = payload.d as Record<string, unknown>;
    switch (payload.op) {
      case op.heartbeat:
        awaitHeartbeat(line);
        if (!line.silent) send(line, { op: op.acknowledged });
        return;
      case op.identify:
        return identify(line, d);
      case op.resume:
        return resume(line, d);
      case op.presence:
      case op.voice:
      case op.members:
        if (!line.session) end(line, 4003, 'sent before it identified itself');
        return;
      default:
        end(line, 4001, `the unknown opcode ${payload.op}`);
    }
  }

  function identify(line: Line, d: Record<string, unknown>) {
    if (line.session) return end(line, 4005, 'identified twice');
    if (d.token !== given.token) return end(line, 4004, 'a wrong token');
    const [shard, shards] = Array.isArray(d.shard) ? d.shard.map(Number) : [0, 1];
    if (shard === undefined || shards === undefined || !(shard >= 0 && shard < shards)) {
      return end(line, 4010, `the shard ${JSON.stringify(d.shard)}`);
    }
    if (typeof d.intents !== 'number') return end(line, 4013, 'no intents');
    if (d.intents & privileged) return end(line, 4014, `the privileged intents ${d.intents & privileged}`);
    if (!isRecord(d.properties) || !d.properties.os) return end(line, 4002, 'no properties');
    if (identified.length >= options.sessionStarts)
      return end(line, 4004, `more than ${options.sessionStarts} identifies`);
    if (!mayIdentify(shard)) return send(line, { op: op.invalidSession, d: false });
    identified.push(shard);
    for (const old of sessions.values()) if (old.shard === shard && !old.line) sessions.delete(old.id);
    const session: Session = { id: randomUUID(), shard, shards, intents: d.intents, events: [], line };
    line.session = session;
    sessions.set(session.id, session);
    welcome(session);
  }

  /** One identify in 5 s of those that share a key. Who said goodbye and comes back is a restarted program, which can't know. */
  function mayIdentify(shard: number): boolean {
    const key = shard % options.maxConcurrency;
    const last = lastIdentify.get(key);
    const early = last !== undefined && options.identifyTime() - last.at < identifyEach_ms;
    const restarted = last?.shard === shard && farewells.delete(shard);
    lastIdentify.set(key, { at: options.identifyTime(), shard });
    if (!early || restarted) return true;
    court.note(`gateway: shard ${shard} identified within 5 s of shard ${last.shard}`);
    return false;
  }

  function welcome(session: Session): void {
    const own = world.guilds.filter((guild) => shardOf(guild.id, session.shards) === session.shard);
    emit(session, 'READY', {
      v: 10,
      user: { ...world.bot, verified: true, mfa_enabled: false, email: null, flags: 0 },
      guilds: own.map(({ id }) => ({ id, unavailable: true })),
      session_id: session.id,
      resume_gateway_url: url(),
      shard: [session.shard, session.shards],
      application: { id: world.applicationId, flags: 0 },
    });
    if (!(session.intents & 1)) return;
    for (const { channelId } of own) emit(session, 'GUILD_CREATE', guildObject(world.channel(channelId)!, world));
  }

  function resume(line: Line, d: Record<string, unknown>) {
    if (d.token !== given.token) return end(line, 4004, 'a wrong token');
    const session = sessions.get(String(d.session_id));
    if (!session) return send(line, { op: op.invalidSession, d: false });
    const seq = Number(d.seq);
    if (!(seq <= session.events.length)) return end(line, 4007, `the sequence ${d.seq}, not sent yet`);
    if (session.line && session.line !== line) session.line.socket.close(4009);
    session.line = line;
    line.session = session;
    resumed.push(session.shard);
    const had = session.events.slice(0, seq).findLast((event) => event.t === 'INTERACTION_CREATE');
    if (had && self.replayOnResume) send(line, { op: op.dispatch, ...had });
    for (const event of session.events.slice(seq)) send(line, { op: op.dispatch, ...event });
    emit(session, 'RESUMED', {});
  }

  function emit(session: Session, t: string, d: unknown): boolean {
    const event = { s: session.events.length + 1, t, d };
    session.events.push(event);
    const { line } = session;
    if (!line || line.silent || line.socket.readyState !== line.socket.OPEN) return false;
    send(line, { op: op.dispatch, ...event });
    return true;
  }

  function url(): string {
    const address = given.server.address();
    return `ws://127.0.0.1:${typeof address === 'object' ? address?.port : ''}`;
  }

  const self: Gateway = {
    url,
    information: () => ({
      url: url(),
      shards: given.shards,
      session_start_limit: {
        total: options.sessionStarts,
        remaining: options.sessionStarts - identified.length,
        reset_after: 86_400_000,
        max_concurrency: options.maxConcurrency,
      },
    }),
    dispatch({ t, d, guild }) {
      const meant = [...sessions.values()].filter(
        (session) => session.shard === (guild ? shardOf(guild, session.shards) : 0) && wants(session, t, guild),
      );
      const live = meant.map((session) => emit(session, t, d));
      return live.includes(true) ? 'now' : live.length > 0 ? 'later' : 'never';
    },
    drop() {
      for (const { socket } of lines) socket.terminate();
    },
    invalidSession(resumable) {
      for (const line of lines) {
        if (line.session && !resumable) {
          sessions.delete(line.session.id);
          delete line.session;
        }
        send(line, { op: op.invalidSession, d: resumable });
      }
    },
    loseHeartbeats() {
      for (const line of lines) line.silent = true;
    },
    replayOnResume: false,
    identified,
    resumed,
    close() {
      for (const line of lines) {
        clearTimeout(line.beat);
        line.socket.terminate();
      }
      sockets.close();
    },
  };
  return self;
}

/** Interactions come to everybody, messages by intent: those of servers by 1<<9, direct ones by 1<<12. */
function wants({ intents }: Session, t: string, guild: string | undefined): boolean {
  return t !== 'MESSAGE_CREATE' || (intents & (guild ? 1 << 9 : 1 << 12)) !== 0;
}

export const shardOf = (guild: string, shards: number) => Number((BigInt(guild) >> 22n) % BigInt(shards));
