import { describe, expect, it } from 'vitest';
import { answerLine } from '../../commands/answer.ts';
import { inProcessMemory } from '../../commands/memory.ts';

const context = { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() };

/** Warm aims of a plain answer, and of one with its 1,000-sample range. */
const plain_ms = { p50: 1, p99: 5 };
const ranged_ms = { p50: 3 };

describe('a typed question, parsed and answered', () => {
  it('mix 1.1 cu ft, with its 1,000-sample range', async ({ bench }) => {
    const { latency } = await bench('mix 1.1 cu ft', async () => {
      await answerLine('mix 1.1 cu ft', context);
    }).run();
    expect(latency.p50).toBeLessThan(ranged_ms.p50);
  });

  it('help mix: the same path without a range', async ({ bench }) => {
    const { latency } = await bench('help mix', async () => {
      await answerLine('help mix', context);
    }).run();
    expect(latency.p50).toBeLessThan(plain_ms.p50);
    expect(latency.p99).toBeLessThan(plain_ms.p99);
  });
});
