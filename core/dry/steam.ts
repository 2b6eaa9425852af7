import { within } from '../fire/within.ts';
import type { Step, WithSteps } from '../step.ts';

/** IAPWS-IF97 region 4, dimensionless: pressures over 1 MPa, temperatures over 1 K. */
const n = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7,
  0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const;
const PRESSURE_UNIT_Pa = 1e6;
export const NORMAL_Pa = 101_325;
const triple = { K: 273.15, Pa: 611.213 } as const;
const critical = { K: 647.096, Pa: 22.064e6 } as const;

/**
 * Pressure of steam over liquid water, absolute: IAPWS-IF97 equation 30 (region 4). 273.15…647.096 K; the same as the
 * reference equation of state to 0.03 %.
 * @throws AskError `out-of-range`.
 */
export function steamPressure_Pa({ water_K }: { readonly water_K: number }): number {
  within({ water_K }, { low: triple.K, high: critical.K, example: '110 °C' });
  const theta = water_K + n[8] / (water_K - n[9]);
  const a = theta * theta + n[0] * theta + n[1];
  const b = n[2] * theta * theta + n[3] * theta + n[4];
  const c = n[5] * theta * theta + n[6] * theta + n[7];
  return PRESSURE_UNIT_Pa * ((2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))) ** 4;
}

/**
 * Temperature at which steam over water has this absolute pressure: IAPWS-IF97 equation 31, the inverse of
 * `steamPressure_Pa`. 611.213 Pa…22.064 MPa.
 * @throws AskError `out-of-range`.
 */
export function boiling_K({ pressure_Pa }: { readonly pressure_Pa: number }): number {
  within({ pressure_Pa }, { low: triple.Pa, high: critical.Pa, example: '101 kPa abs' });
  const beta = (pressure_Pa / PRESSURE_UNIT_Pa) ** 0.25;
  const e = beta * beta + n[2] * beta + n[5];
  const f = n[0] * beta * beta + n[3] * beta + n[6];
  const g = n[1] * beta * beta + n[4] * beta + n[7];
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g));
  return (n[9] + d - Math.sqrt((n[9] + d) ** 2 - 4 * (n[8] + n[9] * d))) / 2;
}

export interface BurstLimit extends WithSteps {
  /** Hotter than this, steam shut in wet pores is stronger than the body. */
  readonly limit_K: number;
}

/**
 * The hottest a wet body may get where its pores let nothing out: steam pressure above the air's = tensile strength.
 * A body with open pores bears more; how much more is not known for a home-made one. Strength 1 kPa…20 MPa: give the
 * adverse end.
 */
export function burstLimit({ strength_Pa }: { readonly strength_Pa: number }): BurstLimit {
  within({ strength_Pa }, { low: 1e3, high: 20e6, example: '1 bar' });
  const pressure_Pa = NORMAL_Pa + strength_Pa;
  const limit_K = boiling_K({ pressure_Pa });
  return {
    limit_K,
    steps: (): readonly Step[] => [
      {
        formula: 'steam above the pressure of the air = tensile strength of the green body, adverse end',
        inputs: { strength_Pa, air_Pa: NORMAL_Pa },
        gives: { steam_Pa: pressure_Pa },
        source: 'derived',
      },
      {
        formula: 'temperature of steam at that pressure, IAPWS-IF97 equation 31',
        inputs: { steam_Pa: pressure_Pa },
        gives: { limit_K },
        source: 'iapws-if97',
      },
    ],
  };
}
