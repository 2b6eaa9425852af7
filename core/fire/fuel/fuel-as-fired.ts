import { AskError } from '../../ask-error.ts';
import type { Step } from '../../step.ts';
import { enthalpy_J_mol, REFERENCE_K, type SpeciesName, speciesOf } from '../gas/nasa.ts';
import type { Fuel } from './fuel-schema.ts';

/** Joules to evaporate a kilogram of water at 25 °C, by the same data as everything else here. */
export const EVAPORATION_J_kg =
  (enthalpy_J_mol({ species: 'H2O', T_K: REFERENCE_K }) - enthalpy_J_mol({ species: 'H2O(L)', T_K: REFERENCE_K })) /
  speciesOf('H2O').molar_mass_kg_mol;

const ATOM_kg_mol = {
  C: speciesOf('C(gr)').molar_mass_kg_mol,
  H: speciesOf('H').molar_mass_kg_mol,
  O: speciesOf('O').molar_mass_kg_mol,
  N: speciesOf('N2').molar_mass_kg_mol / 2,
};

type Gases = Readonly<Record<string, number>>;

/** A known gas of a fuel with its mole share. The fuels' own test holds the names to the species table. */
const entriesOf = (gases: Gases): (readonly [SpeciesName, number])[] =>
  Object.entries(gases).map(([name, moles]) => [name as SpeciesName, moles]);

/** kg/mol of a mixture of known gases: Σ x M ÷ Σ x. */
export function gasesMolarMass_kg_mol(gases: Gases): number {
  const parts = entriesOf(gases);
  const mass_kg = parts.reduce((sum, [name, moles]) => sum + moles * speciesOf(name).molar_mass_kg_mol, 0);
  return mass_kg / parts.reduce((sum, [, moles]) => sum + moles, 0);
}

/** Σ x f ÷ Σ x M: any molar property of a gas mixture, for a kilogram of it. */
const perKilogram = (gases: Gases, molar: (species: SpeciesName) => number): number => {
  const parts = entriesOf(gases);
  const moles = parts.reduce((sum, [, share]) => sum + share, 0);
  return parts.reduce((sum, [name, share]) => sum + share * molar(name), 0) / moles / gasesMolarMass_kg_mol(gases);
};

/** One kilogram of fuel as it goes into the fire: what every balance starts from. */
export interface AsFired {
  readonly fuel: Fuel;
  readonly ash: number;
  readonly moisture: number;
  /** Moles in a kilogram as fired, moisture not counted. */
  readonly C_mol: number;
  readonly H_mol: number;
  readonly O_mol: number;
  readonly N_mol: number;
  readonly water_mol: number;
  /** Oxygen that complete burning takes. */
  readonly oxygen_need_mol: number;
  /** Heating values as fired: water leaves as vapour (lower), as liquid at 25 °C (higher). */
  readonly lower_heat_J_kg: number;
  readonly higher_heat_J_kg: number;
}

export interface FiredInput {
  readonly fuel: Fuel;
  readonly ash?: number;
  readonly moisture?: number;
  /** Measured or sampled, as fired with this ash and moisture. Without it the typical one, corrected for both. */
  readonly lower_heat_J_kg?: number;
}

/**
 * A fuel with its ash and moisture. Mass shares of 1 kg as fired; lower heat = dry ash-free heat × (1 − ash − moisture)
 * − moisture × heat of evaporation. Valid while something is left to burn: ash + moisture ≤ 0.9 and heat above zero.
 * Source: mass and energy balance, derived.
 * @throws AskError `out-of-range`, `impossible`
 */
export function asFired({ fuel, ash, moisture, lower_heat_J_kg }: FiredInput): AsFired {
  const own = { ash: ash ?? fuel.ash.typical, moisture: moisture ?? fuel.moisture.typical };
  for (const name of ['ash', 'moisture'] as const) checkShare(fuel, name, own[name]);
  const burns = 1 - own.ash - own.moisture;
  if (burns < 0.1)
    throw new AskError({
      code: 'impossible',
      what: `ash ${percent(own.ash)} and moisture ${percent(own.moisture)} leave ${percent(Math.max(0, burns))} of ${fuel.name} to burn`,
      expected: 'ash and moisture together at most 90 %',
      example: `${percent(fuel.moisture.typical)}`,
      option: 'moisture',
    });
  const atoms = atomsOf(fuel);
  const { C, H, O, N } = atoms;
  const heat = lower_heat_J_kg ?? burns * dryAshFreeHeat_J_kg(fuel) - own.moisture * EVAPORATION_J_kg;
  if (!(heat > 0))
    throw new AskError({
      code: 'impossible',
      what: `${fuel.name} with ${percent(own.moisture)} moisture gives ${(heat / 1e6).toFixed(1)} MJ/kg: it cannot burn`,
      expected: 'drier fuel, or a heating value above zero',
      example: `${percent(fuel.moisture.typical)}`,
      option: 'moisture',
    });
  const water_mol = own.moisture / speciesOf('H2O').molar_mass_kg_mol;
  const vapour_kg = own.moisture + ((burns * H) / 2) * speciesOf('H2O').molar_mass_kg_mol;
  return Object.freeze({
    fuel,
    ...own,
    C_mol: burns * C,
    H_mol: burns * H,
    O_mol: burns * O,
    N_mol: burns * N,
    water_mol,
    oxygen_need_mol: burns * (C + H / 4 - O / 2),
    lower_heat_J_kg: heat,
    higher_heat_J_kg: heat + vapour_kg * EVAPORATION_J_kg,
  });
}

