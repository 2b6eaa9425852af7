import { describe, expect, it } from 'vitest';
import { answerLine } from '../../commands/answer.ts';
import { inProcessMemory } from '../../commands/memory.ts';

const context = { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() };

/** What an answer may take before it would belong in a worker thread. */
const ranged_ms = { p50: 5 };

describe('when a lining may be fired', () => {
  for (const line of ['dry 1.5 in clay-sand', 'dry 50 mm low-cement castable']) {
    it(line, async ({ bench }) => {
      const { latency } = await bench(line, async () => {
        await answerLine(line, context);
      }).run();
      expect(latency.p50).toBeLessThan(ranged_ms.p50);
    });
  }
});
