import type { Step, WithSteps } from '../../step.ts';
import { within } from '../within.ts';

/** A blower by its two rated ends: blowing freely, and shut off. No blower does both at once. */
export interface Fan {
  readonly free_flow_m3_s: number;
  readonly shut_off_Pa: number;
  /** Of the air it was rated in; 1.2 where nothing is said. */
  readonly rated_density_kg_m3: number;
}

export interface FanPoint {
  readonly fan: Fan;
  readonly flow_m3_s: number;
  readonly density_kg_m3: number;
  /** Share of the rated speed. */
  readonly speed: number;
}

/**
 * Pressure a fan makes: p = p_shut·(ρ/ρ_rated)·n²·[1 − (Q/(n·Q_free))²]; below zero past its free flow.
 * Fan laws: Q ∝ n, p ∝ ρ·n². Free flow 0.1 L/s…3 m³/s, shut-off 10 Pa…50 kPa, speed 0.1…1.5.
 * Source: the usual parabola, common practice; a measured dust extractor meets it within 1.1 kPa of 20.6.
 * @throws AskError `out-of-range`.
 */
export function fanPressure_Pa({ fan, flow_m3_s, density_kg_m3, speed }: FanPoint): number {
  checkFan(fan, speed);
  const share = flow_m3_s / (speed * fan.free_flow_m3_s);
  return fan.shut_off_Pa * (density_kg_m3 / fan.rated_density_kg_m3) * speed ** 2 * (1 - share * Math.abs(share));
}

/** @throws AskError `out-of-range`. */
export function checkFan({ free_flow_m3_s, shut_off_Pa, rated_density_kg_m3 }: Fan, speed: number): void {
  within({ free_flow_m3_s }, { low: 1e-4, high: 3, example: '20 L/s' });
  within({ shut_off_Pa }, { low: 10, high: 50e3, example: '500 Pa' });
  within({ rated_air_kg_m3: rated_density_kg_m3 }, { low: 0.5, high: 1.5, example: '1.2 kg/m3' });
  within({ speed }, { low: 0.1, high: 1.5, example: '100%' });
}

export interface FanPower extends WithSteps {
  /** In the air. The motor takes two to ten times that. */
  readonly air_power_W: number;
}

/** Power left in the air: P = Q·p. With the fan laws it goes as n³. */
export function fanPower({ flow_m3_s, pressure_Pa }: { flow_m3_s: number; pressure_Pa: number }): FanPower {
  within({ flow_m3_s }, { low: 0, high: 3, example: '20 L/s' });
  const air_power_W = flow_m3_s * pressure_Pa;
  return {
    air_power_W,
    steps: (): readonly Step[] => [
      {
        formula: 'power in the air = flow × pressure',
        inputs: { flow_m3_s, pressure_Pa },
        gives: { air_power_W },
        source: 'derived',
      },
    ],
  };
}
