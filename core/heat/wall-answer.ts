import { type Mover, type Range, sampleDoubt } from '../doubt/sample.ts';
import type { Step } from '../step.ts';
import type { Paths } from './paths.ts';
import { runWall } from './transient/run-wall.ts';
import { CurveSamples, curvesOf, timeGrid, type WallCurves } from './wall-curves.ts';
import { type Drying, dryingOf } from './wall-drying.ts';
import { type Firing, firingOf, touchLevels_K } from './wall-firing.ts';
import { type LayerHeat, layerHeats, type OutsideModel, outsideModel } from './wall-limits.ts';
import { wallPaths } from './wall-paths.ts';
import { type Draw, type Fineness, type WallModel, type WallQuestion, wallModel } from './wall-question.ts';
import type { Phase, WallInput, WallRun } from './wall-run.ts';
import { wallSteps } from './wall-steps.ts';

export interface WallAnswer {
  readonly model: WallModel;
  readonly run: WallRun;
  readonly firing: Firing;
  /** Central 95 % of each number, by its key in `outputs`; empty where the answer has no range. */
  readonly ranges: Readonly<Partial<Record<Output, Range>>>;
  readonly interface_ranges: readonly (Range | undefined)[];
  /** The inputs that move the shell's peak, the one that does most first; empty where there is no range. */
  readonly doubts: readonly Mover<string>[];
  /** Why there is no range; empty where there is one, or where none was asked for. */
  readonly outside_model: readonly OutsideModel[];
  readonly curves: WallCurves;
  readonly layers: readonly LayerHeat[];
  /** The same wall with another inch of its last layer. */
  /** Of a wall that was said to be damp. */
  readonly drying?: Drying;
  readonly another_inch: Pick<Firing, 'shell_peak_K' | 'stored_J'>;
  /** Where a furnace of this wall loses its heat once it has been held long. */
  readonly paths: Paths;
  readonly steps: () => readonly Step[];
}

export type Output = 'shell_peak' | 'peak_after' | 'in' | 'stored' | 'loss' | 'cool0' | 'cool1' | 'cool2' | 'cool3';

/** The shown run. */
const fineness: Fineness = { cells: 20, tolerance_dK: 0.3 };
/**
 * Of the samples. Against 40 cells and 0.05 K over 150 samples of five walls, dry and damp: the shell's peak within
 * 1 K, interfaces within 1.3 K, heat within 0.7 %, the fall to 43 °C within seven minutes, at a tenth of the time.
 */
const sampleFineness: Fineness = { cells: 5, tolerance_dK: 3 };
/** The ranges move by less than a twentieth of their width from here on. */
const firstSamples = 500;
/** A picture of two days shows nothing of the fire. */
const longestShown_s = 24 * 3600;
const inch_m = 0.0254;

/** A draw of the inputs to where measurements put it, see `core/build/log-calibrate.ts`. */
type Moved = (draw: Draw) => Draw;
const asDrawn: Moved = (draw) => draw;

interface Asking {
  readonly ranged?: boolean;
  readonly moved?: Moved;
}

/** One firing of a wall: the typical run, and over sampled doubts its ranges and the bands of its curves. */
export function answerWall(question: WallQuestion, { ranged = true, moved = asDrawn }: Asking = {}): WallAnswer {
  const model = movedModel(question, moved);
  const run = runWall(model.input(model.typical, fineness));
  const firing = firingOf(model, model.typical, run);
  const peaks_K = [question.hot_K.typical, ...firing.interface_peaks_K];
  const outside_model = outsideModel(model.layers, peaks_K);
  const shown_s = Math.min(run.time_s.at(-1) ?? 0, model.fire_out_s + longestShown_s);
  const grid = timeGrid(model.fire_out_s, shown_s);
  const sampled = ranged && outside_model.length === 0 ? sampleFirings(model, grid, moved) : undefined;
  const interface_ranges = firing.interface_peaks_K.map((_, index) => sampled?.ranges[`interface${index}`]);
  const paths = wallPaths(model);
  const face_K: Range = { low: question.hot_K.low, high: question.hot_K.high };
  return {
    model,
    run,
    firing,
    ranges: sampled?.ranges ?? {},
    interface_ranges,
    doubts: sampled?.doubts ?? [],
    outside_model,
    curves: curvesOf(grid, run, sampled?.curves),
    layers: layerHeats(model.layers, peaks_K, [face_K, ...interface_ranges]),
    ...(question.layers.some(({ water = 0 }) => water > 0) ? { drying: dryingOf(model, run) } : {}),
    another_inch: withMore(question, inch_m, moved),
    paths,
    steps: () => [...wallSteps(model, run, firing), ...paths.steps()],
  };
}

/** The typical draw is moved here; any other by whoever draws it. */
function movedModel(question: WallQuestion, moved: Moved): WallModel {
  const model = wallModel(question);
  return { ...model, typical: moved(model.typical) };
}

function sampleFirings(model: WallModel, grid: Float64Array, moved: Moved) {
  const curves = new CurveSamples(grid);
  const shown_s = grid.at(-1) ?? 0;
  const { ranges, movers } = sampleDoubt({
    inputs: model.inputs,
    together: model.together,
    samples: firstSamples,
    model: (drawn): Record<string, number> => {
      const draw = moved(drawn);
      const run = runWall(followedTo(shown_s, model.input(draw, sampleFineness)));
      curves.add(run);
      const firing = firingOf(model, draw, run);
      const found: Record<string, number> = {
        shell_peak: firing.shell_peak_K,
        peak_after: firing.shell_peak_after_s,
        in: firing.in_J,
        stored: firing.stored_J,
        loss: firing.shell_loss_W,
      };
      for (const [index] of touchLevels_K.entries()) found[`cool${index}`] = firing.cool_s[index]!;
      for (const [index, peak_K] of firing.interface_peaks_K.entries()) found[`interface${index}`] = peak_K;
      return found;
    },
  });
  return { curves, ranges, doubts: movers.shell_peak ?? [] };
}

/** A run ends early only in its last phase: so the last one is cut where the picture ends. */
function followedTo(shown_s: number, input: WallInput): WallInput {
  const last = input.phases.at(-1);
  const before = input.phases.at(-2)?.until_s ?? 0;
  if (!last || shown_s <= before + 1 || shown_s >= last.until_s) return input;
  const cut: Phase = { until_s: shown_s, drive: last.drive };
  return { ...input, phases: [...input.phases.slice(0, -1), cut, last] };
}

function withMore(question: WallQuestion, more_m: number, moved: Moved): Pick<Firing, 'shell_peak_K' | 'stored_J'> {
  const last = question.layers.length - 1;
  const layers = question.layers.map((layer, index) =>
    index === last ? { ...layer, thickness_m: layer.thickness_m + more_m } : layer,
  );
  const model = movedModel({ ...question, layers }, moved);
  return firingOf(model, model.typical, runWall(model.input(model.typical, fineness)));
}
