import { type Series, temperatureAt } from './transient/crossings.ts';
import type { WallRun } from './wall-run.ts';

/** One temperature over time, with the central 95 % of its samples where there are some. */
export interface WallCurve {
  readonly T_K: Float64Array;
  readonly low_K?: Float64Array;
  readonly high_K?: Float64Array;
}

/** What a picture of the firing shows, all on one time grid: bore, interfaces hot side first, shell. */
export interface WallCurves {
  readonly time_s: Float64Array;
  readonly bore: WallCurve;
  readonly interfaces: readonly WallCurve[];
  readonly shell: WallCurve;
}

/** Dense while there is fire and a while after, then to the end. */
export function timeGrid(fire_out_s: number, end_s: number): Float64Array {
  const busy_s = Math.min(2 * fire_out_s, end_s);
  const busy = Array.from({ length: 41 }, (_, at) => (busy_s * at) / 40);
  const rest = Array.from({ length: 40 }, (_, at) => busy_s + ((end_s - busy_s) * (at + 1)) / 40);
  return Float64Array.from([...busy, ...(end_s > busy_s ? rest : [])]);
}

const seriesOf = (run: WallRun): readonly Series[] => ['face', ...run.interfaces_K.keys(), 'shell'];

/** Gathers the curves of samples, and gives what lies between their 2.5 and 97.5 % points. */
export class CurveSamples {
  readonly #grid: Float64Array;
  readonly #rows: Float32Array[] = [];

  constructor(grid: Float64Array) {
    this.#grid = grid;
  }

  add(run: WallRun): void {
    const series = seriesOf(run);
    const row = new Float32Array(series.length * this.#grid.length);
    for (const [index, one] of series.entries()) {
      for (let at = 0; at < this.#grid.length; at++) {
        row[index * this.#grid.length + at] = temperatureAt(run, one, this.#grid[at]!);
      }
    }
    this.#rows.push(row);
  }

  bandOf(index: number): { low_K: Float64Array; high_K: Float64Array } {
    const length = this.#grid.length;
    const low_K = new Float64Array(length);
    const high_K = new Float64Array(length);
    const column = new Float32Array(this.#rows.length);
    for (let at = 0; at < length; at++) {
      for (const [row, values] of this.#rows.entries()) column[row] = values[index * length + at]!;
      column.sort();
      low_K[at] = column[Math.round(0.025 * (column.length - 1))]!;
      high_K[at] = column[Math.round(0.975 * (column.length - 1))]!;
    }
    return { low_K, high_K };
  }
}

/** The typical run on the grid, and the samples' bands round it. */
export function curvesOf(grid: Float64Array, run: WallRun, samples: CurveSamples | undefined): WallCurves {
  const curves = seriesOf(run).map((one, index) => ({
    T_K: grid.map((at_s) => temperatureAt(run, one, at_s)),
    ...samples?.bandOf(index),
  }));
  const [bore, ...rest] = curves;
  const shell = rest.pop();
  return { time_s: grid, bore: bore!, interfaces: rest, shell: shell! };
}

/** When a curve has fallen below a level for good, by its adverse end where it has one; undefined where it has not yet. */
export function latestBelow(
  time_s: Float64Array,
  { T_K, high_K = T_K }: WallCurve,
  level_K: number,
): number | undefined {
  const last = high_K.findLastIndex((one) => one > level_K);
  if (last === -1) return 0;
  if (last === high_K.length - 1) return undefined;
  const share = (high_K[last]! - level_K) / (high_K[last]! - high_K[last + 1]!);
  return time_s[last]! + share * (time_s[last + 1]! - time_s[last]!);
}
