/**
 * Pictures from the worker, in a process of its own as the program is: the test runner makes every use of an import
 * slower than it is there, and its process has not the program's flags. Prints the medians of both, ms, and the loop's
 * p99 alone and beside the worker as JSON.
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

async function timed_ms(which: 'section' | 'chart'): Promise<number> {
  const [warmUp, rounds] = [30, 60];
  const times: number[] = [];
  for (let round = 0; round < warmUp + rounds; round++) {
    const begin = performance.now();
    await draw(which);
    if (round >= warmUp) times.push(performance.now() - begin);
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

const [section_ms, chart_ms] = [await timed_ms('section'), await timed_ms('chart')];
const alone: number[] = [];
const beside: number[] = [];
// Side by side and in turns, so that whatever else the machine does falls on both; fewer turns say too little.
for (let turn = 0; turn < 24; turn++) {
  alone.push(await lateness_ms(() => pause(60)));
  beside.push(await lateness_ms(() => draw('section')));
}
await work.close();
process.stdout.write(JSON.stringify({ section_ms, chart_ms, alone_ms: median(alone), beside_ms: median(beside) }));
