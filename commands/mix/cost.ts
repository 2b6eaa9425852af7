import { findMaterial } from '../../core/materials/catalogue.ts';
import { exactly, type Spread } from '../../core/materials/spread.ts';
import type { Estimate } from '../../core/mix/estimate.ts';
import { bagOf, bagsFor } from '../../core/mix/price.ts';
import type { Currency } from '../../core/quantity/currency.ts';
import type { KnownPrice } from '../prices.ts';

/** How one ingredient is bought: at a price somebody named, else as shops commonly have it. */
export interface Sold {
  readonly name: string;
  readonly mass_kg?: number;
  readonly volume_m3?: number;
  readonly price: Spread;
  readonly currency: Currency;
  readonly known?: KnownPrice;
}

/** Up to the comma: what stands behind it is the grade. */
export const shortName = (material: string): string =>
  (findMaterial(material).name.split(',')[0] ?? material).toLowerCase();

export function soldAs(material: string, prices: ReadonlyMap<string, KnownPrice>): Sold | undefined {
  const name = shortName(material);
  const known = prices.get(material);
  if (known) return { name, ...known.amount, price: exactly(known.price), currency: known.currency, known };
  const bag = bagOf(material);
  if (!bag) return undefined;
  const { mass_kg, volume_m3, price_USD: price } = bag;
  const size = mass_kg === undefined ? (volume_m3 === undefined ? {} : { volume_m3 }) : { mass_kg };
  return { name, ...size, price, currency: 'USD' };
}

/** Whole bags at each end: prices and bag counts move together. Nothing where a price is missing or moneys are mixed. */
export function costOf(
  { typical, ranges }: Estimate,
  sold: readonly (Sold | undefined)[],
): { readonly total: Spread; readonly currency: Currency } | undefined {
  const [currency = 'USD', other] = currenciesOf(sold);
  if (other !== undefined || sold.includes(undefined)) return undefined;
  const total = { low: 0, typical: 0, high: 0 };
  for (const [index, one] of typical.ingredients.entries()) {
    const bag = sold[index]!;
    const mass = ranges[`mass${index}`];
    const loose = ranges[`loose${index}`];
    const need = (end: 'low' | 'high') => ({
      mass_kg: mass?.[end] ?? one.weighed_kg,
      loose_volume_m3: loose?.[end] ?? one.loose_volume_m3,
    });
    const usual = { mass_kg: one.weighed_kg, loose_volume_m3: one.loose_volume_m3 };
    total.low += bagsFor(bag, need('low')) * bag.price.low;
    total.typical += bagsFor(bag, usual) * bag.price.typical;
    total.high += bagsFor(bag, need('high')) * bag.price.high;
  }
  return { total, currency };
}

/** What is dug in the garden is free in any money. */
const currenciesOf = (sold: readonly (Sold | undefined)[]): readonly Currency[] => [
  ...new Set(sold.flatMap((one) => (one && one.price.high > 0 ? one.currency : []))),
];

/** Why there is no cost where prices are in several moneys, and what gives one. */
export function noCostNote(sold: readonly (Sold | undefined)[]): readonly string[] {
  if (currenciesOf(sold).length < 2) return [];
  const bags = sold.filter((one) => one !== undefined);
  const wanted = bags.find(({ known }) => known)?.currency ?? 'USD';
  const others = bags.filter(({ currency }) => currency !== wanted);
  const stated = bags.map(({ name, currency, known }) => `${name} in ${currency}${known ? '' : ' (a common price)'}`);
  const lines = others.map(({ name }) => `price ${name} 25 kg ${wanted} …`).join(', ');
  return [`No cost: ${stated.join(', ')}, and nothing is converted here. Name the rest in ${wanted} for one: ${lines}`];
}
