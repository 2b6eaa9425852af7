import { asFired } from '../fire/fuel/fuel-as-fired.ts';
import type { Fuel } from '../fire/fuel/fuel-schema.ts';
import { heatAsFired_J_kg } from '../fire/fuel/fuel-spread.ts';
import { openingLoss_W } from '../heat/opening.ts';
import {
  airDoubt,
  boreRuns,
  type Draw,
  type Fineness,
  shortName,
  type WallModel,
  type WallQuestion,
  wallModel,
} from '../heat/wall-question.ts';
import type { Phase } from '../heat/wall-run.ts';
import { exactly, type Spread } from '../materials/spread.ts';
import type { Charge } from './balance-charge.ts';
import type { Furnace } from './balance-climb.ts';
import { type Fire, fireOf, ratioForCo } from './balance-fire.ts';

/** How the fire is set, each with its doubt. */
export interface FiringQuestion {
  readonly fuel: Fuel;
  readonly ash: Spread;
  readonly moisture: number;
  /** Lower heat of the dry, ash-free matter, see `dryAshFreeSpread_J_kg`. */
  readonly dry_J_kg: Spread;
  /** Air beyond the need, or the share of the carbon that leaves as CO. */
  readonly air: { readonly excess_air: Spread } | { readonly co_share: Spread };
  /** How far the flue is below the hot face; above it where negative. */
  readonly drop_dK: Spread;
  /** Heat of the fuel, what the blower gives, or how long the climb takes. */
  readonly rate: { readonly power_W: Spread } | { readonly air_kg_s: Spread } | { readonly climb_s: number };
  readonly price_USD_kg?: Spread;
}

export interface ChargeQuestion {
  readonly metal_J: Spread;
  readonly crucible_J: Spread;
  readonly crucible_m2: number;
  readonly film_W_m2K: Spread;
  readonly start_K: number;
  readonly pour_K: number;
}

export interface BalanceQuestion {
  /** How long it climbs and holds is found, not read. */
  readonly wall: WallQuestion;
  readonly firing: FiringQuestion;
  readonly charge: ChargeQuestion;
  readonly tuyere_radius_m: number;
  /** Between two melts, of which the lid is off for `wall.lid_off_s`. */
  readonly pause_s: number;
}

/** Put back from the tongs a crucible has kept part of its heat; judged. */
export const crucibleAgain = 0.4;

export const doubts = {
  drop: 'how hot the gas leaves',
  power: 'how hard it is fired',
  co: 'the carbon that leaves as CO',
  excess: 'the excess air',
  ash: 'its ash',
  dry: 'its heating value',
  metal: 'the heat that the metal takes',
  crucible: 'the heat that the crucible takes',
  film: 'how fast the crucible takes heat',
  ends: 'what lid and floor take',
  price: 'its price',
} as const;

export interface BalanceModel {
  readonly question: BalanceQuestion;
  readonly wall: WallModel;
  /** At most as many as there are Halton dimensions. */
  readonly inputs: Readonly<Record<string, Spread>>;
  readonly typical: Draw;
  readonly fire: (draw: Draw) => Fire;
  readonly furnace: (draw: Draw, fineness: Fineness) => Furnace;
}

/** Layers whose doubts are sampled: what lies deeper is hardly reached by a melt. */
const sampledLayers = 2;
/** Of what lid and floor take, computed for the typical firing only. */
const endsSpread = { low: 0.85, typical: 1, high: 1.15 };

/**
 * A balance ready for any draw of its doubts. `ends` is what lid and floor take of what the side takes, see `endsShare`;
 * `moved` puts the typical draw where measurements want it.
 */
export function balanceModel(
  question: BalanceQuestion,
  ends: number,
  moved: (draw: Draw) => Draw = (draw) => draw,
): BalanceModel {
  const { firing, charge } = question;
  const wall = wallModel(question.wall);
  const inputs: Record<string, Spread> = { ...wallDoubts(wall), ...firingDoubts(firing) };
  inputs[doubts.metal] = charge.metal_J;
  inputs[doubts.crucible] = charge.crucible_J;
  inputs[doubts.film] = charge.film_W_m2K;
  inputs[doubts.ends] = ends > 0 ? { ...endsSpread } : exactly(1);
  if (firing.price_USD_kg) inputs[doubts.price] = firing.price_USD_kg;
  const typical: Draw = moved(
    Object.fromEntries(Object.entries(inputs).map(([name, { typical: value }]) => [name, value])),
  );
  const fire = (draw: Draw) => fireFor(question, draw);
  const opening_W_K4 = openings_W_K4(question);
  const pause = pauseOf(wall, question.pause_s);
  return {
    question,
    wall,
    inputs,
    typical,
    fire,
    furnace: (draw, fineness) => {
      const burning = fire(draw);
      const { phases: _, until_shell_below_K: __, ...input } = wall.input({ ...wall.typical, ...draw }, fineness);
      return {
        wall: input,
        side_m2: wall.inner_m2,
        ends: ends * draw[doubts.ends]!,
        opening_W_K4,
        air_K: wall.typical[airDoubt]!,
        hot_K: draw[boreRuns]!,
        fire: burning,
        drop_dK: draw[doubts.drop]!,
        firing: rateOf(firing, draw, burning),
        charge: chargeOf(charge, draw, 1),
        charge_again: chargeOf(charge, draw, crucibleAgain),
        pause,
      };
    },
  };
}

