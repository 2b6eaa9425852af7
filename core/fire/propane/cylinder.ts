import { AskError } from '../../ask-error.ts';
import { formatBoth, formatSi } from '../../quantity/format.ts';
import type { Step, WithSteps } from '../../step.ts';
import { within } from '../within.ts';
import { propaneBoiling_K, propaneLatentHeat_J_kg, propaneLiquidDensity_kg_m3 } from './propane.ts';

/** Mass of gas over mass of water, small cylinders above ground (29 CFR 1910.110(b)(19)). */
export const FILLING = 0.42;

/** An upright cylinder as a tube with a flat bottom; domes change the wetted area by a tenth at most. */
export interface Cylinder {
  readonly radius_m: number;
  /** Liquid in it now. */
  readonly liquid_kg: number;
}

/** Largest fill by mass: 0.42 × water capacity. 0.1…500 kg of water. @throws AskError `out-of-range`. */
export function fullCharge_kg({ water_capacity_kg }: { readonly water_capacity_kg: number }): number {
  within({ water_capacity_kg }, { low: 0.1, high: 500, example: '21.6 kg' });
  return FILLING * water_capacity_kg;
}

/**
 * Share of the volume that a filling density fills: filling / (relative density at 60 °F × volume correction).
 * Source: 29 CFR 1910.110, worked example: 0.42/(0.510 × 1.031) = 79.8 %.
 */
export function filledShare({
  filling,
  relative_density,
  volume_correction,
}: {
  readonly filling: number;
  readonly relative_density: number;
  readonly volume_correction: number;
}): number {
  within({ filling }, { low: 0.3, high: 0.6, example: '42%' });
  within({ relative_density }, { low: 0.45, high: 0.65, example: '51%' });
  within({ volume_correction_count: volume_correction }, { low: 0.9, high: 1.1, example: '1.031' });
  return filling / (relative_density * volume_correction);
}

/** Shell touched by liquid: bottom + wall up to the liquid, πR² + 2·m/(ρ·R). Radius 0.05…0.5 m, to 250 kg. */
export function wettedArea_m2({ radius_m, liquid_kg, liquid_K }: Cylinder & { readonly liquid_K: number }): number {
  within({ cylinder_radius_m: radius_m }, { low: 0.05, high: 0.5, example: '15 cm' });
  within({ liquid_kg }, { low: 0, high: 250, example: '9 kg' });
  return Math.PI * radius_m ** 2 + (2 * liquid_kg) / (propaneLiquidDensity_kg_m3({ liquid_K }) * radius_m);
}

export interface SteadyDrawInput extends Cylinder {
  readonly ambient_K: number;
  /** Absolute pressure the regulator needs, `neededBottle_Pa`. */
  readonly needed_Pa: number;
  readonly exchange_W_m2K: number;
  /** Vapour pressure over pure propane's, `COMMERCIAL_FACTOR`. */
  readonly pressure_factor: number;
}

export interface SteadyDraw extends WithSteps {
  readonly draw_kg_s: number;
  /** Coldest the liquid may get and still feed the regulator. */
  readonly liquid_K: number;
  readonly wetted_m2: number;
}

/**
 * What a cylinder gives for as long as the level lasts: ṁ·h_fg(T) = U·A_wet·(T_air − T), T where vapour pressure just
 * meets the need. Ambient −40…50 °C, U 3…30 W/(m² K), vapour pressure over pure 0.6…1.2. Source: heat balance, derived.
 * @throws AskError `impossible` where even the air is too cold for that pressure; `out-of-range`.
 */
export function steadyDraw(input: SteadyDrawInput): SteadyDraw {
  const { ambient_K, needed_Pa, exchange_W_m2K } = input;
  checkDraw(input);
  const liquid_K = coldestLiquid_K(input);
  const wetted_m2 = wettedArea_m2({ ...input, liquid_K });
  const latent_heat_J_kg = propaneLatentHeat_J_kg({ liquid_K });
  const draw_kg_s = (exchange_W_m2K * wetted_m2 * (ambient_K - liquid_K)) / latent_heat_J_kg;
  return {
    draw_kg_s,
    liquid_K,
    wetted_m2,
    steps: (): readonly Step[] => [
      {
        formula: 'coldest liquid: where its vapour pressure meets what the regulator needs',
        inputs: { needed_Pa },
        gives: { liquid_K, latent_heat_J_kg },
        source: 'coolprop-fit',
      },
      {
        formula: 'wetted shell = π R² + 2 × mass / (density × R)',
        inputs: { liquid_kg: input.liquid_kg, radius_m: input.radius_m },
        gives: { wetted_m2 },
        source: 'derived',
      },
      {
        formula: 'draw = exchange × wetted × (ambient − liquid) ÷ latent heat',
        inputs: { exchange_W_m2K, wetted_m2, ambient_K, liquid_K, latent_heat_J_kg },
        gives: { draw_kg_s },
        source: 'lp-gas-vapour-table',
      },
    ],
  };
}

/** @throws AskError `impossible` where the air itself is colder than that. */
export function coldestLiquid_K({
  ambient_K,
  needed_Pa,
  pressure_factor,
}: Pick<SteadyDrawInput, 'ambient_K' | 'needed_Pa' | 'pressure_factor'>): number {
  const liquid_K = propaneBoiling_K({ pressure_Pa: needed_Pa / pressure_factor });
  if (liquid_K < ambient_K) return liquid_K;
  throw new AskError({
    code: 'impossible',
    what: `at ${formatBoth(ambient_K, 'K', 'metric')} the bottle cannot keep ${formatBoth(needed_Pa, 'Pa', 'metric')} absolute: the liquid would have to be at ${formatBoth(liquid_K, 'K', 'metric')}`,
    expected: 'a lower regulator setting or a warmer day',
    example: formatSi(liquid_K + 10, 'K', 'metric'),
  });
}

/** Ranges shared by the steady and the falling bottle. */
export function checkDraw({ ambient_K, exchange_W_m2K, pressure_factor }: SteadyDrawInput): void {
  within({ ambient_K }, { low: 233.15, high: 323.15, example: '10 °C' });
  within({ exchange_W_m2K }, { low: 3, high: 30, example: '11' });
  within({ pressure_factor }, { low: 0.6, high: 1.2, example: '100%' });
}

/** Time a fill lasts if cold does not stop it: fill × usable share / draw, in s. */
export function lastingTime_s({
  fill_kg,
  usable_share,
  draw_kg_s,
}: {
  readonly fill_kg: number;
  readonly usable_share: number;
  readonly draw_kg_s: number;
}): number {
  within({ fill_kg }, { low: 0, high: 250, example: '9 kg' });
  within({ usable_share }, { low: 0.1, high: 1, example: '90%' });
  within({ draw_kg_s }, { low: 1e-7, high: 0.1, example: '1 kg/h' });
  return (fill_kg * usable_share) / draw_kg_s;
}

/**
 * Whoever wants to warm a bottle is refused, whatever with.
 * @throws AskError `refused`, always.
 */
export function refuseWarming({ heat }: { readonly heat: string }): never {
  throw new AskError({
    code: 'refused',
    what: `a gas bottle is not to be warmed (${heat}): from about 49 °C its relief valve may open, and what it vents catches fire`,
    expected: 'a larger or second bottle, a lower draw, or one kept where it is warmer, in the open',
    example: 'two bottles on one manifold of an approved kind',
    facts: ['warmed-cylinder'],
  });
}
