import { AskError } from '../../core/ask-error.ts';
import { type Fuel, findFuel } from '../../core/fire/fuel/fuel.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { type Quantity, readQuantity } from '../../core/quantity/parse.ts';

const example = '3.2 kg lump charcoal';

/** `3.2 kg lump charcoal`, `7 lb of propane`. @throws AskError about `fuel`. */
export function readFuelUsed(said: string, units: UnitSystem): { readonly fuel: Fuel; readonly fuel_kg: number } {
  const words = said.trim().split(/\s+/);
  for (let count = words.length; count > 0; count--) {
    const rest = words
      .slice(count)
      .join(' ')
      .replace(/^of\s+/i, '');
    const amount = massIn(words.slice(0, count).join(' '), rest, units);
    if (!amount) continue;
    if (rest === '')
      throw saidTooLittle(`${said.trim().slice(0, 40)} of what?`, `${said.trim().slice(0, 40)} lump charcoal`);
    return { fuel: fuelNamed(rest, amount.text), fuel_kg: amount.si };
  }
  throw saidTooLittle(`"${said.slice(0, 40)}" does not say how much fuel was burned`, example);
}

const readable = ['unreadable', 'unknown-unit', 'too-long', 'ambiguous'];

function massIn(said: string, rest: string, units: UnitSystem): Quantity | undefined {
  if (!/^[\d.½¼¾⅓⅔⅛⅜⅝⅞]/u.test(said)) return undefined;
  try {
    return readQuantity(said, {
      dimensions: ['mass'],
      plainUnit: { metric: 'kg', US: 'lb' },
      system: units,
      label: 'fuel burned',
      min: 0.01,
      max: 2000,
    });
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
    // "1.739 kg" has two readings and is one quantity; "3 kg lump charcoal" is none as a whole.
    const twoWays = error.code === 'ambiguous' && /^[\d.,]+ ?[a-z.]+$/i.test(said);
    if (readable.includes(error.code) && !twoWays) return undefined;
    throw error.with({ option: 'fuel', example: `${error.example} ${rest}`.trim() });
  }
}

function fuelNamed(name: string, amount: string): Fuel {
  try {
    return findFuel(name);
  } catch (error) {
    throw error instanceof AskError ? error.with({ option: 'fuel', example: `${amount} ${error.example}` }) : error;
  }
}

const saidTooLittle = (what: string, line: string) =>
  new AskError({ code: 'missing', what, expected: 'a mass, then the fuel', example: line, option: 'fuel' });