const chargeOf = ({ crucible_m2, start_K, pour_K }: ChargeQuestion, draw: Draw, crucible: number): Charge => ({
  metal_J: draw[doubts.metal]!,
  crucible_J: crucible * draw[doubts.crucible]!,
  film_W_m2K: draw[doubts.film]!,
  crucible_m2,
  start_K,
  pour_K,
});

function wallDoubts({ inputs, layers }: WallModel): Record<string, Spread> {
  const names = layers.slice(0, sampledLayers).map(({ material }) => shortName(material.name));
  const kept = Object.entries(inputs).filter(
    ([name]) =>
      name === boreRuns ||
      names.some((layer) => name === `how well the ${layer} conducts` || name === `how dense the ${layer} stands`),
  );
  return Object.fromEntries(kept);
}

function firingDoubts({ ash, dry_J_kg, air, drop_dK, rate }: FiringQuestion): Record<string, Spread> {
  return {
    [doubts.drop]: drop_dK,
    ...('excess_air' in air ? { [doubts.excess]: air.excess_air } : { [doubts.co]: air.co_share }),
    ...('power_W' in rate ? { [doubts.power]: rate.power_W } : {}),
    ...('air_kg_s' in rate ? { [doubts.power]: rate.air_kg_s } : {}),
    [doubts.ash]: ash,
    [doubts.dry]: dry_J_kg,
  };
}

function fireFor({ firing, wall }: BalanceQuestion, draw: Draw): Fire {
  const { fuel, moisture } = firing;
  const ash = draw[doubts.ash]!;
  const dry_J_kg = draw[doubts.dry]!;
  const burnt = asFired({ fuel, ash, moisture, lower_heat_J_kg: heatAsFired_J_kg({ dry_J_kg, ash, moisture }) });
  const co = draw[doubts.co];
  return fireOf({
    fuel: burnt,
    ratio: co === undefined ? { excess_air: draw[doubts.excess]! } : ratioForCo(burnt, co),
    air_K: wall.air_K.typical,
    hottest_K: Math.min(2100, Math.max(wall.hot_K.high - Math.min(0, firing.drop_dK.low), 600)),
  });
}

function rateOf({ rate }: FiringQuestion, draw: Draw, { fuel, air_kg_kg }: Fire): Furnace['firing'] {
  if ('climb_s' in rate) return { climb_s: rate.climb_s };
  const drawn = draw[doubts.power]!;
  return { power_W: 'power_W' in rate ? drawn : (drawn / air_kg_kg) * fuel.lower_heat_J_kg };
}

/** Vent through the lid, tuyere through the wall, per K⁴ between bore and air. */
function openings_W_K4({ wall, tuyere_radius_m }: BalanceQuestion): number {
  const thickness = (layers: WallQuestion['layers']) => layers.reduce((sum, { thickness_m }) => sum + thickness_m, 0);
  const at = { cavity_K: 1000, air_K: 0 };
  const vent_radius_m = Math.min(wall.vent_radius_m, wall.bore_m / 2);
  const vent_W = openingLoss_W({ radius_m: vent_radius_m, depth_m: thickness(wall.lid), ...at });
  const tuyere_W = openingLoss_W({ radius_m: tuyere_radius_m, depth_m: thickness(wall.layers), ...at });
  return (vent_W + tuyere_W) / 1000 ** 4;
}

/** The drives of the wall's own cooling, cut to the pause. */
function pauseOf(wall: WallModel, pause_s: number): readonly Phase[] {
  const { phases } = wall.input(wall.typical, { cells: 5, tolerance_dK: 3 });
  const [, ...cooling] = phases;
  const off_s = Math.min(wall.question.lid_off_s, pause_s);
  const open = off_s > 0 ? cooling[0] : undefined;
  const closed = off_s < pause_s ? cooling.at(-1) : undefined;
  return [
    ...(open ? [{ until_s: off_s, drive: open.drive }] : []),
    ...(closed ? [{ until_s: pause_s, drive: closed.drive }] : []),
  ];
}
