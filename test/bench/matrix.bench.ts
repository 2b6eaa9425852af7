import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Bot, makeBot } from '../peers/matrix-bot.ts';
import { type Synapse, startSynapse, synapseMissing } from '../peers/synapse.ts';
import { type Asker, answerTo, openAsker } from '../peers/synapse-asker.ts';

/** Ours over a bare bot's with the same library and encryption, on one homeserver: question to answer, start to first answer. */
const most = { reply: 1.3, start: 1.4 };
const rounds = Number(process.env.TEEMER_BENCH_ROUNDS ?? 5);
const turns = 20;

const tell = (text: string) => process.stdout.write(`${text}\n`);
const median = (all: readonly number[]): number => all.toSorted((a, b) => a - b)[all.length >> 1] ?? Number.NaN;
const bare = 'test/bench/matrix-bare.ts';

describe.skipIf(synapseMissing())('an answer on Matrix, from a question sent to the answer read', () => {
  let synapse: Synapse;
  let ann: Asker;
  const folder = mkdtempSync(join(tmpdir(), 'teemer-bench-'));

  beforeAll(async () => {
    synapse = await startSynapse();
    ann = await openAsker(synapse, 'ann', { encrypted: true });
  }, 120_000);
  afterAll(async () => {
    ann?.leave();
    await synapse?.remove();
    rmSync(folder, { recursive: true, force: true });
  });

  async function asked({ userId }: Bot, room: string): Promise<number> {
    const began = performance.now();
    await ann.hear(answerTo(userId, await ann.say(room, 'mix 30 L')), 60_000);
    return performance.now() - began;
  }

  it('comes nearly as soon as that of a bare bot', { timeout: 900_000 }, async () => {
    const bots = {
      bare: await makeBot(synapse, { user: 'bare', file: bare }),
      ours: await makeBot(synapse, { file: 'test/peers/unhurried-bot.ts', env: { TEEMER_DATA: join(folder, 'a') } }),
    };
    for (const bot of Object.values(bots)) await bot.start();
    for (const encrypted of [false, true]) {
      const rooms = {
        bare: await ann.room([bots.bare.userId], { encrypted }),
        ours: await ann.room([bots.ours.userId], { encrypted }),
      };
      const ratios: number[] = [];
      // The first one warms up.
      for (let round = 0; round <= rounds; round++) {
        const took = { bare: [] as number[], ours: [] as number[] };
        for (let turn = 0; turn < turns; turn++) {
          for (const which of ['bare', 'ours'] as const) took[which].push(await asked(bots[which], rooms[which]));
        }
        const ratio = median(took.ours) / median(took.bare);
        tell(`bare ${median(took.bare).toFixed(0)} ms, ours ${median(took.ours).toFixed(0)} ms: ${ratio.toFixed(2)}`);
        if (round > 0) ratios.push(ratio);
      }
      tell(`${encrypted ? 'encrypted' : 'plain'}: ${ratios.map((one) => one.toFixed(2)).join(', ')} times a bare bot`);
      expect.soft(median(ratios)).toBeLessThan(most.reply);
    }
    for (const bot of Object.values(bots)) await bot.stop('SIGKILL');
  });

  it('is there soon after the start', { timeout: 900_000 }, async () => {
    execFileSync('npm', ['run', 'bundle'], { stdio: 'ignore' });
    const bots = {
      bare: await makeBot(synapse, { user: 'bare2', file: bare }),
      ours: await makeBot(synapse, { user: 'ours2', file: 'dist/main.js', env: { TEEMER_DATA: join(folder, 'b') } }),
    };
    const took = { bare: [] as number[], ours: [] as number[] };
    const rooms = new Map<string, string>();
    for (let round = 0; round <= rounds; round++) {
      for (const which of ['bare', 'ours'] as const) {
        const bot = bots[which];
        const began = performance.now();
        await bot.start();
        const started_ms = performance.now() - began;
        const room = rooms.get(which) ?? (await ann.room([bot.userId]));
        rooms.set(which, room);
        const ms = started_ms + (await asked(bot, room));
        // The first start makes a device and its keys.
        if (round > 0) took[which].push(ms);
        await bot.stop();
      }
    }
    tell(
      `start to first answer: bare ${took.bare.map((one) => one.toFixed(0))} ms, ours ${took.ours.map((one) => one.toFixed(0))} ms`,
    );
    expect(median(took.ours) / median(took.bare)).toBeLessThan(most.start);
  });
});
