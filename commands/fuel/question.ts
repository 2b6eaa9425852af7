import { AskError } from '../../core/ask-error.ts';
import { blowers } from '../../core/fire/data/blowers.ts';
import { charcoalBeds } from '../../core/fire/data/charcoal-beds.ts';
import { type Fuel, findFuel } from '../../core/fire/fuel/fuel.ts';
import { dryAshFreeSpread_J_kg } from '../../core/fire/fuel/fuel-spread.ts';
import { findPour } from '../../core/materials/catalogue.ts';
import type { Pour } from '../../core/materials/pour.ts';
import { exactly, type Spread } from '../../core/materials/spread.ts';
import { fireFilm_W_m2K } from '../../core/melt/absorb.ts';
import type { BalanceQuestion, FiringQuestion } from '../../core/melt/balance.ts';
import { RISE } from '../../core/melt/balance-charge.ts';
import { crucibleHeat_J, crucibleMass_kg, outsideArea_m2, withWall } from '../../core/melt/crucible-heat.ts';
import { pots } from '../../core/melt/data/pots.ts';
import { hotFace_K, meltHeat_J_kg, pourFor } from '../../core/melt/melt-heat.ts';
import type { Currency } from '../../core/quantity/currency.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import { crucibleFromMelt } from '../../core/shape/crucible.ts';
import { firingDensity_W_m3 } from '../../core/shape/vent.ts';
import type { Assumption } from '../card.ts';
import type { AnswerContext } from '../command.ts';
import { refuseMetal } from '../flame/fuel.ts';
import { about } from '../options.ts';
import type { KnownPrice } from '../prices.ts';
import { typedLength } from '../size/parts.ts';
import { readCrucible } from '../size/question.ts';
import { readStack } from '../wall/layers.ts';
import { type AskedWall, askedWall } from '../wall/question.ts';
import type { FuelOptions } from './options.ts';
import { perKilogram, pipedDensity, readPrice, readPrices } from './prices.ts';

export interface AskedFuel {
  readonly question: BalanceQuestion;
  readonly fuel: Fuel;
  /** Burned first, where two were asked for. */
  readonly cheap: Fuel | undefined;
  readonly priceOf: PriceOf;
  readonly alloy: Pour;
  /** In one melt: at most what the crucible is poured from. */
  readonly mass_kg: number;
  /** As asked for, and how many potfuls that is. */
  readonly amount_kg: number;
  readonly potfuls: number;
  /** All of them, in a row. */
  readonly melts: number;
  readonly wall: AskedWall;
  /** As it would be typed. */
  readonly crucible: string;
  readonly assumed: readonly Assumption[];
}

/** Of a kilogram: as typed, as kept by the asker or their place, or as remembered of shops. */
export type PriceOf = (
  fuel: Fuel,
) => { readonly per_kg: Spread; readonly currency: Currency; readonly known?: KnownPrice | 'shops' } | undefined;

type Assume = <T>(value: T | undefined, otherwise: T, text: string, override?: string) => T;

const usual = {
  fuel: 'lump charcoal',
  metal: 'aluminium',
  mass_kg: 5,
  layers: '1.5 in clay-sand lining; 2 in vermiculite',
  pause_s: 600,
  /** Lid off for the pour. */
  lidOff_s: 180,
  start_K: 293.15,
  tuyere_radius_m: 0.019,
} as const;
/** The gas leaves a little below the hot face under a good lid. Judged. */
const drop_dK: Spread = { low: 0, typical: 50, high: 100 };
/** What people set without a meter. Common practice. */
const usualExcess: Readonly<Record<'gas' | 'liquid', Spread>> = {
  gas: { low: 0.02, typical: 0.15, high: 0.4 },
  liquid: { low: 0.1, typical: 0.2, high: 0.4 },
};
/** A hot face stays at least so far above the pour. */
const leastAbove_dK = 15;

