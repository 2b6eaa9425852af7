import type { Range } from '../../core/doubt/sample.ts';
import { breakEvenRatio } from '../../core/fire/fuel/staging.ts';
import type { Melt } from '../../core/melt/balance-melt.ts';
import { efficiencies } from '../../core/melt/fuel-efficiency.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import { formatBoth } from '../../core/quantity/format.ts';
import type { FuelParts } from './parts.ts';
import { pipedDensity } from './prices.ts';

export const fuelFigures = {
  'fuel.mass': 'fuel for the first melt, furnace cold',
  'fuel.time': 'time of it, from lighting to the pour',
  'fuel.again_mass': 'fuel for the next melt, furnace hot',
  'fuel.again_time': 'time of that',
  'fuel.total_mass': 'fuel for all melts in a row',
  'fuel.total_time': 'time of all, pauses counted',
  'fuel.cost': 'cost of the first melt',
  'fuel.total_cost': 'cost of all melts in a row',
  'fuel.power': 'heat of the fuel at full blast',
  'fuel.hold_power': 'turned down to, once the hot face is up to heat',
  'fuel.rate': 'fuel burned at full blast',
  'fuel.air': 'air it takes at full blast',
  'fuel.left': 'heat that stays in the furnace at full heat, of the lower heating value',
  'fuel.left_higher': 'the same of the higher heating value',
  'fuel.efficiency': "metal's heat of the fuel's, first melt",
  'fuel.again_efficiency': "metal's heat of the fuel's, next melt",
  'fuel.metal_heat': 'heat that the metal takes',
  'fuel.stored': 'stored in the side wall when the metal is ready; wall tells the same',
  'fuel.ends': 'taken by lid and floor',
  'fuel.ash': 'ash it leaves',
  'fuel.cheap_mass': 'of the first fuel, in the cheapest split',
  'fuel.better_mass': 'of the second fuel, in the cheapest split',
  'fuel.staged_cost': 'cost of the first melt in the cheapest split',
  'fuel.switch': 'hot face at which the cheapest split changes fuels',
  'fuel.break_even': 'price of the first fuel over the second, by weight, below which it pays',
} as const;

export type FuelFigure = keyof typeof fuelFigures;

type More = Partial<Pick<Figure, 'note' | 'shown'>>;

function figure(
  id: FuelFigure,
  label: string,
  value: number,
  unit: Figure['unit'],
  range?: Range,
  more: More = {},
): Figure {
  return range && range.high > range.low
    ? { id, label, value, unit, range: { low: range.low, high: range.high }, rangeBasis: 'sampled', ...more }
    : { id, label, value, unit, rangeBasis: 'none', ...more };
}

/** Piped gas is counted by the meter, not by the scale. */
function metered({ asked: { fuel }, units }: FuelParts, mass_kg: number): More {
  const density = pipedDensity(fuel);
  return density === undefined ? {} : { note: `${formatBoth(mass_kg / density, 'm3', units, 'bulk')} by the meter` };
}

export const massFigure = (parts: FuelParts): Figure => {
  const { melts, ranges } = parts.balance;
  const { fuel_kg } = melts.first;
  return figure('fuel.mass', 'first melt, from cold', fuel_kg, 'kg', ranges.fuel, metered(parts, fuel_kg));
};
export const timeFigure = ({ balance: { melts, ranges } }: FuelParts): Figure =>
  figure('fuel.time', 'which takes', melts.first.time_s, 's', ranges.time, { shown: 'minutes' });
export const againFigure = (parts: FuelParts): Figure => {
  const { melts, ranges } = parts.balance;
  const { fuel_kg } = melts.again;
  return figure('fuel.again_mass', 'next melt, furnace hot', fuel_kg, 'kg', ranges.again_fuel, metered(parts, fuel_kg));
};

export function costFigure({ asked, balance: { melts, ranges } }: FuelParts): Figure | undefined {
  const price = asked.priceOf(asked.fuel);
  return (
    price &&
    figure('fuel.cost', 'cost of the first', melts.first.fuel_kg * price.per_kg.typical, price.currency, ranges.cost)
  );
}

