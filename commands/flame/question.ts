import { AskError } from '../../core/ask-error.ts';
import { saturatedVapour_Pa } from '../../core/fire/air/atmosphere.ts';
import type { Fuel } from '../../core/fire/fuel/fuel.ts';
import { asFired } from '../../core/fire/fuel/fuel-as-fired.ts';
import { dryAshFreeSpread_J_kg, heatAsFired_J_kg } from '../../core/fire/fuel/fuel-spread.ts';
import { type AvailableHeat, availableHeat } from '../../core/fire/gas/available-heat.ts';
import { type Flame, flame } from '../../core/fire/gas/flame.ts';
import { excessAirFromOxygen } from '../../core/fire/gas/flue.ts';
import { DRY_AIR, oxidiser } from '../../core/fire/gas/mixture.ts';
import { exactly, type Spread } from '../../core/materials/spread.ts';
import { about } from '../options.ts';
import { readFuel } from './fuel.ts';
import type { FlameOptions } from './options.ts';

const NORMAL_PA = 101_325;
const ROOM_K = 293.15;
/** Warmer air was warmed by the furnace: it holds the water of the air outside. */
const WARMEST_OUTSIDE_K = 318.15;
/** Usual excess air of a well set fire. Common practice. */
const USUAL_EXCESS = { gas: 0.1, liquid: 0.2, solid: 0.2 } as const;
/** A cheap cell in a hot flue, share of oxygen. From memory. */
const METER_SHARE = 0.004;
const USUAL_FLUE_K = 1273.15;
/** With a good lid gas leaves as hot as the face or up to this much below. Common practice. */
const BELOW_FACE_dK = 100;

/** What is sampled. */
export interface FlameInputs {
  readonly excess_air: number;
  readonly flue_K: number;
  readonly dry_J_kg: number;
  readonly ash: number;
  readonly moisture: number;
}
export type FlameSpreads = Readonly<Record<keyof FlameInputs, Spread>>;

export interface FlameQuestion {
  readonly fuel: Fuel;
  readonly spreads: FlameSpreads;
  readonly air_K: number;
  readonly oxygen_share: number;
  readonly water_share: number;
}

export const typicalOf = ({ spreads }: FlameQuestion): FlameInputs => ({
  excess_air: spreads.excess_air.typical,
  flue_K: spreads.flue_K.typical,
  dry_J_kg: spreads.dry_J_kg.typical,
  ash: spreads.ash.typical,
  moisture: spreads.moisture.typical,
});

export function flameQuestion(options: FlameOptions): FlameQuestion {
  const fuel = about('fuel', () => readFuel(options.fuel));
  if (options.excess && options.reads) throw bothGiven(options);
  const air_K = options.air?.si ?? ROOM_K;
  const outside_K = air_K <= WARMEST_OUTSIDE_K && air_K >= 253.15 ? air_K : ROOM_K;
  const water_share = ((options.humidity?.si ?? 0.5) * saturatedVapour_Pa({ air_K: outside_K })) / NORMAL_PA;
  const oxygen_share = options.oxygen?.si ?? DRY_AIR.O2;
  // Refused with a gas, and with more ash and water than there is fuel.
  const own = {
    ...(options.ash ? { ash: options.ash.si } : {}),
    ...(options.moisture ? { moisture: options.moisture.si } : {}),
  };
  const fired = asFired({ fuel, ...own });
  const blast = oxidiser({ oxygen_share, water_share });
  const excess = (dry_oxygen: number) => about('reads', () => excessAirFromOxygen({ fuel: fired, dry_oxygen, blast }));
  return {
    fuel,
    air_K,
    oxygen_share,
    water_share,
    spreads: {
      excess_air: options.reads
        ? {
            low: excess(Math.max(0, options.reads.si - METER_SHARE)),
            typical: excess(options.reads.si),
            high: excess(Math.min(options.reads.si + METER_SHARE, (options.reads.si + oxygen_share) / 2)),
          }
        : exactly(options.excess?.si ?? USUAL_EXCESS[fuel.kind]),
      flue_K: flueOf(options),
      dry_J_kg: heatSpread(fuel),
      ash: own.ash === undefined ? fuel.ash : exactly(own.ash),
      moisture: own.moisture === undefined ? fuel.moisture : exactly(own.moisture),
    },
  };
}

/** Of a pure gas the heat is known far better than what is made of it. */
function heatSpread(fuel: Fuel): Spread {
  const spread = dryAshFreeSpread_J_kg(fuel);
  const known = fuel.kind === 'gas' && spread.high - spread.low < 0.02 * spread.typical;
  return known ? exactly(spread.typical) : spread;
}

function flueOf({ flue, hot }: FlameOptions): Spread {
  if (flue) return exactly(flue.si);
  if (hot) return { low: hot.si - BELOW_FACE_dK, typical: hot.si - BELOW_FACE_dK / 2, high: hot.si };
  return exactly(USUAL_FLUE_K);
}

/** Gas is fired as it is: its heat follows from its gases. */
const heatOf = (fuel: Fuel, { dry_J_kg, ash, moisture }: FlameInputs) =>
  fuel.kind === 'gas'
    ? { lower_heat_J_kg: dry_J_kg }
    : { ash, moisture, lower_heat_J_kg: heatAsFired_J_kg({ dry_J_kg, ash, moisture }) };

export function flameOf({ fuel, air_K, oxygen_share, water_share }: FlameQuestion, inputs: FlameInputs): Flame {
  return about('excess', () =>
    flame({ fuel, excess_air: inputs.excess_air, oxygen_share, water_share, air_K, ...heatOf(fuel, inputs) }),
  );
}

/** @throws AskError where it smokes: too little air even for CO. */
export function heatLeft(
  { fuel, air_K, oxygen_share, water_share }: FlameQuestion,
  inputs: FlameInputs,
): AvailableHeat {
  try {
    return availableHeat({
      fuel: asFired({ fuel, ...heatOf(fuel, inputs) }),
      ratio: { excess_air: inputs.excess_air },
      blast: oxidiser({ oxygen_share, water_share }),
      air_K,
      flue_K: inputs.flue_K,
    });
  } catch (error) {
    throw error instanceof AskError && error.option === 'ratio'
      ? error.with({ option: 'excess', example: '-10%' })
      : error;
  }
}

const bothGiven = ({ excess, reads }: FlameOptions) =>
  new AskError({
    code: 'ambiguous',
    what: `both excess air (${excess?.text}) and an oxygen reading (${reads?.text}) are given, and each gives the other`,
    expected: 'one of them',
    example: 'flame propane reads=3%',
  });
