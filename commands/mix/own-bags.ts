import { AskError } from '../../core/ask-error.ts';
import { exactly } from '../../core/materials/spread.ts';
import type { Bag } from '../../core/mix/price.ts';
import { ingredientId } from '../../core/mix/ratio.ts';
import { readQuantity } from '../../core/quantity/parse.ts';

/** `clay 50 lb $9; sand 50 lb $5`: a name, a bag size, a price; `;` between bags. */
export function readBags(text: string): readonly Bag[] {
  return text.split(';').map((one) => {
    const match =
      /^\s*([\p{L}][\p{L} -]*?)\s+([\d.,/ ½¼¾]+\s*[\p{L}³ .]+?)\s*[$€£]\s*(\d{1,5}(?:\.\d{1,2})?)\s*$/u.exec(one);
    const [, name, size, price] = match ?? [];
    if (name === undefined || size === undefined || price === undefined) throw unreadable(one);
    const bag = readQuantity(size, { dimensions: ['mass', 'volume'], label: 'bag size', min: 1e-4, max: 2000 });
    return {
      material: ingredientId(name),
      ...(bag.dimension === 'mass' ? { mass_kg: bag.si } : { volume_m3: bag.si }),
      price_USD: exactly(Number(price)),
      source: 'common-practice',
      standing: 'common practice',
    };
  });
}

const unreadable = (one: string) =>
  new AskError({
    code: 'unreadable',
    what: `"${one.trim().slice(0, 40)}" is not a bag with its price`,
    expected: 'a name, a bag size and a price; a semicolon between bags',
    example: 'clay 50 lb $9; sand 50 lb $5',
    option: 'prices',
  });
