import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { findFuel, fuels } from '../fuel/fuel.ts';
import { asFired } from '../fuel/fuel-as-fired.ts';
import { adiabaticEquilibrium, type Equilibrium, equilibriumAt } from './equilibrium.ts';
import { PRODUCTS, type Product } from './gas-table.ts';
import { ASH_J_kgK, ELEMENTS, mixture, oxidiser, type Reactants } from './mixture.ts';
import { enthalpy_J_mol, GAS_CONSTANT, gibbs_J_mol, STANDARD_Pa, speciesOf } from './nasa.ts';

const RUNS = 10_000;
const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

const question = fc.record({
  fuel: fc.constantFrom(...fuels),
  equivalence_ratio: between(0.3, 3.5),
  air_K: between(250, 900),
  oxygen_share: between(0.21, 0.4),
  water_share: between(0, 0.04),
  pressure_Pa: between(60_000, 110_000),
  ash: between(0, 0.3),
});
type Question = typeof question extends fc.Arbitrary<infer Q> ? Q : never;

const reactantsOf = ({ fuel, equivalence_ratio, air_K, oxygen_share, water_share, ash }: Question): Reactants =>
  mixture({
    fuel: asFired(fuel.kind === 'solid' ? { fuel, ash } : { fuel }),
    ratio: { equivalence_ratio },
    blast: oxidiser({ oxygen_share, water_share }),
    air_K,
  });

/** Atoms of each element in the products. */
const atomsOf = ({ moles }: Equilibrium): number[] =>
  ELEMENTS.map((element) =>
    PRODUCTS.reduce((sum, name) => sum + moles[name] * (speciesOf(name).composition[element] ?? 0), 0),
  );

const enthalpyOf = ({ moles, T_K }: Equilibrium, ash_kg: number): number =>
  PRODUCTS.reduce((sum, species) => sum + moles[species] * enthalpy_J_mol({ species, T_K }), 0) +
  ash_kg * ASH_J_kgK * (T_K - 298.15);

/** How far a reaction is from rest: ln of its quotient less ln of its constant. */
function unrest(
  { moles, gas_mol, T_K }: Equilibrium,
  pressure_Pa: number,
  reaction: Partial<Record<Product, number>>,
): number {
  return Object.entries(reaction).reduce((sum, [name, count]) => {
    const species = name as Product;
    const activity = species === 'C(gr)' ? 0 : Math.log((moles[species] / gas_mol) * (pressure_Pa / STANDARD_Pa));
    return sum + count * (gibbs_J_mol({ species, T_K }) / (GAS_CONSTANT * T_K) + activity);
  }, 0);
}

const REACTIONS: readonly Partial<Record<Product, number>>[] = [
  { CO: 1, O2: 0.5, CO2: -1 },
  { H2: 1, O2: 0.5, H2O: -1 },
  { H2: 0.5, O2: 0.5, OH: -1 },
  { O2: 0.5, O: -1 },
  { H2: 0.5, H: -1 },
  { N2: 0.5, O2: 0.5, NO: -1 },
];

