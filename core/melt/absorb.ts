import type { HeatPoint } from './melt-heat.ts';

/** Radiation and gas together, from the fire to the crucible's outside, W/m²K at 1100 to 1400 °C; from memory. */
export const fireFilm_W_m2K = Object.freeze({ low: 100, typical: 180, high: 300 });
/** Fire round the pot above the hot face: flame 100 to 300 K hotter; from memory. */
export const fireAboveFace_dK = Object.freeze({ low: 100, typical: 200, high: 300 });

export interface AbsorbQuestion {
  readonly area_m2: number;
  readonly film_W_m2K: number;
  /** Fire round the pot. */
  readonly fire_K: number;
}

/** What a pot at `pot_K` takes from the fire: h A (fire − pot), W. Power above it only heats the flue. */
export const absorbed_W = ({ area_m2, film_W_m2K, fire_K }: AbsorbQuestion, pot_K: number): number =>
  film_W_m2K * area_m2 * (fire_K - pot_K);

/**
 * Least time from cold to pour, s: pot and metal as one lump at one temperature, dH/dt = h A (fire − T). Between two
 * points of the heat curve T is straight in H, so each stretch takes ΔH/(h A) × ln((fire − T₁)/(fire − T₂))/(T₂ − T₁),
 * and ΔH/(h A (fire − T)) where the metal melts at one temperature. Infinite where the fire is no hotter than the pour.
 * The metal is all in the pot from the start and the fire as hot from the start: real melts take longer.
 */
export function absorbTime_s({
  curve,
  mass_kg,
  pot_J_K,
  ...fire
}: AbsorbQuestion & {
  readonly curve: readonly HeatPoint[];
  readonly mass_kg: number;
  /** Mass times heat capacity of the crucible. */
  readonly pot_J_K: number;
}): number {
  const conductance_W_K = fire.film_W_m2K * fire.area_m2;
  let time_s = 0;
  // Plain loop: this runs in the thousand samples of a range.
  for (let index = 1; index < curve.length; index++) {
    const from = curve[index - 1]!;
    const to = curve[index]!;
    const rise_dK = to.T_K - from.T_K;
    const heat_J = mass_kg * (to.heat_J_kg - from.heat_J_kg) + pot_J_K * rise_dK;
    const cool_dK = fire.fire_K - from.T_K;
    const warm_dK = fire.fire_K - to.T_K;
    if (!(warm_dK > 0)) return Number.POSITIVE_INFINITY;
    const mean_per_K = rise_dK / cool_dK < 1e-6 ? 1 / cool_dK : Math.log(cool_dK / warm_dK) / rise_dK;
    time_s += (heat_J / conductance_W_K) * mean_per_K;
  }
  return time_s;
}
