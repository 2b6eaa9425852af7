import type { Step, WithSteps } from '../../step.ts';
import { airViscosity } from '../air/atmosphere.ts';
import { within } from '../within.ts';

export interface ErgunInput {
  /** As if the bed were empty, at the bed's own temperature. */
  readonly velocity_m_s: number;
  readonly depth_m: number;
  /** Mean size of the lumps. */
  readonly lump_m: number;
  /** Surface of a ball of the lump's volume over the lump's own; charcoal 0.65 to 0.8. */
  readonly sphericity: number;
  /** Share of the bed that is gas. */
  readonly void_share: number;
  readonly density_kg_m3: number;
  readonly viscosity_Pa_s: number;
  /** 1 by Ergun's constants; up to 1.55 by those found for rough wood particles. */
  readonly roughness_factor: number;
}

/**
 * Pressure lost in a bed of lumps: Δp/L = 150·μ·(1−ε)²·v/(ε³d²) + 1.75·ρ·(1−ε)·v²/(ε³d), d = sphericity × lump.
 * Void 0.40…0.60, lumps 0.1…200 mm, factor 1…1.55. Source: Ergun 1952; the factor: Olatunde and Fasina 2019.
 * Clinker and fines can raise it several-fold: no formula knows how much.
 * @throws AskError `out-of-range`.
 */
export function ergunDrop_Pa(input: ErgunInput): number {
  const { velocity_m_s: v, depth_m, lump_m, sphericity, void_share, density_kg_m3, viscosity_Pa_s } = input;
  const { roughness_factor } = input;
  within({ void_share }, { low: 0.4, high: 0.6, example: '50%' });
  within({ sphericity }, { low: 0.5, high: 1, example: '70%' });
  within({ lump_m }, { low: 1e-4, high: 0.2, example: '25 mm' });
  within({ bed_depth_m: depth_m }, { low: 0, high: 3, example: '30 cm' });
  within({ bed_velocity_m_s: v }, { low: 0, high: 20, example: '1 m/s' });
  within({ roughness_factor_count: roughness_factor }, { low: 1, high: 1.55, example: '1' });
  const d = sphericity * lump_m;
  const solid = 1 - void_share;
  const viscous = (150 * viscosity_Pa_s * solid ** 2 * v) / (void_share ** 3 * d ** 2);
  const inertial = (1.75 * density_kg_m3 * solid * v ** 2) / (void_share ** 3 * d);
  return roughness_factor * depth_m * (viscous + inertial);
}

export interface Bed {
  readonly bore_m: number;
  readonly depth_m: number;
  readonly lump_m: number;
  readonly sphericity: number;
  readonly void_share: number;
  readonly roughness_factor: number;
  /** Mean temperature of the gas in it. */
  readonly bed_K: number;
}

export interface BedDrop extends WithSteps {
  readonly drop_Pa: number;
  readonly hot_velocity_m_s: number;
}

/**
 * The same for a furnace's bed: the blast swells with temperature before it meets the lumps, so velocity rises and
 * density falls by T_bed/T_air. Made for air; carbon taken up adds up to 21 % of volume, which is within the void's doubt.
 * Bed 250…1800 K. @throws AskError `out-of-range`.
 */
export function bedDrop({
  bed,
  flow_m3_s,
  air_K,
  density_kg_m3,
}: {
  readonly bed: Bed;
  readonly flow_m3_s: number;
  readonly air_K: number;
  readonly density_kg_m3: number;
}): BedDrop {
  const { bore_m, bed_K, depth_m, lump_m, void_share, sphericity, roughness_factor } = bed;
  within({ bed_bore_m: bore_m }, { low: 0.03, high: 2, example: '12 in' });
  const swell = bed_K / air_K;
  const hot_velocity_m_s = (flow_m3_s * swell) / ((Math.PI / 4) * bore_m ** 2);
  const drop_Pa = ergunDrop_Pa({
    velocity_m_s: hot_velocity_m_s,
    depth_m,
    lump_m,
    sphericity,
    void_share,
    density_kg_m3: density_kg_m3 / swell,
    viscosity_Pa_s: airViscosity({ air_K: bed_K }),
    roughness_factor,
  });
  return {
    drop_Pa,
    hot_velocity_m_s,
    steps: (): readonly Step[] => [
      {
        formula: 'hot velocity = flow × bed ÷ air ÷ (π ÷ 4 × bore²)',
        inputs: { flow_m3_s, bed_K, air_K, bore_m },
        gives: { hot_velocity_m_s },
        source: 'derived',
      },
      {
        formula:
          'drop = depth × (150 μ (1−void)² v / (void³ d²) + 1.75 ρ (1−void) v² / (void³ d)), d = sphericity × lump',
        inputs: { depth_m, lump_m, sphericity, void_share, hot_velocity_m_s },
        gives: { drop_Pa },
        source: 'ergun-1952',
      },
    ],
  };
}
