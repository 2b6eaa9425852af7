import { describe, expect, it } from 'vitest';
import { distance, nearest } from './nearest.ts';

describe('edit distance', () => {
  it.each([
    ['kitten', 'sitting', 3],
    ['', 'abc', 3],
    ['perlite', 'perlite', 0],
    ['flaw', 'lawn', 2],
  ])('%s to %s is %d', (a, b, edits) => {
    expect(distance(a, b)).toBe(edits);
    expect(distance(b, a)).toBe(edits);
  });
});

describe('the nearest names', () => {
  const names = ['perlite', 'fireclay', 'fireclay-brick', 'vermiculite', 'grog'];

  it('puts the least slip first', () => {
    expect(nearest('purlite', names)[0]).toBe('perlite');
    expect(nearest('fireclay bric', names)[0]).toBe('fireclay-brick');
  });

  it('gives no more than asked and no name twice', () => {
    expect(nearest('grg', [...names, ...names], 2)).toHaveLength(2);
    expect(new Set(nearest('grg', [...names, ...names], 9)).size).toBe(5);
  });

  it('stays quick on a text of any length', () => {
    expect(nearest('x'.repeat(100_000), names)).toHaveLength(3);
  });
});
