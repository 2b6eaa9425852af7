import { AskError } from '../ask-error.ts';
import { type Range, sampleDoubt } from '../doubt/sample.ts';
import { asFired } from '../fire/fuel/fuel-as-fired.ts';
import type { Fuel } from '../fire/fuel/fuel-schema.ts';
import { dryAshFreeSpread_J_kg, heatAsFired_J_kg } from '../fire/fuel/fuel-spread.ts';
import type { Pour } from '../materials/pour.ts';
import { exactly, type Spread } from '../materials/spread.ts';
import { efficiencies } from '../melt/fuel-efficiency.ts';
import { meltHeat_J_kg, pourFor } from '../melt/melt-heat.ts';
import type { Step, WithSteps } from '../step.ts';
import { readingErrors } from './log-data.ts';

/** One firing as it was logged. */
export interface Burn {
  readonly fuel: Fuel;
  readonly fuel_kg: number;
  /** Nothing where it was fired empty. */
  readonly melted?: { readonly metal: Pour; readonly mass_kg: number; readonly pour_K?: number };
  /** Crucibles one after the other in this burn. */
  readonly melts: number;
  readonly time_s?: number;
}

export interface Burned extends WithSteps {
  readonly fuel_J: number;
  readonly metal_J: number;
  /** Heat of the metal over the lower heat of the fuel; nothing where no metal was melted. */
  readonly efficiency?: { readonly value: number; readonly range: Range };
  /** Fuel over metal, by mass. */
  readonly fuel_per_metal?: number;
  /** Heat of the fuel over the time it burned. */
  readonly power_W?: number;
  /** What is told of such melts, and of crucible furnaces fired with gas. */
  readonly told: Spread;
}

const start_K = 293.15;
const inputNames = {
  dry: 'its heating value',
  ash: 'its ash',
  fuel: 'the fuel weighed',
  metal: 'the metal weighed',
  pour: 'the pour',
  correction: 'the heat of the alloy',
} as const;

/**
 * What a burn made of its fuel: efficiency = metal × heat to the pour ÷ (fuel × lower heating value), from 20 °C; central
 * 95 % over heating value, ash, scale, pour and alloy. What the lining stored counts as lost, so one melt from cold is
 * poor by nature. Source: heat balance, derived; heats by `meltHeat_J_kg` and the fuel's own data.
 * @throws AskError `impossible` where the metal took more heat than the best such fuel holds.
 */
