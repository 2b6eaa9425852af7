import { AskError } from '../core/ask-error.ts';
import { findFuel, fuels } from '../core/fire/fuel/fuel.ts';
import { findMaterial, materials } from '../core/materials/catalogue.ts';
import { nearest } from '../core/materials/nearest.ts';
import { ingredientId } from '../core/mix/ratio.ts';
import { type Currency, currencyCodes, currencyOf, isCurrency } from '../core/quantity/currency.ts';
import type { UnitSystem } from '../core/quantity/figure.ts';
import { formatBoth, formatPrice } from '../core/quantity/format.ts';
import { readNumber, readQuantity } from '../core/quantity/parse.ts';
import { UNITS } from '../core/quantity/units.ts';
import type { AnswerContext } from './command.ts';
import type { Price } from './memory.ts';

/** What an amount of a material or a fuel costs. */
export interface NamedPrice {
  /** Id of a material or a fuel. */
  readonly item: string;
  readonly amount: Price['amount'];
  readonly price: number;
  readonly currency: Currency;
}

/** With whose it is: typed in this question, the asker's own, or their place's. */
export interface KnownPrice extends NamedPrice {
  readonly whose: 'typed' | 'asker' | 'place';
  readonly setAt?: Date;
}

/** Prices by id of their item: what was typed goes before the asker's own, that before the place's. */
export async function pricesFor(
  { asker, place, memory }: Pick<AnswerContext, 'asker' | 'place' | 'memory'>,
  typed: readonly NamedPrice[] = [],
): Promise<ReadonlyMap<string, KnownPrice>> {
  const kept = (await memory.prices({ asker, place })).flatMap(({ owner, currency, ...price }): KnownPrice[] =>
    isCurrency(currency) ? [{ ...price, currency, whose: owner }] : [],
  );
  const all = [...kept, ...typed.map((price): KnownPrice => ({ ...price, whose: 'typed' }))];
  return new Map(all.map((price) => [price.item, price]));
}

/** For the card: whose prices were used and how old they are; what was typed stands there already. */
export const whosePrices = (used: Iterable<KnownPrice>, now: Date, units: UnitSystem): readonly string[] =>
  [...used].flatMap(({ setAt, whose, ...price }) =>
    setAt ? [`${priceText(price, { whose, units })}, set ${ageOf(setAt, now)}`] : [],
  );

/** `your price of silica sand: $5 for 50 lb (22.7 kg)`. */
export const priceText = (
  { item, price, currency, amount }: NamedPrice,
  { whose, units }: { whose: KnownPrice['whose']; units: UnitSystem },
): string =>
  `${whose === 'place' ? "this place's" : 'your'} price of ${itemName(item)}: ${formatPrice(price, currency)} for ${amountText(amount, units)}`;

export const amountText = (amount: Price['amount'], units: UnitSystem): string =>
  'mass_kg' in amount ? formatBoth(amount.mass_kg, 'kg', units) : formatBoth(amount.volume_m3, 'm3', units, 'bulk');

const day_ms = 86_400_000;

/** `today`, `12 days ago`, `5 months ago`. A clock that was set back makes nothing older than today. */
export function ageOf(setAt: Date, now: Date): string {
  const days = Math.max(0, Math.floor((now.getTime() - setAt.getTime()) / day_ms));
  if (days === 0) return 'today';
  if (days === 1) return 'yesterday';
  if (days < 60) return `${days} days ago`;
  if (days < 730) return `${Math.round(days / 30.44)} months ago`;
  return `${Math.floor(days / 365.25)} years ago`;
}

