import { AskError } from '../../ask-error.ts';
import { formatBoth, formatSi } from '../../quantity/format.ts';
import type { Step, WithSteps } from '../../step.ts';
import { within } from '../within.ts';

/** What one fuel does at one stage, worked out from its available heat at that stage's flue temperature. */
export interface StageFuel {
  /** Heat left for the furnace per kg of fuel as weighed. */
  readonly useful_J_kg: number;
  /** Air per kg of fuel as weighed. */
  readonly air_kg_kg: number;
}

export interface Stage {
  readonly flue_K: number;
  readonly duration_s: number;
  /** What metal, lining and losses take. */
  readonly net_power_W: number;
  /** The most the blower delivers through the bed. */
  readonly air_kg_s: number;
  readonly cheap: StageFuel;
  readonly better: StageFuel;
}

export interface FuelPrice {
  readonly price_USD_per_kg: number;
  readonly ash_share: number;
}

export interface StagingInput {
  readonly cheap: FuelPrice;
  readonly better: FuelPrice;
  readonly stages: readonly Stage[];
  /** Ash the bed holds before it chokes the blast. */
  readonly ash_limit_kg: number;
}

export interface StagePlan {
  /** Share of this stage's heat that the cheap fuel gives. */
  readonly cheap_share: number;
  readonly cheap_kg: number;
  readonly better_kg: number;
  /** The cheap fuel pays below this price per kg over the better one's. */
  readonly break_even_ratio: number;
}

export interface Staging extends WithSteps {
  readonly stages: readonly StagePlan[];
  readonly cheap_kg: number;
  readonly better_kg: number;
  readonly cost_USD: number;
  readonly ash_kg: number;
  /** What one more kilogram of ash would save; 0 where ash does not bind. */
  readonly ash_worth_USD_per_kg: number;
}

/** Price ratio (cheap/better, per kg) at which both give useful heat at the same cost: the ratio of their useful heats. */
export const breakEvenRatio = ({ cheap, better }: Pick<Stage, 'cheap' | 'better'>): number =>
  cheap.useful_J_kg / better.useful_J_kg;

/**
 * Two fuels over the stages of a melt at the least cost: each stage's heat is met, the blast suffices (air-limited
 * power), and the ash stays below what the bed holds. Every stage's cheap share lies in an interval and one linear limit joins
 * them, so filling them by saving per kg of ash is exact. Source: linear programme, derived here.
 * @throws AskError `impossible` where neither fuel reaches a stage's power, or even the least ash is too much; `out-of-range`.
 */
export function stageFuels({ cheap, better, stages, ash_limit_kg }: StagingInput): Staging {
  if (stages.length === 0) throw noStage();
  within({ ash_limit_kg }, { low: 0, high: 100, example: '1 kg' });
  within({ ash_share: cheap.ash_share }, { low: 0, high: 0.5, example: '20%' });
  within({ ash_share: better.ash_share }, { low: 0, high: 0.5, example: '4%' });
  const options = stages.map((stage) => optionOf(stage, cheap, better));
  const shares = options.map(cheapestShare);
  const ashOf = () =>
    options.reduce((sum, { ash_kg, ash_per_share_kg }, at) => sum + ash_kg + ash_per_share_kg * shares[at]!, 0);
  let over_kg = ashOf() - ash_limit_kg;
  let ash_worth_USD_per_kg = 0;
  // Give up ash where it saved least.
  for (const { at, worth } of givingUp(options, shares)) {
    if (over_kg <= 1e-12) break;
    const { low, high, ash_per_share_kg } = options[at]!;
    const end = ash_per_share_kg > 0 ? low : high;
    const move = Math.min(1, over_kg / (ash_per_share_kg * (shares[at]! - end)));
    over_kg -= move * ash_per_share_kg * (shares[at]! - end);
    shares[at]! += move * (end - shares[at]!);
    ash_worth_USD_per_kg = worth;
  }
  if (over_kg > 1e-9) throw tooMuchAsh(ashOf(), ash_limit_kg);
  return planOf(stages, shares, { cheap, better, ash_kg: ashOf(), ash_worth_USD_per_kg });
}

interface Option {
  readonly low: number;
  readonly high: number;
  /** Ash with no cheap fuel, and what a share of 1 adds. */
  readonly ash_kg: number;
  readonly ash_per_share_kg: number;
  readonly cost_per_share_USD: number;
}

function optionOf(stage: Stage, cheap: FuelPrice, better: FuelPrice): Option {
  const { duration_s, net_power_W, air_kg_s } = stage;
  within({ net_power_W }, { low: 0, high: 1e6, example: '5 kW' });
  within({ duration_s }, { low: 0, high: 1e6, example: '20 min' });
  for (const { useful_J_kg } of [stage.cheap, stage.better]) {
    if (!(useful_J_kg > 0)) throw noUsefulHeat(stage, useful_J_kg);
  }
  const heat_J = net_power_W * duration_s;
  const airBetter = (net_power_W * stage.better.air_kg_kg) / stage.better.useful_J_kg;
  const airCheap = (net_power_W * stage.cheap.air_kg_kg) / stage.cheap.useful_J_kg;
  const ash_kg = (heat_J / stage.better.useful_J_kg) * better.ash_share;
  const perShare = { cheap: heat_J / stage.cheap.useful_J_kg, better: heat_J / stage.better.useful_J_kg };
  return {
    ...feasible(airBetter, airCheap, air_kg_s, stage),
    ash_kg,
    ash_per_share_kg: perShare.cheap * cheap.ash_share - ash_kg,
    cost_per_share_USD: perShare.cheap * cheap.price_USD_per_kg - perShare.better * better.price_USD_per_kg,
  };
}

