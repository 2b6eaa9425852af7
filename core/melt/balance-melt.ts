import { temperatureAt } from '../heat/transient/crossings.ts';
import { runWall } from '../heat/transient/run-wall.ts';
import { totalAt } from '../heat/wall-firing.ts';
import type { Phase, WallRun } from '../heat/wall-run.ts';
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
  readonly taken: { readonly first: Taken; readonly again: Taken };
}

const MOST_ROUNDS = 12;
/** Heat into a thick wall, brought up evenly, grows a little faster than the square root of the time. */
const startingGrowth = 0.55;

/**
 * Two melts: full blast while the hot face climbs evenly to its heat, then as much as holds it until the lump of metal and
 * crucible has come to the pour (see `nextLeg`). The wall's part is one run of the transient wall through both melts,
 * repeated until the times stand still to `accuracy`; heat closes however early that is. An even climb stores some 15 % less than one at even heat (derived, thick walls).
 */
export function solveMelts(furnace: Furnace, begin: Programme, accuracy: number): Melts {
  return solve(furnace, begin, { accuracy, scaled: false });
}

/**
 * The same beside melts that were solved: what the wall takes is scaled from theirs to begin with, and over the last
 * difference in time instead of being run again. Heat and times within about 1 % at a third of the time.
 */
export function solveNear(furnace: Furnace, near: Melts, accuracy: number): Melts {
  const { programme, taken } = near;
  const { hot_K, air_K, wall } = near.furnace;
  const more =
    ((furnace.hot_K - furnace.air_K) / (hot_K - air_K)) * Math.sqrt(soaks(furnace.wall.layers) / soaks(wall.layers));
  const scaled = (one: Taken): Taken => ({ ...one, climb_J: one.climb_J * more });
  const relit_K = programme.relit_K + furnace.hot_K - hot_K;
  const first = nextLeg(furnace, startOf(furnace, 'first', relit_K), {
    power_W: 'climb_s' in furnace.firing ? undefined : furnace.firing.power_W,
    leg: programme.first,
    taken: scaled(taken.first),
    grows: startingGrowth,
  });
  const again = nextLeg(furnace, startOf(furnace, 'again', relit_K), {
    power_W: 'climb_s' in furnace.firing ? near.first.power_W : furnace.firing.power_W,
    leg: programme.again,
    taken: scaled(taken.again),
    grows: startingGrowth,
  });
  return solve(furnace, { first, relit_K, again }, { accuracy, scaled: true });
}

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

function solve(furnace: Furnace, begin: Programme, { accuracy, scaled }: { accuracy: number; scaled: boolean }): Melts {
  const given = 'climb_s' in furnace.firing;
  let programme = begin;
  const grows = { first: startingGrowth, again: startingGrowth };
  let before: { programme: Programme; first: Taken; again: Taken } | undefined;
  for (let round = 1; ; round++) {
    const ran = runThrough(furnace, programme);
    const starts = (['first', 'again'] as const).map((which) => startOf(furnace, which, programme.relit_K));
    const [cold, warm] = starts as [Start, Start];
    for (const which of ['first', 'again'] as const) {
      if (before)
        grows[which] = growth(programme[which], ran[which], before.programme[which], before[which]) ?? grows[which];
    }
    const asked = asks(furnace, cold, programme.first, ran.first);
    const power_W = 'climb_s' in furnace.firing ? asked.climbFuel_J / programme.first.climb_s : furnace.firing.power_W;
    const leg = (which: Which, start: Start) =>
      nextLeg(furnace, start, {
        power_W: given && which === 'first' ? undefined : power_W,
        leg: programme[which],
        taken: ran[which],
        grows: grows[which],
      });
    const next: Programme = { first: leg('first', cold), relit_K: ran.relit_K, again: leg('again', warm) };
    if (change(programme, next) <= accuracy || round >= MOST_ROUNDS) {
      const shown = scaled ? next : programme;
      const taken = (which: Which) =>
        scaled ? stretched(ran[which], programme[which], next[which], grows[which]) : ran[which];
      return {
        first: meltOf(furnace, cold, shown.first, taken('first'), power_W),
        again: meltOf(furnace, warm, shown.again, taken('again'), power_W),
        programme: shown,
        run: ran.run,
        furnace,
        taken: { first: taken('first'), again: taken('again') },
      };
    }
    before = { programme, first: ran.first, again: ran.again };
    programme = next;
  }
}

type Which = 'first' | 'again';

const startOf = ({ air_K, charge, charge_again }: Furnace, which: Which, relit_K: number): Start =>
  which === 'first' ? { from_K: air_K, charge } : { from_K: relit_K, charge: charge_again };

/** The largest change of either melt, as a share of it; ten degrees of the relit face count as a hundredth. */
function change(from: Programme, to: Programme): number {
  const share = (a: Leg, b: Leg) =>
    (Math.abs(b.climb_s - a.climb_s) + Math.abs(b.hold_s - a.hold_s)) / (a.climb_s + a.hold_s);
  return Math.max(share(from.first, to.first), share(from.again, to.again), Math.abs(to.relit_K - from.relit_K) / 1000);
}

/** How the wall's heat grew with the time of the climb between two runs; undefined where they are too close to tell. */
function growth(leg: Leg, taken: Taken, beforeLeg: Leg, before: Taken): number | undefined {
  const moved = Math.log(leg.climb_s / beforeLeg.climb_s);
  if (Math.abs(moved) < 0.02 || !(taken.climb_J > 0 && before.climb_J > 0)) return undefined;
  return Math.min(1.2, Math.max(0.3, Math.log(taken.climb_J / before.climb_J) / moved));
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
    const hot_s = start_s + climb_s;
    const until_s = hot_s + hold_s;
    const held: [number, number][] = hold_s > 0 ? [[until_s, hot_K]] : [];
    return { until_s, drive: { kind: 'temperature', points: [[start_s, from_K], [hot_s, hot_K], ...held] } };
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
