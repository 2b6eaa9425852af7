import { lossFunction } from './outside.ts';
import { temperatureAt, timeBelow } from './transient/crossings.ts';
import { type Draw, outsideOf, type WallModel } from './wall-question.ts';
import type { WallRun } from './wall-run.ts';

/** 43, 50, 60, 70 °C: where the touch of a hand changes its name. */
export const touchLevels_K = Object.freeze([316.15, 323.15, 333.15, 343.15]);

/** What one firing did to a wall. Heat and power of the whole side wall; times in s after the fire is out. */
export interface Firing {
  readonly shell_peak_K: number;
  /** 0 where a long hold had already brought it there. */
  readonly shell_peak_after_s: number;
  readonly interface_peaks_K: readonly number[];
  /** When the shell falls below each of `touchLevels_K` for good; 0 where it never was above, or was below already. */
  readonly cool_s: readonly number[];
  /** Into the hot face until the fire is out. */
  readonly in_J: number;
  /** Of that, what is still in the wall then, or went into drying it. */
  readonly stored_J: number;
  /** Through the shell until then. */
  readonly passed_J: number;
  /** Leaving the shell when the fire goes out. */
  readonly shell_loss_W: number;
  readonly shell_at_out_K: number;
  /** Most that the hot face takes, over any minute; and on average until it is up to heat. */
  readonly peak_power_W: number;
  readonly ramp_power_W: number;
}

/** A running total when a step ended: fire out and the end of the ramp are ends of steps. */
export function totalAt({ time_s }: WallRun, total: Float64Array, at_s: number): number {
  const end = time_s.findIndex((one) => one >= at_s - 1e-6);
  return total[end === -1 ? total.length - 1 : end]!;
}

/** The numbers of a run that answers are made of. */
export function firingOf(model: WallModel, draw: Draw, run: WallRun): Firing {
  const { fire_out_s, inner_m2, question, outer_radius_m } = model;
  const { time_s, in_J_m2, out_J_m2 } = run;
  const in_J = inner_m2 * totalAt(run, in_J_m2, fire_out_s);
  const passed_J = inner_m2 * totalAt(run, out_J_m2, fire_out_s);
  const shell_at_out_K = temperatureAt(run, 'shell', fire_out_s);
  const lossAt_W_m2 = lossFunction(outsideOf(question, outer_radius_m, draw));
  return {
    shell_peak_K: run.shell_peak.T_K,
    shell_peak_after_s: Math.max(0, run.shell_peak.time_s - fire_out_s),
    interface_peaks_K: run.interface_peaks.map(({ T_K }) => T_K),
    cool_s: touchLevels_K.map((level_K) =>
      Math.max(0, (timeBelow(run, 'shell', level_K) ?? time_s.at(-1)!) - fire_out_s),
    ),
    in_J,
    passed_J,
    stored_J: in_J - passed_J,
    shell_at_out_K,
    shell_loss_W: lossAt_W_m2(shell_at_out_K) * 2 * Math.PI * outer_radius_m * question.height_m,
    peak_power_W: inner_m2 * steepest(time_s, in_J_m2, fire_out_s),
    ramp_power_W: (inner_m2 * totalAt(run, in_J_m2, question.ramp_s)) / question.ramp_s,
  };
}

/** Largest rise of a running total over at least a minute, per s. */
function steepest(time_s: Float64Array, total: Float64Array, until_s: number): number {
  let most = 0;
  let from = 0;
  for (let to = 1; to < time_s.length && time_s[to]! <= until_s + 1e-6; to++) {
    const span = time_s[to]! - time_s[from]!;
    if (span < 60) continue;
    most = Math.max(most, (total[to]! - total[from]!) / span);
    from = to;
  }
  return most;
}