/** Cheap shares x in 0…1 with (1 − x)·airBetter + x·airCheap ≤ air. */
function feasible(airBetter: number, airCheap: number, air: number, stage: Stage): { low: number; high: number } {
  if (Math.min(airBetter, airCheap) > air) throw tooWeak(stage, Math.min(airBetter, airCheap));
  const even = (air - airBetter) / (airCheap - airBetter);
  return { low: airBetter > air ? even : 0, high: airCheap > air ? even : 1 };
}

const cheapestShare = ({ cost_per_share_USD, low, high }: Option): number => (cost_per_share_USD < 0 ? high : low);

/** Stages where moving back frees ash, the cheapest kilogram first; of equals the last stage: cheap first, better later. */
function givingUp(options: readonly Option[], shares: readonly number[]): readonly { at: number; worth: number }[] {
  return options
    .map(({ cost_per_share_USD, ash_per_share_kg, low, high }, at) => {
      const movable = ash_per_share_kg > 0 ? shares[at]! > low : ash_per_share_kg < 0 && shares[at]! < high;
      return { at, movable, worth: Number((-cost_per_share_USD / ash_per_share_kg).toPrecision(9)) };
    })
    .filter(({ movable }) => movable)
    .sort((a, b) => a.worth - b.worth || b.at - a.at);
}

function planOf(
  stages: readonly Stage[],
  shares: readonly number[],
  {
    cheap,
    better,
    ash_kg,
    ash_worth_USD_per_kg,
  }: Pick<StagingInput, 'cheap' | 'better'> & Pick<Staging, 'ash_kg' | 'ash_worth_USD_per_kg'>,
): Staging {
  const plans = stages.map((stage, at): StagePlan => {
    const cheap_share = shares[at]!;
    const heat_J = stage.net_power_W * stage.duration_s;
    return {
      cheap_share,
      cheap_kg: (cheap_share * heat_J) / stage.cheap.useful_J_kg,
      better_kg: ((1 - cheap_share) * heat_J) / stage.better.useful_J_kg,
      break_even_ratio: breakEvenRatio(stage),
    };
  });
  const cheap_kg = plans.reduce((sum, plan) => sum + plan.cheap_kg, 0);
  const better_kg = plans.reduce((sum, plan) => sum + plan.better_kg, 0);
  const cost_USD = cheap_kg * cheap.price_USD_per_kg + better_kg * better.price_USD_per_kg;
  return {
    stages: plans,
    cheap_kg,
    better_kg,
    cost_USD,
    ash_kg,
    ash_worth_USD_per_kg,
    steps: (): readonly Step[] => [
      ...plans.map(
        ({ cheap_share, cheap_kg, better_kg, break_even_ratio }, at): Step => ({
          formula: 'fuel = share of the heat × power × time / useful heat per kg',
          inputs: { flue_K: stages[at]!.flue_K, net_power_W: stages[at]!.net_power_W, cheap_share, break_even_ratio },
          gives: { cheap_kg, better_kg },
          source: 'derived',
        }),
      ),
      {
        formula: 'cost = Σ price × mass, the least that meets power and ash',
        inputs: { cheap_kg, better_kg, ash_kg },
        gives: { cost_USD },
        source: 'derived',
      },
    ],
  };
}

const noStage = () =>
  new AskError({
    code: 'missing',
    what: 'there is no stage to heat',
    expected: 'at least one stage with its power and time',
    example: '20 min',
  });

const noUsefulHeat = ({ flue_K }: Stage, useful_J_kg: number) =>
  new AskError({
    code: 'impossible',
    what: `at a flue of ${formatBoth(flue_K, 'K', 'metric')} a fuel leaves ${formatBoth(useful_J_kg, 'J/kg', 'metric')}: nothing for the furnace`,
    expected: 'less excess air, hotter blast or a cooler flue',
    example: '10%',
  });

const tooWeak = ({ net_power_W, air_kg_s, flue_K }: Stage, needed_kg_s: number) =>
  new AskError({
    code: 'impossible',
    what: `${formatBoth(net_power_W, 'W', 'metric')} at a flue of ${formatBoth(flue_K, 'K', 'metric')} takes ${formatBoth(needed_kg_s, 'kg/s', 'metric')} of air, and the blast gives ${formatBoth(air_kg_s, 'kg/s', 'metric')}`,
    expected: 'more air, or less power over a longer time',
    example: formatSi((net_power_W * air_kg_s) / needed_kg_s, 'W', 'metric'),
  });

const tooMuchAsh = (least_kg: number, limit_kg: number) =>
  new AskError({
    code: 'impossible',
    what: `even the fuel with less ash leaves ${formatBoth(least_kg, 'kg', 'metric')} of it, and the bed holds ${formatBoth(limit_kg, 'kg', 'metric')}`,
    expected: 'a fuel with less ash, a rake-out between melts or a shorter one',
    example: formatSi(least_kg, 'kg', 'metric'),
  });
