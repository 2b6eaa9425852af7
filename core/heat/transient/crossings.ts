import type { WallRun } from '../wall-run.ts';
import { cubicAt } from './hermite.ts';

/** The hot face, the outermost surface, or the interface behind layer n (0 behind the first). */
export type Series = 'face' | 'shell' | number;

type Run = Pick<WallRun, 'time_s' | 'face_K' | 'shell_K' | 'interfaces_K' | 'shell_rate_K_s' | 'interface_rates_K_s'>;

/** Temperature at any time of the run: cubic between step ends, linear for the face; held beyond the ends. */
export function temperatureAt(run: Run, series: Series, time_s: number): number {
  const { time_s: times } = run;
  if (times.length === 1 || time_s <= times[0]!) return values(run, series)[0]!;
  if (time_s >= times.at(-1)!) return values(run, series).at(-1)!;
  const end = firstAfter(times, time_s);
  return between(run, series, end, (time_s - times[end - 1]!) / (times[end]! - times[end - 1]!));
}

/** The first time it is as hot as T, s; undefined where it never gets there. */
export function timeAbove(run: Run, series: Series, T_K: number): number | undefined {
  const T = values(run, series);
  if (T[0]! >= T_K) return 0;
  const end = T.findIndex((one) => one >= T_K);
  // A peak between two steps that no step end shows is missed, by less than the error of a step.
  return end === -1 ? undefined : crossing(run, series, end, T_K);
}

/** The time after which it stays colder than T to the end of the run: 0 where it always was, undefined where it is not yet. */
export function timeBelow(run: Run, series: Series, T_K: number): number | undefined {
  const T = values(run, series);
  const hot = T.findLastIndex((one) => one >= T_K);
  if (hot === T.length - 1) return undefined;
  return hot === -1 ? 0 : crossing(run, series, hot + 1, T_K);
}

function values(run: Run, series: Series): Float64Array {
  if (series === 'face') return run.face_K;
  if (series === 'shell') return run.shell_K;
  const found = run.interfaces_K[series];
  if (!found) throw new Error(`the wall has no interface ${series}`);
  return found;
}

/** Within the step that ends at `end`. */
function between(run: Run, series: Series, end: number, share: number): number {
  const T = values(run, series);
  const from_K = T[end - 1]!;
  const to_K = T[end]!;
  if (series === 'face') return from_K + share * (to_K - from_K);
  const rates = series === 'shell' ? run.shell_rate_K_s : run.interface_rates_K_s[series]!;
  const step_s = run.time_s[end]! - run.time_s[end - 1]!;
  return cubicAt({ step_s, from_K, from_rate: rates[end - 1]!, to_K, to_rate: rates[end]! }, share);
}

/** When the value passes T in a step over whose ends it does: halved until it is within a millionth of the step. */
function crossing(run: Run, series: Series, end: number, T_K: number): number {
  const { time_s } = run;
  const rising = values(run, series)[end]! >= T_K;
  let low = 0;
  let high = 1;
  while (high - low > 1e-6) {
    const middle = (low + high) / 2;
    if (between(run, series, end, middle) >= T_K === rising) high = middle;
    else low = middle;
  }
  return time_s[end - 1]! + high * (time_s[end]! - time_s[end - 1]!);
}

function firstAfter(times: Float64Array, time_s: number): number {
  let low = 0;
  let high = times.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times[middle]! > time_s) high = middle;
    else low = middle;
  }
  return high;
}
