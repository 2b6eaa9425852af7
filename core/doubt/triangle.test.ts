import fc from 'fast-check';
import { expect, it } from 'vitest';
import { exactly } from '../materials/spread.ts';
import { triangleAt } from './triangle.ts';

const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });
const spread = fc.tuple(value, value, value).map((values) => {
  const [low, typical, high] = values.sort((a, b) => a - b) as [number, number, number];
  return { low, typical, high };
});

it('reaches both bounds and puts the typical value where the rising side ends', () => {
  const triangle = { low: 1, typical: 2, high: 5 };
  expect(triangleAt(triangle, 0)).toBe(1);
  expect(triangleAt(triangle, 1)).toBe(5);
  expect(triangleAt(triangle, 0.25)).toBeCloseTo(2, 12);
  expect(triangleAt({ low: 0, typical: 1, high: 2 }, 0.5)).toBeCloseTo(1, 12);
});

it('is constant for an exact number', () => {
  fc.assert(fc.property(value, share, (exact, at) => triangleAt(exactly(exact), at) === exact));
});

it('never leaves the bounds and never falls', () => {
  fc.assert(
    fc.property(spread, share, share, (triangle, one, other) => {
      const lower = triangleAt(triangle, Math.min(one, other));
      const upper = triangleAt(triangle, Math.max(one, other));
      const rounding = 1e-9 * (triangle.high - triangle.low);
      expect(lower).toBeGreaterThanOrEqual(triangle.low);
      expect(upper).toBeLessThanOrEqual(triangle.high);
      expect(upper).toBeGreaterThanOrEqual(lower - rounding);
    }),
  );
});

it('undoes the cumulative distribution', () => {
  fc.assert(
    fc.property(share, fc.double({ min: 0, max: 1, noNaN: true }), (at, typical) => {
      const found = triangleAt({ low: 0, typical, high: 1 }, at);
      const below = found <= typical && typical > 0 ? found ** 2 / typical : 1 - (1 - found) ** 2 / (1 - typical);
      expect(below).toBeCloseTo(at, 9);
    }),
  );
});
