import { AskError } from '../../core/ask-error.ts';
import { type Doubt, sampleDoubt } from '../../core/doubt/sample.ts';
import { type AirDrying, airDrying } from '../../core/dry/air-drying.ts';
import { daysBetween } from '../../core/dry/calendar.ts';
import { type PlanStep, planOf } from '../../core/dry/plan.ts';
import { type Firing, firing } from '../../core/dry/schedule.ts';
import { type BurstLimit, burstLimit } from '../../core/dry/steam.ts';
import { dryingHeat_J, type LiningWater, liningWater } from '../../core/dry/water.ts';
import { type Weighed, weighed } from '../../core/dry/weighing.ts';
import type { Spread } from '../../core/materials/spread.ts';
import { formatBoth } from '../../core/quantity/format.ts';
import { about } from '../options.ts';
import { type DryKey, type DryQuestion, dryKeys as key } from './question.ts';

const DAY_s = 86_400;
const AIR_DRY = { left: 0.01, loss_per_day: 0.005 } as const;
/** Nobody waits longer. */
const LONGEST_s = 240 * DAY_s;

type Draw = Readonly<Record<DryKey, number>>;
/** Of what is laid wet behind the face, for each cubic metre of the face. */
interface Wet {
  readonly volume: number;
  readonly dry_kg_m3: number;
  readonly water_kg_m3: number;
  readonly held_kg_m3: number;
}
export type DryOutput = 'ready' | 'free' | 'held' | 'dry' | 'heat';

export interface DryWork {
  readonly question: DryQuestion;
  readonly water: LiningWater;
  /** Only of what is dried in air. */
  readonly air: AirDrying | undefined;
  readonly doubt: Doubt<DryKey, DryOutput>;
  readonly limit: BurstLimit;
  readonly firing: Firing;
  readonly weighed: Weighed | undefined;
  /** Days after it was rammed until a drying fire may be lit. */
  readonly ready_days: Spread;
  readonly plan: readonly PlanStep[];
  /** Share of its dry mass that may still be in it against the plan, adverse end; nothing where all goes by plan. */
  readonly wet_share: number | undefined;
  readonly hurried: boolean;
}

const typicalOf = ({ spreads }: DryQuestion): Draw =>
  Object.fromEntries(Object.entries(spreads).map(([name, { typical }]) => [name, typical])) as Record<DryKey, number>;

export function workOut(question: DryQuestion): DryWork {
  const typical = typicalOf(question);
  const behind = behindOf(question);
  const water = waterOf(question, typical, behind);
  const air = question.kind.before === 'air-dry' ? airOf(question, typical, behind) : undefined;
  if (air && !(air.time_s <= LONGEST_s)) throw neverDry(question);
  const doubt = sampleDoubt<DryKey, DryOutput>({
    inputs: question.spreads,
    samples: 500,
    moved: ['ready'],
    model: (draw) => outputs(question, draw, behind),
  });
  const limit = burstLimit({ strength_Pa: question.kind.strength_Pa.low });
  const fire = firing({
    kind: question.kind,
    thickness_m: question.thickest_m,
    start_K: question.air_K,
    end_K: question.end_K,
    wet_limit_K: limit.limit_K,
  });
  refuseRush(question, fire);
  const base = baseDays(question, air, doubt);
  const scale = weighedOf(question, water, air, doubt);
  const { ready_days, wet_share } = happeningOf(question, { base, scale });
  return {
    question,
    water,
    air,
    doubt,
    limit,
    firing: fire,
    weighed: scale,
    ready_days,
    wet_share,
    hurried: question.within_s !== undefined && question.within_s < fire.total_s.typical,
    plan: planFor(question, ready_days, fire),
  };
}

/** The drying fire: from lighting to the end of the first hold. */
export function firstHold_s({ stages }: Firing, end: keyof Spread): number {
  const [first] = stages;
  return first ? first.ramp_s[end] + first.hold_s[end] : 0;
}

function planFor(question: DryQuestion, ready_days: Spread, fire: Firing): readonly PlanStep[] {
  const { from, kind, heat, covered, behind, happened, weighings } = question;
  const weighedOn = weighings?.at(-1)?.day;
  const today = daysBetween(from, question.today);
  // Nothing is lit in the past: where the late end is behind us, the plan begins today.
  const passed = !happened && today > Math.ceil(ready_days.high) ? today : undefined;
  const since = passed ?? (weighedOn === undefined ? undefined : Math.floor(weighedOn));
  const between =
    happened && happened.what !== 'dry'
      ? { what: happened.what, day: happened.day }
      : since !== undefined && ({ what: 'late', day: since } as const);
  return planOf({
    from,
    kind,
    ready_days: passed === undefined ? ready_days : atLeast(ready_days, passed),
    heat,
    stays_covered: covered,
    fill: behind.some(({ wet }) => !wet),
    ...(between ? { happened: between } : {}),
    until_cold_s: fire.total_s.typical - firstHold_s(fire, 'typical') + fire.cool_s,
  });
}

