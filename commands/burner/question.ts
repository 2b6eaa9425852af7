import { AskError } from '../../core/ask-error.ts';
import { humidAir, standardAtmosphere } from '../../core/fire/air/atmosphere.ts';
import { mixingTubeLosses } from '../../core/fire/data/charcoal-beds.ts';
import { type CylinderKind, cylinderKinds, exchange_W_m2K, usable_share } from '../../core/fire/data/cylinders.ts';
import { drills } from '../../core/fire/data/drills.ts';
import { type JetEdge, jetEdges } from '../../core/fire/data/jet-edges.ts';
import { type Regulator, regulators } from '../../core/fire/data/regulators.ts';
import { findFuel } from '../../core/fire/fuel/fuel.ts';
import { FILLING } from '../../core/fire/propane/cylinder.ts';
import { COMMERCIAL_FACTOR } from '../../core/fire/propane/propane.ts';
import { exactly, type Spread } from '../../core/materials/spread.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatBoth, formatSi } from '../../core/quantity/format.ts';
import { readQuantity, type Wanted } from '../../core/quantity/parse.ts';
import type { AnswerContext } from '../command.ts';
import { fuelIn, readFuel, redirect, refuseMetal } from '../flame/fuel.ts';
import { about } from '../options.ts';
import type { BurnerOptions } from './options.ts';
import { refuseWarmBottle } from './warm-bottle.ts';

export const propane = findFuel('propane');
export const LOWER_J_kg = propane.lower_heat_J_kg.typical;
export const usual = { pressure_Pa: 100e3, bottle: '20 lb', air_K: 288.15 } as const;
/** A drill cuts a hole this much off its size, m. From memory. */
const DRILLED_m = 0.02e-3;
/** A small gauge is right to a twentieth. From memory. */
const GAUGE = 0.05;
/** Gauge in a furnace with a vent of the usual size, Pa. Judged. */
const BACK_Pa: Spread = { low: 0, typical: 5, high: 20 };

export type BurnerKey =
  | 'discharge'
  | 'jet'
  | 'gauge'
  | 'compressibility'
  | 'losses'
  | 'back_Pa'
  | 'exchange_W_m2K'
  | 'pressure_factor'
  | 'headroom_Pa'
  | 'usable_share';
export type BurnerInputs = Readonly<Record<BurnerKey, number>>;

/** Two of flow, jet and pressure are known; the third follows. */
export type Known =
  | { readonly finds: 'jet'; readonly flow_kg_s: number; readonly pressure_Pa: number }
  | { readonly finds: 'pressure'; readonly flow_kg_s: number; readonly jet_m: number }
  | { readonly finds: 'flow'; readonly jet_m: number; readonly pressure_Pa: number };

export interface BurnerQuestion {
  readonly known: Known;
  /** What was asked for where jet and pressure were given too. */
  readonly wanted_kg_s?: number;
  readonly edge: JetEdge;
  readonly tube_m?: number;
  readonly bottle: { readonly kind: CylinderKind; readonly fill_kg: number; readonly liquid_kg: number };
  readonly bottles: number;
  readonly regulator: Regulator | undefined;
  readonly air_K: number;
  readonly pressure_Pa: number;
  readonly air_kg_m3: number;
  readonly altitude_m: number;
  readonly spreads: Readonly<Record<BurnerKey, Spread>>;
}

export function burnerQuestion(options: BurnerOptions, context: AnswerContext): BurnerQuestion {
  refuseOthers(options, context);
  const bottle = about('bottle', () => bottleOf(options, context.units));
  const altitude_m = options.altitude?.si ?? 0;
  const { pressure_Pa } = standardAtmosphere({ altitude_m });
  const air_K = options.air?.si ?? usual.air_K;
  const moist = humidAir({ air_K: Math.max(air_K, 253.15), pressure_Pa, humidity: 0.5 });
  const edge = options.edge ?? 'drilled in a plug or cap';
  const gauge_Pa =
    options.pressure && options.pressure.gauge === false ? options.pressure.si - pressure_Pa : options.pressure?.si;
  const { known, wanted_kg_s } = knownOf(options, gauge_Pa, context.units);
  return {
    known,
    ...(wanted_kg_s === undefined ? {} : { wanted_kg_s }),
    edge,
    ...(options.tube ? { tube_m: options.tube.si } : {}),
    bottle,
    bottles: Math.round(options.bottles?.si ?? 1),
    regulator: regulators.find(({ id }) => id === options.regulator),
    air_K,
    pressure_Pa,
    air_kg_m3: moist.density_kg_m3,
    altitude_m,
    spreads: {
      discharge: jetEdges[edge],
      jet: 'jet_m' in known ? { low: -DRILLED_m, typical: 0, high: DRILLED_m } : exactly(0),
      gauge: 'pressure_Pa' in known ? { low: 1 - GAUGE, typical: 1, high: 1 + GAUGE } : exactly(1),
      compressibility: { low: 0.95, typical: 0.97, high: 1 },
      losses: mixingTubeLosses,
      back_Pa: options.back ? exactly(options.back.si) : BACK_Pa,
      exchange_W_m2K,
      pressure_factor: COMMERCIAL_FACTOR,
      headroom_Pa: (regulators.find(({ id }) => id === options.regulator) ?? regulators[1]!).headroom_Pa,
      usable_share,
    },
  };
}

