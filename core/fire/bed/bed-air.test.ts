import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findFuel, fuels } from '../fuel/fuel.ts';
import { asFired } from '../fuel/fuel-as-fired.ts';
import { dryAshFreeSpread_J_kg, heatAsFired_J_kg } from '../fuel/fuel-spread.ts';
import { airNeed } from '../gas/mixture.ts';
import { bedAir } from './bed-air.ts';
import { carbonAirNeed, carbonHeat_J_kg } from './charcoal-bed.ts';

const share = fc.double({ min: 0, max: 1, noNaN: true });
const coke = findFuel('coke');

describe('air for a bed', () => {
  it('is that of complete burning without CO', () => {
    for (const fuel of fuels.map((one) => asFired({ fuel: one })))
      expect(bedAir({ fuel, co_share: 0, excess_air: 0.2 }).air_kg_kg).toBeCloseTo(
        airNeed(fuel, { excess_air: 0.2 }).kg_kg,
        9,
      );
  });

  it('agrees with the carbon formulas for pure carbon', () => {
    const carbon = { ...coke, combustible: { C: 1, H: 0, O: 0, N: 0 } };
    const fuel = asFired({ fuel: carbon, ash: 0, moisture: 0, lower_heat_J_kg: 32.76e6 });
    fc.assert(
      fc.property(share, share, (co_share, excess_air) => {
        const { air_kg_kg, heat_J_kg } = bedAir({ fuel, co_share, excess_air });
        // Their constants have four digits.
        expect(air_kg_kg / carbonAirNeed({ co_share, excess_air })).toBeCloseTo(1, 2);
        expect(heat_J_kg / carbonHeat_J_kg({ co_share })).toBeCloseTo(1, 2);
      }),
    );
  });

  it('takes less air and gives less heat the more leaves as CO', () => {
    const fuel = asFired({ fuel: findFuel('lump charcoal') });
    fc.assert(
      fc.property(share, share, (a, b) => {
        fc.pre(Math.abs(a - b) > 1e-6);
        const [less, more] = [Math.min(a, b), Math.max(a, b)].map((co_share) =>
          bedAir({ fuel, co_share, excess_air: 0 }),
        );
        expect(more!.air_kg_kg).toBeLessThan(less!.air_kg_kg);
        expect(more!.heat_J_kg).toBeLessThan(less!.heat_J_kg);
      }),
    );
  });
});

describe('heat of the dry, ash-free matter', () => {
  it('gives back the typical heat as fired, and holds it', () => {
    for (const fuel of fuels) {
      const spread = dryAshFreeSpread_J_kg(fuel);
      expect(spread.low).toBeLessThanOrEqual(spread.typical);
      expect(spread.typical).toBeLessThanOrEqual(spread.high);
      if ('gases' in fuel.combustible) continue;
      const { ash, moisture } = fuel;
      const heat = heatAsFired_J_kg({ dry_J_kg: spread.typical, ash: ash.typical, moisture: moisture.typical });
      expect(heat / fuel.lower_heat_J_kg.typical).toBeCloseTo(1, 9);
      expect(heat / asFired({ fuel }).lower_heat_J_kg).toBeCloseTo(1, 9);
    }
  });
});
