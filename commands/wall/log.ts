import type { Calibration, Reading } from '../../core/build/log-calibrate.ts';
import { momentsOf } from '../../core/build/log-calibrate.ts';
import { modelErrors, readingErrors } from '../../core/build/log-data.ts';
import { temperatureAt } from '../../core/heat/transient/crossings.ts';
import { runWall } from '../../core/heat/transient/run-wall.ts';
import {
  airDoubt,
  boreHurries,
  boreRuns,
  type Draw,
  type WallModel,
  type WallQuestion,
  wallModel,
} from '../../core/heat/wall-question.ts';
import { type LoggedShell, shellIn } from '../log/entry.ts';
import { dayOf } from '../log/family.ts';
import { bucketReadings, calibration, type Measured } from '../log/measured.ts';

/** As fine as the samples of `wall` itself. */
const fineness = { cells: 5, tolerance_dK: 3 } as const;
/** Before that a shell says nothing of its wall. */
const soonest_s = 300;

/** A wall by buckets of its layers and by readings of its shell; of a damp one only by the buckets: steam keeps it cool. */
export function byReadings(question: WallQuestion, measured: Measured | undefined): Calibration | undefined {
  if (!measured) return undefined;
  const model = wallModel(question);
  const inputs = Object.fromEntries(model.layers.map(({ material }, index) => [material.id, model.densities[index]!]));
  const damp = question.layers.some(({ water = 0 }) => water > 0);
  const shells = damp
    ? []
    : measured.entries.flatMap((entry): readonly Reading[] => {
        const logged = shellIn(entry);
        return logged && logged.after_s >= soonest_s ? [readingOf(`shell of ${dayOf(entry)}`, logged, question)] : [];
      });
  const buckets = bucketReadings(measured, { how: 'rammed', inputs });
  return calibration(model.inputs, [...buckets, ...shells], model.together);
}

function readingOf(name: string, logged: LoggedShell, question: WallQuestion): Reading {
  const air_K = logged.air_K ?? question.air_K.typical;
  const unread_dK = logged.air_K === undefined ? momentsOf(question.air_K).deviation : 0;
  const rise_dK = Math.max(0, logged.shell_K - air_K);
  return {
    name,
    value: logged.shell_K,
    unit: 'K',
    error: Math.hypot(readingErrors.shell_K.value / 2, unread_dK, (readingErrors.firing_rise.value / 2) * rise_dK),
    model: { name: 'shell', error: (modelErrors.shell_rise.value / 2) * rise_dK },
    predicted: shellAt(question, { ...logged, air_K }),
  };
}

/** The shell at that moment of that firing, in a wall as it is drawn. */
function shellAt(question: WallQuestion, { after_s, out_s = after_s, hot_K, air_K }: LoggedShell & { air_K: number }) {
  const ramp_s = Math.min(question.ramp_s, out_s);
  const model: WallModel = wallModel({ ...question, ramp_s, hold_s: out_s - ramp_s });
  const hotter_dK = hot_K === undefined ? 0 : hot_K - question.hot_K.typical;
  return (draw: Draw): number => {
    const {
      phases,
      until_shell_below_K: _,
      ...wall
    } = model.input(
      {
        ...draw,
        [airDoubt]: air_K,
        [boreRuns]: draw[boreRuns]! + hotter_dK,
        [boreHurries]: Math.min(draw[boreHurries]!, out_s),
      },
      fineness,
    );
    const last = phases.findIndex(({ until_s }) => until_s >= after_s);
    const followed = phases
      .slice(0, last + 1)
      .map((phase, at) => (at === last ? { ...phase, until_s: after_s } : phase));
    return temperatureAt(runWall({ ...wall, phases: followed }), 'shell', after_s);
  };
}