/** The question with every default filled in, each default said. */
export function askedFuel(
  options: FuelOptions,
  { units, commands }: Pick<AnswerContext, 'units' | 'commands'>,
  kept: ReadonlyMap<string, KnownPrice> = new Map(),
): AskedFuel {
  const assumed: Assumption[] = [];
  const assume: Assume = (value, otherwise, text, override) => {
    if (value !== undefined) return value;
    assumed.push(override === undefined ? { text } : { text, override });
    return otherwise;
  };
  if (options.fuel !== undefined) refuseMetal(options.fuel, 'fuel', commands);
  const said = assume(options.fuel, usual.fuel, usual.fuel, 'fuel=propane');
  const { cheap, fuel } = about('fuel', () => readFuels(said));
  const charge = chargeOf(options, assume, units);
  const wall = wallOf(options, charge, assume, units);
  const firing = firingOf(options, fuel, wall, assume, units);
  const prices = pricesOf(options, fuel, { units, kept });
  const price = prices(fuel);
  const piped = pipedDensity(fuel);
  if (price?.known === 'shops')
    assumed.push({
      text: 'shop prices of the United States, as remembered',
      override:
        piped === undefined
          ? `price=$${Math.round(price.per_kg.typical * 20)} for 20 kg`
          : `price=$${(price.per_kg.typical * piped).toFixed(2)}/m3`,
    });
  const question: BalanceQuestion = {
    wall: wall.question,
    firing: { ...firing, ...(price ? { price_USD_kg: price.per_kg } : {}) },
    charge: charge.question,
    tuyere_radius_m: options.tuyere ? options.tuyere.si / 2 : usual.tuyere_radius_m,
    pause_s: assume(
      options.pause?.si,
      usual.pause_s,
      '10 min between two melts, the lid off for 3 of them',
      'pause=20 min',
    ),
  };
  return {
    question,
    fuel,
    cheap,
    priceOf: prices,
    alloy: charge.alloy,
    mass_kg: charge.mass_kg,
    amount_kg: charge.mass_kg * charge.potfuls,
    potfuls: charge.potfuls,
    melts: Math.round(options.melts?.si ?? 1) * charge.potfuls,
    wall,
    crucible: charge.crucible,
    assumed: [...assumed, ...wall.assumed],
  };
}

/** A blower where a fuel belongs: blast is asked about those. */
function fuelNotBlower(said: string): Fuel {
  try {
    return findFuel(said);
  } catch (error) {
    const blower = blowers.find(({ name, aliases }) => [name, ...aliases].includes(said.trim().toLowerCase()));
    if (!blower || !(error instanceof AskError)) throw error;
    throw new AskError({
      code: 'unfit',
      what: `a ${blower.name} blows air and burns nothing`,
      expected: 'a fuel here; blast says whether a blower is enough',
      example: `blast lump charcoal blower=${blower.id.replaceAll('-', ' ')}`,
    });
  }
}

/** `lump`, or `briquettes then lump`: what is burned first, and what makes the heat at the end. */
function readFuels(said: string): { cheap: Fuel | undefined; fuel: Fuel } {
  const parts = said.split(/\s+then\s+|\s*→\s*/i);
  if (parts.length > 2)
    throw new AskError({
      code: 'unreadable',
      what: `${parts.length} fuels one after the other`,
      expected: 'one, or two with "then" between',
      example: 'briquettes then lump',
    });
  const [first = '', second] = parts;
  if (second === undefined) return { cheap: undefined, fuel: fuelNotBlower(first) };
  const cheap = findFuel(first);
  const fuel = findFuel(second);
  const loose = [cheap, fuel].find(({ kind }) => kind !== 'solid');
  if (!loose) return cheap.id === fuel.id ? { cheap: undefined, fuel } : { cheap, fuel };
  throw new AskError({
    code: 'unfit',
    what: `${loose.name} is not shovelled: one fuel after the other is for what lies in the bed`,
    expected: 'two solid fuels',
    example: 'briquettes then lump',
  });
}

