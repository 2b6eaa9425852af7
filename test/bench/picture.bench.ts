import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, describe, expect, it } from 'vitest';
import { sampleChart, sampleDrawing } from '../../adapters/picture/sample.ts';
import { sampleCard } from '../../adapters/terminal/sample-card.ts';
import { createWork } from '../../bot/work/work.ts';
import { inProcessMemory } from '../../commands/memory.ts';

const card = { ...sampleCard, drawings: [sampleDrawing], chart: sampleChart };
const look = { units: 'US', theme: 'light' } as const;
const work = createWork({ memory: inProcessMemory() });
afterAll(() => work.close());

/** Warm aim of a cross-section of 1100 px, from the asking thread and back. */
const section_ms = { p50: 60 };
/** A loop that is not held up by the worker is as late as one beside an idle worker, but for the machine's own noise. */
const mostDelay = 1.2;

describe('a picture in the worker', () => {
  it('a cross-section with 17 dimensions', async ({ bench }) => {
    const { latency } = await bench('cross-section as PNG', async () => {
      await work.picture(card, 'section', look);
    }).run();
    expect(latency.p50).toBeLessThan(section_ms.p50);
  });

  it('a chart of two panels', async ({ bench }) => {
    await bench('chart as PNG', async () => {
      await work.picture(card, 'chart', look);
    }).run();
  });
});

describe('the event loop', () => {
  it('is no later while the worker draws', async () => {
    await work.picture(card, 'section', look);
    const quiet: number[] = [];
    const drawing: number[] = [];
    // Side by side and in turns, so that whatever else the machine does falls on both.
    for (let turn = 0; turn < 8; turn++) {
      quiet.push(await lateness(() => pause(60)));
      drawing.push(await lateness(() => work.picture(card, 'section', look)));
    }
    const [alone, beside] = [median(quiet), median(drawing)];
    console.log(`p99 of the loop's delay: ${alone.toFixed(2)} ms idle, ${beside.toFixed(2)} ms beside the worker`);
    expect(beside / alone).toBeLessThan(mostDelay);
  });
});

const window_ms = 700;

/** The 99th percentile of the loop's delay, ms, while something is repeated. */
async function lateness(repeated: () => Promise<unknown>): Promise<number> {
  const delay = monitorEventLoopDelay({ resolution: 2 });
  const until = performance.now() + window_ms;
  delay.enable();
  while (performance.now() < until) await repeated();
  delay.disable();
  return delay.percentile(99) / 1e6;
}

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