describe('the burned state', () => {
  it(`keeps atoms and energy and is at rest, in ${RUNS} random mixtures, sooty ones too`, () => {
    let sooty = 0;
    fc.assert(
      fc.property(question, (asked) => {
        const reactants = reactantsOf(asked);
        const state = adiabaticEquilibrium({ ...reactants, pressure_Pa: asked.pressure_Pa });
        const most = Math.max(...reactants.elements_mol);
        atomsOf(state).forEach((moles, e) => {
          expect(Math.abs(moles - reactants.elements_mol[e]!)).toBeLessThan(1e-9 * most);
        });
        // Against the heat of burning: the enthalpy itself may be near zero.
        const miss = enthalpyOf(state, reactants.ash_kg) - reactants.enthalpy_J;
        expect(Math.abs(miss)).toBeLessThan(
          1e-9 * asked.fuel.lower_heat_J_kg.typical * Math.max(1, reactants.gas_kg / 20),
        );
        for (const reaction of REACTIONS) {
          const names = Object.keys(reaction) as Product[];
          if (names.some((name) => state.moles[name] / state.gas_mol < 1e-12)) continue;
          expect(Math.abs(unrest(state, asked.pressure_Pa, reaction))).toBeLessThan(1e-5);
        }
        if (state.moles['C(gr)'] > 0) {
          sooty++;
          expect(Math.abs(unrest(state, asked.pressure_Pa, { 'C(gr)': 1, CO2: 1, CO: -2 }))).toBeLessThan(1e-5);
        } else {
          expect(state.moles['C(gr)']).toBe(0);
          expect(unrest(state, asked.pressure_Pa, { 'C(gr)': -1, CO2: -1, CO: 2 })).toBeLessThan(1e-5);
        }
        for (const name of PRODUCTS) expect(state.moles[name]).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: RUNS, seed: 20 },
    );
    expect(sooty).toBeGreaterThan(RUNS / 20);
  });

  it('is the same whether the temperature or the heat is given', () => {
    fc.assert(
      fc.property(question, (asked) => {
        const reactants = reactantsOf(asked);
        const byHeat = adiabaticEquilibrium({ ...reactants, pressure_Pa: asked.pressure_Pa });
        const byTemperature = equilibriumAt({ ...reactants, pressure_Pa: asked.pressure_Pa, T_K: byHeat.T_K });
        for (const name of PRODUCTS)
          expect(Math.abs(byTemperature.moles[name] - byHeat.moles[name])).toBeLessThan(1e-8 * byHeat.gas_mol);
      }),
      { numRuns: 500, seed: 21 },
    );
  });

  it('cools to the air as fuel runs out', () => {
    const fuel = asFired({ fuel: findFuel('propane') });
    const at = (equivalence_ratio: number): number =>
      adiabaticEquilibrium(mixture({ fuel, ratio: { equivalence_ratio }, air_K: 320 })).T_K;
    const temperatures = [1, 0.5, 0.1, 0.01, 1e-3, 1e-5].map(at);
    for (let i = 1; i < temperatures.length; i++) expect(temperatures[i]).toBeLessThan(temperatures[i - 1]!);
    // A φ of 1e-5 leaves 1e-5 of some 2300 K of rise.
    expect(temperatures.at(-1)! - 320).toBeLessThan(0.05);
  });

  it('cools to the fuel as air runs out, where the fuel is carbon', () => {
    const carbon = { ...findFuel('coke'), combustible: { C: 1, H: 0, O: 0, N: 0 } };
    const heat = -1000 * (enthalpy_J_mol({ species: 'CO2', T_K: 298.15 }) / 12.011);
    const fuel = asFired({ fuel: carbon, ash: 0, moisture: 0, lower_heat_J_kg: heat });
    const at = (equivalence_ratio: number) => adiabaticEquilibrium(mixture({ fuel, ratio: { equivalence_ratio } }));
    expect(at(3).moles['C(gr)']).toBeGreaterThan(0);
    const temperatures = [3, 10, 100, 1e4].map((phi) => at(phi).T_K);
    for (let i = 1; i < temperatures.length; i++) expect(temperatures[i]).toBeLessThan(temperatures[i - 1]!);
    // A gram of carbon in ten kilograms burns: 33 kJ into 10 kg of some 720 J/(kg K), 4.6 K.
    expect(temperatures.at(-1)! - 298.15).toBeLessThan(6);
  });

  it('is refused where nothing can burn', () => {
    const fuel = asFired({ fuel: findFuel('propane') });
    // Propane without air falls apart into soot and hydrogen, which takes more heat than it has.
    expect(() => adiabaticEquilibrium(mixture({ fuel, ratio: { equivalence_ratio: 1000 } }))).toThrow(AskError);
    expect(() => equilibriumAt({ elements_mol: [0, 0, 0, 1, 0], T_K: 100 })).toThrow(AskError);
    expect(() => equilibriumAt({ elements_mol: [0, 0, 0, 0, 0], T_K: 1000 })).toThrow(RangeError);
  });

  it('knows a gas of one element', () => {
    const { moles } = equilibriumAt({ elements_mol: [0, 0, 0, 2, 0], T_K: 1500 });
    expect(moles.N2).toBeCloseTo(1, 12);
  });
});
