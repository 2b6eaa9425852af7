import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { subscribe, unsubscribe } from 'node:diagnostics_channel';
import { once } from 'node:events';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Client, Events, REST } from 'discord.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Discord, startDiscord } from '../../adapters/discord/gateway.ts';
import { register } from '../../adapters/discord/register.ts';
import { type Kept, openKept } from '../../bot/discord-store.ts';
import { answerAsk, answerLine } from '../../commands/answer.ts';
import type { Reply } from '../../commands/card.ts';
import { inProcessMemory } from '../../commands/memory.ts';
import { commands } from '../../commands/registry.ts';
import { startFlags } from '../end-to-end/program.ts';
import { type Peer, startDiscordPeer } from '../peers/discord/peer.ts';
import { bareBot } from './discord-bare.ts';

/** Ours over a bare bot's: time outside the core, resident memory at rest, start to READY. */
const most = { outside: 1.4, memory: 1.25, start: 1.5 };
/** Commands for a second of one core. */
const least_s = 500;

const plain = { name: 'help', options: { command: 'mix' } };
const question = { name: 'mix', options: { amount: '30 L' } };
const tell = (text: string) => process.stdout.write(`${text}\n`);
const median = (all: readonly number[]): number => all.toSorted((a, b) => a - b)[all.length >> 1] ?? Number.NaN;
const place = 'bot-dm' as const;
let asker = 0;

async function openPeer(): Promise<Peer> {
  const peer = await startDiscordPeer({ heartbeat_ms: 60_000 });
  await register({ rest: new REST({ api: peer.rest }).setToken(peer.token), commands });
  return peer;
}

/** From the event to the callback's last byte into the socket, ms. The judging peer's own time is not in it. */
async function toCallback(peer: Peer): Promise<number> {
  let sent = Number.NaN;
  const heard = (message: unknown) => {
    const { request } = message as { request: { path: string } };
    if (request.path.includes('/callback')) sent = performance.now();
  };
  subscribe('undici:request:bodySent', heard);
  const began = performance.now();
  await peer.slash(question, { user: `person ${asker++}`, place });
  unsubscribe('undici:request:bodySent', heard);
  return sent - began;
}

describe('an answer to /mix, from INTERACTION_CREATE to the callback sent', () => {
  const folder = mkdtempSync(join(tmpdir(), 'teemer-bench-'));
  let bare: { peer: Peer; client: Client };
  /** The wiring of the program: with its card at hand, so that all it takes is outside the core; with the store in a file; whole. */
  const ours: { peer: Peer; bot: Discord; kept: Kept }[] = [];

  async function open(where: { data?: string }, answer?: Reply) {
    const peer = await openPeer();
    const kept = await openKept(where, () => {});
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
      log: { info: () => {}, warn: tellFault, error: tellFault },
    });
    await bot.ready;
    ours.push({ peer, bot, kept });
  }
  const tellFault = (_about: object, what: string) => tell(what);

  beforeAll(async () => {
    const peer = await openPeer();
    const client = bareBot(peer.rest);
    const ready = once(client, Events.ClientReady);
    await client.login(peer.token);
    await ready;
    bare = { peer, client };
    const card = await answerLine('mix 30 L', { asker: '', place: '', now: new Date(0), memory: inProcessMemory() });
    await open({}, card);
    await open({ data: folder }, card);
    await open({ data: folder });
  }, 60_000);
  afterAll(async () => {
    for (const { bot, kept, peer } of ours) {
      await bot.stop();
      await kept.close();
      await peer.close();
    }
    await bare.client.destroy();
    await bare.peer.close();
    rmSync(folder, { recursive: true });
  });

  it('takes little longer outside the core than a bare bot takes for a constant embed', {
    timeout: 300_000,
  }, async () => {
    const [held, stored, whole] = ours.map((one) => one.peer) as [Peer, Peer, Peer];
    const ratios: number[] = [];
    // Of several rounds the least disturbed: other programs only ever add.
    for (let round = 0; round < 10; round++) {
      const [least, more] = await byTurns(100, bare.peer, held);
      tell(`to the callback: bare ${least?.toFixed(2)} ms, ours ${more?.toFixed(2)} ms`);
      // The first ones warm up.
      if (round > 1) ratios.push((more ?? 0) / (least ?? 0));
    }
    const [file, all] = await byTurns(60, stored, whole);
    tell(
      `with the store in a file ${file?.toFixed(2)} ms; and with its 1,000 samples, the whole of /mix ${all?.toFixed(2)} ms`,
    );
    tell(`outside the core: ${ratios.map((one) => one.toFixed(2)).join(', ')} times a bare bot`);
    for (const { peer } of ours) expect(peer.violations).toEqual([]);
    expect(Math.min(...ratios)).toBeLessThan(most.outside);
  });
});

