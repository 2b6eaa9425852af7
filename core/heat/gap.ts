import { airAt } from './air.ts';
import { STEFAN_BOLTZMANN } from './outside.ts';
import { rootBetween } from './steady-root.ts';

export interface Gap {
  readonly width_m: number;
  readonly hot_emissivity: number;
  readonly cold_emissivity: number;
}

/**
 * Heat across an air gap, W/m²: conduction of still air at the mean temperature plus radiation between two wide grey
 * faces. No convection: right for gaps up to about 10 mm. Derived; air as `airAt`.
 */
export function gapFlux_W_m2({ width_m, hot_emissivity, cold_emissivity }: Gap, hot_K: number, cold_K: number): number {
  const conducted = (airAt((hot_K + cold_K) / 2).conductivity_W_mK / width_m) * (hot_K - cold_K);
  const exchange = 1 / (1 / hot_emissivity + 1 / cold_emissivity - 1);
  return conducted + exchange * STEFAN_BOLTZMANN * (hot_K ** 4 - cold_K ** 4);
}

/** Film of a gap at a small difference about its mean temperature, W/(m² K): conduction and radiation apart. */
export function gapFilm_W_m2K({ width_m, hot_emissivity, cold_emissivity }: Gap, mean_K: number) {
  const exchange = 1 / (1 / hot_emissivity + 1 / cold_emissivity - 1);
  return {
    conduction_W_m2K: airAt(mean_K).conductivity_W_mK / width_m,
    radiation_W_m2K: 4 * exchange * STEFAN_BOLTZMANN * mean_K ** 3,
  };
}

/** The hot side of a gap that passes this flux, K. A negative flux gives the colder side. */
export function hotSideOfGap_K(gap: Gap, cold_K: number, flux_W_m2: number): number {
  const excess = (hot_K: number) => gapFlux_W_m2(gap, hot_K, cold_K) - flux_W_m2;
  if (flux_W_m2 <= 0) return rootBetween(excess, 0, cold_K);
  let high = cold_K + 1;
  while (excess(high) < 0) high = cold_K + 2 * (high - cold_K);
  return rootBetween(excess, cold_K, high);
}
