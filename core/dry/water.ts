import { LATENT_J_kg, WATER_J_kgK } from '../heat/transient/water.ts';
import type { Step, WithSteps } from '../step.ts';

export interface LiningWaterInput {
  /** As it is rammed or cast. */
  readonly volume_m3: number;
  /** Once dried. */
  readonly dry_density_kg_m3: number;
  /** Mixed in, share of the dry mass. */
  readonly mixing_water: number;
  /** Still there when it is air-dry: held by clay, or bound in the hydrates of cement. Share of the dry mass. */
  readonly held_water: number;
}

export interface LiningWater extends WithSteps {
  readonly dry_kg: number;
  readonly wet_kg: number;
  /** Goes into the air, or boils. */
  readonly free_kg: number;
  /** Goes only in the fire, to about 350 °C. */
  readonly held_kg: number;
}

/** Water in a lining: wet mass − dry mass, parted into what air can take and what it holds. Source: mass balance. */
export function liningWater(input: LiningWaterInput): LiningWater {
  const { volume_m3, dry_density_kg_m3, mixing_water, held_water } = input;
  const dry_kg = volume_m3 * dry_density_kg_m3;
  const held_kg = dry_kg * Math.min(held_water, mixing_water);
  const free_kg = dry_kg * mixing_water - held_kg;
  const wet_kg = dry_kg * (1 + mixing_water);
  return {
    dry_kg,
    wet_kg,
    free_kg,
    held_kg,
    steps: (): readonly Step[] => [
      {
        formula: 'dry mass = volume × dry density',
        inputs: { volume_m3, dry_density_kg_m3 },
        gives: { dry_kg },
        source: 'derived',
      },
      {
        formula: 'water = wet mass − dry mass; free = water − what the air-dry body holds',
        inputs: { wet_kg, dry_kg, held_water_share: held_water },
        gives: { water_kg: wet_kg - dry_kg, free_kg, held_kg },
        source: 'derived',
      },
    ],
  };
}

const BOIL_K = 373.15;

/** Heat to warm water from the air's temperature and boil it off at 1 atm: m·(4190·(373.15 − T) + 2.256e6) J. */
export function dryingHeat_J({ water_kg, start_K }: { readonly water_kg: number; readonly start_K: number }): number {
  return water_kg * (WATER_J_kgK * Math.max(0, BOIL_K - start_K) + LATENT_J_kg);
}

/** Share of a small drying fire's heat that ends in the water. From memory; the rest warms the lining and the sky. */
export const dryingEfficiency = {
  low: 0.1,
  typical: 0.2,
  high: 0.3,
  source: 'from-memory',
  standing: 'from memory',
} as const;
