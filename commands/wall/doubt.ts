import { depthOf } from '../../core/heat/transient/isotherms.ts';
import { runWall } from '../../core/heat/transient/run-wall.ts';
import { firingOf, touchLevels_K } from '../../core/heat/wall-firing.ts';
import { fuelFor_kg } from '../../core/heat/wall-fuel.ts';
import { outsideModel } from '../../core/heat/wall-limits.ts';
import {
  airDoubt,
  boreHurries,
  boreRuns,
  type Draw,
  type Fineness,
  type WallQuestion,
  wallModel,
  windDoubt,
} from '../../core/heat/wall-question.ts';
import type { SiUnit } from '../../core/quantity/figure.ts';
import type { Doubted } from '../command.ts';
import type { WallFigureId } from './figures.ts';

/** As fine as the samples of `wall` itself. */
const fineness: Fineness = { cells: 5, tolerance_dK: 3 };
const sintered_K = 900 + 273.15;

/** Nothing where a layer leaves the model: there `wall` has no range either. */
export function wallDoubt(question: WallQuestion): Doubted | undefined {
  const model = wallModel(question);
  const firing = (draw: Draw) => {
    const run = runWall(model.input(draw, fineness));
    return { run, ...firingOf(model, draw, run) };
  };
  const { interface_peaks_K } = firing(model.typical);
  if (outsideModel(model.layers, [question.hot_K.typical, ...interface_peaks_K]).length > 0) return undefined;
  return {
    inputs: model.inputs,
    together: model.together,
    units: Object.fromEntries(Object.keys(model.inputs).flatMap((name) => unitOf(name))),
    samples: 500,
    model: (draw) => {
      const found = firing(draw);
      return {
        'wall.shell_peak': found.shell_peak_K,
        'wall.shell_peak_after': found.shell_peak_after_s,
        'wall.heat_in': found.in_J,
        'wall.charcoal': fuelFor_kg(found.in_J, 'charcoal'),
        'wall.propane': fuelFor_kg(found.in_J, 'propane'),
        'wall.stored': found.stored_J,
        'wall.passed': found.passed_J,
        'wall.loss': found.shell_loss_W,
        'wall.ramp_power': found.ramp_power_W,
        'wall.peak_power': found.peak_power_W,
        'wall.depth900': depthOf(found.run, sintered_K),
        ...Object.fromEntries([
          ...found.cool_s.map((cool_s, index) => [`wall.touch${Math.round(touchLevels_K[index]! - 273.15)}`, cool_s]),
          ...found.interface_peaks_K.map((peak_K, index) => [`wall.interface${index + 1}`, peak_K]),
        ]),
      } satisfies Partial<Record<WallFigureId, number>>;
    },
  };
}

const units: Readonly<Record<string, SiUnit>> = {
  [boreRuns]: 'K',
  [airDoubt]: 'K',
  [boreHurries]: 's',
  [windDoubt]: 'm/s',
};

const unitOf = (name: string): readonly [string, SiUnit][] => {
  const unit = units[name] ?? (name.startsWith('how dense ') ? 'kg/m3' : undefined);
  return unit === undefined ? [] : [[name, unit]];
};
