import { describe, expect, it } from 'vitest';
import type { Spread } from '../../core/materials/spread.ts';
import { type Held, turningsOf } from './verdict.ts';

type Draw = Readonly<Record<string, number>>;
const held = (inputs: Record<string, Spread>, of: (x: Draw) => number): Held => ({
  doubted: { inputs, units: {}, samples: 100, model: (x) => ({ y: of(x) }) },
  id: 'y',
});
const ten: Spread = { low: 0, typical: 5, high: 10 };
const turning = (one: Held, other: Held, input = 'a') => turningsOf([one, other], [{ input, share: 1 }])[0];

describe('where a verdict turns, as algebra has it', () => {
  // Bisected to a thousandth of the input's width: 0.01 here.
  const near = 0.01;

  it('is where a line crosses a constant, and how far that is from typical to its end', () => {
    const found = turning(
      held({ a: ten }, ({ a }) => a!),
      held({}, () => 7),
    );
    expect(Math.abs(found!.flips! - 7)).toBeLessThan(near);
    expect(found!.way).toBeCloseTo(0.4, 2);
    const below = turning(
      held({ a: ten }, ({ a }) => a! ** 2),
      held({}, () => 2),
    );
    expect(Math.abs(below!.flips! - Math.SQRT2)).toBeLessThan(near);
    expect(below!.way).toBeCloseTo(-(5 - Math.SQRT2) / 5, 2);
  });

  it('moves what both sides share on both of them: 2a crosses a + 3 at 3', () => {
    const found = turning(
      held({ a: ten }, ({ a }) => 2 * a!),
      held({ a: ten }, ({ a }) => a! + 3),
    );
    expect(Math.abs(found!.flips! - 3)).toBeLessThan(near);
  });

  it('moves each side by the same share of its own spread: a + 3 and twice as wide a cross at 3', () => {
    const found = turning(
      held({ a: ten }, ({ a }) => a! + 3),
      held({ a: { low: 0, typical: 10, high: 20 } }, ({ a }) => a!),
    );
    expect(Math.abs(found!.flips! - 3)).toBeLessThan(near);
  });

  it('is nowhere between sides that never cross, and between identical ones', () => {
    const one = held({ a: ten }, ({ a }) => a!);
    expect(
      turning(
        one,
        held({ a: ten }, ({ a }) => a! + 1),
      )!.flips,
    ).toBeUndefined();
    expect(turning(one, one)!.flips).toBeUndefined();
  });

  it('is the nearest to typical of several: (a − 1)(a − 8) turns at 8 before 1', () => {
    const found = turning(
      held({ a: ten }, ({ a }) => (a! - 1) * (a! - 8)),
      held({}, () => 0),
    );
    expect(Math.abs(found!.flips! - 8)).toBeLessThan(near);
  });

  it('says nothing of an input that only a third side has', () => {
    expect(
      turning(
        held({ a: ten }, ({ a }) => a!),
        held({}, () => 7),
        'of the third',
      ),
    ).toBeUndefined();
  });
});
