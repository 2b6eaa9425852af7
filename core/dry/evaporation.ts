import { within } from '../fire/within.ts';

/** Gas constant of water vapour and heat capacity of air, J/(kg K). */
const VAPOUR = 461.52;
const AIR_J_kgK = 1006;
/** Heat over mass diffusivity of vapour in air, to the power of two thirds: 0.87^(2/3), from memory. */
const LEWIS = 0.911;
const SIGMA = 5.670374419e-8;
/** A wet clay face, long-wave. From memory, ±0.03. */
const EMISSIVITY = 0.93;
const ZERO_C = 273.15;

export interface WetFace {
  readonly air_K: number;
  /** Relative humidity of the air, 0 to 1. */
  readonly humidity: number;
  /** Of convection alone, W/(m² K). */
  readonly exchange_W_m2K: number;
  /** Absorbed from the sun, as a mean over day and night. */
  readonly sun_W_m2: number;
  /** Whether it sees surroundings at the air's temperature; off for a shielded thermometer. */
  readonly radiates?: boolean;
}

export interface Evaporating {
  readonly face_K: number;
  /** Water leaving one square metre, kg/(m² s); never below zero. */
  readonly water_kg_m2s: number;
}

/** Magnus over water, as `core/fire/air` has it, and its slope over itself; a wet face a little below 0 °C is over water too. */
const saturated_Pa = (t: number): number => 611.2 * Math.exp((17.62 * t) / (243.12 + t));
const steeper = (t: number): number => (17.62 * 243.12) / (243.12 + t) ** 2;
const vapour_kg_m3 = (pressure_Pa: number, at_K: number): number => pressure_Pa / (VAPOUR * at_K);
const latent_J_kg = (at_K: number): number => 2.501e6 - 2370 * (at_K - ZERO_C);

/**
 * A wet face in moving air: heat by convection, radiation and sun = latent heat × h/(ρ·cp·Le^⅔) × (vapour at the face −
 * vapour in the air). Air 0…45 °C at 1 atm, humidity 0…1, h 0.5…60. Where it does not radiate, the face
 * comes out below the thermodynamic wet bulb by some 6 % of its depression: vapour spreads sooner than heat.
 * Source: heat and mass transfer analogy.
 * @throws AskError `out-of-range`.
 */
export function evaporating({ air_K, humidity, exchange_W_m2K, sun_W_m2, radiates = true }: WetFace): Evaporating {
  within({ air_K }, { low: ZERO_C, high: ZERO_C + 45, example: '20 °C' });
  within({ humidity }, { low: 0, high: 1, example: '60%' });
  within({ exchange_W_m2K }, { low: 0.5, high: 60, example: '5' });
  const air_kg_m3 = vapour_kg_m3(humidity * saturated_Pa(air_K - ZERO_C), air_K);
  const transfer_m_s = exchange_W_m2K / ((101_325 / (287.05 * air_K)) * AIR_J_kgK * LEWIS);
  const sheds_W_m2K = exchange_W_m2K + (radiates ? 4 * EMISSIVITY * SIGMA * air_K ** 3 : 0);
  // Newton on a balance that falls steadily with the face's temperature.
  let face_K = air_K - 8 * (1 - humidity);
  let water_kg_m2s = 0;
  for (let round = 0; round < 12; round++) {
    const t = face_K - ZERO_C;
    const pressure_Pa = saturated_Pa(t);
    water_kg_m2s = transfer_m_s * (vapour_kg_m3(pressure_Pa, face_K) - air_kg_m3);
    const latent = latent_J_kg(face_K);
    const balance = sheds_W_m2K * (air_K - face_K) + sun_W_m2 - latent * water_kg_m2s;
    const step = balance / (sheds_W_m2K + latent * transfer_m_s * vapour_kg_m3(pressure_Pa * steeper(t), face_K));
    face_K = Math.min(ZERO_C + 50, Math.max(ZERO_C - 19, face_K + step));
    if (Math.abs(step) < 1e-4) break;
  }
  return { face_K, water_kg_m2s: Math.max(0, water_kg_m2s) };
}
