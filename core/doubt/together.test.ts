import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Spread } from '../materials/spread.ts';
import { normalAt, normalShare } from './normal.ts';
import { sampleDoubt } from './sample.ts';
import { weighSides } from './sides.ts';
import { shareColumns, type Tie } from './together.ts';

const tie = (input: string, goesWith: string, rank: number): Tie<string> => ({
  input,
  goesWith,
  rank,
  why: 'a test',
  source: 'derived',
  standing: 'judged',
});
const count = 4000;
const wide: Spread = { low: 0, typical: 0.3, high: 1 };

function spearman(one: Float64Array, other: Float64Array): number {
  const [a, b] = [ranks(one), ranks(other)];
  const middle = (a.length - 1) / 2;
  let product = 0;
  let square = 0;
  for (let at = 0; at < a.length; at++) {
    product += (a[at]! - middle) * (b[at]! - middle);
    square += (a[at]! - middle) ** 2;
  }
  return product / square;
}

function ranks(values: Float64Array): Float64Array {
  const order = [...values.keys()].sort((a, b) => values[a]! - values[b]!);
  const found = new Float64Array(values.length);
  for (const [rank, index] of order.entries()) found[index] = rank;
  return found;
}

describe('normalShare and normalAt', () => {
  it('are those of tables', () => {
    for (const [z, share] of [
      [0, 0.5],
      [1, 0.8413447461],
      [-1.959963985, 0.025],
      [2.575829304, 0.995],
      [-3.090232306, 0.001],
    ] as const) {
      expect(Math.abs(normalShare(z) - share)).toBeLessThan(7.5e-8);
      // 7.5e-8 of the share, over the density there: 0.0034 at the last.
      expect(Math.abs(normalAt(share) - z)).toBeLessThan(2.5e-5);
    }
  });

  it('undo each other', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-5, max: 1 - 1e-5, noNaN: true }),
        (share) => Math.abs(normalShare(normalAt(share)) - share) < 2e-7,
      ),
    );
  });
});

describe('shareColumns', () => {
  // Four thousand evenly spread points: a rank correlation of independent ones would itself be good to 1/√4000 = 0.016.
  it.each([-0.9, -0.6, -0.3, 0.3, 0.6, 0.9])('reaches a rank correlation of %d', (rank) => {
    const [one, other] = shareColumns(['one', 'other'], [tie('other', 'one', rank)], count);
    expect(Math.abs(spearman(one!.subarray(0, count), other!.subarray(0, count)) - rank)).toBeLessThan(0.02);
  });

  it.each([-0.6, 0.6, 0.95])(
    'leaves what is drawn alone as it was, tied by %d: evenly spread, and the other untouched',
    (rank) => {
      const [alone] = shareColumns(['one', 'other'], [], 1000);
      const [one, other] = shareColumns(['one', 'other'], [tie('other', 'one', rank)], 1000);
      expect(one).toBe(alone);
      const sorted = other!.slice(0, 1000).sort();
      // Kolmogorov's distance: 1.36/√1000 = 0.043 is what independent samples stay below nineteen times in twenty.
      const worst = Math.max(...sorted.map((share, at) => Math.abs(share - (at + 0.5) / 1000)));
      expect(worst).toBeLessThan(0.02);
    },
  );

  it('is the column of its own at 0, that of the other at 1, and its mirror at −1, to the last digit', () => {
    const [one, own] = shareColumns(['one', 'other'], [], 500);
    const other = (rank: number) => shareColumns(['one', 'other'], [tie('other', 'one', rank)], 500)[1]!;
    expect(other(0)).toBe(own);
    expect(other(1)).toBe(one);
    expect(other(-1)).toEqual(one!.map((share) => 1 - share));
  });

  it('comes near to those limits from inside', () => {
    const [one, own] = shareColumns(['one', 'other'], [], 500);
    const near = (rank: number, limit: Float64Array) => {
      const found = shareColumns(['one', 'other'], [tie('other', 'one', rank)], 500)[1]!;
      return Math.max(...found.subarray(0, 500).map((share, at) => Math.abs(share - limit[at]!)));
    };
    expect(near(1e-6, own!)).toBeLessThan(1e-4);
    expect(near(1 - 1e-9, one!)).toBeLessThan(1e-3);
  });

  it('carries a tie along a chain, weaker at each step, and leaves the rest alone', () => {
    const [a, , c, d] = shareColumns(['a', 'b', 'c', 'd'], [tie('c', 'b', 0.8), tie('b', 'a', 0.8)], count);
    const of = (one: Float64Array, other: Float64Array) => spearman(one.subarray(0, count), other.subarray(0, count));
    const r = 2 * Math.sin((Math.PI * 0.8) / 6);
    expect(Math.abs(of(a!, c!) - (6 / Math.PI) * Math.asin((r * r) / 2))).toBeLessThan(0.02);
    expect(Math.abs(of(c!, d!))).toBeLessThan(0.05);
  });

  it('hears the first tie of an input, and none of what is not drawn', () => {
    const twice = shareColumns(['a', 'b', 'c'], [tie('c', 'a', 1), tie('c', 'b', 1)], 100);
    expect(twice[2]).toBe(twice[0]);
    const [a] = shareColumns(['a'], [tie('a', 'gone', 1), tie('gone', 'a', 1)], 100);
    expect(a).toBe(shareColumns(['a'], [], 100)[0]);
  });

  it('refuses a ring and a rank beyond 1', () => {
    expect(() => shareColumns(['a', 'b'], [tie('a', 'b', 0.5), tie('b', 'a', 0.5)], 10)).toThrow('ring');
    expect(() => shareColumns(['a', 'b'], [tie('a', 'b', 1.1)], 10)).toThrow('from −1 to 1');
  });
});

