import { AskError } from '../../ask-error.ts';
import type { AsFired } from '../fuel/fuel-as-fired.ts';
import { gasesMolarMass_kg_mol, sensibleHeat_J_kg } from '../fuel/fuel-as-fired.ts';
import {
  ATMOSPHERE_Pa,
  type Element,
  enthalpy_J_mol,
  GAS_CONSTANT,
  gibbs_J_mol,
  STANDARD_Pa,
  speciesOf,
} from './nasa.ts';

/** Dry air by volume; its 0.04 % carbon dioxide is counted with the nitrogen and argon. From memory. */
export const DRY_AIR = { O2: 0.2095, N2: 0.7812, Ar: 0.0093 } as const;

/** Heat capacity of ash and clinker, J/(kg K): between fireclay at room and at red heat. From memory. */
export const ASH_J_kgK = 1100;

/** What the fuel burns in: mole shares that sum to 1. */
export interface Oxidiser {
  readonly O2: number;
  readonly N2: number;
  readonly Ar: number;
  readonly H2O: number;
}

/**
 * Saturation pressure of water, Pa, from the Gibbs energies of liquid and vapour: ln(p/p°) = (g_liquid − g_vapour)/RT.
 * 273.15–373 K, within 0.6 % of the equation of state (an ideal vapour over a liquid at 1 bar).
 * @throws AskError `out-of-range` below freezing, where no liquid is.
 */
export const waterSaturation_Pa = (T_K: number): number =>
  STANDARD_Pa *
  Math.exp((gibbs_J_mol({ species: 'H2O(L)', T_K }) - gibbs_J_mol({ species: 'H2O', T_K })) / (GAS_CONSTANT * T_K));

/** Mole share of water in moist air = relative humidity × saturation pressure / pressure. Source: ideal gas. */
export function humidShare(input: { relative_humidity: number; air_K: number; pressure_Pa?: number }): number {
  const { relative_humidity, air_K, pressure_Pa = ATMOSPHERE_Pa } = input;
  const share = (relative_humidity * waterSaturation_Pa(air_K)) / pressure_Pa;
  if (relative_humidity >= 0 && relative_humidity <= 1 && share < 0.95) return share;
  throw new AskError({
    code: 'out-of-range',
    what: `air of ${Math.round(relative_humidity * 100)} % humidity at ${Math.round(air_K)} K would be ${Math.round(share * 100)} % water`,
    expected: 'a relative humidity from 0 to 100 %, of air below the boiling point',
    example: '50%',
    option: 'humidity',
  });
}

/**
 * Air, enriched air or oxygen. `oxygen_share` is the mole share of the dry gas (0.2095 for air); nitrogen and argon keep
 * their ratio. Valid from 0.1 to 1.
 */
export function oxidiser(input: { oxygen_share?: number; water_share?: number } = {}): Oxidiser {
  const { oxygen_share = DRY_AIR.O2, water_share = 0 } = input;
  if (!(oxygen_share >= 0.1 && oxygen_share <= 1))
    throw new AskError({
      code: 'out-of-range',
      what: `a blast of ${(oxygen_share * 100).toFixed(1)} % oxygen is outside what burns here`,
      expected: 'a share from 10 to 100 %; plain air holds 20.95 %',
      example: '21%',
      option: 'oxygen',
    });
  if (!(water_share >= 0 && water_share < 0.95)) throw new RangeError(`water_share: 0 to 0.95, not ${water_share}.`);
  const dry = 1 - water_share;
  const rest = (dry * (1 - oxygen_share)) / (DRY_AIR.N2 + DRY_AIR.Ar);
  return { O2: dry * oxygen_share, N2: rest * DRY_AIR.N2, Ar: rest * DRY_AIR.Ar, H2O: water_share };
}

/** kg/mol of the blast. */
export const oxidiserMolarMass_kg_mol = ({ O2, N2, Ar, H2O }: Oxidiser): number =>
  O2 * speciesOf('O2').molar_mass_kg_mol +
  N2 * speciesOf('N2').molar_mass_kg_mol +
  Ar * speciesOf('Ar').molar_mass_kg_mol +
  H2O * speciesOf('H2O').molar_mass_kg_mol;

/** J/mol of the blast at a temperature, heats of formation counted (water vapour has one). */
export const oxidiserEnthalpy_J_mol = ({ O2, N2, Ar, H2O }: Oxidiser, T_K: number): number =>
  O2 * enthalpy_J_mol({ species: 'O2', T_K }) +
  N2 * enthalpy_J_mol({ species: 'N2', T_K }) +
  Ar * enthalpy_J_mol({ species: 'Ar', T_K }) +
  H2O * enthalpy_J_mol({ species: 'H2O', T_K });

