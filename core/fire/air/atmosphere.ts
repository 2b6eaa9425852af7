import type { Step, WithSteps } from '../../step.ts';
import { within } from '../within.ts';

/** Gas constants of dry air and of water vapour, J/(kg K): 8.314462618 over 0.0289652 and 0.01801527 kg/mol. */
const DRY_AIR = 287.05;
const VAPOUR = 461.52;
/** Mass share of oxygen in dry air: 0.2095 × 31.998 / 28.965. */
export const OXYGEN_SHARE = 0.2314;
const ZERO_C = 273.15;

export interface StandardAir {
  readonly air_K: number;
  readonly pressure_Pa: number;
}

/**
 * Temperature and pressure of the standard atmosphere: T = 288.15 − 0.0065·h, p = 101325·(T/288.15)^5.25588.
 * Altitude −500…5000 m. Source: ISO 2533. Weather moves the pressure by ±3 %.
 * @throws AskError `out-of-range`.
 */
export function standardAtmosphere({ altitude_m }: { readonly altitude_m: number }): StandardAir {
  within({ altitude_m }, { low: -500, high: 5000, example: '1500 m' });
  const air_K = 288.15 - 0.0065 * altitude_m;
  return { air_K, pressure_Pa: 101325 * (air_K / 288.15) ** 5.25588 };
}

/**
 * Pressure of saturated water vapour, Magnus: 611.2·exp(17.62·t/(243.12 + t)) over water, over ice below 0 °C.
 * −40…50 °C; within 0.8 % of CoolProp's humid air at 1 atm.
 * @throws AskError `out-of-range`.
 */
export function saturatedVapour_Pa({ air_K }: { readonly air_K: number }): number {
  within({ air_K }, { low: ZERO_C - 40.2, high: ZERO_C + 50, example: '25 °C' });
  const t = air_K - ZERO_C;
  return 611.2 * Math.exp(t >= 0 ? (17.62 * t) / (243.12 + t) : (22.46 * t) / (272.62 + t));
}

export interface HumidAirInput {
  readonly air_K: number;
  readonly pressure_Pa: number;
  /** Relative humidity, 0 to 1. */
  readonly humidity: number;
}

export interface HumidAir extends WithSteps {
  readonly density_kg_m3: number;
  /** Dry air in a cubic metre: what feeds the fire. */
  readonly dry_density_kg_m3: number;
  readonly oxygen_density_kg_m3: number;
}

/**
 * Humid air as two ideal gases: ρ = (p − φ·p_sat)/(287.05·T) + φ·p_sat/(461.52·T).
 * −20…50 °C, 50…110 kPa; within 0.1 % of CoolProp. Oxygen supply follows the dry part.
 * @throws AskError `out-of-range`.
 */
export function humidAir({ air_K, pressure_Pa, humidity }: HumidAirInput): HumidAir {
  within({ humidity }, { low: 0, high: 1, example: '50%' });
  within({ pressure_Pa }, { low: 50e3, high: 110e3, example: '101 kPa abs' });
  const vapour_pressure_Pa = humidity * saturatedVapour_Pa({ air_K });
  const dry_density_kg_m3 = (pressure_Pa - vapour_pressure_Pa) / (DRY_AIR * air_K);
  const density_kg_m3 = dry_density_kg_m3 + vapour_pressure_Pa / (VAPOUR * air_K);
  return {
    density_kg_m3,
    dry_density_kg_m3,
    oxygen_density_kg_m3: OXYGEN_SHARE * dry_density_kg_m3,
    steps: (): readonly Step[] => [
      {
        formula: 'vapour pressure = humidity × saturated vapour pressure (Magnus)',
        inputs: { air_K, humidity },
        gives: { vapour_pressure_Pa },
        source: 'magnus-wmo',
      },
      {
        formula: 'dry air = (pressure − vapour pressure) / (gas constant × temperature)',
        inputs: { pressure_Pa, vapour_pressure_Pa, air_K },
        gives: { dry_density_kg_m3, density_kg_m3 },
        source: 'derived',
      },
    ],
  };
}

/**
 * Viscosity of air in Pa·s, Sutherland's form 1.5911e-6·T^1.5/(T + 152.58), constants fitted to CoolProp.
 * 233…1800 K, within 3.1 %, and within 2.6 % from 250 K up. Flue gas is near enough: a bed's drop is mostly inertia.
 * @throws AskError `out-of-range`.
 */
export function airViscosity({ air_K }: { readonly air_K: number }): number {
  within({ air_K }, { low: 233, high: 1800, example: '20 °C' });
  return (1.5911e-6 * air_K ** 1.5) / (air_K + 152.58);
}
