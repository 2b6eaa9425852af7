import { type Stage, type Staging, stageFuels } from '../fire/staging.ts';
import type { Balance } from './balance.ts';
import { chargeAfterClimb_K, shareOfWay } from './balance-charge.ts';
import { chargeTook_J, openings_W } from './balance-climb.ts';
import type { Fire } from './balance-fire.ts';

/** Where the trade changes from briquettes to lump: 1250 °F. Common practice, no source. */
export const tradeSwitch_K = 950;
/** What a blower has over what the melt takes; judged. */
const reserve = 1.25;
/** Ash as it lies, and how deep it may lie before it chokes the blast; judged. */
const ash_kg_m3 = 500;
const ashDeep_m = 0.025;

export interface PricedFire {
  readonly fire: Fire;
  readonly price_USD_kg: number;
}

export interface StagedMelt {
  readonly staging: Staging;
  readonly stages: readonly Stage[];
  /** The face up to which most of the heat is the cheap fuel's; undefined where it never or always is. */
  readonly switch_K: number | undefined;
  readonly cost_cheap_USD: number;
  readonly cost_better_USD: number;
  /** Cheap to the trade's 1250 °F, then the better. */
  readonly cost_trade_USD: number;
}

/** Ash that a bore holds under the fire: its floor, an inch deep. Judged. */
export const ashRoom_kg = (bore_m: number): number => (Math.PI / 4) * bore_m ** 2 * ashDeep_m * ash_kg_m3;

/**
 * The first melt of a balance with two fuels: its climb cut at even steps of the hot face with the trade's switch among
 * them, and its hold; each stage asks for the same heat whichever fuel gives it. The cheapest split is `stageFuels`'.
 * @throws AskError `impossible` as `stageFuels` does.
 */
export function stageMelt(
  balance: Balance,
  { cheap, better, ash_limit_kg }: { cheap: PricedFire; better: PricedFire; ash_limit_kg: number },
): StagedMelt {
  const parts = heatOfStages(balance);
  const { furnace, melts } = balance;
  const { fire } = better;
  const air_kg_s = (reserve * melts.first.power_W * fire.air_kg_kg) / fire.fuel.lower_heat_J_kg;
  const useful = ({ fire: one }: PricedFire, flue_K: number) => ({
    useful_J_kg: one.left(flue_K) * one.fuel.lower_heat_J_kg,
    air_kg_kg: one.air_kg_kg,
  });
  const stages = parts.map(({ face_K, heat_J }): Stage => {
    const flue_K = face_K - furnace.drop_dK;
    const net_power_W = melts.first.power_W * fire.left(flue_K);
    return {
      flue_K,
      net_power_W,
      duration_s: heat_J / net_power_W,
      air_kg_s,
      cheap: useful(cheap, flue_K),
      better: useful(better, flue_K),
    };
  });
  const price = ({ price_USD_kg, fire: one }: PricedFire) => ({
    price_USD_per_kg: price_USD_kg,
    ash_share: one.fuel.ash,
  });
  const staging = stageFuels({ cheap: price(cheap), better: price(better), stages, ash_limit_kg });
  const cost = (cheapBelow_K: number) =>
    stages.reduce((sum, stage, at) => {
      const one = parts[at]!.face_K < cheapBelow_K ? 'cheap' : 'better';
      const paid = one === 'cheap' ? cheap.price_USD_kg : better.price_USD_kg;
      return sum + (paid * stage.net_power_W * stage.duration_s) / stage[one].useful_J_kg;
    }, 0);
  return {
    staging,
    stages,
    switch_K: switchOf(staging, parts),
    cost_cheap_USD: cost(Number.POSITIVE_INFINITY),
    cost_better_USD: cost(0),
    cost_trade_USD: cost(tradeSwitch_K),
  };
}

interface StageHeat {
  /** In the middle of it, and at its end. */
  readonly face_K: number;
  readonly end_K: number;
  readonly heat_J: number;
}

function switchOf({ stages }: Staging, parts: readonly StageHeat[]): number | undefined {
  const last = stages.findLastIndex(({ cheap_share }) => cheap_share > 0.5);
  return last === -1 || last === stages.length - 1 ? undefined : parts[last]!.end_K;
}

function heatOfStages({ furnace, melts, ends }: Balance): readonly StageHeat[] {
  const { air_K, hot_K, charge, side_m2 } = furnace;
  const { first, run } = melts;
  const whole_J = charge.metal_J + charge.crucible_J;
  const switched_K = tradeSwitch_K < hot_K - 20 ? tradeSwitch_K : (air_K + hot_K) / 2;
  const marks_K = [air_K, (air_K + switched_K) / 2, switched_K, (switched_K + hot_K) / 2, hot_K];
  const wall_J = (at_s: number) => side_m2 * (1 + ends) * between(run.time_s, run.in_J_m2, at_s);
  /** Taken until the face is so hot on its way up. */
  const until = (face_K: number): number => {
    if (face_K <= air_K) return 0;
    const at_s = (first.climb_s * (face_K - air_K)) / (hot_K - air_K);
    const after_K = chargeAfterClimb_K(charge, { from_K: air_K, to_K: face_K, ramp_s: at_s });
    return (
      wall_J(at_s) + openings_W({ ...furnace, hot_K: face_K }, air_K) * at_s + whole_J * shareOfWay(charge, after_K)
    );
  };
  const climb = marks_K.slice(1).map((end_K, at): StageHeat => {
    const from_K = marks_K[at]!;
    return { face_K: (from_K + end_K) / 2, end_K, heat_J: until(end_K) - until(from_K) };
  });
  const held_J =
    wall_J(first.time_s) -
    wall_J(first.climb_s) +
    openings_W(furnace, hot_K) * first.hold_s +
    whole_J -
    chargeTook_J(furnace, { from_K: air_K, charge }, first.climb_s);
  return first.hold_s > 0 && held_J > 0 ? [...climb, { face_K: hot_K, end_K: hot_K, heat_J: held_J }] : climb;
}

/** A running total between step ends. */
function between(time_s: Float64Array, total: Float64Array, at_s: number): number {
  const end = time_s.findIndex((one) => one >= at_s - 1e-6);
  if (end <= 0) return end === 0 ? total[0]! : total.at(-1)!;
  const share = (at_s - time_s[end - 1]!) / (time_s[end]! - time_s[end - 1]!);
  return total[end - 1]! + share * (total[end]! - total[end - 1]!);
}
