import type { Phase, WallInput } from '../heat/wall-run.ts';
import { type Charge, chargeAfterClimb_K, holdToPour_s, RISE, shareOfWay } from './balance-charge.ts';
import type { Fire } from './balance-fire.ts';

/** A furnace and its fire under one draw of the doubts, ready to melt. */
export interface Furnace {
  /** All but the phases. */
  readonly wall: Omit<WallInput, 'phases' | 'until_shell_below_K'>;
  readonly side_m2: number;
  /** What lid and floor take, of what the side wall takes. */
  readonly ends: number;
  /** Radiated through vent and tuyere: W for a K⁴ of difference. */
  readonly opening_W_K4: number;
  readonly air_K: number;
  readonly hot_K: number;
  readonly fire: Fire;
  /** The flue below the hot face. */
  readonly drop_dK: number;
  /** Heat of the fuel at full blast; or how long the first climb takes, from which it follows. */
  readonly firing: { readonly power_W: number } | { readonly climb_s: number };
  /** Of the first melt, and of the next with its warm crucible. */
  readonly charge: Charge;
  readonly charge_again: Charge;
  /** Between the two: lid off, lid on; times from the end of the first. */
  readonly pause: readonly Phase[];
}

/** How long it heats up at full blast, how long it is then held. */
export interface Leg {
  readonly climb_s: number;
  readonly hold_s: number;
}

/** One melt's begin: how hot the face is, and what is in the pot. */
export interface Start {
  readonly from_K: number;
  readonly charge: Charge;
}

/** Heat that the side wall took in one melt. */
export interface Taken {
  readonly climb_J: number;
  readonly hold_J: number;
  readonly through_J: number;
}

/** Shorter no climb is believed; longer it never gets there. */
const shortest_s = 60;
export const longestClimb_s = 12 * 3600;

/**
 * Share of the fuel's heat that stays, on average while the furnace heats up from there. Fired evenly a thick wall's face
 * rises as √t; a rise over two thirds of the time and a hold have the same mean and store 3 % more (derived).
 */
export const meanLeft = ({ fire, drop_dK, hot_K }: Furnace, from_K: number): number =>
  RISE * fire.meanLeft(from_K - drop_dK, hot_K - drop_dK) + (1 - RISE) * fire.left(hot_K - drop_dK);

/** Mean radiation through the openings meanwhile: of T⁴ on a straight line that is (b⁵ − a⁵) ÷ 5 (b − a). Source: derived. */
export function openings_W({ opening_W_K4, air_K, hot_K }: Furnace, from_K: number): number {
  const rising_K4 = hot_K - from_K > 1 ? (hot_K ** 5 - from_K ** 5) / (5 * (hot_K - from_K)) : hot_K ** 4;
  return opening_W_K4 * (RISE * rising_K4 + (1 - RISE) * hot_K ** 4 - air_K ** 4);
}

/** What the metal and crucible took on the climb. */
export function chargeTook_J({ hot_K }: Furnace, { from_K, charge }: Start, climb_s: number): number {
  const after_K = chargeAfterClimb_K(charge, { from_K, to_K: hot_K, climb_s });
  return (charge.metal_J + charge.crucible_J) * shareOfWay(charge, after_K);
}

/**
 * How long full blast takes to the hot face: power × mean share left × t = side × (1 + ends) + openings + charge, and how
 * long the charge is held after that. Where the hold would ask for more than full blast the climb takes longer, until full
 * blast covers both. The side wall took `taken` in a climb of `leg` and takes t^`grows` in others near it. Without a power
 * the climb stays as it is.
 */
export function nextLeg(
  furnace: Furnace,
  start: Start,
  { power_W, leg, taken, grows }: { power_W: number | undefined; leg: Leg; taken: Taken; grows: number },
): Leg {
  const { hot_K, ends } = furnace;
  const { from_K, charge } = start;
  const holdFor_s = (climb_s: number) =>
    Math.min(longestClimb_s, holdToPour_s(charge, { from_K, to_K: hot_K, climb_s }));
  if (power_W === undefined) return { climb_s: leg.climb_s, hold_s: holdFor_s(leg.climb_s) };
  const gains_W = power_W * meanLeft(furnace, from_K) - openings_W(furnace, from_K);
  const wall_J = taken.climb_J * (1 + ends);
  const holding_W =
    power_W * meanLeft(furnace, hot_K) - openings_W(furnace, hot_K) - heldRate_W(leg, taken) * (1 + ends);
  const climb_s = firstAbove((t) => {
    const took_J = chargeTook_J(furnace, start, t);
    const climb_J = gains_W * t - wall_J * (t / leg.climb_s) ** grows - took_J;
    const hold_J = holding_W * holdFor_s(t) - (charge.metal_J + charge.crucible_J - took_J);
    return Math.min(climb_J, climb_J + hold_J);
  });
  return { climb_s, hold_s: holdFor_s(climb_s) };
}

/** What the side wall takes while it is held; where it was not held, about what it took on the way. */
export const heldRate_W = ({ climb_s, hold_s }: Leg, { climb_J, hold_J }: Taken): number =>
  hold_s > 0 ? hold_J / hold_s : climb_J / climb_s;

/** The time at which a function that starts below zero first gets above it, by halving on a logarithmic scale. */
function firstAbove(f: (t: number) => number): number {
  let low = shortest_s;
  let high = longestClimb_s;
  if (f(low) >= 0) return low;
  if (f(high) < 0) return high;
  for (let round = 0; round < 22; round++) {
    const middle = Math.sqrt(low * high);
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return Math.sqrt(low * high);
}
