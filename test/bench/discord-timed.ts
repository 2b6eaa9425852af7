/**
 * Answers to `/mix` in a process of its own, as the program is: the test runner makes every use of an import slower
 * than it is there. Prints as JSON, in ms from INTERACTION_CREATE to the callback's last byte sent: rounds of a bare bot
 * and of ours with its card at hand, so that all it takes is outside the core; the same with the store in a file; whole.
 */
import { subscribe } from 'node:diagnostics_channel';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Events, REST } from 'discord.js';
import { startDiscord } from '../../adapters/discord/gateway.ts';
import { register } from '../../adapters/discord/register.ts';
import { openKept } from '../../bot/discord-store.ts';
import { answerAsk, answerLine } from '../../commands/answer.ts';
import type { Reply } from '../../commands/card.ts';
import { inProcessMemory } from '../../commands/memory.ts';
import { commands } from '../../commands/registry.ts';
import { type Peer, startDiscordPeer } from '../peers/discord/peer.ts';
import { bareBot } from './discord-bare.ts';

const peers: Peer[] = [];
async function openPeer(): Promise<Peer> {
  const peer = await startDiscordPeer({ heartbeat_ms: 60_000 });
  await register({ rest: new REST({ api: peer.rest }).setToken(peer.token), commands });
  peers.push(peer);
  return peer;
}

async function bare(): Promise<Peer> {
  const peer = await openPeer();
  const client = bareBot(peer.rest);
  const ready = once(client, Events.ClientReady);
  await client.login(peer.token);
  await ready;
  return peer;
}

/** The wiring of the program. */
async function ours(where: { data?: string }, answer?: Reply): Promise<Peer> {
  const peer = await openPeer();
  const kept = await openKept(where, () => {});
  const fault = (_about: object, what: string) => void process.stderr.write(`${what}\n`);
  const bot = startDiscord({
    token: peer.token,
    api: peer.rest,
    commands,
    answer: async (ask, { asker, place }) =>
      answer ?? answerAsk(ask, { asker, place, now: new Date(), memory: kept.memory }),
    picture: async () => undefined,
    ...kept,
    budget: { take: () => ({ wait_s: 0 }) },
    now: () => new Date(),
    log: { info: () => {}, warn: fault, error: fault },
  });
  await bot.ready;
  return peer;
}

let sent = Number.NaN;
subscribe('undici:request:bodySent', (message) => {
  const { request } = message as { request: { path: string } };
  if (request.path.includes('/callback')) sent = performance.now();
});

let asker = 0;
/** The judging peer's own time is not in it. */
async function toCallback_ms(peer: Peer): Promise<number> {
  const began = performance.now();
  await peer.slash({ name: 'mix', options: { amount: '30 L' } }, { user: `person ${asker++}`, place: 'bot-dm' });
  return sent - began;
}

const median = (all: readonly number[]): number => all.toSorted((a, b) => a - b)[all.length >> 1] ?? Number.NaN;

/** Medians of two, asked in turns, so that a busy machine slows both. */
async function byTurns(turns: number, one: Peer, other: Peer): Promise<readonly [number, number]> {
  const took: [number[], number[]] = [[], []];
  for (let turn = 0; turn < turns; turn++) {
    took[0].push(await toCallback_ms(one));
    took[1].push(await toCallback_ms(other));
  }
  return [median(took[0]), median(took[1])];
}

const card = await answerLine('mix 30 L', { asker: '', place: '', now: new Date(0), memory: inProcessMemory() });
const folder = mkdtempSync(join(tmpdir(), 'teemer-bench-'));
const [least, held, stored, whole] = [
  await bare(),
  await ours({}, card),
  await ours({ data: folder }, card),
  await ours({ data: folder }),
];
// The first rounds warm up.
for (let round = 0; round < 3; round++) await byTurns(150, least, held);
const rounds: (readonly [number, number])[] = [];
for (let round = 0; round < 15; round++) rounds.push(await byTurns(100, least, held));
const [stored_ms, whole_ms] = await byTurns(60, stored, whole);
const violations = peers.flatMap((peer) => peer.violations);
rmSync(folder, { recursive: true });
process.stdout.write(JSON.stringify({ rounds, stored_ms, whole_ms, violations }), () => process.exit());
