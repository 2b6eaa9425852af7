/** An ISO 4217 code. A money is a unit like another, except that nothing is ever converted into it. */
export type Currency = 'USD' | 'EUR' | 'GBP' | (string & { readonly currency: true });

/** The runtime keeps the list; past moneys stand in it too, and harm nobody. */
export const currencyCodes: readonly string[] = Object.freeze(Intl.supportedValuesOf('currency'));

const codes: ReadonlySet<string> = new Set(currencyCodes);

/** `$` is read as the United States dollar unless a code stands in its place. */
const signs: Readonly<Record<string, Currency>> = { $: 'USD', '€': 'EUR', '£': 'GBP' };

export const isCurrency = (code: string): code is Currency => codes.has(code);

/** `$`, `€`, `£` or a code in any case; undefined for anything else. */
export function currencyOf(typed: string): Currency | undefined {
  const code = typed.trim().toUpperCase();
  return isSign(code) ? signs[code] : isCurrency(code) ? code : undefined;
}

/** What stands beside an amount: the sign, else the code. */
export const nameOf = (currency: Currency): string => signOf.get(currency) ?? currency;

const signOf: ReadonlyMap<string, string> = new Map(Object.entries(signs).map(([sign, code]) => [code, sign]));

/** A sign stands before its amount, a code behind it like any unit. */
export const isSign = (name: string): boolean => Object.hasOwn(signs, name);
