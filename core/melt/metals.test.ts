import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { elements } from '../materials/pour.ts';
import { fusion_J_kg, liquidHeat_J_kg, meltingPoint_K, solidHeat_J_kg } from './metals.ts';

const melting = elements.filter((element) => element !== 'C');

describe.each(elements)('%s', (element) => {
  it('holds nothing as the cold solid', () => {
    expect(solidHeat_J_kg({ element, T_K: 298.15 })).toBeCloseTo(0, 0);
  });

  it('holds more the hotter it is, as a solid and as a liquid', () => {
    const T = fc.double({ min: 250, max: 2000, noNaN: true });
    fc.assert(
      fc.property(T, T, (a, b) => {
        const [cold, hot] = [Math.min(a, b), Math.max(a, b) + 0.1];
        expect(solidHeat_J_kg({ element, T_K: hot })).toBeGreaterThan(solidHeat_J_kg({ element, T_K: cold }));
        expect(liquidHeat_J_kg({ element, T_K: hot })).toBeGreaterThan(liquidHeat_J_kg({ element, T_K: cold }));
      }),
    );
  });

  it('has no jump where its tables end and are carried on', () => {
    // 0.02 K of metal at under 5 kJ/kgK; iron's change of lattice at 1184 and 1665 K is no end of a table.
    for (const T_K of [250, 505.08, 600.6, 692.73, 923, 933.61, 1358, 1690, 1809]) {
      for (const heat of [solidHeat_J_kg, liquidHeat_J_kg]) {
        const step = heat({ element, T_K: T_K + 0.01 }) - heat({ element, T_K: T_K - 0.01 });
        expect(Math.abs(step)).toBeLessThan(100);
      }
    }
  });
});

describe('melting', () => {
  it.each(melting)('of %s takes heat', (element) => {
    expect(fusion_J_kg(element)).toBeGreaterThan(20e3);
  });

  it('takes least of a kilogram of lead and most of silicon', () => {
    const sorted = melting.toSorted((a, b) => fusion_J_kg(a) - fusion_J_kg(b));
    expect(sorted[0]).toBe('Pb');
    expect(sorted.at(-1)).toBe('Si');
  });

  it('is hottest for iron and coldest for tin', () => {
    const sorted = melting.toSorted((a, b) => meltingPoint_K(a) - meltingPoint_K(b));
    expect([sorted[0], sorted.at(-1)]).toEqual(['Sn', 'Fe']);
  });
});

it('iron takes heat to change its lattice', () => {
  for (const T_K of [1184, 1665]) {
    const jump = solidHeat_J_kg({ element: 'Fe', T_K: T_K + 1 }) - solidHeat_J_kg({ element: 'Fe', T_K: T_K - 1 });
    // Two kelvins alone are under 2 kJ/kg there; the changes are about 16 and 15 kJ/kg.
    expect(jump).toBeGreaterThan(10e3);
    expect(jump).toBeLessThan(25e3);
  }
});
