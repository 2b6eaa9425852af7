import { AskError } from '../ask-error.ts';
import type { Spread } from '../materials/spread.ts';
import { formatBoth } from '../quantity/format.ts';
import type { SourceId, Standing } from '../sources/source.ts';
import type { Step, WithSteps } from '../step.ts';
import { schedules } from './data/schedules.ts';
import type { DryKind } from './kind.ts';

/** One ramp and the hold at its end, hot-face temperatures. */
export interface Row {
  readonly id: string;
  readonly to_K: number;
  /** Low is slow. */
  readonly rate_K_per_s: Spread;
  readonly hold_s: Spread;
  /** In its place where the hold grows with the lining. */
  readonly hold_per_25mm_s?: Spread;
  readonly watch: string;
}

export interface Schedule {
  readonly id: string;
  /** Linings up to this thick. */
  readonly up_to_m: number;
  readonly rows: readonly Row[];
  /** What of it has another standing. */
  readonly note?: string;
  readonly source: SourceId;
  readonly standing: Standing;
}

/** A row worked out for one lining. Low is quick. */
export interface Stage {
  readonly id: string;
  readonly from_K: number;
  readonly to_K: number;
  readonly ramp_s: Spread;
  readonly hold_s: Spread;
  readonly watch: string;
}

export interface Firing extends WithSteps {
  readonly stages: readonly Stage[];
  /** Ramps and holds, cooling not counted. */
  readonly total_s: Spread;
  readonly cool_s: number;
  /** Of the typical firing: rising time, temperature; the cooling to 100 °C stands at the end. */
  readonly points: readonly (readonly [time_s: number, hot_face_K: number])[];
  readonly standing: Standing;
  readonly source: SourceId;
  readonly note?: string;
}

export interface FiringInput {
  readonly kind: DryKind;
  readonly thickness_m: number;
  readonly start_K: number;
  readonly end_K: number;
  /** While it is wet it stays below this: the first hold is not above it. */
  readonly wet_limit_K: number;
}

const COLD_K = 373.15;
const ends = ['low', 'typical', 'high'] as const;

/**
 * The first fire as ramps and holds: hours = Σ ΔT ÷ rate + holds. Thickness to 150 mm; the limits of the classes and
 * the numbers of home-made bodies are from memory, those of castables agree with a maker's instruction.
 * @throws AskError `out-of-range` for a lining thicker than any schedule, `impossible` for an end below the first hold.
 */
export function firing({ kind, thickness_m, start_K, end_K, wet_limit_K }: FiringInput): Firing {
  const found = scheduleOf(kind, thickness_m);
  const stages: Stage[] = [];
  let from_K = start_K;
  for (const row of found.rows) {
    if (from_K >= end_K) break;
    const wanted_K = row.id === 'free-water' ? Math.min(row.to_K, wet_limit_K) : row.to_K;
    const last = row === found.rows.at(-1);
    const to_K = last ? Math.max(end_K, from_K) : Math.min(wanted_K, end_K);
    if (row.id === 'free-water' && end_K < wanted_K) throw tooCold(end_K, wanted_K);
    stages.push(stageOf(row, { kind, thickness_m, from_K, to_K }));
    from_K = to_K;
  }
  const sum = (end: keyof Spread) => stages.reduce((all, { ramp_s, hold_s }) => all + ramp_s[end] + hold_s[end], 0);
  const total_s: Spread = { low: sum('low'), typical: sum('typical'), high: sum('high') };
  const cool_s = (from_K - COLD_K) / kind.cool_K_per_s.typical;
  return {
    stages,
    total_s,
    cool_s,
    points: pointsOf(stages, start_K, cool_s),
    standing: found.standing,
    source: found.source,
    ...(found.note === undefined ? {} : { note: found.note }),
    steps: () => [
      ...stages.map(
        ({ from_K, to_K, ramp_s, hold_s }): Step => ({
          formula: 'time = rise ÷ heating rate + hold',
          inputs: { from_K, to_K, hold_s: hold_s.typical },
          gives: { ramp_s: ramp_s.typical, least_s: ramp_s.low + hold_s.low, most_s: ramp_s.high + hold_s.high },
          source: found.source,
        }),
      ),
      {
        formula: 'first fire = Σ of its ramps and holds',
        inputs: { stages_count: stages.length },
        gives: { total_s: total_s.typical, least_s: total_s.low, most_s: total_s.high },
        source: 'derived',
      },
    ],
  };
}

function stageOf(
  row: Row,
  { kind, thickness_m, from_K, to_K }: Pick<FiringInput, 'kind' | 'thickness_m'> & { from_K: number; to_K: number },
): Stage {
  const rise = Math.max(0, to_K - from_K) * kind.slower;
  const per_25mm = thickness_m / 0.025;
  // Light bodies hold more water, not more of anything that leaves red hot.
  const longer = row.id === 'working' || row.id === 'quartz' ? 1 : kind.longer;
  const hold = (end: keyof Spread) =>
    longer * (row.hold_per_25mm_s ? Math.max(1, per_25mm) * row.hold_per_25mm_s[end] : row.hold_s[end]);
  const { low, typical, high } = row.rate_K_per_s;
  const [quick, usual, slow] = ends;
  return {
    id: row.id,
    from_K,
    to_K,
    ramp_s: { low: rise / high, typical: rise / typical, high: rise / low },
    hold_s: { low: hold(quick), typical: hold(usual), high: hold(slow) },
    watch: row.watch,
  };
}

function pointsOf(stages: readonly Stage[], start_K: number, cool_s: number): Firing['points'] {
  const points: (readonly [number, number])[] = [[0, start_K]];
  let time_s = 0;
  for (const { to_K, ramp_s, hold_s } of stages) {
    time_s += ramp_s.typical;
    points.push([time_s, to_K]);
    if (hold_s.typical <= 0) continue;
    time_s += hold_s.typical;
    points.push([time_s, to_K]);
  }
  return [...points, [time_s + cool_s, COLD_K]];
}

function scheduleOf({ schedule, name }: DryKind, thickness_m: number): Schedule {
  const own = schedules.filter(({ id }) => id === schedule);
  const found = own.find(({ up_to_m }) => thickness_m <= up_to_m * (1 + 1e-9));
  if (found) return found;
  const most_m = own.at(-1)?.up_to_m ?? 0;
  throw new AskError({
    code: 'out-of-range',
    what: `a ${name} ${formatBoth(thickness_m, 'm', 'metric')} thick is beyond every schedule here`,
    expected: `at most ${formatBoth(most_m, 'm', 'metric')}`,
    example: `dry ${Math.round(most_m * 1000)} mm ${name}`,
  });
}

const tooCold = (end_K: number, hold_K: number) =>
  new AskError({
    code: 'impossible',
    what: `a first fire that ends at ${formatBoth(end_K, 'K', 'metric')} does not even reach the drying hold at ${formatBoth(hold_K, 'K', 'metric')}`,
    expected: 'the working temperature of the furnace',
    example: '1000 °C',
    option: 'hot',
  });