export function burned(burn: Burn): Burned {
  const { fuel, fuel_kg, melted, melts, time_s } = burn;
  const { ash, moisture } = fuel;
  const dry_J_kg = dryAshFreeSpread_J_kg(fuel);
  const lower_J_kg = asFired({ fuel }).lower_heat_J_kg;
  const fuel_J = fuel_kg * lower_J_kg;
  const told = melts > 1 ? efficiencies.repeated : efficiencies.single;
  const power = time_s === undefined ? {} : { power_W: fuel_J / time_s };
  const timed = (): readonly Step[] =>
    time_s === undefined
      ? []
      : [
          {
            formula: 'power = heat of the fuel ÷ time',
            inputs: { heat_of_the_fuel_J: fuel_J, time_s },
            gives: { power_W: fuel_J / time_s },
            source: 'derived',
          },
        ];
  const fuelStep: Step = {
    formula: 'heat of the fuel = fuel × lower heating value',
    inputs: { fuel_kg, lower_heating_value_J_kg: lower_J_kg },
    gives: { heat_of_the_fuel_J: fuel_J },
    source: fuel.lower_heat_J_kg.source,
  };
  if (!melted) return { fuel_J, metal_J: 0, ...power, told, steps: () => [fuelStep, ...timed()] };
  const { metal, mass_kg } = melted;
  const pour = melted.pour_K === undefined ? pourFor(metal, 'medium') : exactly(melted.pour_K);
  const heat_J_kg = (pour_K: number, correction_J_kg: number) =>
    meltHeat_J_kg({ alloy: metal, from_K: start_K, pour_K, correction_J_kg });
  const correction = metal.melting_correction_J_kg;
  const melt_J_kg = heat_J_kg(pour.typical, correction.typical);
  // Liquid metal heats in a straight line, and its correction is a plain sum.
  const liquid_J_kgK =
    pour.high > pour.low ? (heat_J_kg(pour.high, 0) - heat_J_kg(pour.low, 0)) / (pour.high - pour.low) : 0;
  const drawn_J_kg = (pour_K: number, correction_J_kg: number) =>
    melt_J_kg + liquid_J_kgK * (pour_K - pour.typical) + correction_J_kg - correction.typical;
  const metal_J = mass_kg * melt_J_kg;
  const value = metal_J / fuel_J;
  refuseMoreThanAll(burn, melted, {
    metal_J: mass_kg * heat_J_kg(pour.low, correction.low),
    fuel_J: fuel_kg * Math.max(lower_J_kg, fuel.lower_heat_J_kg.high),
    pour_K: pour.typical,
  });
  const weighed = (share: number): Spread => ({ low: 1 - share, typical: 1, high: 1 + share });
  const { ranges } = sampleDoubt({
    inputs: {
      [inputNames.dry]: dry_J_kg,
      [inputNames.ash]: ash,
      [inputNames.fuel]: weighed(readingErrors.fuel.value),
      [inputNames.metal]: weighed(readingErrors.metal.value),
      [inputNames.pour]: pour,
      [inputNames.correction]: correction,
    },
    model: (draw) => ({
      efficiency:
        (draw[inputNames.metal]! * mass_kg * drawn_J_kg(draw[inputNames.pour]!, draw[inputNames.correction]!)) /
        (draw[inputNames.fuel]! *
          fuel_kg *
          heatAsFired_J_kg({
            dry_J_kg: draw[inputNames.dry]!,
            ash: draw[inputNames.ash]!,
            moisture: moisture.typical,
          })),
    }),
    samples: 500,
  });
  return {
    fuel_J,
    metal_J,
    efficiency: { value, range: ranges.efficiency ?? { low: value, high: value } },
    fuel_per_metal: fuel_kg / mass_kg,
    ...power,
    told,
    steps: (): readonly Step[] => [
      fuelStep,
      {
        formula: 'heat of the metal = metal × heat to the pour',
        inputs: { metal_kg: mass_kg, heat_to_the_pour_J_kg: melt_J_kg },
        gives: { heat_of_the_metal_J: metal_J },
        source: correction.source,
      },
      {
        formula: 'efficiency = heat of the metal ÷ heat of the fuel; fuel per metal = fuel ÷ metal',
        inputs: { heat_of_the_metal_J: metal_J, heat_of_the_fuel_J: fuel_J, fuel_kg, metal_kg: mass_kg },
        gives: { efficiency: value, fuel_per_metal: fuel_kg / mass_kg },
        source: 'derived',
      },
      ...timed(),
    ],
  };
}

/** Judged by the most careful reading of both. */
function refuseMoreThanAll(
  { fuel, fuel_kg }: Burn,
  { metal, mass_kg }: NonNullable<Burn['melted']>,
  { metal_J, fuel_J, pour_K }: { readonly metal_J: number; readonly fuel_J: number; readonly pour_K: number },
): void {
  if (metal_J <= fuel_J) return;
  const MJ = (joules: number) => `${Number((joules / 1e6).toPrecision(2))} MJ`;
  const least_kg = (fuel_kg * metal_J) / (fuel_J * efficiencies.repeated.high);
  const kg = (mass: number) => `${Number(mass.toPrecision(2))} kg`;
  throw new AskError({
    code: 'impossible',
    what: `${kg(mass_kg)} of ${metal.name} takes at least ${MJ(metal_J)} to ${Math.round(pour_K - 273.15)} °C, and ${kg(fuel_kg)} of ${fuel.name} holds ${MJ(fuel_J)} at most: that is an efficiency of ${Math.round((100 * metal_J) / fuel_J)} %`,
    expected: `more fuel or less metal: at ${Math.round(efficiencies.repeated.high * 100)} %, which few reach, ${kg(least_kg)} of fuel`,
    example: `${kg(least_kg)} ${fuel.id.replaceAll('-', ' ')}`,
    option: 'fuel',
  });
}
