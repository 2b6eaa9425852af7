import { temperatureAt } from '../heat/transient/crossings.ts';
import { runWall } from '../heat/transient/run-wall.ts';
import { totalAt } from '../heat/wall-firing.ts';
import type { Phase, WallRun } from '../heat/wall-run.ts';
import { RISE } from './balance-charge.ts';
import {
  chargeTook_J,
  type Furnace,
  heldRate_W,
  type Leg,
  meanLeft,
  nextLeg,
  openings_W,
  type Start,
  type Taken,
} from './balance-climb.ts';

/** The programme of the hot face over both melts. */
export interface Programme {
  readonly first: Leg;
  /** Of the face when the next fire is lit. */
  readonly relit_K: number;
  readonly again: Leg;
}

/** Where the heat of one melt went, J. They add up to `fuel_J`. */
export interface HeatFlows {
  readonly metal_J: number;
  readonly crucible_J: number;
  /** Still in the side wall when the metal is ready. */
  readonly stored_J: number;
  /** Through the shell until then. */
  readonly shell_J: number;
  readonly ends_J: number;
  readonly openings_J: number;
  /** Warmth of what leaves by the vent, less what the air brought. */
  readonly flue_J: number;
  /** CO and hydrogen that leave unburned. */
  readonly unburned_J: number;
}

export interface Melt extends HeatFlows, Leg {
  readonly time_s: number;
  readonly fuel_J: number;
  readonly fuel_kg: number;
  /** Of the fuel, at full blast, and once turned down to hold. */
  readonly power_W: number;
  readonly hold_power_W: number;
  /** Metal's heat of the fuel's. */
  readonly efficiency: number;
}

/** A melt in a cold furnace, and the next one after the pause. */
export interface Melts {
  readonly first: Melt;
  readonly again: Melt;
  readonly programme: Programme;
  readonly run: WallRun;
  readonly furnace: Furnace;
  readonly taken: Both<Taken>;
}

interface Both<T> {
  readonly first: T;
  readonly again: T;
}

/** Wall heat of each melt as a power of the time its climb takes; and that of the next as one of the first's climb. */
interface Growth extends Both<number> {
  readonly warmed: number;
  /** How much hotter the face is relit after a first climb e times as long. */
  readonly relit_dK: number;
}

export interface Neighbour extends Melts {
  readonly grows: Growth;
}

const MOST_ROUNDS = 12;
/** Heat into a thick wall grows as the square root of the time; a furnace's is soon warm through. */
const startingGrowth = 0.33;
const longerBy = 1.2;

/**
 * Two melts: full blast while the furnace heats up, its hot face rising evenly and then held, and after that as much as holds it until the lump of metal and
 * crucible has come to the pour (see `nextLeg`). The wall's part is one run of the transient wall through both melts,
 * repeated until the times stand still to `accuracy`; heat closes however early that is.
 */
export function solveMelts(furnace: Furnace, begin: Programme, accuracy: number): Melts {
  return solve(furnace, begin, { accuracy });
}

/** Melts with their growth: each climb tried a fifth longer. */
export function neighbourOf(melts: Melts): Neighbour {
  const { furnace, programme, taken } = melts;
  const tried = (longer: Which) =>
    runThrough(furnace, {
      ...programme,
      [longer]: { ...programme[longer], climb_s: longerBy * programme[longer].climb_s },
    });
  const power = (ran: Both<Taken>, of: Which) =>
    Math.log(ran[of].climb_J / taken[of].climb_J) / Math.log(longerBy) || 0;
  const first = tried('first');
  const grows = {
    first: power(first, 'first'),
    warmed: power(first, 'again'),
    relit_dK: (first.relit_K - programme.relit_K) / Math.log(longerBy),
    again: power(tried('again'), 'again'),
  };
  return { ...melts, grows };
}

/**
 * The same beside melts that were solved: what the wall takes is scaled from theirs to begin with, and over the last
 * difference in time instead of being run again. For ranges: first melt within 2.5 %, next within 9 % (`accuracy` 0.3), of
 * 95 in a hundred draws within 1 and 6 %.
 */