/** A fuel or a metal that belongs to another question. */
function refuseOthers({ rate, fuel }: BurnerOptions, { commands }: AnswerContext): void {
  const misplaced = rate && Number.isNaN(rate.si) ? rate.text : undefined;
  if (misplaced !== undefined) refuseMetal(misplaced, 'burner', commands);
  const asked = misplaced === undefined ? fuel && about('fuel', () => readFuel(fuel)) : fuelIn(misplaced);
  if (!asked) return;
  if (asked.kind !== 'gas') redirect(asked, { from: 'burner', to: 'blast', line: `blast ${asked.id}` });
  if (asked.id !== 'propane' && asked.id !== 'lpg')
    redirect(asked, { from: 'burner', to: 'flame', line: `flame ${asked.id}` });
  if (misplaced !== undefined)
    throw new AskError({
      code: 'missing',
      what: 'burner is about propane already: what is missing is how much',
      expected: 'a heat rate, or a jet with its pressure',
      example: 'burner 20 kW',
    });
}

function knownOf(options: BurnerOptions, gauge_Pa: number | undefined, units: UnitSystem) {
  const { rate, jet } = options;
  const flow_kg_s = options.propane?.si ?? (rate && rate.si / LOWER_J_kg);
  const jet_m = jet === undefined ? undefined : about('jet', () => readJet(jet, units));
  if (gauge_Pa !== undefined && !(gauge_Pa > 0)) throw noPressure(gauge_Pa);
  const pressure_Pa = gauge_Pa ?? usual.pressure_Pa;
  if (jet_m === undefined) {
    if (flow_kg_s === undefined) throw nothingKnown();
    return { known: { finds: 'jet', flow_kg_s, pressure_Pa } as const };
  }
  if (flow_kg_s !== undefined && gauge_Pa === undefined)
    return { known: { finds: 'pressure', flow_kg_s, jet_m } as const };
  return { known: { finds: 'flow', jet_m, pressure_Pa } as const, wanted_kg_s: flow_kg_s };
}

/** `0.8 mm`, `1/32 in`, `no. 65`. */
export function readJet(typed: string, units: UnitSystem): number {
  const number = /^(?:no\.?|number|drill|#)\s*(\d{1,2})$/i.exec(typed.trim())?.[1];
  const drill = drills.find(({ series, name }) => series === 'number' && name === `no. ${Number(number)}`);
  if (drill) return drill.bore_m;
  if (number !== undefined)
    throw new AskError({
      code: 'unknown-name',
      what: `there is no drill number ${number}`,
      expected: 'no. 1 to no. 80, or a bore',
      example: 'no. 65',
    });
  const wanted = {
    dimensions: ['length'],
    label: "the jet's bore",
    plainUnit: { metric: 'mm', US: 'in' },
    system: units,
    min: 0.0002,
    max: 0.006,
  } as const;
  try {
    return readQuantity(typed, wanted).si;
  } catch (error) {
    // A plain number that is no bore in the reader's unit, and one in the other, was meant in that.
    const other = wanted.plainUnit[units === 'US' ? 'metric' : 'US'];
    if (!(error instanceof AskError) || error.code !== 'out-of-range' || !/^[\d.,\s]+$/.test(typed)) throw error;
    if (!readsAs(`${typed} ${other}`, wanted)) throw error;
    throw error.with({
      what: `a jet of ${typed.trim()} ${wanted.plainUnit[units]} is none that is drilled`,
      example: `${typed.trim()} ${other}`,
    });
  }
}

function readsAs(typed: string, wanted: Wanted): boolean {
  try {
    readQuantity(typed, wanted);
    return true;
  } catch (error) {
    if (error instanceof AskError) return false;
    throw error;
  }
}

/** A bottle by what it is filled with when full. */
function bottleOf({ bottle: typed = usual.bottle, fill }: BurnerOptions, units: UnitSystem): BurnerQuestion['bottle'] {
  refuseWarmBottle(typed, { option: 'bottle', example: usual.bottle });
  const { si } = readQuantity(typed, {
    dimensions: ['mass'],
    label: 'the bottle, by its fill',
    plainUnit: { metric: 'kg', US: 'lb' },
    system: units,
    min: 3,
    max: 60,
  });
  const off = ({ water_capacity_kg }: CylinderKind) => Math.abs(Math.log((FILLING * water_capacity_kg.typical) / si));
  const kind = cylinderKinds.reduce((best, one) => (off(one) < off(best) ? one : best));
  return { kind, fill_kg: si, liquid_kg: si * (fill?.si ?? 1) };
}

const nothingKnown = () =>
  new AskError({
    code: 'missing',
    what: 'burner needs a heat rate, or a jet',
    expected: 'rate=, propane= or jet=',
    example: 'burner 20 kW',
    option: 'rate',
  });

const noPressure = (gauge_Pa: number) =>
  new AskError({
    code: 'impossible',
    what: `${formatBoth(gauge_Pa, 'Pa', 'metric')} gauge at the jet drives nothing`,
    expected: 'a pressure above that of the air',
    example: formatSi(usual.pressure_Pa, 'Pa', 'metric'),
    option: 'pressure',
  });

export const typicalOf = ({ spreads }: Pick<BurnerQuestion, 'spreads'>): BurnerInputs =>
  Object.fromEntries(Object.entries(spreads).map(([name, { typical }]) => [name, typical])) as Record<
    BurnerKey,
    number
  >;
