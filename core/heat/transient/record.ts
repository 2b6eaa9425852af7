import type { WallRun } from '../wall-run.ts';
import { cubicAt, topShare } from './hermite.ts';
import type { Wall } from './state.ts';

/** What a run keeps of every step, in rows of one growing array; and of every node when it was hottest. */
export interface Record {
  /** Nodes whose temperatures are kept: the shell, then the interfaces from the hot side. */
  readonly watched: readonly number[];
  rows: Float64Array;
  count: number;
  readonly before_K: Float64Array;
  readonly hottest_K: Float64Array;
  readonly hottest_s: Float64Array;
}

/** Columns before the watched temperatures and how fast they change: time, face, in, out. */
const BEFORE = 4;

const widthOf = ({ watched }: Record): number => BEFORE + 2 * watched.length;

export function recordFor({ grid, T_K }: Wall): Record {
  const { layers, cells, nodes } = grid;
  const watched = [nodes - 1];
  for (let layer = 1; layer < layers; layer++) watched.push(layer * cells);
  return {
    watched,
    rows: new Float64Array(128 * (BEFORE + 2 * watched.length)),
    count: 0,
    before_K: T_K.slice(),
    hottest_K: T_K.slice(),
    hottest_s: new Float64Array(nodes),
  };
}

/** Adds the end of a step, evaluated; `before` is the nodes' net gain at its begin. */
export function keep(
  record: Record,
  wall: Wall,
  {
    time_s,
    step_s,
    in_J,
    out_J,
    before,
  }: { time_s: number; step_s: number; in_J: number; out_J: number; before: Float64Array },
): void {
  const { watched } = record;
  const width = widthOf(record);
  let at = record.count++ * width;
  if (at === record.rows.length) record.rows = grown(record.rows);
  const { rows } = record;
  rows[at++] = time_s;
  rows[at++] = wall.T_K[0]!;
  rows[at++] = in_J;
  rows[at++] = out_J;
  for (let index = 0; index < watched.length; index++) rows[at++] = wall.T_K[watched[index]!]!;
  for (let index = 0; index < watched.length; index++) rows[at++] = rateOf(wall, watched[index]!);
  peaks(record, wall, time_s, step_s, before);
}

/** K/s of a node inside the wall; none while its water boils. */
export function rateOf({ gain, capacity, water_kg, level, T_K }: Wall, node: number): number {
  return water_kg[node]! > 0 && level[node] !== T_K[node] ? 0 : gain[node]! / capacity[node]!;
}

function peaks(
  { before_K, hottest_K, hottest_s }: Record,
  { T_K, gain, capacity, into_W_m2 }: Wall,
  time_s: number,
  step_s: number,
  before: Float64Array,
): void {
  for (let node = 0; node < T_K.length; node++) {
    const now_K = T_K[node]!;
    if (now_K > hottest_K[node]!) {
      hottest_K[node] = now_K;
      hottest_s[node] = time_s;
    }
    // A face with a given temperature runs straight between steps.
    if (before[node]! > 0 && gain[node]! < 0 && (node > 0 || into_W_m2)) {
      const span = {
        step_s,
        from_K: before_K[node]!,
        from_rate: before[node]! / capacity[node]!,
        to_K: now_K,
        to_rate: gain[node]! / capacity[node]!,
      };
      const share = topShare(span);
      const top_K = share === undefined ? now_K : cubicAt(span, share);
      if (share !== undefined && top_K > hottest_K[node]!) {
        hottest_K[node] = top_K;
        hottest_s[node] = time_s - (1 - share) * step_s;
      }
    }
    before_K[node] = now_K;
  }
}

function grown(rows: Float64Array): Float64Array {
  const more = new Float64Array(2 * rows.length);
  more.set(rows);
  return more;
}

/** The kept columns as arrays of their own. */
export function series(record: Record) {
  const { watched, count, rows, hottest_K, hottest_s } = record;
  const width = widthOf(record);
  const column = (index: number): Float64Array => {
    const values = new Float64Array(count);
    for (let row = 0; row < count; row++) values[row] = rows[row * width + index]!;
    return values;
  };
  const [shell, ...interfaces] = watched.map((_, index) => column(BEFORE + index));
  const [shellRate, ...interfaceRates] = watched.map((_, index) => column(BEFORE + watched.length + index));
  const [shellPeak, ...interfacePeaks] = watched.map((node) => ({ time_s: hottest_s[node]!, T_K: hottest_K[node]! }));
  return {
    time_s: column(0),
    face_K: column(1),
    in_J_m2: column(2),
    out_J_m2: column(3),
    shell_K: shell!,
    interfaces_K: interfaces,
    shell_rate_K_s: shellRate!,
    interface_rates_K_s: interfaceRates,
    shell_peak: shellPeak!,
    interface_peaks: interfacePeaks,
    hottest_K: hottest_K,
  } satisfies Partial<WallRun>;
}