/** Medians of two peers' bots, asked in turns, so that a busy machine slows both. */
async function byTurns(turns: number, ...peers: readonly Peer[]): Promise<readonly number[]> {
  const took = peers.map((): number[] => []);
  for (let turn = 0; turn < turns; turn++) {
    for (const [at, peer] of peers.entries()) took[at]?.push(await toCallback(peer));
  }
  return took.map(median);
}

/** The bundle as it is deployed, and the bare bot: each a process of its own. */
const programs = { bare: ['test/bench/discord-bare.ts'], ours: [...startFlags, 'dist/main.js'] };

async function started(which: keyof typeof programs, peer: Peer): Promise<{ bot: ChildProcess; ready_ms: number }> {
  const env = { PATH: process.env.PATH, DISCORD_TOKEN: peer.token, DISCORD_API: peer.rest };
  const { length } = peer.sessions.identified;
  const began = performance.now();
  const bot = spawn(process.execPath, programs[which], { env, stdio: 'ignore' });
  while (peer.sessions.identified.length === length) await new Promise((resolve) => setTimeout(resolve, 1));
  return { bot, ready_ms: performance.now() - began };
}

async function ended(bot: ChildProcess): Promise<void> {
  const left = once(bot, 'exit');
  bot.kill('SIGKILL');
  await left;
}

const resident_MB = ({ pid }: ChildProcess): number =>
  Number(/^VmRSS:\s+(\d+)/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]) / 1024;

/** Processor time of all its threads, s: a hundredth at a time. */
function processor_s({ pid }: ChildProcess): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
    .replace(/^.*\) /s, '')
    .split(' ');
  return (Number(fields[11]) + Number(fields[12])) / 100;
}

describe('the program, a process of its own', () => {
  beforeAll(() => {
    execFileSync('npm', ['run', 'bundle'], { stdio: 'ignore' });
  }, 120_000);

  it('starts nearly as soon as a bare bot, and is little larger at rest', { timeout: 300_000 }, async () => {
    const start = { bare: [] as number[], ours: [] as number[] };
    const memory = { bare: [] as number[], ours: [] as number[] };
    for (let turn = 0; turn < 6; turn++) {
      for (const which of ['bare', 'ours'] as const) {
        const peer = await openPeer();
        const { bot, ready_ms } = await started(which, peer);
        if (turn > 0) start[which].push(ready_ms);
        if (turn % 2 === 1) {
          await new Promise((resolve) => setTimeout(resolve, 6000));
          memory[which].push(resident_MB(bot));
        }
        await ended(bot);
        await peer.close();
      }
    }
    const least = (all: readonly number[]) => Math.min(...all);
    tell(`start to READY: bare ${least(start.bare).toFixed(0)} ms, ours ${least(start.ours).toFixed(0)} ms`);
    tell(`at rest: bare ${median(memory.bare).toFixed(0)} MB, ours ${median(memory.ours).toFixed(0)} MB`);
    expect.soft(least(start.ours) / least(start.bare)).toBeLessThan(most.start);
    expect.soft(median(memory.ours) / median(memory.bare)).toBeLessThan(most.memory);
  });

  it('answers often enough for a second of one core', { timeout: 300_000 }, async () => {
    const peer = await openPeer();
    const { bot } = await started('ours', peer);
    const many = async (slash: typeof question | typeof plain, count: number) => {
      let left = count;
      const one = async () => {
        while (left-- > 0) await peer.slash(slash, { user: `person ${asker++}`, place });
      };
      await Promise.all(Array.from({ length: 16 }, one));
    };
    const rate = async (slash: typeof question | typeof plain) => {
      await many(slash, 600);
      const rates: number[] = [];
      for (let round = 0; round < 4; round++) {
        const before = processor_s(bot);
        await many(slash, 1000);
        rates.push(1000 / (processor_s(bot) - before));
      }
      tell(`/${slash.name}: ${rates.map((one) => one.toFixed(0)).join(', ')} for a second of processor time`);
      return Math.max(...rates);
    };
    expect.soft(await rate(plain)).toBeGreaterThan(least_s);
    // Whole, with its 1,000 samples.
    expect.soft(await rate(question)).toBeGreaterThan(least_s);
    await ended(bot);
    expect(peer.violations).toEqual([]);
    await peer.close();
  });
});