describe('sampleDoubt with ties', () => {
  const sum = (rank: number | undefined) =>
    sampleDoubt({
      inputs: { a: wide, b: wide },
      model: ({ a, b }) => ({ sum: a + b, less: a - b, a, b }),
      ...(rank === undefined ? {} : { together: [tie('b', 'a', rank) as Tie<'a' | 'b'>] }),
    });
  const width = (rank: number | undefined, of: 'sum' | 'less') => {
    const { low, high } = sum(rank).ranges[of]!;
    return high - low;
  };

  it('is what it was where nothing is tied, and at ρ = 0', () => {
    expect(sum(0)).toEqual(sum(undefined));
  });

  it('makes of two one at ρ = 1: the sum is twice the one, the difference nothing', () => {
    const { ranges } = sum(1);
    expect(ranges.sum!.low).toBeCloseTo(2 * ranges.a!.low, 12);
    expect(ranges.sum!.high).toBeCloseTo(2 * ranges.a!.high, 12);
    expect(ranges.less).toEqual({ low: 0, high: 0 });
  });

  it('widens a sum and narrows a difference with every step of ρ', () => {
    const ranks = [-1, -0.6, 0, 0.6, 1];
    for (const [at, rank] of ranks.slice(1).entries()) {
      expect(width(rank, 'sum')).toBeGreaterThan(width(ranks[at], 'sum'));
      expect(width(rank, 'less')).toBeLessThan(width(ranks[at], 'less'));
    }
  });

  it('gives each of two that go together what they share', () => {
    const { movers } = sampleDoubt({
      inputs: { a: wide, b: wide, c: wide },
      model: ({ a, c }) => ({ out: a + c }),
      together: [tie('b', 'a', 0.9) as Tie<'a' | 'b' | 'c'>],
    });
    const share = (name: string) => movers.out.find(({ input }) => input === name)!.share;
    // The answer hears nothing of b, and yet b tells of it.
    expect(share('b')).toBeGreaterThan(0.3);
    expect(share('b')).toBeLessThan(share('a'));
  });

  it('is the same every time, and in both orders of the inputs where they are alike', () => {
    expect(sum(0.6)).toEqual(sum(0.6));
  });
});

describe('weighSides with ties', () => {
  const side = (sign: number) => ({
    inputs: { a: wide, b: wide },
    model: ({ a, b }: Readonly<Record<string, number>>) => ({ y: a! + sign * b! }),
    together: [tie('b', 'a', 0.7)],
  });

  it('is even between identical sides, and says a tie only once', () => {
    const { measured, error } = weighSides({ sides: [side(1), side(1)], outputs: ['y'] });
    expect(measured.y.below(0, 1)).toBe(0.5);
    expect(measured.y.belowError(0, 1)).toBe(0);
    expect(error).toBeLessThan(0.03);
  });

  it('draws the ties of either side for both', () => {
    const { together: _, ...plain } = side(1);
    const tied = weighSides({ sides: [side(1), plain], outputs: ['y'] }).measured.y.ranges;
    expect(tied[1]).toEqual(tied[0]);
  });
});
