import { AskError } from '../ask-error.ts';
import { at, type Read } from '../materials/curve.ts';
import type { Curve } from '../materials/material.ts';
import type { End } from '../materials/spread.ts';
import { airAt } from './air.ts';
import { STEFAN_BOLTZMANN } from './outside.ts';

/** Loose grains as three heat paths side by side. */
export interface Granular {
  /** Grain to grain, W/(m K). */
  readonly contact_W_mK: number;
  /** Extinction of thermal radiation, 1/m: 1600 and 5700 were measured in evacuated perlite. */
  readonly extinction_per_m: number;
}

const radiated_W_mK = (T_K: number, extinction_per_m: number): number =>
  (16 * STEFAN_BOLTZMANN * T_K ** 3) / (3 * extinction_per_m);

/**
 * Conductivity of loose fill, W/(m K): contact + still air + 16 σ n² T³/(3E) with n = 1. For grains thick against
 * 1/E. Air held above 1220 K. Radiation term: Rosseland, standard; extinctions: `perlite-guarded-plate`.
 */
export const granularConductivity_W_mK = ({ contact_W_mK, extinction_per_m }: Granular, T_K: number): number =>
  contact_W_mK + airAt(T_K).conductivity_W_mK + radiated_W_mK(T_K, extinction_per_m);

/**
 * Contact and extinction that give a table's first and last row. Contact below nothing is taken as nothing.
 * @throws AskError `impossible` where the last row is not above what air and contact alone conduct.
 */
export function fitGranular(curve: Curve, end: End = 'typical'): Granular {
  const last = curve.T_K.length - 1;
  const [cold_K, hot_K] = [curve.T_K[0]!, curve.T_K[last]!];
  const [cold, hot] = [
    curve[end][0]! - airAt(cold_K).conductivity_W_mK,
    curve[end][last]! - airAt(hot_K).conductivity_W_mK,
  ];
  const path = (T_K: number) => radiated_W_mK(T_K, 1);
  const joint = (hot - cold) / (path(hot_K) - path(cold_K));
  const contact_W_mK = Math.max(0, cold - joint * path(cold_K));
  const inverse_m = contact_W_mK > 0 ? joint : hot / path(hot_K);
  if (!(inverse_m > 0)) {
    throw new AskError({
      code: 'impossible',
      what: `${curve[end][last]} W/(m K) at ${Math.round(hot_K)} K leaves nothing for radiation between grains`,
      expected: 'a loose fill whose conductivity rises with temperature',
      example: 'vermiculite',
    });
  }
  return { contact_W_mK, extinction_per_m: 1 / inverse_m };
}

/** A loose fill's conductivity, carried beyond the last row of its table by the three paths instead of a straight line. */
export function looseFillAt(curve: Curve, T_K: number, end: End = 'typical'): Read {
  if (T_K <= curve.T_K[curve.T_K.length - 1]!) return at(curve, T_K, end);
  return { value: granularConductivity_W_mK(fitGranular(curve, end), T_K), extrapolated: true };
}