/** How much air there is, said in one of three ways: φ, or air above the need, or both left out for just enough. */
export type AirRatio = { readonly equivalence_ratio?: number } | { readonly excess_air?: number };

/** φ = 1/(1 + excess air): above 1 is rich. @throws AskError `out-of-range` unless above zero. */
export function equivalenceRatio(ratio: AirRatio): number {
  if ('excess_air' in ratio && ratio.excess_air !== undefined) {
    if (ratio.excess_air > -1 && ratio.excess_air < 1e6) return 1 / (1 + ratio.excess_air);
    throw new AskError({
      code: 'out-of-range',
      what: `excess air of ${Math.round(ratio.excess_air * 100)} % leaves no air at all`,
      expected: 'more than −100 %; 10 to 30 % is usual',
      example: '15%',
      option: 'excess',
    });
  }
  const phi = ('equivalence_ratio' in ratio ? ratio.equivalence_ratio : undefined) ?? 1;
  if (phi > 0 && phi < 1e6) return phi;
  throw new AskError({
    code: 'out-of-range',
    what: `a fuel-air ratio of ${phi} times the balanced one is none`,
    expected: 'a number above 0; 1 is balanced, 0.9 lean, 1.1 rich',
    example: '0.95',
    option: 'ratio',
  });
}

export interface Air {
  readonly mol_kg: number;
  readonly kg_kg: number;
  /** Moles of air to moles of fuel; of matter that is no known gas there are no moles. */
  readonly mol_mol?: number;
}

/** Air for one kilogram of fuel as fired: n = α + β/4 − γ/2 oxygen, ÷ (φ × oxygen share). Source: atom balance. */
export function airNeed(fuel: AsFired, ratio: AirRatio = {}, blast: Oxidiser = oxidiser()): Air {
  const mol_kg = fuel.oxygen_need_mol / (equivalenceRatio(ratio) * blast.O2);
  const kg_kg = mol_kg * oxidiserMolarMass_kg_mol(blast);
  const { combustible } = fuel.fuel;
  if (!('gases' in combustible)) return { mol_kg, kg_kg };
  return { mol_kg, kg_kg, mol_mol: mol_kg * gasesMolarMass_kg_mol(combustible.gases) };
}

export const ELEMENTS = ['C', 'H', 'O', 'N', 'Ar'] as const satisfies readonly Element[];

/** All that goes in with one kilogram of fuel. */
export interface Reactants {
  /** Moles of each of `ELEMENTS`. */
  readonly elements_mol: readonly number[];
  /** Of fuel, its water, its ash and the blast; heats of formation counted, ash at zero at 25 °C. */
  readonly enthalpy_J: number;
  readonly ash_kg: number;
  /** All but the ash. */
  readonly gas_kg: number;
  readonly air: Air;
  readonly equivalence_ratio: number;
}

export interface MixtureInput {
  readonly fuel: AsFired;
  readonly ratio?: AirRatio;
  readonly blast?: Oxidiser;
  readonly air_K?: number;
  readonly fuel_K?: number;
}

/**
 * Elements and enthalpy of one kilogram of fuel with its air. The fuel's enthalpy at 25 °C is that of its burned products
 * plus its lower heat, so that any heating value closes the balance. Air 200–6000 K. Source: Hess's law, derived.
 */
export function mixture(input: MixtureInput): Reactants {
  const { fuel, ratio = {}, blast = oxidiser(), air_K = 298.15, fuel_K = 298.15 } = input;
  const air = airNeed(fuel, ratio, blast);
  return {
    elements_mol: [
      fuel.C_mol,
      fuel.H_mol + 2 * fuel.water_mol + 2 * air.mol_kg * blast.H2O,
      fuel.O_mol + fuel.water_mol + air.mol_kg * (2 * blast.O2 + blast.H2O),
      fuel.N_mol + 2 * air.mol_kg * blast.N2,
      air.mol_kg * blast.Ar,
    ],
    enthalpy_J: fuelEnthalpy_J_kg(fuel, fuel_K) + air.mol_kg * oxidiserEnthalpy_J_mol(blast, air_K),
    ash_kg: fuel.ash,
    gas_kg: 1 - fuel.ash + air.kg_kg,
    air,
    equivalence_ratio: equivalenceRatio(ratio),
  };
}

/** h = C·h(CO2) + (H/2 + water)·h(H2O) + lower heat at 25 °C, and the fuel's own warmth. */
export const fuelEnthalpy_J_kg = (fuel: AsFired, T_K: number): number =>
  fuel.C_mol * enthalpy_J_mol({ species: 'CO2', T_K: 298.15 }) +
  (fuel.H_mol / 2 + fuel.water_mol) * enthalpy_J_mol({ species: 'H2O', T_K: 298.15 }) +
  fuel.lower_heat_J_kg +
  sensibleHeat_J_kg(fuel, T_K);