/**
 * Lower heat of the dry, ash-free matter, J/kg. Of known gases: the difference of the heats of formation. Else what is
 * left of the typical value without its ash and moisture.
 */
export function dryAshFreeHeat_J_kg({ combustible, lower_heat_J_kg, ash, moisture }: Fuel): number {
  if ('gases' in combustible) return heatOfGases_J_kg(combustible.gases);
  return (lower_heat_J_kg.typical + moisture.typical * EVAPORATION_J_kg) / (1 - ash.typical - moisture.typical);
}

/** Heat of burning at 25 °C to CO2 and water vapour. */
function heatOfGases_J_kg(gases: Gases): number {
  const at = (species: SpeciesName): number => enthalpy_J_mol({ species, T_K: REFERENCE_K });
  return perKilogram(gases, (species) => {
    const { C = 0, H = 0 } = speciesOf(species).composition;
    return at(species) - C * at('CO2') - (H / 2) * at('H2O');
  });
}

/** Moles of each element in a kilogram of dry, ash-free matter. */
function atomsOf({ combustible }: Fuel): { C: number; H: number; O: number; N: number } {
  if ('gases' in combustible) {
    const count = (element: 'C' | 'H' | 'O' | 'N'): number =>
      perKilogram(combustible.gases, (species) => speciesOf(species).composition[element] ?? 0);
    return { C: count('C'), H: count('H'), O: count('O'), N: count('N') };
  }
  const { C, H, O, N } = combustible;
  const sum = C + H + O + N;
  return {
    C: C / sum / ATOM_kg_mol.C,
    H: H / sum / ATOM_kg_mol.H,
    O: O / sum / ATOM_kg_mol.O,
    N: N / sum / ATOM_kg_mol.N,
  };
}

/**
 * Heat of one kilogram as fired between 25 °C and a temperature, J: the gases' own, else a constant heat capacity.
 * Gases 200 to 6000 K; for solids and liquids a rough constant, fit for a fuel that goes in below about 400 K.
 */
export function sensibleHeat_J_kg({ fuel }: AsFired, T_K: number): number {
  const { combustible, heat_capacity_J_kgK } = fuel;
  if (!('gases' in combustible)) return (heat_capacity_J_kgK?.typical ?? 0) * (T_K - REFERENCE_K);
  return perKilogram(
    combustible.gases,
    (species) => enthalpy_J_mol({ species, T_K }) - enthalpy_J_mol({ species, T_K: REFERENCE_K }),
  );
}

const percent = (share: number): string => `${Number((share * 100).toPrecision(3))} %`;

function checkShare(fuel: Fuel, name: 'ash' | 'moisture', share: number): void {
  if (share === 0) return;
  if (fuel.kind === 'gas')
    throw new AskError({
      code: 'out-of-range',
      what: `${fuel.name} is a gas: ${percent(share)} ${name} does not belong to it`,
      expected: `no ${name} with a gas`,
      example: `0%`,
      option: name,
    });
  if (share > 0 && share < 1) return;
  throw new AskError({
    code: 'out-of-range',
    what: `${name} of ${percent(share)} is no share of a fuel`,
    expected: `${name} from 0 to below 100 %, of the mass as fired`,
    example: `${percent(fuel[name].typical)}`,
    option: name,
  });
}

/** How its lower heat comes from that of what burns in it. */
export function lowerHeatStep({ fuel, ash, moisture, lower_heat_J_kg, higher_heat_J_kg }: AsFired): Step {
  return {
    formula: 'as fired, from what burns in it: lower heat = dry heat × (1 − ash − moisture) − moisture × evaporation',
    inputs: {
      dry_heat_J_kg: (lower_heat_J_kg + moisture * EVAPORATION_J_kg) / (1 - ash - moisture),
      evaporation_J_kg: EVAPORATION_J_kg,
      ash,
      moisture,
    },
    gives: { lower_heat_J_kg, higher_heat_J_kg },
    source: fuel.lower_heat_J_kg.source,
  };
}
