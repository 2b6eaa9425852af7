import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { startFlags } from '../end-to-end/program.ts';

const TIMED = join(import.meta.dirname, 'picture-timed.ts');
/** Warm aim of a cross-section of 1100 px, from the asking thread and back. */
const section_ms = { p50: 60 };
/** A loop that is not held up by the worker is as late as one beside an idle worker, but for the machine's own noise. */
const mostDelay = 1.2;

/** Both in one process: the chart is for the eye, no aim was set. */
it('a cross-section with 17 dimensions, drawn by the worker while the loop goes on', { timeout: 120_000 }, () => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [...startFlags, TIMED], { encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  const timed = JSON.parse(stdout) as Record<'section_ms' | 'chart_ms' | 'alone_ms' | 'beside_ms', number>;
  const delay = timed.beside_ms / timed.alone_ms;
  console.info(
    `cross-section ${timed.section_ms.toFixed(1)} ms, chart of two panels ${timed.chart_ms.toFixed(1)} ms; p99 of the loop's delay ${timed.alone_ms.toFixed(2)} ms idle, ${timed.beside_ms.toFixed(2)} ms beside the worker: ${delay.toFixed(2)} times`,
  );
  expect(timed.section_ms).toBeLessThan(section_ms.p50);
  expect(delay).toBeLessThan(mostDelay);
});
