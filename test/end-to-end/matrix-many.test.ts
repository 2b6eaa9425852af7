import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { type Bot, makeBot } from '../peers/matrix-bot.ts';
import { startSynapse, synapseMissing } from '../peers/synapse.ts';
import { openAsker } from '../peers/synapse-asker.ts';
import { crowd, questions } from '../peers/synapse-crowd.ts';

const count = 500;
/** Of the main thread, garbage apart, from the half to the end: what is least of several looks, since work goes on meanwhile. */
const heapGrowth_MB = 4;
/** Of the whole process: it may still be filling the 96 MB in which its other thread makes what it soon drops. */
const residentGrowth_MB = 100;

test.skipIf(synapseMissing())(
  'five hundred questions, several at a time, in the clear and encrypted: each answered once, in the memory of half as many',
  {
    timeout: 600_000,
  },
  async () => {
    const synapse = await startSynapse();
    const data = mkdtempSync(join(tmpdir(), 'teemer-many-'));
    const bot = await makeBot(synapse, { file: 'test/peers/unhurried-bot.ts', env: { TEEMER_DATA: data } });
    try {
      await bot.start();
      const ann = await openAsker(synapse, 'ann', { encrypted: true });
      const bob = await openAsker(synapse, 'bob', { encrypted: true });
      const seats: { asker: typeof ann; room: string }[] = [];
      for (const encrypted of [false, true]) {
        for (const asker of [ann, bob]) seats.push({ asker, room: await asker.room([bot.userId], { encrypted }) });
      }
      const { ask, tally } = crowd(bot.userId, seats, { question: questions, inFlight: 5 });
      await ask(count / 2);
      const half = await leastHeld(bot);
      await ask(count / 2);
      const end = await leastHeld(bot);
      await new Promise((resolve) => setTimeout(resolve, 1500));
      expect(tally()).toEqual({ answered: count, doubled: [], lost: [], wrong: [] });
      expect((end.heapUsed - half.heapUsed) / 1e6).toBeLessThan(heapGrowth_MB);
      expect((end.rss - half.rss) / 1e6).toBeLessThan(residentGrowth_MB);
      expect(await bot.stop()).toBe(0);
      for (const asker of [ann, bob]) asker.leave();
    } finally {
      await bot.stop('SIGKILL');
      await synapse.remove();
      rmSync(data, { recursive: true, force: true });
    }
  },
);

async function leastHeld(bot: Bot): Promise<{ readonly heapUsed: number; readonly rss: number }> {
  const looks: Awaited<ReturnType<Bot['held']>>[] = [];
  for (let look = 0; look < 5; look++) {
    looks.push(await bot.held());
    await new Promise((resolve) => setTimeout(resolve, 300));
  }
  const least = (of: (look: (typeof looks)[number]) => number) => Math.min(...looks.map(of));
  return { heapUsed: least(({ heapUsed }) => heapUsed), rss: least(({ rss }) => rss) };
}
