import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { sourceOf } from '../../sources/sources.ts';
import { charcoalBeds, mixingTubeLosses } from '../data/charcoal-beds.ts';
import {
  AIR_INERT,
  balancedCoShare,
  blastForPower_kg_s,
  CARBON,
  type CharcoalBedInput,
  charcoalBed,
} from './charcoal-bed.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const plain: CharcoalBedInput = { air_kg_s: 0.015, co_share: 0.3, excess_air: 0, carbon_share: 0.78, ash_share: 0.04 };

describe('a charcoal bed (physics)', () => {
  it('keeps carbon, oxygen and heat', () => {
    fc.assert(
      fc.property(real(0, 1), real(0, 2), real(0.001, 1), (co_share, excess_air, air_kg_s) => {
        const made = charcoalBed({ ...plain, co_share, excess_air, air_kg_s });
        // Oxygen, mol: half a mole a CO, one a CO2, the rest left over.
        const carbon_mol = made.carbon_kg_s / 0.012011;
        const oxygen_mol = (air_kg_s / CARBON.air_kg_kg) * (1 / 0.012011);
        const used_mol = carbon_mol * (1 - co_share / 2);
        expect(used_mol * (1 + excess_air)).toBeCloseTo(oxygen_mol, 9);
        // Heat: what is missing from full burning leaves in the CO, 282.98 kJ a mole.
        const lost_W = carbon_mol * co_share * 282.98e3;
        expect((made.power_W + lost_W) / (made.carbon_kg_s * CARBON.heat_to_CO2_J_kg)).toBeCloseTo(1, 3);
        expect(made.fuel_kg_s * plain.carbon_share).toBeCloseTo(made.carbon_kg_s, 12);
        expect(made.ash_kg_s).toBeCloseTo(made.fuel_kg_s * plain.ash_share, 12);
      }),
    );
  });

  it('gives 2.85 MJ a kilogram of air when all burns to CO2, whatever the charcoal', () => {
    for (const carbon_share of [0.5, 0.65, 0.9]) {
      expect(charcoalBed({ ...plain, co_share: 0, carbon_share }).heat_per_air_J_kg / 1e6).toBeCloseTo(2.85, 2);
    }
  });

  it('gives under 30 % of the heat per carbon when it stops at CO, and takes half the air', () => {
    const full = charcoalBed({ ...plain, co_share: 0 });
    const half = charcoalBed({ ...plain, co_share: 1 });
    expect(half.air_need_kg_kg).toBeCloseTo(full.air_need_kg_kg / 2, 12);
    expect(half.power_W / half.carbon_kg_s / (full.power_W / full.carbon_kg_s)).toBeLessThan(0.3);
    expect(half.power_W).toBeLessThan(full.power_W);
  });

  it('follows the blast: twice the air, twice the power; and back again', () => {
    const { power_W } = charcoalBed(plain);
    expect(charcoalBed({ ...plain, air_kg_s: 0.03 }).power_W).toBeCloseTo(2 * power_W, 6);
    expect(blastForPower_kg_s({ ...plain, power_W })).toBeCloseTo(0.015, 12);
  });

  it('refuses shares that are none', () => {
    for (const wrong of [{ co_share: -0.1 }, { carbon_share: 0 }, { ash_share: 0.3 }, { air_kg_s: -1 }]) {
      expect(() => charcoalBed({ ...plain, ...wrong })).toThrow(AskError);
    }
  });
});

describe('carbon, CO2 and CO in balance (physics)', () => {
  const at = (bed_K: number, inert_per_oxygen = AIR_INERT, pressure_Pa = 101325) =>
    balancedCoShare({ bed_K, pressure_Pa, inert_per_oxygen });

  it('goes from CO2 when dull red to CO when white', () => {
    expect(at(750)).toBeLessThan(0.15);
    expect(at(1500)).toBeGreaterThan(0.99);
    fc.assert(
      fc.property(real(700, 1790), real(0, 10), real(60e3, 190e3), (bed_K, inert, pressure_Pa) => {
        const share = at(bed_K, inert, pressure_Pa);
        expect(at(bed_K + 5, inert, pressure_Pa)).toBeGreaterThan(share);
        // More room, by pressure or by nitrogen, favours the side with more gas.
        expect(at(bed_K, inert + 1, pressure_Pa)).toBeGreaterThanOrEqual(share);
        expect(at(bed_K, inert, pressure_Pa * 0.95)).toBeGreaterThanOrEqual(share);
        expect(share).toBeGreaterThan(0);
        expect(share).toBeLessThan(1);
      }),
    );
  });

  it('is refused where the line was not fitted', () => {
    expect(() => at(500)).toThrow(AskError);
  });
});

describe('what is assumed of a bed', () => {
  it('is in order, cited and within what the formulas take', () => {
    for (const { low, typical, high, source } of [...Object.values(charcoalBeds), mixingTubeLosses]) {
      expect(low).toBeLessThanOrEqual(typical);
      expect(typical).toBeLessThanOrEqual(high);
      expect(sourceOf(source).id).toBe(source);
    }
  });
});
