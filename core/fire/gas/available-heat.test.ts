import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { findFuel, fuels } from '../fuel/fuel.ts';
import { asFired } from '../fuel/fuel-as-fired.ts';
import { availableHeat, preheatSaving } from './available-heat.ts';
import { adiabaticEquilibrium } from './equilibrium.ts';
import { mixture } from './mixture.ts';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const anyFuel = fc.constantFrom(...fuels).map((fuel) => asFired({ fuel }));
const propane = asFired({ fuel: findFuel('propane') });

describe('available heat', () => {
  it('closes: what came in is what stays and what leaves', () => {
    fc.assert(
      fc.property(
        anyFuel,
        between(0.4, 1.5),
        between(400, 2000),
        between(250, 900),
        (fuel, equivalence_ratio, flue_K, air_K) => {
          const { available_J_kg, brought_J_kg, loss } = availableHeat({
            fuel,
            ratio: { equivalence_ratio },
            flue_K,
            air_K,
          });
          const out = available_J_kg + loss.dry_gas_J_kg + loss.vapour_J_kg + loss.unburned_J_kg + loss.ash_J_kg;
          expect(Math.abs(out - fuel.lower_heat_J_kg - brought_J_kg)).toBeLessThan(1e-9 * fuel.lower_heat_J_kg);
        },
      ),
    );
  });

  it('is nothing where the flue is as hot as the frozen flame, all of the lower heat at 25 °C', () => {
    const lean = { fuel: propane, ratio: { excess_air: 1 } };
    expect(availableHeat({ ...lean, flue_K: 298.15 }).share_of_lower).toBeCloseTo(1, 12);
    // So lean that nothing dissociates: the flame of the equilibrium solver is the flue of this one.
    const { T_K } = adiabaticEquilibrium(mixture(lean));
    expect(Math.abs(availableHeat({ ...lean, flue_K: T_K }).share_of_lower)).toBeLessThan(0.003);
  });

  it('falls as the flue gets hotter and, lean, as the air grows', () => {
    fc.assert(
      fc.property(anyFuel, between(0, 3), between(400, 2000), between(1, 100), (fuel, excess_air, flue_K, more_dK) => {
        const at = (ratio: number, T: number): number =>
          availableHeat({ fuel, ratio: { excess_air: ratio }, flue_K: T }).share_of_lower;
        expect(at(excess_air, flue_K + more_dK)).toBeLessThan(at(excess_air, flue_K));
        expect(at(excess_air + 0.05, flue_K)).toBeLessThan(at(excess_air, flue_K));
      }),
    );
  });

  it('falls as fuel goes unburned, below the temperature where less flue repays it', () => {
    const at = (equivalence_ratio: number): number =>
      availableHeat({ fuel: propane, ratio: { equivalence_ratio }, flue_K: 1273 }).share_of_lower;
    for (const phi of [1, 1.1, 1.2, 1.4]) expect(at(phi + 0.05)).toBeLessThan(at(phi));
  });

  it('grows with warm air, and the saving with it', () => {
    fc.assert(
      fc.property(between(0, 0.5), between(800, 1500), between(350, 800), (excess_air, flue_K, warm_K) => {
        const saving = preheatSaving({ fuel: propane, ratio: { excess_air }, flue_K, warm_K });
        expect(saving).toBeGreaterThan(0);
        expect(preheatSaving({ fuel: propane, ratio: { excess_air }, flue_K, warm_K: warm_K + 50 })).toBeGreaterThan(
          saving,
        );
      }),
    );
  });

  it('is refused where its gas would not be frozen, or the fire is too cold to save', () => {
    expect(() => availableHeat({ fuel: propane, flue_K: 2500 })).toThrow(AskError);
    expect(() => preheatSaving({ fuel: propane, ratio: { excess_air: 3 }, flue_K: 1500, warm_K: 600 })).toThrow(
      AskError,
    );
  });
});
