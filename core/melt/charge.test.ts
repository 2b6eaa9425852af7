import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOST_CHARGES, planCharge } from './charge.ts';

const pot = { working_m3: 2e-3, brimful_m3: 2.5e-3, liquid_kg_m3: 2400, solid_kg_m3: 2700 };

describe('a charge', () => {
  it('holds the working volume of liquid, and wants another pour for more', () => {
    expect(planCharge({ ...pot, mass_kg: 4.8, bulk: 0.4 })).toMatchObject({ holds_kg: 4.8, pours: 1 });
    expect(planCharge({ ...pot, mass_kg: 4.81, bulk: 0.4 }).pours).toBe(2);
  });

  it('goes in at once where it lies as dense as that', () => {
    const { charges, first_kg } = planCharge({ ...pot, mass_kg: 3, bulk: 0.5 });
    expect(charges).toBe(1);
    expect(first_kg).toBe(3);
  });

  it('keeps its mass over the pours, never above the fill, and takes more charges the looser it lies', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 60, noNaN: true }),
        fc.double({ min: 0.05, max: 0.6, noNaN: true }),
        (mass_kg, bulk) => {
          const plan = planCharge({ ...pot, mass_kg, bulk });
          expect(plan.pours * plan.each_kg).toBeCloseTo(mass_kg, 9);
          expect(plan.each_kg).toBeLessThanOrEqual(plan.holds_kg * (1 + 1e-5));
          expect(plan.first_kg).toBeLessThanOrEqual(pot.brimful_m3 * bulk * pot.solid_kg_m3 + 1e-12);
          expect(plan.charges).toBeLessThanOrEqual(MOST_CHARGES);
          expect(planCharge({ ...pot, mass_kg, bulk: bulk * 0.8 }).charges).toBeGreaterThanOrEqual(plan.charges);
        },
      ),
    );
  });
});
