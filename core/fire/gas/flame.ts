import type { Step, WithSteps } from '../../step.ts';
import type { Fuel } from '../fuel/fuel.ts';
import { type AsFired, asFired, lowerHeatStep } from '../fuel/fuel-as-fired.ts';
import { adiabaticEquilibrium } from './equilibrium.ts';
import { GRAPHITE, MOLAR_MASS_kg_mol, PRODUCTS, type Product } from './gas-table.ts';

import { type AirRatio, humidShare, mixture, type Oxidiser, oxidiser, type Reactants } from './mixture.ts';
import { ATMOSPHERE_Pa, REFERENCE_K } from './nasa.ts';

export type Gas = Exclude<Product, 'C(gr)'>;
/** Mole shares of a gas, summing to 1. */
export type Shares = Readonly<Record<Gas, number>>;

export type FlameInput = AirRatio & {
  readonly fuel: Fuel;
  /** 0.2095 for air; more for enriched blast. */
  readonly oxygen_share?: number;
  readonly air_K?: number;
  readonly fuel_K?: number;
  /** Of the air at `air_K`. */
  readonly relative_humidity?: number;
  /** Mole share of water in the air, in place of a humidity: air that was warmed keeps its water. */
  readonly water_share?: number;
  readonly ash?: number;
  readonly moisture?: number;
  readonly lower_heat_J_kg?: number;
  readonly pressure_Pa?: number;
};

export interface Flame extends WithSteps {
  /** Upper bound: a real flame also radiates, touches walls and mixes badly. */
  readonly temperature_K: number;
  readonly wet: Shares;
  /** Without its water, as a meter reads it. */
  readonly dry: Omit<Shares, 'H2O'>;
  /** Kilograms for each kilogram of fuel as fired. */
  readonly soot: number;
  readonly air_per_fuel: number;
  readonly equivalence_ratio: number;
  readonly excess_air: number;
  readonly fuel: AsFired;
  readonly iterations: number;
}

/**
 * Adiabatic flame of a fuel at constant pressure, products at equilibrium with dissociation and soot; ash and moisture
 * take their share of the heat. About φ 0.01–3, air 200–2000 K, 10–100 % oxygen, near atmospheric pressure.
 * Source: NASA TM-4513 data; within 0.1 K of another solver with the same species.
 * @throws AskError where a number is none, or nothing can burn.
 */
export function flame(input: FlameInput): Flame {
  const { oxygen_share, relative_humidity = 0, air_K = REFERENCE_K, fuel_K = REFERENCE_K } = input;
  const pressure_Pa = input.pressure_Pa ?? ATMOSPHERE_Pa;
  const fuel = asFired(input);
  const water_share =
    input.water_share ?? (relative_humidity === 0 ? 0 : humidShare({ relative_humidity, air_K, pressure_Pa }));
  const blast = oxidiser(oxygen_share === undefined ? { water_share } : { oxygen_share, water_share });
  const reactants = mixture({ fuel, ratio: input, blast, air_K, fuel_K });
  const { T_K, moles, gas_mol, iterations } = adiabaticEquilibrium({ ...reactants, pressure_Pa });
  const phi = reactants.equivalence_ratio;
  const answer = {
    temperature_K: T_K,
    ...wetAndDry(moles, gas_mol),
    soot: moles['C(gr)'] * MOLAR_MASS_kg_mol[GRAPHITE]!,
    air_per_fuel: reactants.air.kg_kg,
    equivalence_ratio: phi,
    excess_air: 1 / phi - 1,
    fuel,
    iterations,
  };
  return Object.freeze({
    ...answer,
    steps: () => flameSteps(answer, reactants, { blast, air_K, fuel_K, pressure_Pa }),
  });
}

function wetAndDry(moles: Readonly<Record<Product, number>>, gas_mol: number): Pick<Flame, 'wet' | 'dry'> {
  const wet = {} as Record<Gas, number>;
  const dry = {} as Record<Gas, number>;
  for (const name of PRODUCTS) {
    if (name === 'C(gr)') continue;
    wet[name] = moles[name] / gas_mol;
    if (name !== 'H2O') dry[name] = moles[name] / (gas_mol - moles.H2O);
  }
  return { wet: Object.freeze(wet), dry: Object.freeze(dry) };
}

function flameSteps(
  { fuel, temperature_K, wet, soot, air_per_fuel, equivalence_ratio }: Omit<Flame, 'steps'>,
  { enthalpy_J }: Reactants,
  { blast, air_K, fuel_K, pressure_Pa }: { blast: Oxidiser; air_K: number; fuel_K: number; pressure_Pa: number },
): readonly Step[] {
  return [
    lowerHeatStep(fuel),
    {
      formula: 'air = (C + H/4 − O/2) ÷ (fuel-air ratio × oxygen share of the air)',
      inputs: { fuel_air_ratio: equivalence_ratio, oxygen_share: blast.O2 },
      gives: { air_per_fuel },
      source: 'derived',
    },
    {
      formula: 'flame temperature: burned gas at equilibrium that holds the heat of what went in (for 1 kg of fuel)',
      inputs: { enthalpy_J, air_K, fuel_K, pressure_Pa },
      gives: { flame_K: temperature_K, CO2: wet.CO2, H2O: wet.H2O, O2: wet.O2, CO: wet.CO, soot_per_fuel: soot },
      source: 'nasa-tm-4513',
    },
  ];
}