export function solveNear(furnace: Furnace, near: Neighbour, accuracy: number): Melts {
  const { programme, taken, grows } = near;
  const { hot_K, air_K, wall } = near.furnace;
  const more =
    ((furnace.hot_K - furnace.air_K) / (hot_K - air_K)) * Math.sqrt(soaks(furnace.wall.layers) / soaks(wall.layers));
  const leg = (which: Which, power_W: number | undefined, times: number, relit_K: number): Leg =>
    nextLeg(furnace, startOf(furnace, which, relit_K), {
      power_W,
      leg: programme[which],
      taken: heated(taken[which], times),
      grows: grows[which],
    });
  const given = 'climb_s' in furnace.firing ? undefined : furnace.firing.power_W;
  const first = leg('first', given, more, 0);
  const relit_K =
    programme.relit_K + furnace.hot_K - hot_K + grows.relit_dK * Math.log(first.climb_s / programme.first.climb_s);
  const again = leg('again', given ?? near.first.power_W, more * warmth(programme.first, first, grows), relit_K);
  return solve(furnace, { first, relit_K, again }, { accuracy, grows });
}

/** So much more of everything a melt put into the wall. */
const heated = ({ climb_J, hold_J, through_J }: Taken, times: number): Taken => ({
  climb_J: climb_J * times,
  hold_J: hold_J * times,
  through_J: through_J * times,
});

/** What another first climb leaves for the next melt to put in. */
const warmth = (from: Leg, to: Leg, { warmed }: Growth): number => (to.climb_s / from.climb_s) ** warmed;

/** k ρ of the hot face about red heat: a thick wall takes heat as its root. */
function soaks([hot]: Furnace['wall']['layers']): number {
  if (!hot) return 1;
  const { T_K, k_W_mK } = hot.conductivity;
  return (
    hot.density_kg_m3 *
    k_W_mK[
      Math.max(
        0,
        T_K.findLastIndex((T) => T <= 900),
      )
    ]!
  );
}

function solve(
  furnace: Furnace,
  begin: Programme,
  { accuracy, grows: known }: { accuracy: number; grows?: Growth },
): Melts {
  const { firing } = furnace;
  let grows = known ?? { first: startingGrowth, again: startingGrowth, warmed: 0, relit_dK: 0 };
  let programme = begin;
  let before: Tried | undefined;
  for (let round = 1; ; round++) {
    const ran = runThrough(furnace, programme);
    if (!known && before) grows = grown(grows, before, { programme, ran });
    before = { programme, ran };
    const cold = startOf(furnace, 'first', programme.relit_K);
    const warm = startOf(furnace, 'again', programme.relit_K);
    const given = 'climb_s' in firing;
    const power_W = given
      ? asks(furnace, cold, programme.first, ran.first).climbFuel_J / firing.climb_s
      : firing.power_W;
    const first = nextLeg(furnace, cold, {
      power_W: given ? undefined : power_W,
      leg: programme.first,
      taken: ran.first,
      grows: grows.first,
    });
    const warmer = heated(ran.again, warmth(programme.first, first, grows));
    const again = nextLeg(furnace, warm, { power_W, leg: programme.again, taken: warmer, grows: grows.again });
    const next: Programme = { first, relit_K: ran.relit_K, again };
    if (change(programme, next) > accuracy && round < MOST_ROUNDS) {
      programme = next;
      continue;
    }
    const shown = known ? next : programme;
    const taken = known
      ? {
          first: stretched(ran.first, programme.first, first, grows.first),
          again: stretched(warmer, programme.again, again, grows.again),
        }
      : { first: ran.first, again: ran.again };
    return {
      first: meltOf(furnace, cold, shown.first, taken.first, power_W),
      again: meltOf(furnace, warm, shown.again, taken.again, power_W),
      programme: shown,
      run: ran.run,
      furnace,
      taken,
    };
  }
}

interface Tried {
  readonly programme: Programme;
  readonly ran: Both<Taken>;
}

/** The growth between two runs, as the secant has it; as it was where they do not tell: too near, or heat came out of the wall. */
function grown(grows: Growth, from: Tried, to: Tried): Growth {
  const between = (which: Which): number => {
    const longer = Math.log(to.programme[which].climb_s / from.programme[which].climb_s);
    const slope = Math.log(to.ran[which].climb_J / from.ran[which].climb_J) / longer;
    return Math.abs(longer) > 0.02 && Number.isFinite(slope) ? Math.min(Math.max(slope, 0.1), 0.9) : grows[which];
  };
  return { ...grows, first: between('first'), again: between('again') };
}

type Which = 'first' | 'again';

const startOf = ({ air_K, charge, charge_again }: Furnace, which: Which, relit_K: number): Start =>
  which === 'first' ? { from_K: air_K, charge } : { from_K: relit_K, charge: charge_again };

/** The largest change of either melt, as a share of it; two degrees of the relit face count as a hundredth. */
function change(from: Programme, to: Programme): number {
  const share = (a: Leg, b: Leg) =>
    (Math.abs(b.climb_s - a.climb_s) + Math.abs(b.hold_s - a.hold_s)) / (a.climb_s + a.hold_s);
  return Math.max(share(from.first, to.first), share(from.again, to.again), Math.abs(to.relit_K - from.relit_K) / 200);
}