function chargeOf(options: FuelOptions, assume: Assume, units: UnitSystem) {
  const alloy = about('metal', () => findPour(assume(options.metal, usual.metal, usual.metal, 'metal=bronze')));
  const pours = options.pour ? exactly(options.pour.si) : pourFor(alloy, 'medium');
  const pour_K = pours.typical;
  if (!options.pour)
    assume(undefined, 0, `poured at ${formatSi(pour_K, 'K', units)}`, `pour=${Math.round(pour_K - 243)} °C`);
  const correction = alloy.melting_correction_J_kg;
  const perKg = (correction_J_kg: number) =>
    about('pour', () => meltHeat_J_kg({ alloy, from_K: usual.start_K, pour_K, correction_J_kg }));
  const typical_J_kg = perKg(correction.typical);
  const typed = options.amount?.si;
  const amount_kg =
    typed ??
    (options.heat
      ? options.heat.si / typical_J_kg
      : assume(undefined, usual.mass_kg, `${formatSi(usual.mass_kg, 'kg', units)} of ${alloy.name}`, 'amount=10 kg'));
  const whole_J = options.heat?.si ?? amount_kg * typical_J_kg;
  const pot = pots.find(
    ({ id }) => id === assume(options.material, 'clay-graphite', 'a crucible of clay-graphite', 'material=steel'),
  )!;
  const said = options.crucible;
  const made = said
    ? about('crucible', () => readCrucible(said.text, units))
    : about('amount', () => crucibleFromMelt({ mass_kg: amount_kg, metal: alloy.id }));
  if (!said) assume(undefined, 0, 'a crucible that just holds it', 'crucible=6 in x 8 in');
  const { shape } = pot.wall_m ? withWall(made, pot.wall_m.typical, said !== undefined) : made;
  const holds_kg = shape.working_m3 * alloy.liquid_density_kg_m3.typical;
  const potfuls = said ? potfulsOf(amount_kg, holds_kg, units) : 1;
  const heat_J = whole_J / potfuls;
  const spread = (end: 'low' | 'high') => (heat_J * perKg(correction[end])) / typical_J_kg;
  const potHeat_J = (end: keyof Spread) =>
    crucibleHeat_J({
      mass_kg: crucibleMass_kg({ shape, density_kg_m3: pot.density_kg_m3[end] }),
      heat_capacity_J_kgK: pot.heat_capacity_J_kgK[end],
      from_K: usual.start_K,
      pour_K,
    });
  return {
    alloy,
    mass_kg: amount_kg / potfuls,
    potfuls,
    pour_K,
    crucible: said?.text ?? `${typedLength(2 * shape.outside_radius_m, units)} x ${typedLength(shape.height_m, units)}`,
    question: {
      metal_J: { low: spread('low'), typical: heat_J, high: spread('high') },
      crucible_J: { low: potHeat_J('low'), typical: potHeat_J('typical'), high: potHeat_J('high') },
      crucible_m2: outsideArea_m2(shape),
      film_W_m2K: fireFilm_W_m2K,
      start_K: usual.start_K,
      pour_K,
    },
  };
}

/** A pot is filled to a mark, not to a gram: what is over by so little goes in. */
const OVER = 1.03;
const mostPotfuls = 20;

/** How many times a crucible is filled for an amount. @throws AskError `impossible` where nobody would do that. */
function potfulsOf(amount_kg: number, holds_kg: number, units: UnitSystem): number {
  const potfuls = Math.max(1, Math.ceil(amount_kg / (OVER * holds_kg)));
  if (potfuls <= mostPotfuls) return potfuls;
  const show = (mass_kg: number) => formatSi(mass_kg, 'kg', units);
  throw new AskError({
    code: 'impossible',
    what: `this crucible is poured from with ${show(holds_kg)} in it: ${show(amount_kg)} is ${potfuls} potfuls`,
    expected: `a wider crucible, or at most ${mostPotfuls} potfuls`,
    example: units === 'US' ? `${round2(holds_kg / pound_kg)} lb` : `${round2(holds_kg)} kg`,
    option: 'amount',
  });
}

const pound_kg = 0.45359237;
const round2 = (value: number): number => Number(value.toPrecision(2));

/** The wall as `wall` would take it; how long it climbs and holds follows from the fire. */
function wallOf(
  options: FuelOptions,
  charge: { alloy: Pour; pour_K: number },
  assume: Assume,
  units: UnitSystem,
): AskedWall {
  const { layers, bore, height, hot, shell, lid, floor, vent, finish, air, damp } = options;
  const { alloy, pour_K } = charge;
  const needed_K = hotFace_K(alloy, pour_K);
  const hot_K =
    hot?.si ??
    assume(
      undefined,
      needed_K,
      `a hot face of ${formatSi(needed_K, 'K', units)} for ${alloy.name}`,
      `hot=${Math.round(needed_K - 223)} °C`,
    );
  if (hot_K < pour_K + 2 * leastAbove_dK) throw tooCold(hot_K, pour_K, alloy.name);
  const stack =
    layers ??
    readStack(
      assume(undefined, usual.layers, `a wall of ${usual.layers}`, 'layers=1 in castable; 2 in fibre blanket'),
      units,
    );
  const given = { bore, height, shell, lid, floor, vent, finish, air, damp };
  const asked = askedWall(
    {
      layers: stack,
      hot: { dimension: 'temperature', si: hot_K, text: '', system: undefined },
      ramp: { dimension: 'time', si: 2400, text: '', system: undefined },
      hold: { dimension: 'time', si: 0, text: '', system: undefined },
      after: 'lid off 3 min',
      wind: 'calm',
      ...Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)),
    },
    units,
  );
  const { low, typical, high } = asked.question.hot_K;
  const hotSpread = { low: Math.max(low, Math.min(typical, pour_K + leastAbove_dK)), typical, high };
  return { ...asked, question: { ...asked.question, hot_K: hotSpread, lid_off_s: usual.lidOff_s } };
}

