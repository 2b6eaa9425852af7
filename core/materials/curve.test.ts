import { describe, expect, it } from 'vitest';
import { at } from './curve.ts';
import type { Curve } from './material.ts';

const curve: Curve = {
  T_K: [300, 400, 600],
  low: [0.8, 1.6, 2.4],
  typical: [1, 2, 3],
  high: [1.5, 3, 4.5],
  kind: 'local',
  source: 'derived',
  standing: 'derived',
};

describe('a property that varies with temperature', () => {
  it.each([
    [300, 1],
    [350, 1.5],
    [400, 2],
    [500, 2.5],
    [600, 3],
  ])('at %d K it is %d, on the line between rows', (T, value) => {
    expect(at(curve, T, 'typical')).toEqual({ value, extrapolated: false });
  });

  it('reads either end of its range', () => {
    expect(at(curve, 350, 'low').value).toBeCloseTo(1.2, 12);
    expect(at(curve, 350, 'high').value).toBeCloseTo(2.25, 12);
  });

  it('carries the typical line on outside the rows, says so, and gives no range there', () => {
    for (const end of ['low', 'typical', 'high'] as const) {
      expect(at(curve, 700, end)).toEqual({ value: 3.5, extrapolated: true });
      expect(at(curve, 250, end)).toEqual({ value: 0.5, extrapolated: true });
    }
  });

  it('never falls to nothing however far it is carried', () => {
    expect(at(curve, 1, 'typical').value).toBeCloseTo(0.1, 12);
  });

  it('keeps a single row everywhere', () => {
    const one = { ...curve, T_K: [300], low: [1], typical: [2], high: [3] };
    expect(at(one, 300, 'low')).toEqual({ value: 1, extrapolated: false });
    expect(at(one, 900, 'high')).toEqual({ value: 2, extrapolated: true });
  });
});
