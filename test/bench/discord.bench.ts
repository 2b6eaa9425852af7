import { type ChildProcess, execFileSync, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { REST } from 'discord.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { register } from '../../adapters/discord/register.ts';
import { commands } from '../../commands/registry.ts';
import { startFlags } from '../end-to-end/program.ts';
import { type Peer, startDiscordPeer } from '../peers/discord/peer.ts';

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

interface Timed {
  readonly rounds: readonly (readonly [bare_ms: number, ours_ms: number])[];
  readonly stored_ms: number;
  readonly whole_ms: number;
  readonly violations: readonly unknown[];
}

it('an answer to /mix takes little longer outside the core than a bare bot takes for a constant embed', {
  timeout: 120_000,
}, () => {
  const timed = join(import.meta.dirname, 'discord-timed.ts');
  const { status, stdout, stderr } = spawnSync(process.execPath, [...startFlags, timed], { encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  const { rounds, stored_ms, whole_ms, violations } = JSON.parse(stdout) as Timed;
  const ratios = rounds.map(([bare_ms, ours_ms]) => ours_ms / bare_ms);
  const [bare_ms, ours_ms] = [median(rounds.map(([one]) => one)), median(rounds.map(([, one]) => one))];
  tell(`to the callback: bare ${bare_ms.toFixed(2)} ms, ours ${ours_ms.toFixed(2)} ms`);
  tell(
    `with the store in a file ${stored_ms.toFixed(2)} ms; and with its 1,000 samples, the whole of /mix ${whole_ms.toFixed(2)} ms`,
  );
  tell(`outside the core: ${ratios.map((one) => one.toFixed(2)).join(', ')} times a bare bot`);
  expect(violations).toEqual([]);
  expect(median(ratios)).toBeLessThan(most.outside);
});

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
    tell(`start to READY: bare ${median(start.bare).toFixed(0)} ms, ours ${median(start.ours).toFixed(0)} ms`);
    tell(`at rest: bare ${median(memory.bare).toFixed(0)} MB, ours ${median(memory.ours).toFixed(0)} MB`);
    expect.soft(median(start.ours) / median(start.bare)).toBeLessThan(most.start);
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
      return median(rates);
    };
    expect.soft(await rate(plain)).toBeGreaterThan(least_s);
    // Whole, with its 1,000 samples.
    expect.soft(await rate(question)).toBeGreaterThan(least_s);
    await ended(bot);
    expect(peer.violations).toEqual([]);
    await peer.close();
  });
});
