import { airViscosity, humidAir, standardAtmosphere } from '../../core/fire/air/atmosphere.ts';
import type { BlastInput } from '../../core/fire/air/operating-point.ts';
import { contractionLoss, expansionLoss } from '../../core/fire/air/pipe.ts';
import { bedAir } from '../../core/fire/bed/bed-air.ts';
import { charcoalBeds } from '../../core/fire/data/charcoal-beds.ts';
import { fittings } from '../../core/fire/data/fittings.ts';
import type { Fuel } from '../../core/fire/fuel/fuel.ts';
import { type AsFired, asFired } from '../../core/fire/fuel/fuel-as-fired.ts';
import { dryAshFreeSpread_J_kg, heatAsFired_J_kg } from '../../core/fire/fuel/fuel-spread.ts';
import { exactly, type Spread } from '../../core/materials/spread.ts';
import { readQuantity } from '../../core/quantity/parse.ts';
import type { AnswerContext } from '../command.ts';
import { readFuel, redirect, refuseMetal } from '../flame/fuel.ts';
import { about } from '../options.ts';
import type { BlastOptions } from './options.ts';
import { readBlower, readPipe, type TypedBlower, type TypedPipe } from './read.ts';

export const usual = {
  fuel: 'lump charcoal',
  blower: 'hair dryer',
  pipe: { bore_m: 0.0381, length_m: 0.914, kind: 'steel pipe', roughness_m: 4.5e-5 },
  bore_m: 0.254,
  bed_m: 0.25,
  air_K: 293.15,
  humidity: 0.5,
} as const;
/** Over an oil fire's need. Common practice. */
const OIL_EXCESS: Spread = { low: 0.1, typical: 0.2, high: 0.4 };

/** What is sampled. */
export type BlastKey =
  | 'free_m3_s'
  | 'shut_Pa'
  | 'entrance'
  | 'bend'
  | 'friction'
  | 'lump_m'
  | 'void_share'
  | 'sphericity'
  | 'roughness_factor'
  | 'bed_K'
  | 'co_share'
  | 'excess_air'
  | 'ash'
  | 'moisture'
  | 'dry_J_kg';
export type BlastInputs = Readonly<Record<BlastKey, number>>;

/** What the fire is to have: one of these, or nothing. */
export type Need = { readonly flow_m3_s: number } | { readonly fuel_kg_s: number } | { readonly rate_W: number };

export interface BlastQuestion {
  readonly fuel: Fuel;
  readonly need?: Need;
  readonly blower: TypedBlower;
  readonly pipe: TypedPipe;
  readonly bends: number;
  readonly tuyere_m: number;
  readonly bed?: { readonly bore_m: number; readonly depth_m: number };
  readonly speed: number;
  readonly back_Pa: number;
  readonly air: Pick<BlastInput, 'air_K' | 'pressure_Pa' | 'density_kg_m3' | 'dry_density_kg_m3' | 'viscosity_Pa_s'>;
  readonly altitude_m: number;
  readonly spreads: Readonly<Record<BlastKey, Spread>>;
}

export function blastQuestion(options: BlastOptions, { units, commands }: AnswerContext): BlastQuestion {
  const { amount, fuel } = fuelOf(options, commands);
  const altitude_m = options.altitude?.si ?? 0;
  const pressure_Pa = standardAtmosphere({ altitude_m }).pressure_Pa;
  const air_K = options.air?.si ?? usual.air_K;
  const moist = humidAir({ air_K, pressure_Pa, humidity: options.humidity?.si ?? usual.humidity });
  const blower = about('blower', () => readBlower(options.blower ?? usual.blower));
  const pipe: TypedPipe = about('pipe', () =>
    options.pipe === undefined ? usual.pipe : readPipe(options.pipe, units),
  );
  const need = needOf(options, amount, moist.dry_density_kg_m3);
  const solid = fuel.kind === 'solid';
  return {
    fuel,
    ...(need ? { need } : {}),
    blower,
    pipe,
    bends: options.bends?.si ?? 0,
    tuyere_m: options.tuyere?.si ?? pipe.bore_m,
    ...(solid ? { bed: { bore_m: options.bore?.si ?? usual.bore_m, depth_m: options.bed?.si ?? usual.bed_m } } : {}),
    speed: options.speed?.si ?? 1,
    back_Pa: options.back?.si ?? 0,
    air: {
      air_K,
      pressure_Pa,
      density_kg_m3: moist.density_kg_m3,
      dry_density_kg_m3: moist.dry_density_kg_m3,
      viscosity_Pa_s: airViscosity({ air_K }),
    },
    altitude_m,
    spreads: {
      free_m3_s: blower.free_m3_s,
      shut_Pa: blower.shut_Pa,
      entrance: fittings['sharp entrance'],
      bend: options.bends ? fittings['threaded elbow'] : exactly(0),
      friction: pipe.friction ?? exactly(0),
      lump_m: options.lump ? exactly(options.lump.si) : charcoalBeds.lump_m,
      void_share: charcoalBeds.void_share,
      sphericity: charcoalBeds.sphericity,
      roughness_factor: charcoalBeds.roughness_factor,
      bed_K: charcoalBeds.bed_K,
      // With air left over nothing leaves as CO, unless both are said.
      co_share: options.co ? exactly(options.co.si) : solid && !options.excess ? charcoalBeds.co_share : exactly(0),
      excess_air: options.excess ? exactly(options.excess.si) : solid ? exactly(0) : OIL_EXCESS,
      ash: fuel.ash,
      moisture: fuel.moisture,
      dry_J_kg: dryAshFreeSpread_J_kg(fuel),
    },
  };
}

