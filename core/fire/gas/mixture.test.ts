import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { findFuel, fuels } from '../fuel/fuel.ts';
import { asFired } from '../fuel/fuel-as-fired.ts';
import {
  airNeed,
  equivalenceRatio,
  humidShare,
  mixture,
  oxidiser,
  oxidiserMolarMass_kg_mol,
  waterSaturation_Pa,
} from './mixture.ts';

const share = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('a blast', () => {
  it('sums to one, whatever it holds', () => {
    fc.assert(
      fc.property(share(0.1, 1), share(0, 0.9), (oxygen_share, water_share) => {
        const { O2, N2, Ar, H2O } = oxidiser({ oxygen_share, water_share });
        expect(O2 + N2 + Ar + H2O).toBeCloseTo(1, 12);
        expect(O2 / (1 - H2O)).toBeCloseTo(oxygen_share, 12);
      }),
    );
  });

  it('of plain dry air weighs 28.96 g a mole', () => {
    expect(oxidiserMolarMass_kg_mol(oxidiser())).toBeCloseTo(0.02896, 5);
  });

  it('is refused where it is no gas to burn in', () => {
    expect(() => oxidiser({ oxygen_share: 0.05 })).toThrow(AskError);
    expect(() => oxidiser({ oxygen_share: 1.01 })).toThrow(AskError);
    expect(() => humidShare({ relative_humidity: 1.2, air_K: 293 })).toThrow(AskError);
    expect(() => humidShare({ relative_humidity: 1, air_K: 373.2 })).toThrow(AskError);
  });

  it('holds more water the warmer and the thinner the air', () => {
    const at = (air_K: number, pressure_Pa = 101_325): number =>
      humidShare({ relative_humidity: 0.5, air_K, pressure_Pa });
    expect(at(303)).toBeGreaterThan(at(293));
    expect(at(293, 80_000)).toBeGreaterThan(at(293));
    expect(waterSaturation_Pa(373.12) / 101_325).toBeCloseTo(1, 1);
  });
});

describe('a mixture', () => {
  it('burns to just CO2, H2O and the inert gases when balanced', () => {
    for (const fuel of fuels) {
      const [C, H, O] = mixture({ fuel: asFired({ fuel }) }).elements_mol;
      expect(O! / (2 * C! + H! / 2)).toBeCloseTo(1, 12);
    }
  });

  it('takes air in proportion to one over φ', () => {
    const fuel = asFired({ fuel: findFuel('diesel') });
    fc.assert(
      fc.property(share(0.1, 10), (equivalence_ratio) => {
        expect(airNeed(fuel, { equivalence_ratio }).kg_kg * equivalence_ratio).toBeCloseTo(airNeed(fuel).kg_kg, 9);
      }),
    );
  });

  it('weighs what went in', () => {
    const weights = [0.012011, 0.001008, 0.015999, 0.014007, 0.03995];
    for (const fuel of fuels) {
      const { elements_mol, gas_kg } = mixture({
        fuel: asFired({ fuel }),
        blast: oxidiser({ water_share: 0.02, oxygen_share: 0.3 }),
        ratio: { excess_air: 0.2 },
      });
      expect(elements_mol.reduce((sum, moles, e) => sum + moles * weights[e]!, 0)).toBeCloseTo(gas_kg, 8);
    }
  });

  it('carries the warmth of its air', () => {
    const fuel = asFired({ fuel: findFuel('propane') });
    expect(mixture({ fuel, air_K: 600 }).enthalpy_J).toBeGreaterThan(mixture({ fuel, air_K: 300 }).enthalpy_J);
    expect(mixture({ fuel, fuel_K: 350 }).enthalpy_J).toBeGreaterThan(mixture({ fuel, fuel_K: 280 }).enthalpy_J);
  });

  it('says what is wrong with an air ratio', () => {
    expect(equivalenceRatio({ excess_air: 0.25 })).toBeCloseTo(0.8, 12);
    expect(equivalenceRatio({})).toBe(1);
    for (const bad of [
      { excess_air: -1 },
      { excess_air: Number.NaN },
      { equivalence_ratio: 0 },
      { equivalence_ratio: -2 },
    ])
      expect(() => equivalenceRatio(bad)).toThrow(AskError);
  });
});