function firingOf(
  options: FuelOptions,
  fuel: Fuel,
  wall: AskedWall,
  assume: Assume,
  units: UnitSystem,
): FiringQuestion {
  const { hot_K } = wall.question;
  const solid = fuel.kind === 'solid';
  return {
    fuel,
    ash: options.ash ? exactly(options.ash.si) : fuel.ash,
    moisture: fuel.moisture.typical,
    dry_J_kg: dryAshFreeSpread_J_kg(fuel),
    air: airOf(options, fuel, assume),
    drop_dK: options.flue
      ? exactly(hot_K.typical - options.flue.si)
      : assume(
          undefined,
          drop_dK,
          `gas leaving at ${formatSi(hot_K.typical - drop_dK.typical, 'K', units)}, a little below the hot face`,
          `flue=${Math.round(hot_K.typical - 273.15)} °C`,
        ),
    rate: rateOf(options, solid, wall, assume, units),
  };
}

function airOf({ excess, co }: FuelOptions, fuel: Fuel, assume: Assume): FiringQuestion['air'] {
  if (co) return { co_share: exactly(co.si) };
  if (excess) return { excess_air: exactly(excess.si) };
  if (fuel.kind === 'solid') {
    const { low, typical, high } = charcoalBeds.co_share;
    const text = `${percent(typical)} of the carbon leaving as CO (${percent(low)} to ${percent(high)})`;
    return { co_share: assume(undefined, { low, typical, high }, text, 'co=20%') };
  }
  const spread = usualExcess[fuel.kind];
  const text = `${percent(spread.typical)} excess air (${percent(spread.low)} to ${percent(spread.high)})`;
  return { excess_air: assume(undefined, spread, text, 'excess=30%') };
}

/** Dry air at about 20 °C, kg/m³. */
const air_kg_m3 = 1.2;

function rateOf(
  { rate, ramp, blast }: FuelOptions,
  solid: boolean,
  { question: { bore_m, height_m } }: AskedWall,
  assume: Assume,
  units: UnitSystem,
): FiringQuestion['rate'] {
  const bore_m3 = (Math.PI / 4) * bore_m ** 2 * height_m;
  // What is judged of the bore's room is no better known for being handed over.
  const judged = Object.values(firingDensity_W_m3).some(({ typical }) => alike(rate?.si ?? 0, typical * bore_m3));
  if (rate && !judged) return { power_W: exactly(rate.si) };
  if (ramp) return { climb_s: ramp.si / RISE };
  if (blast) return { air_kg_s: exactly(blast.dimension === 'mass-flow' ? blast.si : blast.si * air_kg_m3) };
  const density = firingDensity_W_m3[solid ? 'charcoal' : 'gas'];
  const power_W = { low: density.low * bore_m3, typical: density.typical * bore_m3, high: density.high * bore_m3 };
  const show = (watts: number) => formatSi(watts, 'W', units);
  const text = `fired at ${show(power_W.typical)} for its bore (${show(power_W.low)} to ${show(power_W.high)})`;
  return { power_W: assume(undefined, power_W, text, `rate=${Number((power_W.typical / 1000).toPrecision(2))} kW`) };
}

function pricesOf(
  { price, prices }: FuelOptions,
  asked: Fuel,
  { units, kept }: { units: UnitSystem; kept: ReadonlyMap<string, KnownPrice> },
): PriceOf {
  const own = prices === undefined ? undefined : about('prices', () => readPrices(prices, units));
  const one = price === undefined ? undefined : about('price', () => readPrice(price, asked, units));
  return (fuel) => {
    const typed = (fuel.id === asked.id ? one : undefined) ?? own?.get(fuel.id);
    if (typed) return { per_kg: exactly(typed.per_kg), currency: typed.currency };
    const known = kept.get(fuel.id);
    if (known) return { per_kg: exactly(perKilogram(known, fuel)), currency: known.currency, known };
    return fuel.price_USD_kg && { per_kg: fuel.price_USD_kg, currency: 'USD', known: 'shops' };
  };
}

const alike = (a: number, b: number): boolean => Math.abs(a / b - 1) < 0.01;
const percent = (share: number): string => `${Math.round(share * 100)} %`;
const celsius = (kelvin: number): string => `${Math.round(kelvin - 273.15)} °C`;

const tooCold = (hot_K: number, pour_K: number, metal: string) =>
  new AskError({
    code: 'impossible',
    what: `a hot face of ${celsius(hot_K)} does not bring ${metal} to its pour at ${celsius(pour_K)}`,
    expected: `a hot face of ${celsius(pour_K + 100)} or more`,
    example: celsius(pour_K + 100),
    option: 'hot',
  });