function waterOf({ volume }: DryQuestion, draw: Draw, share: Wet): LiningWater {
  const density = draw[key.density];
  const volume_m3 = 'volume_m3' in volume ? volume.volume_m3 : volume.dry_mass_kg / density;
  return liningWater({
    volume_m3: volume_m3 * (1 + share.volume),
    dry_density_kg_m3: (density + share.dry_kg_m3) / (1 + share.volume),
    mixing_water: (density * draw[key.water] + share.water_kg_m3) / (density + share.dry_kg_m3),
    held_water: (density * draw[key.held] + share.held_kg_m3) / (density + share.dry_kg_m3),
  });
}

/** What is laid wet behind the face dries through it. */
function behindOf({ behind, thickness_m }: Pick<DryQuestion, 'behind' | 'thickness_m'>): Wet {
  const sum = { volume: 0, dry_kg_m3: 0, water_kg_m3: 0, held_kg_m3: 0 };
  for (const layer of behind) {
    if (!layer.wet) continue;
    const { density_kg_m3, mixing_water, moisture } = layer.material.properties;
    const volume = layer.thickness_m / thickness_m;
    const dry = volume * (density_kg_m3?.typical ?? 0);
    sum.volume += volume;
    sum.dry_kg_m3 += dry;
    sum.water_kg_m3 += dry * (mixing_water?.typical ?? 0);
    sum.held_kg_m3 += dry * (moisture?.typical ?? 0);
  }
  return sum;
}

function airOf(question: DryQuestion, draw: Draw, behind: Wet): AirDrying {
  const { air_K, humidity, open, kind } = question;
  const thickness_m = draw[key.thickness];
  const dry_kg_m2 = thickness_m * (draw[key.density] + behind.dry_kg_m3);
  const wet = draw[key.density] * (draw[key.water] - draw[key.held]) + behind.water_kg_m3 - behind.held_kg_m3;
  return airDrying({
    thickness_m: thickness_m * (1 + behind.volume),
    open_sides: open === 'both sides' ? 2 : 1,
    dry_kg_m2,
    free_kg_m2: Math.max(1e-6, thickness_m * wet),
    diffusivity_m2_s: draw[key.diffusivity],
    activation_J_mol: draw[key.activation],
    access: draw[key.access],
    covered_s: draw[key.covered],
    air_K,
    humidity,
    exchange_W_m2K: draw[key.exchange],
    sun_W_m2: draw[key.sun],
    until: kind.until ?? AIR_DRY,
  });
}

function outputs(question: DryQuestion, draw: Draw, behind: Wet): Record<DryOutput, number> {
  const water = waterOf(question, draw, behind);
  const ready = question.kind.before === 'air-dry' ? airOf(question, draw, behind).time_s : draw[key.covered];
  const { free_kg, held_kg, dry_kg } = water;
  const heat = dryingHeat_J({ water_kg: free_kg + held_kg, start_K: question.air_K });
  return { ready, free: free_kg, held: held_kg, dry: dry_kg, heat };
}

function baseDays(question: DryQuestion, air: AirDrying | undefined, { ranges }: DryWork['doubt']): Spread {
  const typical = (air?.time_s ?? question.kind.wait_s.typical) / DAY_s;
  if (!air) return { low: question.kind.wait_s.low / DAY_s, typical, high: question.kind.wait_s.high / DAY_s };
  if (!ranges.ready) throw neverDry(question);
  return { low: Math.min(typical, ranges.ready.low / DAY_s), typical, high: ranges.ready.high / DAY_s };
}

function weighedOf(
  { weighings, thickness_m }: DryQuestion,
  water: LiningWater,
  air: AirDrying | undefined,
  { ranges }: DryWork['doubt'],
): Weighed | undefined {
  if (!weighings) return undefined;
  // Of a body that is not dried in air: as slow as a rammed one of its thickness, from memory.
  const settling_s = air?.settling_s ?? (thickness_m * 0.64) ** 2 / 1e-9;
  const wide = air && ranges.ready ? ranges.ready.high / air.time_s : 3;
  const last_kg = weighings.at(-1)?.mass_kg ?? 0;
  return about('weighed', () =>
    weighed({
      weighings,
      dry_kg: Math.min(water.dry_kg, last_kg),
      settling_s: { low: settling_s / 3, typical: settling_s, high: settling_s * Math.max(1, wide) },
    }),
  );
}

