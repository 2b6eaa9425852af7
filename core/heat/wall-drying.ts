import { temperatureAt, timeAbove } from './transient/crossings.ts';
import { runWall } from './transient/run-wall.ts';
import { BOIL_K } from './transient/water.ts';
import type { WallModel } from './wall-question.ts';
import type { WallRun } from './wall-run.ts';

/** A damp lining while it dries, between the two bounds of what its vapour may do. Times in s from lighting. */
export interface Drying {
  /** When the first layer has no water left, or the fire goes out before that. */
  readonly dry_s: number;
  readonly dried: boolean;
  /** The shell at that time where all vapour leaves by the bore. */
  readonly shell_K: number;
  /** The hottest it has been by then where all of it condenses on the shell. */
  readonly condensing_K: number;
}

const fineness = { cells: 20, tolerance_dK: 0.3 };

/** The typical run's drying, and the same with its vapour let out at the shell. */
export function dryingOf(model: WallModel, run: WallRun): Drying {
  const hot_s = timeAbove(run, run.interfaces_K.length > 0 ? 0 : 'shell', BOIL_K + 1) ?? Number.POSITIVE_INFINITY;
  const dried = hot_s <= model.fire_out_s;
  const dry_s = Math.min(hot_s, model.fire_out_s);
  const shell_K = temperatureAt(run, 'shell', dry_s);
  const wet = runWall({ ...model.input(model.typical, fineness), vapour: 'shell' });
  const hottest_K = Math.max(...wet.shell_K.filter((_, at) => wet.time_s[at]! <= dry_s));
  // What condenses heats nothing past 100 °C: the rest is the error of a step.
  return { dry_s, dried, shell_K, condensing_K: Math.min(hottest_K, Math.max(BOIL_K, shell_K)) };
}
