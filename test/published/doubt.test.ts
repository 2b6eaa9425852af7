import { describe, expect, it } from 'vitest';
import { radicalInverse } from '../../core/doubt/halton.ts';
import { type Range, sampleDoubt } from '../../core/doubt/sample.ts';
import type { Spread } from '../../core/materials/spread.ts';
import type { Numbers } from '../../core/step.ts';
import { librariesOf, type StoredCase, stored } from '../reference/stored.ts';
import { outside } from './outside.ts';

interface ModelInputs {
  model: string;
  spreads: Record<string, Spread>;
}

interface PointInputs {
  index: number;
  bases: number[];
}

/** The models of `test/reference/sampling.py`, by the same names. */
const MODELS: Readonly<Record<string, { unit: string; of: (x: Numbers) => number }>> = {
  'mix dry mass, kg': { unit: 'kg', of: (x) => x.volume_m3! * x.density_kg_m3! * (1 + x.spare!) },
  'a ratio': { unit: '', of: (x) => x.above! / x.below! },
  'a product of four': { unit: '', of: (x) => x.a! * x.b! * x.c! * x.d! },
  'heat through a wall, W': {
    unit: 'W',
    of: (x) => (x.conductivity_W_mK! * x.area_m2! * x.rise_dK!) / x.thickness_m!,
  },
  'radiated, W': { unit: 'W', of: (x) => x.emissivity! * 5.670374419e-8 * x.area_m2! * x.hot_K! ** 4 },
};

const reference = stored<ModelInputs | PointInputs, Range | number[]>('sampling');
const ranges = reference.cases.filter((each): each is StoredCase<ModelInputs, Range> => 'model' in each.inputs);
const points = reference.cases.filter((each): each is StoredCase<PointInputs, number[]> => 'index' in each.inputs);

describe('ranges, beside 100,000 random samples', () => {
  it('are compared for every model', () => {
    expect(ranges.map(({ id }) => id).sort()).toEqual(Object.keys(MODELS).sort());
  });

  it.each(ranges)('$id', ({ id, inputs, expected, tolerance, why }) => {
    const { unit, of } = MODELS[id]!;
    const { ranges, converged } = sampleDoubt({ inputs: inputs.spreads, model: (x) => ({ out: of(x) }) });
    expect(converged).toBe(true);
    for (const [end, quantity] of [
      ['low', '2.5 % point'],
      ['high', '97.5 % point'],
    ] as const) {
      outside({
        subject: id,
        quantity,
        ours: ranges.out![end],
        theirs: expected[end],
        unit,
        source: `${librariesOf(reference)}, random sampling`,
        tolerance,
        reason: why,
      });
    }
  });
});

/** Not rows of the table: the same digits either way, which tells a reader of the results nothing. */
describe('radical inverses, beside the Halton points of scipy', () => {
  it.each(points)('$id', ({ inputs, expected, tolerance, why }) => {
    for (const [dimension, base] of inputs.bases.entries()) {
      const difference = Math.abs(radicalInverse(inputs.index, base) - expected[dimension]!);
      expect(difference, `base ${base}: ${why}`).toBeLessThanOrEqual(tolerance);
    }
  });
});
