import { AskError } from '../../core/ask-error.ts';
import { type Fuel, findFuel } from '../../core/fire/fuel/fuel.ts';
import { gasesMolarMass_kg_mol } from '../../core/fire/fuel/fuel-as-fired.ts';
import { type Currency, currencyOf } from '../../core/quantity/currency.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { readQuantity } from '../../core/quantity/parse.ts';
import type { NamedPrice } from '../prices.ts';

/** What a kilogram costs. */
export interface FuelPrice {
  readonly per_kg: number;
  readonly currency: Currency;
}

const money =
  /([$€£]|\b[A-Z]{3}\b)\s*(\d{1,5}(?:[.,]\d{1,2})?)|(\d{1,5}(?:[.,]\d{1,2})?)\s*([$€£]|\b[A-Z]{3}\b|\bdollars?\b)/iu;

/** `$18 for 20 lb`, `20 lb $18`, `$2.20/kg`, `$3 a gallon`: a kilogram of this fuel. */
export function readPrice(said: string, fuel: Fuel, units: UnitSystem): FuelPrice {
  const found = money.exec(said);
  const paid = Number((found?.[2] ?? found?.[3] ?? '').replace(',', '.'));
  const currency = currencyOf((found?.[1] ?? found?.[4] ?? '').replace(/^dollars?$/i, '$'));
  const rest = said
    .replace(money, ' ')
    .replace(/^\s*(?:for|per|an?|each|\/)\s*|\s*(?:for|per|each)\s*$/giu, ' ')
    .replace(/^[\s/]+|[\s/]+$/g, '');
  if (!found || currency === undefined || !Number.isFinite(paid)) throw unreadable(said);
  const size = rest === '' ? (units === 'US' ? '1 lb' : '1 kg') : /^\d/.test(rest) ? rest : `1 ${rest}`;
  const amount = readQuantity(size, {
    dimensions: ['mass', 'volume'],
    label: 'what the price is for',
    min: 1e-5,
    max: 1e5,
  });
  const sold = amount.dimension === 'mass' ? { mass_kg: amount.si } : { volume_m3: amount.si };
  return { per_kg: perKilogram({ amount: sold, price: paid }, fuel), currency };
}

export const perKilogram = ({ amount, price }: Pick<NamedPrice, 'amount' | 'price'>, fuel: Fuel): number =>
  price / ('mass_kg' in amount ? amount.mass_kg : amount.volume_m3 * densityOf(fuel));

const severalExample = 'lump 20 lb $18; briquettes 16 lb $12';

/** `lump 20 lb $18; briquettes 16 lb $12`, by fuel. */
export function readPrices(said: string, units: UnitSystem): ReadonlyMap<string, FuelPrice> {
  return new Map(
    said.split(';').map((one) => {
      const [, name = '', rest = ''] = /^\s*([\p{L}][\p{L} -]*?)\s*(?=[\d$€£])(.*)$/u.exec(one) ?? [];
      if (name === '') throw unreadable(one).with({ example: severalExample });
      const fuel = findFuel(name);
      try {
        return [fuel.id, readPrice(rest, fuel, units)] as const;
      } catch (error) {
        throw error instanceof AskError ? error.with({ example: severalExample }) : error;
      }
    }),
  );
}

/** J/(mol K); gas is metered at about 15 °C and 1 atm. */
const GAS_J_molK = 8.314462618;
const METERED_K = 288.15;
const METERED_Pa = 101_325;

/** kg/m³ of a gas that comes by pipe, as a meter counts it: M p ÷ (R T). Nothing for what comes in bottles or heaps. */
export function pipedDensity({ kind, bulk_density_kg_m3, combustible }: Fuel): number | undefined {
  // Methane is no liquid at any pressure a bottle holds; propane and butane are sold as liquids.
  if (kind !== 'gas' || bulk_density_kg_m3 || !('gases' in combustible)) return undefined;
  if ((combustible.gases.CH4 ?? 0) < 0.5) return undefined;
  return (gasesMolarMass_kg_mol(combustible.gases) * METERED_Pa) / (GAS_J_molK * METERED_K);
}

/** Of the liquid, or loose in a heap; bottled gas is sold by the volume of its liquid, piped gas by its own. */
function densityOf(fuel: Fuel): number {
  const { name, kind, bulk_density_kg_m3 } = fuel;
  if (bulk_density_kg_m3) return bulk_density_kg_m3.typical;
  const piped = pipedDensity(fuel);
  if (piped !== undefined) return piped;
  throw new AskError({
    code: 'unfit',
    what: `no density of ${name} is known here${kind === 'gas' ? '' : ' in a heap'}, so a price by volume says nothing`,
    expected: 'a price for a weight',
    example: '$18 for 20 lb',
  });
}

const unreadable = (said: string) =>
  new AskError({
    code: 'unreadable',
    what: `"${said.trim().slice(0, 40)}" is not a price`,
    expected: 'money, and what it buys: $18 for 20 lb; with prices= a fuel before each and a semicolon between',
    example: '$18 for 20 lb',
  });
