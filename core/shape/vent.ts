import { AskError } from '../ask-error.ts';
import type { Spread } from '../materials/spread.ts';
import type { Step, WithSteps } from '../step.ts';
import type { Fuel } from './rules.ts';

/** Hot gas through the vent, m/s: slower and the fire is smothered, faster and heat leaves unused. Common practice. */
export const ventVelocity_m_s: Spread = Object.freeze({ low: 3, typical: 5, high: 8 });

/** Heat in per room of the bore, W/m³: judged for hobby furnaces of 2 to 100 L, gas above charcoal. */
export const firingDensity_W_m3: Readonly<Record<Fuel, Spread>> = Object.freeze({
  gas: Object.freeze({ low: 0.6e6, typical: 1e6, high: 2e6 }),
  charcoal: Object.freeze({ low: 0.4e6, typical: 0.8e6, high: 1.6e6 }),
});

/**
 * Burned gas per heat set free, without excess air, kg/J: (1 + air per fuel) ÷ lower heating value, and its molar mass.
 * Propane 15.7 kg air, 46.3 MJ/kg; charcoal as carbon 11.5 kg air, 31 MJ/kg. From memory.
 */
const burned: Readonly<Record<Fuel, { readonly kg_J: number; readonly kg_mol: number }>> = {
  gas: { kg_J: 16.7 / 46.3e6, kg_mol: 0.0283 },
  charcoal: { kg_J: 12.5 / 31e6, kg_mol: 0.0302 },
};
const molarGas_J_molK = 8.314462618;
const seaLevel_Pa = 101_325;

/** in² for 20,000 to 25,000 Btu/h: a handbook rule, from memory, as W per m² of vent. */
export const handbook_W_m2: Spread = Object.freeze({
  low: (20_000 * 0.29307107) / 0.00064516,
  typical: (22_500 * 0.29307107) / 0.00064516,
  high: (25_000 * 0.29307107) / 0.00064516,
});

/** Volume of hot gas, m³/s: V = P × (burned gas per heat) × R T ÷ (M p). W, K; sea level, no excess air. Derived. */
export function hotGas_m3_s({ rate_W, flue_K, fuel }: { rate_W: number; flue_K: number; fuel: Fuel }): number {
  const { kg_J, kg_mol } = burned[fuel];
  return (rate_W * kg_J * molarGas_J_molK * flue_K) / (kg_mol * seaLevel_Pa);
}

/** Diameter through which a flow has a velocity: d = √(4 V ÷ (π v)). m³/s, m/s, m. */
export const ventDiameter_m = ({ flow_m3_s, velocity_m_s }: { flow_m3_s: number; velocity_m_s: number }): number =>
  Math.sqrt((4 * flow_m3_s) / (Math.PI * velocity_m_s));

export interface Vent extends WithSteps {
  readonly diameter_m: number;
  readonly velocity_m_s: number;
  readonly flow_m3_s: number;
  /** By the handbook's rule at its middle, m. */
  readonly handbook_m: number;
  /** Too slow, right or too fast against 3 to 8 m/s. */
  readonly verdict: 'slow' | 'right' | 'fast';
}

/** A vent for a firing rate, or a given vent checked against it. */
export function ventFor({
  rate_W,
  flue_K,
  fuel,
  diameter_m: given,
  bore_m,
}: {
  rate_W: number;
  flue_K: number;
  fuel: Fuel;
  diameter_m?: number;
  bore_m: number;
}): Vent {
  const flow_m3_s = hotGas_m3_s({ rate_W, flue_K, fuel });
  const diameter_m = given ?? ventDiameter_m({ flow_m3_s, velocity_m_s: ventVelocity_m_s.typical });
  if (diameter_m >= bore_m) throw tooWide({ diameter_m, bore_m, rate_W, given: given !== undefined });
  const velocity_m_s = (4 * flow_m3_s) / (Math.PI * diameter_m ** 2);
  const { low, high } = ventVelocity_m_s;
  const handbook_m = Math.sqrt((4 * rate_W) / (Math.PI * handbook_W_m2.typical));
  return Object.freeze({
    diameter_m,
    velocity_m_s,
    flow_m3_s,
    handbook_m,
    verdict: velocity_m_s < low * (1 - 1e-9) ? 'slow' : velocity_m_s > high * (1 + 1e-9) ? 'fast' : 'right',
    steps: (): readonly Step[] => [
      {
        formula: 'hot gas = firing rate × burned gas per heat × R T ÷ (M p), no excess air',
        inputs: { firing_rate_W: rate_W, flue_K },
        gives: { hot_gas_m3_s: flow_m3_s },
        source: 'derived',
      },
      {
        formula:
          given === undefined ? 'vent = √(4 × hot gas ÷ (π × velocity))' : 'velocity = 4 × hot gas ÷ (π × vent²)',
        inputs: { hot_gas_m3_s: flow_m3_s },
        gives: { vent_m: diameter_m, velocity_m_s },
        source: 'common-practice',
      },
      {
        formula: "handbook's vent: 1 in² for 20,000 to 25,000 Btu/h",
        inputs: { firing_rate_W: rate_W },
        gives: { vent_m: handbook_m },
        source: 'from-memory',
      },
    ],
  });
}

function tooWide(found: { diameter_m: number; bore_m: number; rate_W: number; given: boolean }): AskError {
  const mm = (length_m: number) => `${Math.round(length_m * 1000)} mm`;
  return new AskError({
    code: 'impossible',
    what: found.given
      ? `a vent of ${mm(found.diameter_m)} is not smaller than the bore of ${mm(found.bore_m)}: no lid is left`
      : `${Math.round(found.rate_W / 1000)} kW needs a vent of ${mm(found.diameter_m)}, more than the bore of ${mm(found.bore_m)}`,
    expected: found.given
      ? `a vent of ${mm(0.2 * found.bore_m)} to ${mm(0.38 * found.bore_m)}`
      : 'a smaller firing rate',
    example: found.given ? mm(0.28 * found.bore_m) : `${Math.max(1, Math.round(found.rate_W / 4000))} kW`,
    option: found.given ? 'vent' : 'rate',
  });
}
