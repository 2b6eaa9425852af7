import { describe, expect, it } from 'vitest';
import { burned } from '../../core/build/log-burn.ts';
import { calibrate, momentsOf, type Reading } from '../../core/build/log-calibrate.ts';
import { type Range, sampleDoubt } from '../../core/doubt/sample.ts';
import { findFuel } from '../../core/fire/fuel/fuel.ts';
import { findPour } from '../../core/materials/catalogue.ts';
import type { Spread } from '../../core/materials/spread.ts';
import type { Numbers } from '../../core/step.ts';
import { librariesOf, type StoredCase, stored } from '../reference/stored.ts';
import { outside } from './outside.ts';

interface Bucket {
  kind: 'bucket';
  spread: Spread;
  value: number;
  error: number;
}
interface Linear {
  kind: 'linear';
  spreads: Record<string, Spread>;
  readings: { slopes: number[]; value: number; error: number; model: number }[];
  rank: number;
}
interface Weights {
  kind: 'weights';
  model: string;
  spreads: Record<string, Spread>;
  value: number;
  error: number;
}
interface Moments {
  mean: number;
  deviation: number;
}

const reference = stored<Bucket | Linear | Weights, Moments | { mean: number[]; deviation: number[] } | Range>('log');
const source = librariesOf(reference);
const of = <Inputs extends { kind: string }, Expected>(kind: Inputs['kind']) =>
  reference.cases.filter(({ inputs }) => inputs.kind === kind) as unknown as StoredCase<Inputs, Expected>[];
const plain = { unit: 'kg_m3', name: 'reading' } as const;

describe('a weighed bucket, beside quadrature', () => {
  it.each(of<Bucket, Moments>('bucket'))(
    '$id',
    ({ id, inputs: { spread, value, error }, expected, tolerance, why }) => {
      const reading: Reading = { ...plain, value, error, predicted: ({ density }) => density! };
      const found = momentsOf(calibrate({ inputs: { density: spread }, readings: [reading] }).spreads.density!);
      for (const quantity of ['mean', 'deviation'] as const)
        outside({
          subject: `log, ${id}`,
          quantity,
          ours: found[quantity],
          theirs: expected[quantity],
          unit: 'kg/m³',
          source: `${source}, quadrature`,
          tolerance,
          reason: why,
        });
    },
  );
});

describe('several readings of straight models, beside the matrix form', () => {
  it.each(of<Linear, { mean: number[]; deviation: number[] }>('linear'))(
    '$id',
    ({ id, inputs: { spreads, readings, rank }, expected, tolerance, why }) => {
      const names = Object.keys(spreads);
      const {
        draw,
        readings: taken,
        spreads: found,
      } = calibrate({
        inputs: spreads,
        readings: readings.map(
          ({ slopes, value, error, model }): Reading => ({
            ...plain,
            value,
            error,
            ...(model > 0 ? { model: { name: 'shared', error: model } } : {}),
            predicted: (values) => names.reduce((sum, name, at) => sum + slopes[at]! * values[name]!, 0),
          }),
        ),
        together: [{ input: 'b', goesWith: 'a', rank, why: '', source: 'derived', standing: 'judged' }],
      });
      expect(taken.every(({ used }) => used)).toBe(true);
      // The middle of the inputs goes where their mean goes.
      const middle = draw(Object.fromEntries(names.map((name) => [name, momentsOf(spreads[name]!).mean])));
      for (const [at, name] of names.entries()) {
        const rows = [
          ['mean', middle[name]!, expected.mean[at]!],
          ['deviation', widthKept(spreads[name]!, found[name]!), expected.deviation[at]!],
        ] as const;
        for (const [quantity, ours, theirs] of rows)
          outside({
            subject: `log, ${id}`,
            quantity: `${quantity} of ${name}`,
            ours,
            theirs,
            unit: '',
            source: `${source}, linear algebra`,
            tolerance,
            reason: why,
          });
      }
    },
  );
});

/** The deviation of a spread that was narrowed, read where its bounds did not cut it: from its typical value to an end. */
function widthKept(before: Spread, after: Spread): number {
  const { deviation } = momentsOf(before);
  const sides = [
    (after.typical - after.low) / (before.typical - before.low),
    (after.high - after.typical) / (before.high - before.typical),
  ];
  return deviation * Math.max(...sides);
}

/** The models of `test/reference/log.py`, by the same names. */
const MODELS: Readonly<Record<string, (x: Numbers) => number>> = {
  'a ratio': (x) => x.above! / x.below!,
  'heat through a wall, W': (x) => (x.conductivity_W_mK! * x.area_m2! * x.rise_dK!) / x.thickness_m!,
};

describe('a reading of a bent model, beside weights on 400,000 random draws', () => {
  it.each(of<Weights, Range>('weights'))(
    '$id',
    ({ id, inputs: { model, spreads, value, error }, expected, tolerance, why }) => {
      const predicted = MODELS[model]!;
      const { draw, readings } = calibrate({ inputs: spreads, readings: [{ ...plain, value, error, predicted }] });
      expect(readings[0]!.used).toBe(true);
      const { ranges } = sampleDoubt({ inputs: spreads, model: (drawn) => ({ out: predicted(draw(drawn)) }) });
      for (const [end, quantity] of [
        ['low', '2.5 % point'],
        ['high', '97.5 % point'],
      ] as const)
        outside({
          subject: `log, ${id}`,
          quantity,
          ours: ranges.out![end],
          theirs: expected[end],
          unit: model.endsWith('W') ? 'W' : '',
          source: `${source}, weighted draws`,
          tolerance,
          reason: why,
        });
    },
  );
});

describe('an efficiency', () => {
  it('of commercial crucible furnaces, from the fuel they are told to take for a pound of aluminium', () => {
    const propane = findFuel('propane');
    const fuel_J = (3300 * 1055.056) / 0.45359237;
    const { efficiency } = burned({
      fuel: propane,
      fuel_kg: fuel_J / 46.35e6,
      melted: { metal: findPour('aluminium'), mass_kg: 1 },
      melts: 2,
    });
    outside({
      subject: 'crucible furnaces, 3300 Btu of fuel a pound of aluminium',
      quantity: 'efficiency',
      ours: efficiency!.value,
      theirs: 0.15,
      unit: '',
      source: 'A university casting course, chapter 20 (table): average about 15 %',
      tolerance: 0.01,
      reason: 'told to the percent, of a pour that is not said',
    });
  });
});
