import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { findFuel, fuels } from '../fuel/fuel.ts';
import { asFired } from '../fuel/fuel-as-fired.ts';
import { adiabaticEquilibrium } from './equilibrium.ts';
import { dryFlueRatio, excessAirFromOxygen, flueGas, oxygenFromExcessAir, waterGasConstant } from './flue.ts';
import { mixture, oxidiser } from './mixture.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const anyFuel = fc.constantFrom(...fuels).map((fuel) => asFired({ fuel }));
const propane = asFired({ fuel: findFuel('propane') });

describe('flue gas', () => {
  it('keeps the atoms of what went in, lean and rich', () => {
    fc.assert(
      fc.property(
        anyFuel,
        between(0.2, 1.7),
        between(0.21, 0.4),
        between(900, 2000),
        (fuel, equivalence_ratio, oxygen_share, freeze_K) => {
          const blast = oxidiser({ oxygen_share, water_share: 0.01 });
          const { moles, wet, dry } = flueGas({ fuel, ratio: { equivalence_ratio }, blast, freeze_K });
          const [C, H, O, N, Ar] = mixture({ fuel, ratio: { equivalence_ratio }, blast }).elements_mol;
          const scale = 1e-9 * N!;
          expect(Math.abs(moles.CO2 + moles.CO - C!)).toBeLessThan(scale);
          expect(Math.abs(2 * moles.H2O + 2 * moles.H2 - H!)).toBeLessThan(scale);
          expect(Math.abs(2 * moles.CO2 + moles.CO + moles.H2O + 2 * moles.O2 - O!)).toBeLessThan(scale);
          expect(Math.abs(2 * moles.N2 - N!)).toBeLessThan(scale);
          expect(Math.abs(moles.Ar - Ar!)).toBeLessThan(scale);
          for (const share of Object.values(wet)) expect(share).toBeGreaterThanOrEqual(-1e-12);
          expect(Object.values(dry).reduce((a, b) => a + b)).toBeCloseTo(1, 9);
          if (equivalence_ratio > 1 && Math.min(moles.H2, moles.CO, moles.CO2) > 1e-6)
            expect((moles.CO2 * moles.H2) / (moles.CO * moles.H2O) / waterGasConstant(freeze_K)).toBeCloseTo(1, 6);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('is the same just lean and just rich of balanced', () => {
    const [lean, rich] = [1 - 1e-9, 1 + 1e-9].map((equivalence_ratio) =>
      flueGas({ fuel: propane, ratio: { equivalence_ratio } }),
    );
    for (const name of ['CO2', 'H2O', 'O2', 'CO'] as const) expect(lean!.wet[name]).toBeCloseTo(rich!.wet[name], 7);
  });

  it('is what cold equilibrium gives when lean', () => {
    const reactants = mixture({ fuel: propane, ratio: { excess_air: 0.3 } });
    const cooled = adiabaticEquilibrium({
      ...reactants,
      enthalpy_J: reactants.enthalpy_J - 0.75 * propane.lower_heat_J_kg,
    });
    const { moles } = flueGas({ fuel: propane, ratio: { excess_air: 0.3 } });
    expect(cooled.T_K).toBeLessThan(1100);
    for (const name of ['CO2', 'H2O', 'O2', 'N2'] as const) expect(cooled.moles[name] / moles[name]).toBeCloseTo(1, 4);
  });

  it('says that it smokes where oxygen is short even for CO', () => {
    expect(() => flueGas({ fuel: asFired({ fuel: findFuel('coke') }), ratio: { equivalence_ratio: 2.2 } })).toThrow(
      /smokes/,
    );
  });

  it('tells excess air from oxygen and back', () => {
    fc.assert(
      fc.property(anyFuel, between(0, 5), (fuel, excess_air) => {
        const dry_oxygen = oxygenFromExcessAir({ fuel, excess_air });
        expect(dry_oxygen).toBeCloseTo(flueGas({ fuel, ratio: { excess_air } }).dry.O2, 12);
        expect(excessAirFromOxygen({ fuel, dry_oxygen })).toBeCloseTo(excess_air, 9);
      }),
    );
    expect(() => excessAirFromOxygen({ fuel: propane, dry_oxygen: 0.2095 })).toThrow(AskError);
    expect(() => excessAirFromOxygen({ fuel: propane, dry_oxygen: -0.01 })).toThrow(AskError);
  });

  it('has less dry gas than air when balanced: the carbon rule overstates the excess air of gas', () => {
    // Propane takes 5 O2 of its air and gives 3 CO2 back, methane 2 and 1: k = 1 − 0.2095 × 2/5, and × 1/2.
    expect(dryFlueRatio(propane)).toBeCloseTo(1 - 0.2095 * 0.4, 9);
    expect(dryFlueRatio(asFired({ fuel: findFuel('methane') }))).toBeCloseTo(1 - 0.2095 * 0.5, 9);
    // Carbon gives all back; coke has a little hydrogen.
    expect(dryFlueRatio(asFired({ fuel: findFuel('coke') }))).toBeGreaterThan(0.98);
    // What e = y/(x − y) makes of 5 % oxygen in the flue of propane is a tenth too much.
    const rule = 0.05 / (0.2095 - 0.05);
    expect(rule / excessAirFromOxygen({ fuel: propane, dry_oxygen: 0.05 })).toBeCloseTo(1 / 0.9162, 4);
  });
});
