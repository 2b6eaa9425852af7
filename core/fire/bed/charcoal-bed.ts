import type { Step, WithSteps } from '../../step.ts';
import { within } from '../within.ts';

/** Carbon with air, 25 °C: 393.51 and 110.53 kJ/mol over 12.011 g/mol; 1 mol O2 in 1/0.2095 mol of air at 28.96 g/mol. */
export const CARBON = Object.freeze({
  heat_to_CO2_J_kg: 32.76e6,
  heat_to_CO_J_kg: 9.2e6,
  /** To CO2. To CO it is half. */
  air_kg_kg: 11.51,
});

export interface CharcoalBedInput {
  /** Dry air blown in. */
  readonly air_kg_s: number;
  /** Share of the burned carbon that leaves the furnace as CO; what burns under the lid with second air counts as CO2. */
  readonly co_share: number;
  /** Air beyond what that split needs, 0 for a deep bed. */
  readonly excess_air: number;
  /** Of the fuel as weighed. The rest is volatiles, counted as lost: 0.65 to 0.9. */
  readonly carbon_share: number;
  readonly ash_share: number;
}

export interface CharcoalBed extends WithSteps {
  readonly carbon_kg_s: number;
  readonly fuel_kg_s: number;
  readonly ash_kg_s: number;
  /** Heat set free in the furnace. */
  readonly power_W: number;
  readonly heat_per_air_J_kg: number;
  readonly air_need_kg_kg: number;
}

/** Air a kilogram of carbon takes: 11.51·(1 − s/2)·(1 + excess), kg/kg. Source: mass balance. */
export function carbonAirNeed({ co_share, excess_air }: Pick<CharcoalBedInput, 'co_share' | 'excess_air'>): number {
  within({ co_share }, { low: 0, high: 1, example: '40%' });
  within({ excess_air }, { low: 0, high: 3, example: '10%' });
  return CARBON.air_kg_kg * (1 - co_share / 2) * (1 + excess_air);
}

/** Heat of a kilogram of carbon of which s leaves as CO: (1 − s)·32.76 + s·9.20 MJ/kg. Source: heats of formation. */
export function carbonHeat_J_kg({ co_share }: Pick<CharcoalBedInput, 'co_share'>): number {
  within({ co_share }, { low: 0, high: 1, example: '40%' });
  return (1 - co_share) * CARBON.heat_to_CO2_J_kg + co_share * CARBON.heat_to_CO_J_kg;
}

/**
 * What a blast burns in charcoal: the air sets the power, the fuel only follows. Carbon alone is counted.
 * Air 0…2 kg/s, carbon 0.3…1, ash 0…0.5 of the fuel as weighed. Source: mass and heat balance.
 * @throws AskError `out-of-range`.
 */
export function charcoalBed(input: CharcoalBedInput): CharcoalBed {
  const { air_kg_s, co_share, excess_air, carbon_share, ash_share } = input;
  within({ air_kg_s }, { low: 0, high: 2, example: '60 kg/h' });
  within({ carbon_share }, { low: 0.3, high: 1, example: '75%' });
  within({ ash_share }, { low: 0, high: Math.min(0.5, 1 - carbon_share), example: '5%' });
  const air_need_kg_kg = carbonAirNeed(input);
  const carbon_heat_J_kg = carbonHeat_J_kg(input);
  const carbon_kg_s = air_kg_s / air_need_kg_kg;
  const fuel_kg_s = carbon_kg_s / carbon_share;
  const ash_kg_s = fuel_kg_s * ash_share;
  const power_W = carbon_kg_s * carbon_heat_J_kg;
  return {
    carbon_kg_s,
    fuel_kg_s,
    ash_kg_s,
    power_W,
    heat_per_air_J_kg: carbon_heat_J_kg / air_need_kg_kg,
    air_need_kg_kg,
    steps: (): readonly Step[] => [
      {
        formula: 'air per carbon = 11.51 × (1 − share as CO / 2) × (1 + excess air)',
        inputs: { co_share, excess_air },
        gives: { air_per_carbon_count: air_need_kg_kg },
        source: 'derived',
      },
      {
        formula: 'fuel = air / air per carbon / carbon in the fuel',
        inputs: { air_kg_s, air_per_carbon_count: air_need_kg_kg, carbon_share },
        gives: { carbon_kg_s, fuel_kg_s, ash_kg_s },
        source: 'derived',
      },
      {
        formula: 'power = carbon × ((1 − share as CO) × 32.8 + share as CO × 9.2 MJ/kg)',
        inputs: { carbon_kg_s, co_share, carbon_heat_J_kg },
        gives: { power_W },
        source: 'derived',
      },
    ],
  };
}

/** The blast a wanted power takes, the other way round: ṁ = P / heat per kg of air. Power 0…1 MW. */
export function blastForPower_kg_s({
  power_W,
  co_share,
  excess_air,
}: { readonly power_W: number } & Pick<CharcoalBedInput, 'co_share' | 'excess_air'>): number {
  within({ power_W }, { low: 0, high: 1e6, example: '15 kW' });
  return (power_W * carbonAirNeed({ co_share, excess_air })) / carbonHeat_J_kg({ co_share });
}

/** Nitrogen and argon in a mole of the oxygen of air. */
export const AIR_INERT = 0.7905 / 0.2095;

/**
 * Share of carbon that leaves as CO where the gas has come to balance with glowing carbon (C + CO2 ⇌ 2 CO):
 * ln K = 30.81632 − 21739.7/T − 1.231629·ln T (in atm), b the CO of a mole of O2, b²p/((1 − b/2)(1 + b/2 + inert)) = K.
 * 700…1800 K, 50…200 kPa; K within 0.7 % of the NASA polynomials. The most that a bed gives: below some 1100 K, and in a
 * shallow bed, the reaction lags far behind. Source: fit of equilibrium, derived here.
 * @throws AskError `out-of-range`.
 */
export function balancedCoShare({
  bed_K,
  pressure_Pa,
  inert_per_oxygen,
}: {
  readonly bed_K: number;
  readonly pressure_Pa: number;
  /** `AIR_INERT` for air, 0 for pure oxygen. */
  readonly inert_per_oxygen: number;
}): number {
  within({ bed_K }, { low: 700, high: 1800, example: '1000 °C' });
  within({ pressure_Pa }, { low: 50e3, high: 200e3, example: '101 kPa abs' });
  within({ inert_per_oxygen_count: inert_per_oxygen }, { low: 0, high: 20, example: '3.8' });
  const K = Math.exp(30.81632 - 21739.7 / bed_K - 1.231629 * Math.log(bed_K));
  // (1 − b/2)(1 + b/2 + inert)·K = b²·p, with CO2 = 1 − b/2 and 1 + b/2 + inert moles in all.
  const a = pressure_Pa / 101325 + K / 4;
  const half = (K * inert_per_oxygen) / 4;
  const CO = (-half + Math.sqrt(half ** 2 + a * K * (1 + inert_per_oxygen))) / a;
  return CO / (1 + CO / 2);
}
