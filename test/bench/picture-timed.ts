/**
 * Pictures from the worker, in a process of its own as the program is: the test runner makes every use of an import
 * slower than it is there, and its process has not the program's flags. Prints as JSON, in ms, how long they take and the
 * loop's p99 alone and beside the worker.
 */
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as pause } from 'node:timers/promises';
import { sampleChart, sampleDrawing } from '../../adapters/picture/sample.ts';
import { sampleCard } from '../../adapters/terminal/sample-card.ts';
import { createWork } from '../../bot/work/work.ts';
import { inProcessMemory } from '../../commands/memory.ts';

const card = { ...sampleCard, drawings: [sampleDrawing], chart: sampleChart };
const look = { units: 'US', theme: 'light' } as const;
const work = createWork({ memory: inProcessMemory() });
const draw = (which: 'section' | 'chart') => work.picture(card, which, look);
const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!;

/** So often drawn before anything is timed that the compiler is done with most of it. */
const warmUp = 30;

async function timed_ms(which: 'section' | 'chart', count: number): Promise<number> {
  const times: number[] = [];
  for (let round = 0; round < count; round++) {
    const begin = performance.now();
    await draw(which);
    times.push(performance.now() - begin);
  }
  return median(times);
}

/** The 99th percentile of the loop's delay, ms, while something is repeated. */
async function lateness_ms(repeated: () => Promise<unknown>): Promise<number> {
  const delay = monitorEventLoopDelay({ resolution: 2 });
  const until = performance.now() + 700;
  delay.enable();
  while (performance.now() < until) await repeated();
  delay.disable();
  return delay.percentile(99) / 1e6;
}

for (const which of ['chart', 'section'] as const) await timed_ms(which, warmUp);
const turns: Record<'section' | 'chart' | 'alone' | 'beside', number>[] = [];
// In turns, so that whatever else the machine does falls on all of them.
for (let turn = 0; turn < 24; turn++) {
  turns.push({
    alone: await lateness_ms(() => pause(60)),
    beside: await lateness_ms(() => draw('section')),
    section: await timed_ms('section', 10),
    chart: await timed_ms('chart', 4),
  });
}
await work.close();
/** Of each the median turn, and the quieter quarter of the turns: what else runs on the machine only ever adds. */
const told = (share: number) =>
  Object.fromEntries(
    (['section', 'chart', 'alone', 'beside'] as const).map((name) => [
      name,
      turns.map((turn) => turn[name]).toSorted((a, b) => a - b)[Math.floor(share * turns.length)],
    ]),
  );
process.stdout.write(JSON.stringify({ median: told(0.5), quiet: told(0.25) }));