function stretched(taken: Taken, from: Leg, to: Leg, grows: number): Taken {
  const climb = (to.climb_s / from.climb_s) ** grows;
  return {
    climb_J: taken.climb_J * climb,
    hold_J: heldRate_W(from, taken) * to.hold_s,
    through_J: taken.through_J * climb,
  };
}

/** The hot face's programme as phases of the wall. */
export function phasesOf({ air_K, hot_K, pause }: Furnace, { first, relit_K, again }: Programme): readonly Phase[] {
  const ready_s = first.climb_s + first.hold_s;
  const relit_s = ready_s + (pause.at(-1)?.until_s ?? 0);
  const fire = (start_s: number, from_K: number, { climb_s, hold_s }: Leg): Phase => {
    const until_s = start_s + climb_s + hold_s;
    const points: [number, number][] = [
      [start_s, from_K],
      [start_s + RISE * climb_s, hot_K],
      [start_s + climb_s, hot_K],
      ...(hold_s > 0 ? [[until_s, hot_K] as [number, number]] : []),
    ];
    return { until_s, drive: { kind: 'temperature', points } };
  };
  return [
    fire(0, air_K, first),
    ...pause.map(({ until_s, drive }) => ({ until_s: ready_s + until_s, drive })),
    fire(relit_s, relit_K, again),
  ];
}

function runThrough(furnace: Furnace, programme: Programme) {
  const { first, again } = programme;
  const run = runWall({ ...furnace.wall, phases: phasesOf(furnace, programme) });
  const relit_s = first.climb_s + first.hold_s + (furnace.pause.at(-1)?.until_s ?? 0);
  const taken = (start_s: number, { climb_s, hold_s }: Leg): Taken => {
    const total = (of: Float64Array, at_s: number) => furnace.side_m2 * totalAt(run, of, at_s);
    const [hot_s, ready_s] = [start_s + climb_s, start_s + climb_s + hold_s];
    const { in_J_m2, out_J_m2 } = run;
    return {
      climb_J: total(in_J_m2, hot_s) - total(in_J_m2, start_s),
      hold_J: total(in_J_m2, ready_s) - total(in_J_m2, hot_s),
      through_J: total(out_J_m2, ready_s) - total(out_J_m2, start_s),
    };
  };
  return { run, first: taken(0, first), again: taken(relit_s, again), relit_K: temperatureAt(run, 'face', relit_s) };
}

/** What a melt asks of the furnace, and of the fuel: divided by the share of its heat that stays. */
function asks(furnace: Furnace, start: Start, { climb_s, hold_s }: Leg, { climb_J, hold_J }: Taken) {
  const { ends, hot_K } = furnace;
  const { charge, from_K } = start;
  const took_J = chargeTook_J(furnace, start, climb_s);
  const whole_J = charge.metal_J + charge.crucible_J;
  const openings = { climb_J: openings_W(furnace, from_K) * climb_s, hold_J: openings_W(furnace, hot_K) * hold_s };
  const climbing_J = climb_J * (1 + ends) + openings.climb_J + took_J;
  const holding_J = hold_J * (1 + ends) + openings.hold_J + whole_J - took_J;
  return {
    asked_J: climbing_J + holding_J,
    openings_J: openings.climb_J + openings.hold_J,
    climbFuel_J: climbing_J / meanLeft(furnace, from_K),
    holdFuel_J: holding_J / meanLeft(furnace, hot_K),
  };
}

function meltOf(furnace: Furnace, start: Start, leg: Leg, taken: Taken, power_W: number): Melt {
  const { fire, ends } = furnace;
  const { metal_J, crucible_J } = start.charge;
  const { climb_s, hold_s } = leg;
  const side_J = taken.climb_J + taken.hold_J;
  const { asked_J, openings_J, climbFuel_J, holdFuel_J } = asks(furnace, start, leg, taken);
  const fuel_J = climbFuel_J + holdFuel_J;
  const unburned_J = fuel_J * fire.unburned;
  return {
    metal_J,
    crucible_J,
    stored_J: side_J - taken.through_J,
    shell_J: taken.through_J,
    ends_J: ends * side_J,
    openings_J,
    unburned_J,
    flue_J: fuel_J - asked_J - unburned_J,
    climb_s,
    hold_s,
    time_s: climb_s + hold_s,
    fuel_J,
    fuel_kg: fuel_J / fire.fuel.lower_heat_J_kg,
    power_W,
    hold_power_W: hold_s > 0 ? holdFuel_J / hold_s : 0,
    efficiency: metal_J / fuel_J,
  };
}
