import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findPour } from '../materials/catalogue.ts';
import { absorbed_W, absorbTime_s } from './absorb.ts';
import { heatCurve } from './melt-heat.ts';

const alloy = findPour('copper');
const curve = heatCurve({ alloy, from_K: 293.15, pour_K: 1450 });
const usual = { curve, mass_kg: 5, pot_J_K: 1500, area_m2: 0.07, film_W_m2K: 180, fire_K: 1800 };

describe('the least time to melt', () => {
  it('of a lump without melting is the exponential approach', () => {
    const straight = [
      { T_K: 300, heat_J_kg: 0 },
      { T_K: 900, heat_J_kg: 600e3 },
    ];
    const time = absorbTime_s({ ...usual, curve: straight, pot_J_K: 0 });
    const exact = ((5 * 1000) / (180 * 0.07)) * Math.log((1800 - 300) / (1800 - 900));
    expect(time).toBeCloseTo(exact, 9);
  });

  it('at one temperature is heat over heat flow', () => {
    const melting = [
      { T_K: 1000, heat_J_kg: 0 },
      { T_K: 1000, heat_J_kg: 200e3 },
    ];
    const time = absorbTime_s({ ...usual, curve: melting });
    expect(time * absorbed_W(usual, 1000)).toBeCloseTo(5 * 200e3, 3);
  });

  it('goes on without a step where the melting range narrows to nothing', () => {
    const within = (rise: number) =>
      absorbTime_s({
        ...usual,
        pot_J_K: 0,
        curve: [
          { T_K: 1000, heat_J_kg: 0 },
          { T_K: 1000 + rise, heat_J_kg: 200e3 },
        ],
      });
    // Over a rise r the flow falls by r/800: that is all two neighbours may differ by.
    for (const rise of [1, 1e-2, 1e-3, 1e-4]) expect(Math.abs(within(rise) / within(0) - 1)).toBeLessThan(rise / 800);
  });

  it('halves with twice the film or twice the outside', () => {
    const time = absorbTime_s(usual);
    expect(absorbTime_s({ ...usual, film_W_m2K: 360 })).toBeCloseTo(time / 2, 9);
    expect(absorbTime_s({ ...usual, area_m2: 0.14 })).toBeCloseTo(time / 2, 9);
  });

  it('lies between heat over the flow at the start and over the flow at the end', () => {
    fc.assert(
      fc.property(fc.double({ min: 1460, max: 2500, noNaN: true }), (fire_K) => {
        const fire = { ...usual, fire_K };
        const heat_J = 5 * curve.at(-1)!.heat_J_kg + 1500 * (1450 - 293.15);
        const time = absorbTime_s(fire);
        expect(time).toBeGreaterThan(heat_J / absorbed_W(fire, 293.15));
        expect(time).toBeLessThan(heat_J / absorbed_W(fire, 1450));
      }),
    );
  });

  it('never comes where the fire is no hotter than the pour', () => {
    expect(absorbTime_s({ ...usual, fire_K: 1450 })).toBe(Number.POSITIVE_INFINITY);
    expect(absorbTime_s({ ...usual, fire_K: 900 })).toBe(Number.POSITIVE_INFINITY);
  });
});
