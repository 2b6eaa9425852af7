import { describe, expect, it } from 'vitest';
import type { Spread } from '../materials/spread.ts';
import { haltonColumn } from './halton.ts';
import { centralRange, rangeError, shareError } from './range.ts';
import { triangleAt } from './triangle.ts';

/** By sorting all: the way that needs no thought. */
function sortedRange(results: Float64Array) {
  const sorted = results.slice().sort();
  const point = (share: number) => {
    const at = share * (sorted.length - 1);
    const low = sorted[Math.floor(at)]!;
    return low + (sorted[Math.min(Math.floor(at) + 1, sorted.length - 1)]! - low) * (at - Math.floor(at));
  };
  return { low: point(0.025), high: point(0.975) };
}

describe('centralRange', () => {
  it('is that of all results sorted, ties and signs and few of them too', () => {
    for (const count of [2, 3, 17, 41, 500, 4000])
      for (const of of [(at: number) => Math.sin(at * at), (at: number) => at % 7, (at: number) => -at]) {
        const results = Float64Array.from({ length: count }, (_, at) => of(at));
        const { low, high } = centralRange(results);
        expect(low).toBeCloseTo(sortedRange(results).low, 10);
        expect(high).toBeCloseTo(sortedRange(results).high, 10);
      }
  });
});

describe('rangeError', () => {
  it('is nothing of a constant, and unknown of two or three samples', () => {
    const same = new Float64Array(100).fill(3);
    expect(rangeError(same, centralRange(same))).toBe(0);
    const few = Float64Array.of(1, 2, 3);
    expect(rangeError(few, centralRange(few))).toBe(Number.POSITIVE_INFINITY);
  });

  it('of independent samples is what order statistics say: √(p q / n) over the density at the point', () => {
    // Evenly spread ones have density 1: √(0.025 × 0.975 / 2000) = 0.0035 of a width of 0.95. Mean of 40 sets.
    let state = 1;
    const random = () => {
      state = (state * 48_271) % 2_147_483_647;
      return state / 2_147_483_647;
    };
    const errors = Array.from({ length: 40 }, () => {
      const results = Float64Array.from({ length: 2000 }, random);
      return rangeError(results, centralRange(results));
    });
    const mean = errors.reduce((sum, error) => sum + error, 0) / errors.length;
    // The worse of two ends is told, which is more than either by about a sixth; eight blocks know it to a quarter.
    expect(mean).toBeGreaterThan(0.0037);
    expect(mean).toBeLessThan(0.0037 * 1.4);
  });

  describe('beside 200 randomly shifted replicas of the points', () => {
    const spread: Spread = { low: 0.5, typical: 0.8, high: 2 };
    const answers = {
      'a product with a long tail': (x: readonly number[]) =>
        x.reduce((out, value, at) => out * (at % 3 === 0 ? value : 1 / (1 + value)), 1),
      'a sum': (x: readonly number[]) => x.reduce((sum, value) => sum + value, 0),
      'the highest': (x: readonly number[]) => Math.max(...x),
    };
    /** Cranley and Patterson: all points moved by the same random shares, round the unit interval. */
    function replicas(of: (x: readonly number[]) => number, inputs: number, samples: number) {
      let state = 7;
      const random = () => {
        state = (state * 48_271) % 2_147_483_647;
        return state / 2_147_483_647;
      };
      const columns = Array.from({ length: inputs }, (_, dimension) => haltonColumn(dimension, samples));
      const found = Array.from({ length: 200 }, () => {
        const shifts = columns.map(random);
        const results = Float64Array.from({ length: samples }, (_, at) =>
          of(columns.map((column, dimension) => triangleAt(spread, (column[at]! + shifts[dimension]!) % 1))),
        );
        const range = centralRange(results);
        return { ...range, told: rangeError(results, range) };
      });
      const mean = (value: (one: (typeof found)[number]) => number) =>
        found.reduce((sum, one) => sum + value(one), 0) / found.length;
      const worse = Math.max(deviation(found.map(({ low }) => low)), deviation(found.map(({ high }) => high)));
      return { seen: worse / mean(({ low, high }) => high - low), told: mean(({ told }) => told) };
    }

    it.each(Object.entries(answers))('%s: not a fifth too small, nor twice too large, of many inputs', (_, of) => {
      for (const samples of [512, 1024])
        for (const inputs of [5, 12]) {
          const { seen, told } = replicas(of, inputs, samples);
          expect(seen / told, `${inputs} inputs, ${samples} samples`).toBeLessThan(1.2);
          expect(seen / told, `${inputs} inputs, ${samples} samples`).toBeGreaterThan(0.5);
        }
    });

    it.each(Object.entries(answers))('%s: too large of one input, where the points do best', (_, of) => {
      const { seen, told } = replicas(of, 1, 512);
      expect(seen / told).toBeLessThan(0.6);
    });
  });
});

describe('shareError', () => {
  it('is that of a coin: √(p q / n)', () => {
    const hits = Array.from({ length: 8 }, (_, block) => 0.5 + (block % 2 === 0 ? 0.1 : -0.1));
    // Eight blocks at 0.4 and 0.6: deviation 0.1069, over √8.
    expect(shareError((from) => hits[from / 10]!, 80)).toBeCloseTo(0.106904 / Math.sqrt(8), 6);
    expect(shareError(() => 1, 80)).toBe(0);
  });
});

function deviation(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
