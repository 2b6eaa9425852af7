import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactly } from '../materials/spread.ts';
import { sampleDoubt } from './sample.ts';

const unit = { low: 0, typical: 0.5, high: 1 };
const spread = fc
  .tuple(
    fc.double({ min: 0.1, max: 100, noNaN: true }),
    fc.double({ min: 0.01, max: 10, noNaN: true }),
    fc.double({ min: 0.01, max: 10, noNaN: true }),
  )
  .map(([low, rise, fall]) => ({ low, typical: low + rise, high: low + rise + fall }));

describe('the range', () => {
  it('is the central 95 % of one triangle: 2.5 % lies below √(0.025 / 2)', () => {
    const { ranges, converged } = sampleDoubt({ inputs: { a: unit }, model: ({ a }) => ({ a }) });
    const tail = Math.sqrt(0.025 / 2);
    expect(ranges.a!.low).toBeCloseTo(tail, 2);
    expect(ranges.a!.high).toBeCloseTo(1 - tail, 2);
    expect(converged).toBe(true);
  });

  it('of a sum of eight narrows as the normal distribution says', () => {
    const names = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'] as const;
    const inputs = Object.fromEntries(names.map((name) => [name, unit])) as Record<(typeof names)[number], typeof unit>;
    const { ranges } = sampleDoubt({
      inputs,
      model: (values) => ({ sum: names.reduce((sum, name) => sum + values[name], 0) }),
    });
    const half = 1.96 * Math.sqrt(8 / 24);
    expect(Math.abs(ranges.sum!.low - (4 - half))).toBeLessThan(0.04 * 2 * half);
    expect(Math.abs(ranges.sum!.high - (4 + half))).toBeLessThan(0.04 * 2 * half);
  });

  it('of a product lies within the product of the bounds', () => {
    fc.assert(
      fc.property(spread, spread, (a, b) => {
        const { ranges } = sampleDoubt({ inputs: { a, b }, model: (at) => ({ product: at.a * at.b }), samples: 200 });
        expect(ranges.product!.low).toBeGreaterThan(a.low * b.low);
        expect(ranges.product!.high).toBeLessThan(a.high * b.high);
        expect(ranges.product!.low).toBeLessThan(ranges.product!.high);
      }),
      { numRuns: 50 },
    );
  });

  it('of constants is the constant, with nothing moving it', () => {
    const doubt = sampleDoubt({ inputs: { a: exactly(3), b: exactly(4) }, model: ({ a, b }) => ({ area: a * b }) });
    expect(doubt).toEqual({
      ranges: { area: { low: 12, high: 12 } },
      movesMost: { area: undefined },
      movers: { area: [] },
      samples: 2,
      error: 0,
      converged: true,
    });
  });

  it('moves up when an input of a rising model does', () => {
    fc.assert(
      fc.property(spread, spread, fc.double({ min: 0.01, max: 5, noNaN: true }), (a, b, up) => {
        const model = (at: { a: number; b: number }) => ({ out: at.a ** 2 + at.a * at.b });
        const higher = { low: a.low + up, typical: a.typical + up, high: a.high + up };
        const before = sampleDoubt({ inputs: { a, b }, model, samples: 200 });
        const after = sampleDoubt({ inputs: { a: higher, b }, model, samples: 200 });
        if (!before.converged || !after.converged) return;
        const width = before.ranges.out!.high - before.ranges.out!.low;
        expect(after.ranges.out!.low).toBeGreaterThan(before.ranges.out!.low - 0.05 * width);
        expect(after.ranges.out!.high).toBeGreaterThan(before.ranges.out!.high - 0.05 * width);
      }),
      { numRuns: 50 },
    );
  });

  it('is the same to the last digit, asked by columns or one by one, and only movers that are wanted are ranked', () => {
    const inputs = { a: unit, b: { low: 1, typical: 2, high: 7 }, c: exactly(3) };
    const one = sampleDoubt({ inputs, model: ({ a, b, c }) => ({ sum: a + b * c, ratio: a / b }), samples: 300 });
    const all = sampleDoubt({
      inputs,
      samples: 300,
      moved: ['sum'],
      columnModel: ({ a, b, c }, count) => {
        const of = (each: (at: number) => number) => Float64Array.from({ length: count }, (_, at) => each(at));
        return { sum: of((at) => a[at]! + b[at]! * c[at]!), ratio: of((at) => a[at]! / b[at]!) };
      },
    });
    expect(all.ranges).toEqual(one.ranges);
    expect(all.samples).toBe(one.samples);
    expect(all.movers).toEqual({ sum: one.movers.sum, ratio: [] });
  });

  it('is the same every time', () => {
    const ask = () => sampleDoubt({ inputs: { a: unit, b: unit }, model: ({ a, b }) => ({ out: a / (1 + b) }) });
    expect(ask()).toEqual(ask());
  });

  it('is withheld where one sample had no answer, and only there', () => {
    const { ranges, movesMost, movers } = sampleDoubt({
      inputs: { a: unit },
      model: ({ a }) => ({ sound: a, root: Math.sqrt(a - 0.05), pole: a > 0.9 ? Number.POSITIVE_INFINITY : a }),
    });
    expect(ranges.sound).toBeDefined();
    expect(ranges.root).toBeUndefined();
    expect(movesMost.root).toBeUndefined();
    expect(movers.root).toEqual([]);
    expect(ranges.pole).toBeUndefined();
  });
});

