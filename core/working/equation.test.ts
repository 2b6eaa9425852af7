import { describe, expect, it } from 'vitest';
import type { Step } from '../step.ts';
import { equationsOf, worth } from './equation.ts';
import { offOf, putIn } from './put-in.ts';

const step = (formula: string, inputs: Step['inputs'], gives: Step['gives']): Step => ({
  formula,
  inputs,
  gives,
  source: 'derived',
});
const reckoned = (right: string, inputs: Step['inputs'] = {}) => {
  const [equation] = equationsOf(step(`y = ${right}`, inputs, { y_m: 0 }));
  return equation && worth(equation.right);
};

describe('the arithmetic of a formula', () => {
  it.each([
    ['2 + 3 × 4', 14],
    ['(2 + 3) × 4', 20],
    ['8 − 2 − 1', 5],
    ['8 ÷ 2 ÷ 2', 2],
    ['8 / 4', 2],
    ['2 × 3²', 18],
    ['√(9 + 16)', 5],
    ['π × 2', 2 * Math.PI],
    ['tan(45)', 1],
    ['3³ − 2⁴', 11],
  ])('%s', (right, value) => expect(reckoned(right)).toBeCloseTo(value, 12));

  it('finds its names among the numbers, by the key without its unit', () => {
    expect(reckoned('bore radius × 2 + Wall', { bore_radius_m: 3, wall_m: 1 })).toBe(7);
  });

  it.each([
    ['prose', 'the flow at which two curves meet'],
    ['a name that no number has', 'y = height × width'],
    ['something behind it', 'y = height, about'],
    ['an open parenthesis', 'y = (height + 1'],
    ['two equals signs', 'y = height = 3'],
    ['an operator too many', 'y = height × × 2'],
    ['nothing at all', 'y = '],
    ['a result that is not given', 'z = height'],
  ])('is none of: %s', (_, formula) => {
    expect(equationsOf(step(formula, { height_m: 2 }, { y_m: 2 }))).toEqual([]);
  });

  it('does not choose between two of one name', () => {
    expect(equationsOf(step('y = fuel × 2', { fuel_kg: 1, fuel_J: 3 }, { y_m: 2 }))).toEqual([]);
    expect(equationsOf(step('y = fuel × 2', { fuel_kg: 1 }, { y_m: 2, fuel_J: 3 }))).toHaveLength(1);
  });

  it('takes several clauses, each with the results before it, below one title', () => {
    const made = step(
      'of a pot: dry = room × density; wet = dry × (1 + water)',
      { room_m3: 2, density_kg_m3: 3, water: 0.5 },
      {
        dry_kg: 6,
        wet_kg: 9,
      },
    );
    expect(putIn(made)).toEqual([
      { title: 'of a pot', text: 'dry = 2 m³ × 3 kg/m³ = 6 kg', off: 0 },
      { title: 'of a pot', text: 'wet = 6 kg × (1 + 0.5) = 9 kg', off: 0 },
    ]);
  });
});

describe('numbers put in', () => {
  it('keep five digits, and parentheses only where they are needed', () => {
    const made = step(
      'y = a − (b − c) + a ÷ (b × c) × (c)² × d',
      { a: 1234567, b: 0.00001234567, c: -2, d: 0.1 },
      { y_m: 0 },
    );
    const [equation] = equationsOf(made);
    const value = worth(equation!.right);
    const [shown] = putIn({ ...made, gives: { y_m: value } });
    expect(shown?.text.split(' = ')[1]).toBe(
      '1,234,600 − (1.2346 × 10⁻⁵ − (−2)) + 1,234,600 ÷ (1.2346 × 10⁻⁵ × (−2)) × (−2)² × 0.1',
    );
  });

  it('are left out where they do not come to what is given', () => {
    const wrong = step('y = height × 2', { height_m: 2 }, { y_m: 4.1 });
    expect(offOf(equationsOf(wrong)[0]!, wrong)).toBeCloseTo(0.1 / 4.1, 12);
    expect(putIn(wrong)).toEqual([]);
  });
});
