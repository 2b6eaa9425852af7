import type { Step, WithSteps } from '../../step.ts';
import { within } from '../within.ts';
import { checkDraw, coldestLiquid_K, type SteadyDrawInput, wettedArea_m2 } from './cylinder.ts';
import { propaneLatentHeat_J_kg, propaneLiquidHeatCapacity_J_kgK, propanePressure_Pa } from './propane.ts';

/** Colder the correlations end; a bottle there feeds nothing at sea level. */
const COLDEST_K = 223.65;
/** 60 give the time to too cold within 0.02 % of 400. */
const STEPS = 60;
/** Runge–Kutta 4 runs off where a step is 2.8 times what the bottle takes to follow the air. */
const STEADY = 1.5;

export interface DrawDownInput extends SteadyDrawInput {
  readonly draw_kg_s: number;
  /** Share of the fill that is drawn before the level fails. */
  readonly usable_share: number;
}

export interface DrawDownRow {
  readonly time_s: number;
  readonly liquid_K: number;
  /** Absolute. */
  readonly bottle_Pa: number;
  readonly liquid_kg: number;
}

export interface DrawDown extends WithSteps {
  readonly rows: readonly DrawDownRow[];
  /** When the pressure falls below the need; `undefined` where the level ends first. */
  readonly cold_s: number | undefined;
  /** When the fill is used up, had the cold not stopped it. */
  readonly empty_s: number;
  /** Gas drawn until either. */
  readonly drawn_kg: number;
}

/**
 * A bottle under a constant draw, starting at the air's temperature: m·c·dT/dt = U·A_wet(m)·(T_air − T) − ṁ·h_fg(T),
 * m = m0 − ṁ·t; Runge–Kutta 4 in 60 steps to the end of the fill. Left out, all on the safe side: the steel (up to a
 * sixth of the liquid's heat), dry shell, and gas left over the liquid. Light ends boil off first: that is not followed.
 * Draw 0.01…50 kg/h; otherwise as `steadyDraw`. Source: heat balance, derived.
 * @throws AskError as `steadyDraw`.
 */
export function drawDown(input: DrawDownInput): DrawDown {
  const { liquid_kg, ambient_K, needed_Pa, draw_kg_s, usable_share } = input;
  checkDraw(input);
  within({ draw_kg_s }, { low: 0.01 / 3600, high: 50 / 3600, example: '1 kg/h' });
  within({ usable_share }, { low: 0.1, high: 0.98, example: '90%' });
  within({ liquid_kg }, { low: 0.1, high: 250, example: '9 kg' });
  const least_K = Math.max(coldestLiquid_K(input), COLDEST_K);
  const empty_s = (liquid_kg * usable_share) / draw_kg_s;
  const step_s = empty_s / STEPS;
  const rows: DrawDownRow[] = [rowAt(input, 0, ambient_K)];
  let cold_s: number | undefined;
  for (let at = 1; at <= STEPS; at++) {
    const before = rows[at - 1]!;
    const next_K = stepped(input, before, step_s);
    if (cold_s === undefined && next_K <= least_K) {
      cold_s = before.time_s + (step_s * (before.liquid_K - least_K)) / (before.liquid_K - next_K);
    }
    if (next_K < COLDEST_K) break;
    rows.push(rowAt(input, at * step_s, next_K));
  }
  const drawn_kg = draw_kg_s * (cold_s ?? empty_s);
  return {
    rows: Object.freeze(rows),
    cold_s,
    empty_s,
    drawn_kg,
    steps: (): readonly Step[] => [
      {
        formula:
          'liquid mass × heat capacity × cooling rate = U × wetted shell × (air − liquid) − draw × heat to evaporate',
        inputs: { liquid_kg, ambient_K, draw_kg_s, exchange_W_m2K: input.exchange_W_m2K, needed_Pa },
        gives: { drawn_kg, coldest_useful_K: least_K, ...(cold_s === undefined ? { empty_s } : { cold_s }) },
        source: 'derived',
      },
    ],
  };
}

function rowAt(
  { liquid_kg, draw_kg_s, pressure_factor }: DrawDownInput,
  time_s: number,
  liquid_K: number,
): DrawDownRow {
  const bottle_Pa = pressure_factor * propanePressure_Pa({ liquid_K });
  return { time_s, liquid_K, bottle_Pa, liquid_kg: liquid_kg - draw_kg_s * time_s };
}

/** K per second. Below the correlations' end the last value stands: the row is cut off there anyway. */
function cooling(input: DrawDownInput, time_s: number, K: number): number {
  const { draw_kg_s, exchange_W_m2K, ambient_K } = input;
  const liquid_K = Math.max(K, COLDEST_K - 0.5);
  const liquid_kg = input.liquid_kg - draw_kg_s * time_s;
  const gained_W = exchange_W_m2K * wettedArea_m2({ ...input, liquid_kg, liquid_K }) * (ambient_K - K);
  const spent_W = draw_kg_s * propaneLatentHeat_J_kg({ liquid_K });
  return (gained_W - spent_W) / (liquid_kg * propaneLiquidHeatCapacity_J_kgK({ liquid_K }));
}

/** A row's step in as many parts as keep it steady: what is left of a slow bottle follows the air faster than its level falls. */
function stepped(input: DrawDownInput, { time_s, liquid_K, liquid_kg }: DrawDownRow, step_s: number): number {
  const least_kg = Math.max(liquid_kg - input.draw_kg_s * step_s, 1e-3);
  const wetted_m2 = wettedArea_m2({ ...input, liquid_kg, liquid_K });
  const follows_per_s =
    (input.exchange_W_m2K * wetted_m2) / (least_kg * propaneLiquidHeatCapacity_J_kgK({ liquid_K: COLDEST_K }));
  const parts = Math.ceil((step_s * follows_per_s) / STEADY);
  let K = liquid_K;
  for (let part = 0; part < parts; part++) K = rungeKutta(input, time_s + (part * step_s) / parts, K, step_s / parts);
  return K;
}

function rungeKutta(input: DrawDownInput, time_s: number, K: number, step_s: number): number {
  const half = step_s / 2;
  const k1 = cooling(input, time_s, K);
  const k2 = cooling(input, time_s + half, K + half * k1);
  const k3 = cooling(input, time_s + half, K + half * k2);
  const k4 = cooling(input, time_s + step_s, K + step_s * k3);
  return K + (step_s / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
}
