import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { digitPermutation, HALTON_BASES, haltonColumn, radicalInverse } from './halton.ts';

describe('radicalInverse', () => {
  it('mirrors the digits behind the point', () => {
    expect([0, 1, 2, 3, 4, 5, 6].map((index) => radicalInverse(index, 2))).toEqual([
      0, 0.5, 0.25, 0.75, 0.125, 0.625, 0.375,
    ]);
    expect(radicalInverse(5, 3)).toBeCloseTo(2 / 3 + 1 / 9, 15);
  });
});

describe('haltonColumn', () => {
  it('stays strictly between 0 and 1, and fills each twentieth evenly, in every dimension', () => {
    for (const dimension of HALTON_BASES.keys()) {
      const column = haltonColumn(dimension, 1000).subarray(0, 1000);
      const counts = new Array<number>(20).fill(0);
      for (const share of column) {
        expect(share > 0 && share < 1).toBe(true);
        counts[Math.floor(share * 20)]!++;
      }
      for (const count of counts) expect(Math.abs(count - 50)).toBeLessThanOrEqual(6);
    }
  });

  it('leaves no two dimensions moving together', () => {
    const columns = [...HALTON_BASES.keys()].map((dimension) => haltonColumn(dimension, 1000).subarray(0, 1000));
    for (const [at, first] of columns.entries()) {
      for (const second of columns.slice(at + 1)) {
        const together = first.reduce((sum, share, index) => sum + (share - 0.5) * (second[index]! - 0.5), 0);
        expect(Math.abs(together / 1000) * 12).toBeLessThan(0.1);
      }
    }
  });

  it('gives the same points however many were asked for first', () => {
    const short = haltonColumn(4, 10).slice(0, 10);
    expect(haltonColumn(4, 6000).slice(0, 10)).toEqual(short);
  });

  it('has no dimension beyond its last base', () => {
    expect(() => haltonColumn(HALTON_BASES.length, 10)).toThrow(`${HALTON_BASES.length} dimensions`);
  });
});

describe('digitPermutation', () => {
  it('is a permutation that leaves 0 in place', () => {
    fc.assert(
      fc.property(fc.constantFrom(...HALTON_BASES), (base) => {
        const digits = digitPermutation(base);
        expect(digits[0]).toBe(0);
        expect(new Set(digits).size).toBe(base);
        expect(Math.max(...digits)).toBe(base - 1);
      }),
    );
  });
});
