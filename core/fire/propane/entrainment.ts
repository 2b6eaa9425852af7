import type { Step, WithSteps } from '../../step.ts';
import { within } from '../within.ts';

/**
 * Air a free jet has drawn in at a distance, kg per kg of gas: 0.32·(x/d)·√(ρ_air/ρ_gas) − 1.
 * Beyond 13 bores only (nearer it draws less), to 400. A burning jet draws up to 30 % less. Source: Ricou and Spalding 1961.
 * @throws AskError `out-of-range`.
 */
export function freeJetAir({
  distance_m,
  jet_bore_m,
  gas_density_kg_m3,
  air_density_kg_m3,
}: {
  readonly distance_m: number;
  readonly jet_bore_m: number;
  readonly gas_density_kg_m3: number;
  readonly air_density_kg_m3: number;
}): number {
  within({ distance_m }, { low: 13 * jet_bore_m, high: 400 * jet_bore_m, example: '30 mm' });
  return 0.32 * (distance_m / jet_bore_m) * Math.sqrt(air_density_kg_m3 / gas_density_kg_m3) - 1;
}

export interface MixingTubeInput {
  readonly gas_kg_s: number;
  /** From `jetFlow`. */
  readonly thrust_N: number;
  readonly tube_bore_m: number;
  /** Free area of the air holes. */
  readonly inlet_m2: number;
  /** Gas and air as they mix, at the tube's pressure. */
  readonly gas_density_kg_m3: number;
  readonly air_density_kg_m3: number;
  /** Losses of tube, bends and burner head on the tube's velocity, without the outlet's own momentum. */
  readonly tube_losses: number;
  /** Loss of the air holes on their own velocity. */
  readonly inlet_losses: number;
  /** Gauge, in the furnace. */
  readonly back_pressure_Pa: number;
}

export interface MixingTube extends WithSteps {
  /** Air drawn per kg of gas; 0 where the furnace's pressure stops it. */
  readonly air_kg_kg: number;
  readonly tube_velocity_m_s: number;
  /** Pressure in the furnace at which no more air is drawn. */
  readonly stall_Pa: number;
}

/**
 * Air drawn into a mixing tube, by momentum: J = (ṁ_g + ṁ_a)²·(1 + ½K)/(ρ_m·A) + ½(1 + K_in)·ṁ_a²·A/(ρ_a·A_in²) + p_back·A.
 * A quadratic in r = ṁ_a/ṁ_g, as (1 + r)²/ρ_m = (1 + r)(1/ρ_g + r/ρ_a). Tube 3…200 mm, back-pressure −50…2000 Pa.
 * Assumes a tube long enough to mix (five bores and more) and no flame in it. Source: momentum balance, derived.
 * @throws AskError `out-of-range`.
 */
export function mixingTube(input: MixingTubeInput): MixingTube {
  const { gas_kg_s, thrust_N, tube_bore_m, inlet_m2, gas_density_kg_m3, air_density_kg_m3, back_pressure_Pa } = input;
  within({ tube_bore_m }, { low: 0.003, high: 0.2, example: '25 mm' });
  within({ gas_kg_s }, { low: 1e-7, high: 0.1, example: '1 kg/h' });
  within({ thrust_N_count: thrust_N }, { low: 0, high: 100, example: '0.2' });
  within({ inlet_m2 }, { low: 1e-7, high: 1, example: '5 cm2' });
  within({ back_pressure_Pa }, { low: -50, high: 2000, example: '20 Pa' });
  const tube_m2 = (Math.PI / 4) * tube_bore_m ** 2;
  const down = (1 + input.tube_losses / 2) / tube_m2;
  const in_ = ((1 + input.inlet_losses) * tube_m2) / (2 * air_density_kg_m3 * inlet_m2 ** 2);
  const a = down / air_density_kg_m3 + in_;
  const b = down * (1 / gas_density_kg_m3 + 1 / air_density_kg_m3);
  const stalled = down / gas_density_kg_m3;
  const c = stalled + (back_pressure_Pa * tube_m2 - thrust_N) / gas_kg_s ** 2;
  // The positive root, in the form that keeps its digits when c is small.
  const air_kg_kg = c < 0 ? (-2 * c) / (b + Math.sqrt(b * b - 4 * a * c)) : 0;
  const tube_velocity_m_s = (gas_kg_s * (1 / gas_density_kg_m3 + air_kg_kg / air_density_kg_m3)) / tube_m2;
  return {
    air_kg_kg,
    tube_velocity_m_s,
    stall_Pa: (thrust_N - stalled * gas_kg_s ** 2) / tube_m2,
    steps: (): readonly Step[] => [
      {
        formula:
          'jet thrust = momentum out of the tube with its losses + momentum lost at the air holes + furnace pressure × tube area',
        inputs: {
          gas_kg_s,
          thrust_newtons_count: thrust_N,
          tube_bore_m,
          inlet_m2,
          back_pressure_Pa,
          gas_density_kg_m3,
          air_density_kg_m3,
        },
        gives: { air_per_gas_count: air_kg_kg, tube_velocity_m_s },
        source: 'derived',
      },
    ],
  };
}

/**
 * Tube area over jet area for a wanted air ratio, losses lumped in C: A_t/A_jet ≈ C·(1 + r)(1 + r·ρ_g/ρ_a).
 * For a jet near room pressure; C 1…4, usually 1.3 to 2.5. So the ratio of areas sets the air, hardly the pressure.
 * @throws AskError `out-of-range`.
 */
export function tubeAreaRatio({
  air_kg_kg,
  losses_factor,
  gas_density_kg_m3,
  air_density_kg_m3,
}: {
  readonly air_kg_kg: number;
  readonly losses_factor: number;
  readonly gas_density_kg_m3: number;
  readonly air_density_kg_m3: number;
}): number {
  within({ air_per_gas_count: air_kg_kg }, { low: 0, high: 60, example: '15.7' });
  within({ losses_factor_count: losses_factor }, { low: 1, high: 4, example: '1.8' });
  return losses_factor * (1 + air_kg_kg) * (1 + (air_kg_kg * gas_density_kg_m3) / air_density_kg_m3);
}
