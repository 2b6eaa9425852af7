import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { startFlags } from '../end-to-end/program.ts';

const TIMED = join(import.meta.dirname, 'picture-timed.ts');
/** Warm aim of a cross-section of 1100 px, from the asking thread and back. */
const section_ms = { p50: 60 };
/** A loop that is not held up by the worker is as late as one beside an idle worker, but for the machine's own noise. */
const mostDelay = 1.2;

type Timed = Record<'section' | 'chart' | 'alone' | 'beside', number>;

/** Both in one process: the chart is for the eye, no aim was set. */
it('a cross-section with 17 dimensions, drawn by the worker while the loop goes on', { timeout: 120_000 }, () => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [...startFlags, TIMED], { encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  const { median, quiet } = JSON.parse(stdout) as Record<'median' | 'quiet', Timed>;
  for (const [name, one] of Object.entries({ 'median turn': median, 'quieter quarter': quiet })) {
    console.info(
      `${name}: cross-section ${one.section.toFixed(1)} ms, chart of two panels ${one.chart.toFixed(1)} ms; p99 of the loop's delay ${one.alone.toFixed(2)} ms idle, ${one.beside.toFixed(2)} ms beside the worker: ${(one.beside / one.alone).toFixed(2)} times`,
    );
  }
  expect(quiet.section).toBeLessThan(section_ms.p50);
  expect(quiet.beside / quiet.alone).toBeLessThan(mostDelay);
});
