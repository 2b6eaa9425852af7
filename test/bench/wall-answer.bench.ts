import { describe, expect, it } from 'vitest';
import { answerLine } from '../../commands/answer.ts';
import { inProcessMemory } from '../../commands/memory.ts';

const context = { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() };

/** Each takes long enough to be timed singly; the least counts, since what else the machine does only ever adds. */
const few = { time: 500, iterations: 8, warmupTime: 0, warmupIterations: 3 };

/** A run without its range, twice (another inch), and 500 to 1,000 samples of it. The aim is for 1,000. */
const plain_ms = 50;
const ranged_ms = 600;

describe('one firing of a wall, asked and answered', () => {
  it('without a range: perlite past the end of its limit', async ({ bench }) => {
    const { latency } = await bench('wall 1 in castable; 2.5 in perlite', async () => {
      await answerLine('wall 1 in castable; 2.5 in perlite', context);
    }).run(few);
    expect(latency.min).toBeLessThan(plain_ms);
  });

  it('with its range and the bands of its chart', async ({ bench }) => {
    const { latency } = await bench('wall 1.5 in clay-sand lining; 2 in vermiculite', async () => {
      await answerLine('wall 1.5 in clay-sand lining; 2 in vermiculite', context);
    }).run(few);
    expect(latency.min).toBeLessThan(ranged_ms);
  });

  it('with its range, the lining damp', async ({ bench }) => {
    const { latency } = await bench('wall 1.5 in clay-sand lining; 2 in vermiculite damp=6%', async () => {
      await answerLine('wall 1.5 in clay-sand lining; 2 in vermiculite damp=6%', context);
    }).run(few);
    expect(latency.min).toBeLessThan(ranged_ms);
  });
});