describe('movesMost', () => {
  it('names the input that dominates, wherever it stands', () => {
    fc.assert(
      fc.property(fc.constantFrom('a', 'b', 'c', 'd'), (big) => {
        const { movesMost } = sampleDoubt({
          inputs: { a: unit, b: unit, c: unit, d: unit },
          model: (at) => ({ out: at.a + at.b + at.c + at.d + 9 * at[big] }),
        });
        expect(movesMost.out!.input).toBe(big);
        expect(movesMost.out!.share).toBeGreaterThan(0.93);
        expect(movesMost.out!.share).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('gives the share of variance a sum is known to have: 4 of 5', () => {
    const { movesMost } = sampleDoubt({ inputs: { a: unit, b: unit }, model: ({ a, b }) => ({ out: a + 2 * b }) });
    expect(movesMost.out!.input).toBe('b');
    expect(Math.abs(movesMost.out!.share - 0.8)).toBeLessThan(0.03);
  });

  it('is the first of all, which stand in the order of their shares: 9, 4 and 1 of 14', () => {
    const { movesMost, movers } = sampleDoubt({
      inputs: { a: unit, b: unit, c: unit },
      model: ({ a, b, c }) => ({ out: 2 * a + b + 3 * c }),
    });
    expect(movers.out.map(({ input }) => input)).toEqual(['c', 'a', 'b']);
    // Twenty slices of a thousand samples leave a few hundredths of noise.
    for (const [at, of14] of [9, 4, 1].entries())
      expect(Math.abs(movers.out[at]!.share - of14 / 14)).toBeLessThan(0.04);
    expect(movers.out[0]).toBe(movesMost.out);
  });

  it('says nothing of an answer no input moves', () => {
    const { movesMost } = sampleDoubt({ inputs: { a: unit }, model: ({ a }) => ({ out: 0.1 + a - a }) });
    expect(movesMost.out).toBeUndefined();
  });
});

describe('settling', () => {
  it('stops at the samples asked for when half of them say the same', () => {
    let runs = 0;
    sampleDoubt({
      inputs: { a: unit },
      model: ({ a }) => {
        runs++;
        return { a };
      },
    });
    expect(runs).toBe(1000);
  });

  it('doubles up to 4,000 and then says that it did not settle', () => {
    let runs = 0;
    const { converged } = sampleDoubt({
      inputs: { a: unit },
      model: ({ a }) => {
        runs++;
        return { out: a + runs };
      },
    });
    expect(runs).toBe(4000);
    expect(converged).toBe(false);
  });

  it('runs a model without doubt only twice', () => {
    let runs = 0;
    sampleDoubt({ inputs: { a: exactly(1) }, model: ({ a }) => ({ out: a + 0 * runs++ }) });
    expect(runs).toBe(2);
  });

  it('hands back what nobody can alter', () => {
    const doubt = sampleDoubt({ inputs: { a: unit }, model: ({ a }) => ({ a }) });
    for (const part of [doubt, doubt.ranges, doubt.movesMost, doubt.ranges.a, doubt.movesMost.a, doubt.movers.a]) {
      expect(Object.isFrozen(part)).toBe(true);
    }
  });
});
