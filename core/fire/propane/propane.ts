import { datum, published } from '../../materials/data/make.ts';
import { within } from '../within.ts';

const ZERO_C = 273.15;
const CRITICAL_K = 369.89;
const CRITICAL_KG_M3 = 220.48;
const ANTOINE = { a: 20.898451, b_K: 2001.2531, c_K: -17.50202 } as const;

/** Kilograms a mole; gas constant over it; ratio of heat capacities of the gas near 300 K. */
export const PROPANE = Object.freeze({ molar_mass_kg_mol: 0.044096, gas_constant_J_kgK: 188.55, k: 1.135 });

/**
 * Commercial propane over pure: absolute vapour pressure. Suppliers' pages print 28, 122 and 190 psi gauge at 0, 70 and
 * 100 °F, 9 to 18 % above pure on the gauge, 8 to 12 % absolute, from light ends. They boil off first: the last third
 * of a bottle is nearer to pure, and a product rich in butane lies below it.
 */
export const COMMERCIAL_FACTOR = datum(1, 1.08, 1.12, published('lp-gas-properties'));

const liquid = (liquid_K: number) => within({ liquid_K }, { low: ZERO_C - 50, high: ZERO_C + 50, example: '10 °C' });

/**
 * Vapour pressure of pure propane, absolute: ln p = 20.898451 − 2001.2531/(T − 17.50202).
 * −50…50 °C; within 0.31 % of CoolProp, to which it is fitted.
 * @throws AskError `out-of-range`.
 */
export function propanePressure_Pa({ liquid_K }: { readonly liquid_K: number }): number {
  liquid(liquid_K);
  return Math.exp(ANTOINE.a - ANTOINE.b_K / (liquid_K + ANTOINE.c_K));
}

/**
 * Temperature at which pure propane has a vapour pressure: the same line turned round.
 * 70.2 kPa…1.71 MPa absolute; within 0.12 K of CoolProp.
 * @throws AskError `out-of-range`.
 */
export function propaneBoiling_K({ pressure_Pa }: { readonly pressure_Pa: number }): number {
  within({ vapour_pressure_Pa: pressure_Pa }, { low: 70.5e3, high: 1.712e6, example: '300 kPa abs' });
  return ANTOINE.b_K / (ANTOINE.a - Math.log(pressure_Pa)) - ANTOINE.c_K;
}

/** Heat to evaporate, J/kg: 610.93e3·(1 − T/369.89)^0.36597 (Watson). −50…50 °C; within 0.6 % of CoolProp. */
export function propaneLatentHeat_J_kg({ liquid_K }: { readonly liquid_K: number }): number {
  liquid(liquid_K);
  return 610.93e3 * (1 - liquid_K / CRITICAL_K) ** 0.36597;
}

/** Density of the liquid: 220.48·(1 + 1.59099·τ^⅓ + 0.93268·τ^⅔), τ = 1 − T/369.89. −50…50 °C; within 0.14 % of CoolProp. */
export function propaneLiquidDensity_kg_m3({ liquid_K }: { readonly liquid_K: number }): number {
  liquid(liquid_K);
  const root = Math.cbrt(1 - liquid_K / CRITICAL_K);
  return CRITICAL_KG_M3 * (1 + 1.59099 * root + 0.93268 * root * root);
}

/** Heat capacity of the liquid, J/(kg K): 2490.08 + 7.3838·t + 0.060432·t² + 5.3537e-4·t³ (°C). Within 0.4 % of CoolProp. */
export function propaneLiquidHeatCapacity_J_kgK({ liquid_K }: { readonly liquid_K: number }): number {
  liquid(liquid_K);
  const t = liquid_K - ZERO_C;
  return 2490.085 + t * (7.38382 + t * (0.0604322 + t * 5.3537e-4));
}
