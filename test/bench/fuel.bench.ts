import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const plain_ms = 5;
/** Of 1,000 samples, each of them a wall run through two melts. Where those do not settle twice as many are drawn. */
const ranged_ms = 800;

/** See fuel-timed.ts: a dry lining, and two that hold the water of air-dry clay. */
it('a furnace balance, without and with its range', { timeout: 120_000 }, () => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(import.meta.dirname, 'fuel-timed.ts')], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(stderr);
  const timed = JSON.parse(stdout) as {
    line: string;
    plain_ms: number;
    ranged_ms: number;
    samples: number;
  }[];
  for (const one of timed) {
    console.info(
      `${one.line}: ${one.plain_ms.toFixed(1)} ms, with its range of ${one.samples} samples ${one.ranged_ms.toFixed(0)} ms`,
    );
    expect(one.plain_ms, one.line).toBeLessThan(plain_ms);
    expect((one.ranged_ms / one.samples) * 1000, one.line).toBeLessThan(ranged_ms);
  }
});
