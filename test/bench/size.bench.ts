import { describe, expect, it } from 'vitest';
import { answerLine } from '../../commands/answer.ts';
import { inProcessMemory } from '../../commands/memory.ts';
import { findVessel } from '../../core/materials/find-vessel.ts';
import { crucibleFromSizes } from '../../core/shape/crucible.ts';
import { shapeOf } from '../../core/shape/profile.ts';
import { sizeFurnace } from '../../core/shape/size.ts';
import { weigh } from '../../core/shape/weights.ts';

const context = { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() };

/** Warm medians: the furnace itself, with the range of its weights, and the whole answer with forms and drawings. */
const furnace_ms = 1;
const ranged_ms = 3;
const answered_ms = 25;

const vessel = shapeOf(findVessel('20 gal can'));
const crucible = crucibleFromSizes({ diameter_m: 0.1524, height_m: 0.2032 });
const question = { fuel: 'gas', flue_K: 1223, vessel, crucible } as const;

describe('a furnace in a 20 gal can', () => {
  it('sized', async ({ bench }) => {
    const { latency } = await bench('sized', () => {
      sizeFurnace(question);
    }).run();
    expect(latency.p50).toBeLessThan(furnace_ms);
  });

  it('sized for a crucible, the vessel looked for', async ({ bench }) => {
    const { latency } = await bench('vessel looked for', () => {
      sizeFurnace({ fuel: 'gas', flue_K: 1223, crucible });
    }).run();
    expect(latency.p50).toBeLessThan(furnace_ms);
  });

  it('sized and weighed, with its range', async ({ bench }) => {
    const { latency } = await bench('with range', () => {
      const { furnace } = sizeFurnace(question);
      weigh({ furnace, lining: 'clay-sand-lining', insulation: 'vermiculite', bricks: 'insulating-brick-23' });
    }).run();
    expect(latency.p50).toBeLessThan(ranged_ms);
  });

  it('answered, with forms and drawings', async ({ bench }) => {
    const { latency } = await bench('answered', async () => {
      await answerLine('size can 20 gal crucible=6 in x 8 in', context);
    }).run();
    expect(latency.p50).toBeLessThan(answered_ms);
  });
});
