import { type Stage, type Staging, stageFuels } from '../fire/fuel/staging.ts';
import type { Balance } from './balance.ts';
import { RISE } from './balance-charge.ts';
import type { Fire } from './balance-fire.ts';

/** Where the trade changes from briquettes to lump: 1250 °F. Common practice, no source. */
export const tradeSwitch_K = 950;
/** What a blower has over what the melt takes; judged. */
const reserve = 1.25;
/** Ash as it lies, and how deep it may lie before it chokes the blast; judged. */
const ash_kg_m3 = 500;
const ashDeep_m = 0.025;

/** What is needed of a balance. */
export type FirstMelt = Pick<Balance, 'furnace'> & { readonly melts: Pick<Balance['melts'], 'first'> };

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
 * them, and its hold; each stage gets the same heat whichever fuel gives it. The cheapest split is `stageFuels`'.
 * @throws AskError `impossible` as `stageFuels` does.
 */
export function stageMelt(
  balance: FirstMelt,
  { cheap, better, ash_limit_kg }: { cheap: PricedFire; better: PricedFire; ash_limit_kg: number },
): StagedMelt {
  const { furnace, melts } = balance;
  const { first } = melts;
  const { fire } = better;
  const spans = spansOf(balance);
  const air_kg_s = (reserve * first.power_W * fire.air_kg_kg) / fire.fuel.lower_heat_J_kg;
  const stages = spans.map(({ from_K, to_K, duration_s, power_W }): Stage => {
    const left = (one: Fire) => one.meanLeft(from_K - furnace.drop_dK, to_K - furnace.drop_dK);
    const useful = ({ fire: one }: PricedFire) => ({
      useful_J_kg: left(one) * one.fuel.lower_heat_J_kg,
      air_kg_kg: one.air_kg_kg,
    });
    return {
      flue_K: (from_K + to_K) / 2 - furnace.drop_dK,
      duration_s,
      net_power_W: power_W * left(fire),
      air_kg_s,
      cheap: useful(cheap),
      better: useful(better),
    };
  });
  const price = ({ price_USD_kg, fire: one }: PricedFire) => ({
    price_USD_per_kg: price_USD_kg,
    ash_share: one.fuel.ash,
  });
  const staging = stageFuels({ cheap: price(cheap), better: price(better), stages, ash_limit_kg });
  const cost = (cheapTo_K: number) =>
    stages.reduce((sum, stage, at) => {
      const one = spans[at]!.to_K <= cheapTo_K ? 'cheap' : 'better';
      const paid = one === 'cheap' ? cheap.price_USD_kg : better.price_USD_kg;
      return sum + (paid * stage.net_power_W * stage.duration_s) / stage[one].useful_J_kg;
    }, 0);
  const last = staging.stages.findLastIndex(({ cheap_share }) => cheap_share > 0.5);
  return {
    staging,
    stages,
    switch_K: last === -1 || last === stages.length - 1 ? undefined : spans[last]!.to_K,
    cost_cheap_USD: cost(Number.POSITIVE_INFINITY),
    cost_better_USD: cost(0),
    cost_trade_USD: cost(tradeSwitch_K),
  };
}

/** The hot face over the first melt: four parts of the climb, and the hold where there is one. */
function spansOf({ furnace, melts: { first } }: FirstMelt) {
  const { air_K, hot_K } = furnace;
  const climbing_W = (first.fuel_J - first.hold_power_W * first.hold_s) / first.climb_s;
  const switch_K = tradeSwitch_K < hot_K - 20 ? tradeSwitch_K : (air_K + hot_K) / 2;
  const marks_K = [air_K, (air_K + switch_K) / 2, switch_K, (switch_K + hot_K) / 2, hot_K];
  const climb = marks_K.slice(1).map((to_K, at) => ({
    from_K: marks_K[at]!,
    to_K,
    duration_s: (RISE * first.climb_s * (to_K - marks_K[at]!)) / (hot_K - air_K),
    power_W: climbing_W,
  }));
  const still_s = (1 - RISE) * first.climb_s;
  const duration_s = still_s + first.hold_s;
  const power_W = (climbing_W * still_s + first.hold_power_W * first.hold_s) / duration_s;
  return [...climb, { from_K: hot_K, to_K: hot_K, duration_s, power_W }];
}
