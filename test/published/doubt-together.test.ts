import { describe, expect, it } from 'vitest';
import { sampleDoubt } from '../../core/doubt/sample.ts';
import type { Spread } from '../../core/materials/spread.ts';
import type { Numbers } from '../../core/step.ts';
import { librariesOf, stored } from '../reference/stored.ts';
import { outside } from './outside.ts';

interface Inputs {
  model: string;
  spreads: Record<string, Spread>;
  input: string;
  goesWith: string;
  rank: number;
  what: 'low' | 'high' | 'rank';
}

/** The models of `test/reference/doubt_together.py`, by the same names. */
const MODELS: Readonly<Record<string, (x: Numbers) => number>> = {
  'heat soaked up in an hour, MJ/m²': (x) =>
    (2 *
      Math.sqrt(x.conductivity_W_mK! * x.density_kg_m3! * x.heat_capacity_J_kgK!) *
      x.rise_dK! *
      Math.sqrt(3600 / Math.PI)) /
    1e6,
  'diffusivity, mm²/s': (x) => (1e6 * x.conductivity_W_mK!) / (x.density_kg_m3! * x.heat_capacity_J_kgK!),
  'a sum of two': (x) => x.a! + x.b!,
  'a ratio of two': (x) => x.b! / x.a!,
};

const reference = stored<Inputs>('doubt_together');

describe('inputs that go together, beside 100,000 random samples of the same copula', () => {
  it('are compared for every model', () => {
    expect([...new Set(reference.cases.map(({ inputs }) => inputs.model))].sort()).toEqual(Object.keys(MODELS).sort());
  });

  it.each(reference.cases)('$id', ({ id, inputs, expected, tolerance, why }) => {
    const { model, spreads, input, goesWith, rank, what } = inputs;
    const drawn: [number, number][] = [];
    const { ranges } = sampleDoubt({
      inputs: spreads,
      model: (x) => {
        drawn.push([x[goesWith]!, x[input]!]);
        return { out: MODELS[model]!(x) };
      },
      together: [{ input, goesWith, rank, why: 'as the script has it', source: 'derived', standing: 'judged' }],
    });
    outside({
      subject: model,
      quantity: id.slice(model.length + 2),
      ours: what === 'rank' ? rankCorrelation(drawn) : ranges.out![what],
      theirs: expected,
      unit: what === 'rank' ? '' : (/, (\S+)$/.exec(model)?.[1] ?? ''),
      source: `${librariesOf(reference)}, random sampling of a Gaussian copula`,
      tolerance,
      reason: why,
    });
  });
});

function rankCorrelation(pairs: readonly (readonly [number, number])[]): number {
  const ranksOf = (side: 0 | 1) => {
    const order = [...pairs.keys()].sort((a, b) => pairs[a]![side] - pairs[b]![side]);
    const ranks = new Float64Array(pairs.length);
    for (const [rank, index] of order.entries()) ranks[index] = rank;
    return ranks;
  };
  const [a, b] = [ranksOf(0), ranksOf(1)];
  const apart = a.reduce((sum, rank, at) => sum + (rank - b[at]!) ** 2, 0);
  return 1 - (6 * apart) / (pairs.length * (pairs.length ** 2 - 1));
}