export function figuresOf(parts: FuelParts): readonly Figure[] {
  const { balance, burnt } = parts;
  const { melts, fire, furnace, ranges } = balance;
  const { first, again } = melts;
  const left = fire.left(furnace.hot_K - furnace.drop_dK);
  const cost = costFigure(parts);
  const fuel_kg_s = first.power_W / burnt.lower_heat_J_kg;
  return [
    massFigure(parts),
    timeFigure(parts),
    againFigure(parts),
    figure('fuel.again_time', 'which takes', again.time_s, 's', ranges.again_time, { shown: 'minutes' }),
    ...(cost ? [cost] : []),
    ...totals(parts),
    ...staged(parts),
    figure('fuel.power', 'full blast', first.power_W, 'W', undefined, { note: 'heat of the fuel' }),
    ...(turnedDown(first) ? [figure('fuel.hold_power', 'then turned down to', first.hold_power_W, 'W')] : []),
    figure('fuel.rate', 'burns then', fuel_kg_s, 'kg/s'),
    figure('fuel.air', 'air for that', fuel_kg_s * fire.air_kg_kg, 'kg/s'),
    figure('fuel.left', 'stays, at full heat', left, '1', undefined, {
      note: 'of the lower heating value',
    }),
    figure('fuel.left_higher', 'the same', (left * burnt.lower_heat_J_kg) / burnt.higher_heat_J_kg, '1', undefined, {
      note: 'of the higher heating value',
    }),
    figure('fuel.efficiency', 'metal gets, first melt', first.efficiency, '1', ranges.efficiency, {
      note: `told: ${told(efficiencies.single)}`,
    }),
    figure('fuel.again_efficiency', 'and next melt', again.efficiency, '1', ranges.again_efficiency, {
      note: `told: ${told(efficiencies.repeated)}`,
    }),
    figure('fuel.metal_heat', 'heat in the metal', first.metal_J, 'J'),
    figure('fuel.stored', 'stored in the side wall', first.stored_J, 'J'),
    figure('fuel.ends', 'into lid and floor', first.ends_J, 'J'),
    ...(burnt.ash > 0 ? [figure('fuel.ash', 'ash of the first', first.fuel_kg * burnt.ash, 'kg')] : []),
  ];
}

/** Held on less than full blast, for long enough to say so. */
export const turnedDown = ({ hold_s, hold_power_W, power_W }: Melt): boolean =>
  hold_s > 60 && hold_power_W < 0.9 * power_W;

export const told = ({ low, high }: { low: number; high: number }) =>
  `${Math.round(low * 100)} to ${Math.round(high * 100)} %`;

export function totals({ asked, balance: { melts, model } }: FuelParts): readonly Figure[] {
  const later = asked.melts - 1;
  if (later < 1) return [];
  const { first, again } = melts;
  const mass_kg = first.fuel_kg + later * again.fuel_kg;
  const time_s = first.time_s + later * (again.time_s + model.question.pause_s);
  const price = asked.priceOf(asked.fuel);
  return [
    figure('fuel.total_mass', `all ${asked.melts} melts`, mass_kg, 'kg'),
    figure('fuel.total_time', 'which take', time_s, 's', undefined, {
      shown: time_s < 5400 ? 'minutes' : 'hours',
      note: 'pauses counted',
    }),
    ...(price ? [figure('fuel.total_cost', 'cost of all', mass_kg * price.per_kg.typical, price.currency)] : []),
  ];
}

function staged({ asked, staged: found }: FuelParts): readonly Figure[] {
  const { cheap, fuel } = asked;
  const last = found?.stages.at(-1);
  if (!found || !cheap || !last) return [];
  const { staging, switch_K } = found;
  const currency = asked.priceOf(fuel)?.currency ?? 'USD';
  return [
    figure('fuel.cheap_mass', `cheapest: ${cheap.name}`, staging.cheap_kg, 'kg'),
    figure('fuel.better_mass', `and ${fuel.name}`, staging.better_kg, 'kg'),
    figure('fuel.staged_cost', 'cost of that', staging.cost_USD, currency),
    ...(switch_K === undefined ? [] : [figure('fuel.switch', 'changing at a hot face of', switch_K, 'K')]),
    figure('fuel.break_even', `${cheap.name} pays below`, breakEvenRatio(last), '1', undefined, {
      note: `of the price of ${fuel.name}, by weight, at full heat`,
    }),
  ];
}
