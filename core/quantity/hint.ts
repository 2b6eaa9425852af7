import { Expression } from './expression.ts';
import type { SiUnit, UnitSystem } from './figure.ts';
import { formatBoth, formatSi } from './format.ts';
import type { Dimension } from './units.ts';

export interface Wanted {
  /** In order of preference: `oz` is read as the first that fits. */
  readonly dimensions: readonly Dimension[];
  /** The unit of a number typed without one; without it such a number is refused. */
  readonly plainUnit?: { readonly metric: string; readonly US: string };
  /** The asker's units, for plain numbers and for messages. */
  readonly system?: UnitSystem;
  /** SI of the dimension, inclusive. */
  readonly min?: number;
  /** SI of the dimension, inclusive. */
  readonly max?: number;
  /** What is usual for it, typed: a length may be a wall's or a mountain's. */
  readonly usual?: { readonly metric: string; readonly US: string };
  /** What the number is, for messages: `inside diameter`. */
  readonly label?: string;
}

const EXAMPLES: Readonly<Record<Dimension, { metric: string; US: string; si: SiUnit; words: string }>> = {
  length: { metric: '350 mm', US: '14 in', si: 'm', words: 'a length' },
  mass: { metric: '14 kg', US: '30 lb', si: 'kg', words: 'a mass' },
  volume: { metric: '9 L', US: '2.5 gal', si: 'm3', words: 'a volume' },
  temperature: { metric: '1100 °C', US: '2000 °F', si: 'K', words: 'a temperature' },
  'temperature-difference': { metric: '200 °C', US: '400 °F', si: 'dK', words: 'a temperature difference' },
  pressure: { metric: '140 kPa', US: '20 psi', si: 'Pa', words: 'a pressure' },
  flow: { metric: '60 m3/h', US: '35 cfm', si: 'm3/s', words: 'an air flow' },
  'mass-flow': { metric: '1 kg/h', US: '2 lb/h', si: 'kg/s', words: 'a mass an hour' },
  speed: { metric: '10 m/s', US: '30 ft/s', si: 'm/s', words: 'a speed' },
  power: { metric: '30 kW', US: '100000 Btu/h', si: 'W', words: 'a heat rate' },
  energy: { metric: '10 MJ', US: '9500 Btu', si: 'J', words: 'an amount of heat' },
  time: { metric: '3 h', US: '3 h', si: 's', words: 'a time' },
  fraction: { metric: '10%', US: '10%', si: '1', words: 'a share' },
  money: { metric: '$9', US: '$9', si: 'USD', words: 'an amount of money' },
  density: { metric: '1900 kg/m3', US: '120 lb/ft3', si: 'kg/m3', words: 'a density' },
  conductivity: { metric: '0.3 W/mK', US: '0.3 W/mK', si: 'W/(m K)', words: 'a conductivity' },
  number: { metric: '3', US: '3', si: 'count', words: 'a plain number' },
};

/** `a length`. */
export const wordsFor = (dimension: Dimension): string => EXAMPLES[dimension].words;

export const inBounds = (si: number, { min = -Infinity, max = Infinity }: Wanted): boolean => si >= min && si <= max;

/** What is asked for, in words, and an example in the asker's units that keeps the bounds. */
export function hintOf(wanted: Wanted): { expected: string; example: string; system: UnitSystem } {
  const system = wanted.system ?? 'metric';
  const names = wanted.dimensions.map(wordsFor);
  const label = wanted.label ? ` for ${wanted.label}` : '';
  const dimension = wanted.dimensions[0] ?? 'number';
  return {
    system,
    expected: `${names.join(' or ') || 'a quantity'}${label}`,
    example: exampleOf(dimension, wanted, system),
  };
}

function exampleOf(dimension: Dimension, wanted: Wanted, system: UnitSystem): string {
  const usual = (wanted.usual ?? EXAMPLES[dimension])[system];
  const read = (text: string) => new Expression(text, 'point', [dimension], usual).evaluate();
  const { si, unit } = read(usual);
  if (inBounds(si, wanted)) return usual;
  const { min = Math.min(0, 2 * (wanted.max ?? 0)), max = 2 * Math.abs(min) + 1 } = wanted;
  const middle = min > 0 ? Math.sqrt(min * max) : (min + max) / 2;
  if (!unit) return String(middle);
  if (dimension !== 'conductivity') {
    const typed = formatSi(middle, EXAMPLES[dimension].si, system)
      .replace(/ \(.*\)$/, '')
      .replaceAll(',', '');
    if (inBounds(read(typed).si, wanted)) return typed;
  }
  // Bounds finer than anything is printed, or a unit that is typed otherwise than printed.
  const number = String(Number(((middle - unit.offset) / unit.factor).toPrecision(6)));
  // A fourth decimal, so that three are not taken for thousands.
  return `${/\.\d{3}$/.test(number) ? `${number}0` : number} ${unit.name}`;
}

/** A value in both systems, for a message. */
export const shownAs = (dimension: Dimension, si: number, system: UnitSystem): string =>
  dimension === 'number' ? String(si) : formatBoth(si, EXAMPLES[dimension].si, system);

/** `, from … to …`, as far as there are bounds. */
export function boundsOf(dimension: Dimension, { min, max }: Wanted, system: UnitSystem): string {
  const at = (si: number): string => shownAs(dimension, si, system);
  if (min !== undefined && max !== undefined) return `, from ${at(min)} to ${at(max)}`;
  if (min !== undefined) return `, at least ${at(min)}`;
  return max === undefined ? '' : `, at most ${at(max)}`;
}