function fuelOf({ fuel: typed = usual.fuel }: BlastOptions, commands: AnswerContext['commands']) {
  refuseMetal(typed, 'blast', commands);
  const [, amount, name = typed] =
    /^([\d.,½¼¾/\s]+(?:kg|g|lbs?)\s?(?:\/|per )\s?(?:h|hr|hour|s|min)\b)\s*(?:of\s+)?(.*)$/i.exec(typed) ?? [];
  const fuel = about('fuel', () => readFuel(name === '' ? usual.fuel : name));
  if (fuel.kind === 'gas')
    redirect(fuel, {
      from: 'blast',
      to: fuel.hazards.includes('propane') ? 'burner' : 'flame',
      line: fuel.hazards.includes('propane') ? 'burner 20 kW' : `flame ${fuel.id}`,
    });
  return { amount, fuel };
}

function needOf({ rate, flow }: BlastOptions, amount: string | undefined, dry_kg_m3: number): Need | undefined {
  if (flow) return { flow_m3_s: flow.dimension === 'mass-flow' ? flow.si / dry_kg_m3 : flow.si };
  if (amount !== undefined) {
    const wanted = { dimensions: ['mass-flow'], label: 'fuel', min: 1e-6, max: 0.05 } as const;
    return { fuel_kg_s: about('fuel', () => readQuantity(amount, wanted)).si };
  }
  return rate && { rate_W: rate.si };
}

export const typicalOf = ({ spreads }: BlastQuestion): BlastInputs =>
  Object.fromEntries(Object.entries(spreads).map(([name, { typical }]) => [name, typical])) as Record<BlastKey, number>;

/** One blast, ready for the core. */
export function blastInput(question: BlastQuestion, x: BlastInputs): BlastInput {
  const { pipe, tuyere_m, bed, air, bends } = question;
  const ratio = (tuyere_m / pipe.bore_m) ** 2;
  return {
    ...air,
    fan: { free_flow_m3_s: x.free_m3_s, shut_off_Pa: x.shut_Pa, rated_density_kg_m3: 1.2 },
    speed: question.speed,
    pipe: {
      bore_m: pipe.bore_m,
      length_m: pipe.length_m,
      roughness_m: pipe.roughness_m,
      ...(pipe.friction ? { friction_factor: x.friction } : {}),
      losses: x.entrance + bends * x.bend + (ratio > 1 ? expansionLoss({ area_ratio: 1 / ratio }) : 0),
    },
    tuyere: { bore_m: tuyere_m, losses: 1 + (ratio < 1 ? contractionLoss({ area_ratio: ratio }) : 0) },
    ...(bed
      ? {
          bed: {
            ...bed,
            lump_m: x.lump_m,
            sphericity: x.sphericity,
            void_share: x.void_share,
            roughness_factor: x.roughness_factor,
            bed_K: x.bed_K,
          },
        }
      : {}),
    back_pressure_Pa: question.back_Pa,
  };
}

export interface Burning {
  readonly fuel: AsFired;
  readonly air_kg_kg: number;
  /** Set free in the furnace by a kilogram of fuel. */
  readonly heat_J_kg: number;
}

export function burningOf({ fuel }: BlastQuestion, x: BlastInputs): Burning {
  const { ash, moisture, dry_J_kg } = x;
  const fired = asFired({ fuel, ash, moisture, lower_heat_J_kg: heatAsFired_J_kg({ dry_J_kg, ash, moisture }) });
  const { air_kg_kg, heat_J_kg } = bedAir({ fuel: fired, co_share: x.co_share, excess_air: x.excess_air });
  return { fuel: fired, air_kg_kg, heat_J_kg };
}

/** Air that the fire is to have, m³/s as it is outside. */
export function needed_m3_s({ need, air }: BlastQuestion, { fuel, air_kg_kg }: Burning): number | undefined {
  if (need === undefined) return undefined;
  if ('flow_m3_s' in need) return need.flow_m3_s;
  const fuel_kg_s = 'fuel_kg_s' in need ? need.fuel_kg_s : need.rate_W / fuel.lower_heat_J_kg;
  return (fuel_kg_s * air_kg_kg) / air.dry_density_kg_m3;
}
