import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Spread } from '../materials/spread.ts';
import { flipsOf } from './flip.ts';
import { type Side, shareOf, weighSides } from './sides.ts';
import { triangleAt } from './triangle.ts';

const unit: Spread = { low: 0, typical: 0.5, high: 1 };
const side = (inputs: Record<string, Spread>, of: (x: Readonly<Record<string, number>>) => number): Side<'y'> => ({
  inputs,
  model: (x) => ({ y: of(x) }),
});
const weigh = (...sides: Side<'y'>[]) => weighSides({ sides, outputs: ['y'] }).measured.y;

describe('weighSides, where theory knows the odds', () => {
  it('gives identical sides 50 : 50, to the last digit, since every sample is a tie', () => {
    const one = side({ a: unit, b: unit }, ({ a, b }) => a! * b!);
    const { below, best, difference } = weigh(one, one);
    expect(below(0, 1)).toBe(0.5);
    expect(best('lowest')).toEqual([0.5, 0.5]);
    expect(difference(0, 1)).toEqual({ range: { low: 0, high: 0 }, movers: [] });
  });

  it('splits the ties of three and four', () => {
    const one = side({ a: unit }, ({ a }) => a!);
    for (const count of [3, 4]) {
      const shares = weigh(...Array.from({ length: count }, () => one)).best('highest');
      for (const share of shares) expect(share).toBeCloseTo(1 / count, 12);
    }
  });

  it('gives a dominated side 0, whatever the doubt: what both share cancels', () => {
    const wide: Spread = { low: 0, typical: 10, high: 1000 };
    const { below, difference } = weigh(
      side({ shared: wide }, ({ shared }) => shared!),
      side({ shared: wide }, ({ shared }) => shared! + 0.001),
    );
    expect(below(0, 1)).toBe(1);
    expect(below(1, 0)).toBe(0);
    expect(difference(0, 1).range?.low).toBeCloseTo(-0.001, 9);
    expect(difference(0, 1).range?.high).toBeCloseTo(-0.001, 9);
  });

  it('is even where two doubts of one kind are drawn apart, and not where one lies above', () => {
    const even = weigh(
      side({ a: unit }, ({ a }) => a!),
      side({ b: unit }, ({ b }) => b!),
    );
    // 1,000 Halton points in two dimensions: good to a point in a hundred.
    expect(Math.abs(even.below(0, 1) - 0.5)).toBeLessThan(0.01);
    // a − b is a sum of four even draws of width 1/2, less 1: above 1/2 with a chance of 1 in 4! (Irwin and Hall).
    const shifted = weigh(
      side({ a: unit }, ({ a }) => a!),
      side({ b: unit }, ({ b }) => b! + 0.5),
    );
    expect(Math.abs(shifted.below(0, 1) - 23 / 24)).toBeLessThan(0.01);
  });

  it('draws one name once though its spreads differ: the same share of each', () => {
    const cold: Spread = { low: 100, typical: 110, high: 120 };
    const hot: Spread = { low: 200, typical: 220, high: 240 };
    const { difference } = weigh(
      side({ face: cold }, ({ face }) => 2 * face!),
      side({ face: hot }, ({ face }) => face!),
    );
    expect(difference(0, 1).range?.low).toBeCloseTo(0, 9);
    expect(difference(0, 1).range?.high).toBeCloseTo(0, 9);
  });

  it('turns the sign with the order', () => {
    const { difference } = weigh(
      side({ a: unit }, ({ a }) => a! + 3),
      side({ b: unit }, ({ b }) => b!),
    );
    const { range } = difference(0, 1);
    expect(difference(1, 0).range).toEqual({ low: -range!.high, high: -range!.low });
  });

  it('says which input moves the difference, which need not be the one that moves each side', () => {
    const big: Spread = { low: 0, typical: 50, high: 100 };
    const { difference } = weigh(
      side({ big, small: unit }, ({ big: x, small }) => x! + small!),
      side({ big }, ({ big: x }) => x!),
    );
    expect(difference(0, 1).movers[0]?.input).toBe('small');
    expect(difference(0, 1).movers[0]?.share).toBeGreaterThan(0.99);
  });

  it('lets a side without an answer lose, and gives no range', () => {
    const { below, ranges } = weigh(
      side({ a: unit }, ({ a }) => (a! > 0.5 ? Number.NaN : 0)),
      side({}, () => 1),
    );
    expect(below(0, 1)).toBeCloseTo(0.5, 2);
    expect(ranges[0]).toBeUndefined();
  });

  it('has odds of two sides that add up to 1', () => {
    const number = fc.double({ min: -2, max: 2, noNaN: true });
    fc.assert(
      fc.property(number, number, (slope, shift) => {
        const { below, best } = weigh(
          side({ a: unit }, ({ a }) => a!),
          side({ a: unit, b: unit }, ({ a, b }) => slope * a! + shift * b!),
        );
        expect(below(0, 1) + below(1, 0)).toBeCloseTo(1, 12);
        expect(best('lowest')[0]).toBeCloseTo(below(0, 1), 12);
      }),
      { numRuns: 20 },
    );
  });
});

describe('shareOf', () => {
  it('undoes triangleAt', () => {
    fc.assert(
      fc.property(
        fc.tuple(fc.double({ min: -1e3, max: 1e3, noNaN: true }), fc.double({ min: 0.1, max: 1e3, noNaN: true })),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        ([low, width], lean, share) => {
          const spread = { low, typical: Math.min(low + lean * width, low + width), high: low + width };
          expect(shareOf(spread, triangleAt(spread, share))).toBeCloseTo(share, 6);
        },
      ),
    );
  });
});

describe('flipsOf', () => {
  it('finds where a line crosses nought, as algebra does', () => {
    const number = fc.double({ min: 0.1, max: 10, noNaN: true });
    fc.assert(
      fc.property(number, fc.double({ min: 0.01, max: 0.99, noNaN: true }), fc.boolean(), (slope, at, falls) => {
        const found = flipsOf({ difference: (x) => (falls ? -slope : slope) * (x - at), low: 0, high: 1 });
        expect(found).toHaveLength(1);
        expect(Math.abs(found[0]! - at)).toBeLessThan(1e-5);
      }),
    );
  });

  it('finds both of a parabola, and none where nothing flips', () => {
    const [one = 0, other = 0, ...more] = flipsOf({ difference: (x) => (x - 0.2) * (x - 0.7), low: 0, high: 1 });
    expect(one).toBeCloseTo(0.2, 5);
    expect(other).toBeCloseTo(0.7, 5);
    expect(more).toEqual([]);
    expect(flipsOf({ difference: (x) => x + 1, low: 0, high: 1 })).toEqual([]);
    expect(flipsOf({ difference: () => 0, low: 0, high: 1 })).toEqual([]);
    expect(flipsOf({ difference: () => Number.NaN, low: 0, high: 1 })).toEqual([]);
    expect(flipsOf({ difference: (x) => x - 0.5, low: 1, high: 1 })).toEqual([]);
  });

  it('sees a crossing that falls on the edge of a step', () => {
    const [edge, ...more] = flipsOf({ difference: (x) => x - 0.5, low: 0, high: 1, slices: 4 });
    expect(edge).toBeCloseTo(0.5, 5);
    expect(more).toEqual([]);
    expect(flipsOf({ difference: (x) => (x - 0.5) ** 2, low: 0, high: 1, slices: 4 })).toEqual([]);
  });
});