/** By the names of the mix first, where "clay" and "sand" mean the common ones. @throws AskError `unknown-name` */
export function itemId(name: string, option: string): string {
  for (const find of [ingredientId, (text: string) => findFuel(text).id]) {
    try {
      return find(name);
    } catch (error) {
      if (!(error instanceof AskError)) throw error;
    }
  }
  const names = [...materials, ...fuels].flatMap((one) => [one.id, one.name, ...one.aliases]);
  const near = nearest(name, names, 3);
  throw new AskError({
    code: 'unknown-name',
    what: `no material or fuel is called "${name.slice(0, 40)}"`,
    expected: `one of those listed, perhaps ${near.join(', ')}`,
    example: near[0]!,
    option,
  });
}

const fuelIds = new Map(fuels.map(({ id, name }) => [id, name]));

export const itemName = (id: string): string => fuelIds.get(id) ?? findMaterial(id).name;

/** `clay 50 lb $9; sand 50 lb $5`: `;` between prices, all in one currency. */
export function readPrices(text: string, option: string): readonly NamedPrice[] {
  const prices = text.split(';').map((one) => readPrice(one, option));
  const [first, other] = new Set(prices.map(({ currency }) => currency));
  if (other === undefined) return prices;
  throw new AskError({
    code: 'impossible',
    what: `${first} and ${other} stand in one list, and nothing is converted here`,
    expected: 'one currency for all',
    example: 'clay 50 lb $9; sand 50 lb $5',
    option,
  });
}

// A Cuban peso is no cup.
const isUnit = (code: string) => UNITS.get(code.toLowerCase())?.some(({ dimension }) => dimension !== 'money') ?? false;
const codes = currencyCodes.filter((code) => !isUnit(code)).join('|');
const number = String.raw`\d[\d.,]*`;
const money = new RegExp(
  [
    String.raw`([$€£]|(?<!\p{L})(?:${codes}))\s*(${number})`,
    String.raw`(?<![\p{L}\d.,])(${number})\s*([$€£]|(?:${codes})(?!\p{L}))`,
  ].join('|'),
  'giu',
);

/** A name, an amount and what it costs, in either order: `clay 50 lb $9`, `propane €2.40 per kg`. */
export function readPrice(text: string, option: string): NamedPrice {
  const [found, second] = text.matchAll(money);
  const [sold, before, after, front, behind] = found ?? [];
  const currency = currencyOf(before ?? behind ?? '');
  if (!found || second || sold === undefined || !currency) throw unreadable(text, option);
  const rest = `${text.slice(0, found.index)} ${text.slice(found.index + sold.length)}`.replace(/\s+/g, ' ').trim();
  const counted = /^(\D+?) ?(?:\b(?:for|per|an?)\b|\/|:)? ?([\d½¼¾].*)$/iu.exec(rest);
  const single = /^(\D+?) ?(?:\b(?:per|an?)\b|\/) ?(\p{L}.*)$/iu.exec(rest);
  const [, name, size] = counted ?? single ?? [];
  const price = after ?? front;
  if (name === undefined || size === undefined || price === undefined) throw unreadable(text, option);
  const bounds = { dimensions: ['mass', 'volume'] as const, label: 'bag size', min: 1e-4, max: 2000 };
  const amount = mending(size, () => readQuantity(counted ? size : `1 ${size}`, bounds));
  return {
    item: mending(name, () => itemId(name.trim(), option)),
    amount: amount.dimension === 'mass' ? { mass_kg: amount.si } : { volume_m3: amount.si },
    price: mending(price, () => readNumber(price, { min: 0, max: 1e6, label: 'the price' })),
    currency,
  };

  /** What works in place of one part is shown in the whole. */
  function mending<T>(part: string, read: () => T): T {
    try {
      return read();
    } catch (error) {
      if (!(error instanceof AskError)) throw error;
      throw error.with({ example: text.trim().replace(part, error.example), option });
    }
  }
}

const unreadable = (one: string, option: string) =>
  new AskError({
    code: 'unreadable',
    what: `"${one.trim().slice(0, 40)}" is not an amount with its price`,
    expected: 'a name, a bag size and a price in one currency, by its sign or its code',
    example: 'sand 50 lb $5',
    option,
  });
