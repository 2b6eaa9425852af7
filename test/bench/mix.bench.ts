import { bench, describe } from 'vitest';
import { answerLine } from '../../commands/answer.ts';
import { inProcessMemory } from '../../commands/memory.ts';

const context = { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() };

/** Aim, warm: median ≤ 1 ms, p99 ≤ 5 ms; with its 1,000-sample range ≤ 3 ms. `mix` always carries its range. */
describe('a typed question, parsed and answered', () => {
  bench('mix 1.1 cu ft, with its 1,000-sample range', async () => {
    await answerLine('mix 1.1 cu ft', context);
  });
  bench('help mix: parse and card without a range', async () => {
    await answerLine('help mix', context);
  });
  bench('stuff vermiculite vs perlite', async () => {
    await answerLine('stuff vermiculite vs perlite', context);
  });
});