interface Happening {
  readonly ready_days: Spread;
  readonly wet_share: number | undefined;
}

/** What the scale, the weather or the fire itself said, against what was worked out. */
function happeningOf(question: DryQuestion, { base, scale }: { base: Spread; scale: Weighed | undefined }): Happening {
  const { happened, kind, spreads, weighings } = question;
  const soaked = spreads[key.water].high;
  const later = (least: Spread): Spread => ({
    low: Math.max(base.low, least.low),
    typical: Math.max(base.typical, least.typical),
    high: Math.max(base.high, least.high),
  });
  const from = (day: number): Spread => ({ low: day, typical: day, high: day });
  if (happened?.what === 'rained') {
    const { day } = happened;
    const again = kind.before === 'air-dry';
    const anew = { low: day + 1, typical: day + base.typical, high: day + base.high };
    return { ready_days: again ? anew : later(from(day + 1)), wet_share: soaked };
  }
  if (happened?.what === 'steams') {
    const { day } = happened;
    return { ready_days: { low: day, typical: day, high: day + 1 }, wet_share: soaked };
  }
  if (scale && weighings) {
    const last = weighings.at(-1)!.day;
    if (happened?.what === 'dry' && scale.verdict !== 'dry') throw notDry(question, scale);
    const share = scale.verdict === 'dry' ? undefined : scale.left_kg.high / dryOf(question);
    const high = last + scale.more_days;
    const ready_days = { low: Math.min(high, last), typical: (last + high) / 2, high };
    return { ready_days: happened?.what === 'late' ? atLeast(ready_days, happened.day) : ready_days, wet_share: share };
  }
  if (happened?.what === 'late') return { ready_days: later(from(happened.day)), wet_share: undefined };
  // Said to be dry, unweighed: believed from the day on which the adverse end is.
  if (happened?.what === 'dry' && happened.day < base.high) return { ready_days: base, wet_share: 0.02 };
  return { ready_days: base, wet_share: undefined };
}

const atLeast = ({ low, typical, high }: Spread, day: number): Spread => ({
  low: Math.max(low, day),
  typical: Math.max(typical, day),
  high: Math.max(high, day),
});

const dryOf = (question: DryQuestion): number =>
  Math.min(
    waterOf(question, typicalOf(question), behindOf(question)).dry_kg,
    question.weighings?.at(-1)?.mass_kg ?? Number.POSITIVE_INFINITY,
  );

const percent = (share: number): string => `${Number((share * 100).toPrecision(2))} %`;

const notDry = ({ weighings }: DryQuestion, { loss_per_day, left_kg }: Weighed) =>
  new AskError({
    code: 'unfit',
    what: `it is said to be dry, but between day ${weighings!.at(-2)!.day} and day ${weighings!.at(-1)!.day} it lost ${percent(Math.max(0, loss_per_day.typical))} of its dry mass a day (up to ${percent(Math.max(0, loss_per_day.high))} by the scale's error), and ${formatBoth(left_kg.high, 'kg', 'metric')} may be in it yet`,
    expected:
      'at most 0.1 % a day, scale error included, and at most 1 % left; without happened=dry the answer says when',
    example: 'late',
    option: 'happened',
  });

function refuseRush({ within_s, name }: DryQuestion, { total_s }: Firing): void {
  if (within_s === undefined || within_s >= total_s.low) return;
  const hours = (s: number) => `${Number((s / 3600).toPrecision(2))} h`;
  throw new AskError({
    code: 'impossible',
    what: `${hours(within_s)} is too short for the first fire of this ${name}: its quickest schedule takes ${hours(total_s.low)}, the usual one ${hours(total_s.typical)}`,
    expected: 'that time in one go, or in days: after any finished hold it may be closed and left to cool',
    example: `${Math.ceil(total_s.typical / 3600)} h`,
    option: 'within',
  });
}

const neverDry = ({ humidity, air_K, name }: DryQuestion) =>
  new AskError({
    code: 'unfit',
    what: `in air of ${formatBoth(air_K, 'K', 'metric')} and ${percent(humidity)} humidity ${name} takes more than ${LONGEST_s / DAY_s} days to dry, if it ever does`,
    expected: 'drier or warmer air, wind, or a thinner lining',
    example: '50%',
    option: 'humidity',
  });
