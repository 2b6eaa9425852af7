import { create, unitDependencies } from 'mathjs';
import type { UnitSystem } from './figure.ts';

/** What a quantity measures. A difference of temperatures is not a temperature. */
export type Dimension =
  | 'length'
  | 'mass'
  | 'volume'
  | 'temperature'
  | 'temperature-difference'
  | 'pressure'
  | 'flow'
  | 'mass-flow'
  | 'speed'
  | 'power'
  | 'energy'
  | 'time'
  | 'fraction'
  | 'money'
  | 'density'
  | 'conductivity'
  | 'number';

/** One meaning of one typed unit: `si = typed × factor + offset`. */
export interface Unit {
  /** How it is written back. */
  readonly name: string;
  readonly dimension: Dimension;
  /** SI units of the dimension in one of these: m, kg, m3, K, Pa, m3/s, kg/s, m/s, W, J, s, 1, USD, kg/m3, W/(m K). */
  readonly factor: number;
  /** K at zero of the scale; 0 for everything that is not a temperature. */
  readonly offset: number;
  readonly system: UnitSystem | undefined;
  /** Set where the name itself says so: `psia` false, `psig` true. */
  readonly gauge?: boolean;
}

const { unit } = create({ unitDependencies: unitDependencies! });

/** Factor between two units named in this file, by mathjs. Typed text never comes here. */
const by = (from: string, to: string): number => unit(1, from).toNumber(to);

/** Pa in one inch of water column at 4 °C. */
const INCH_OF_WATER_PA = 249.08891;
/** m3 in one imperial gallon, by definition. */
const IMPERIAL_GALLON_M3 = 4.54609e-3;
/** m3 in one cubic foot. */
const CUBIC_FOOT_M3 = by('ft', 'm') ** 3;
/** K at 0 °C. */
const ZERO_C_K = 273.15;

const metric = 'metric';
const US = 'US';
const units = new Map<string, Unit[]>();

/** Enters one unit under its names, `|` between them; later meanings of a name stand behind earlier ones. */
function add(
  dimension: Dimension,
  system: UnitSystem | undefined,
  factor: number,
  names: string,
  more: { offset?: number; gauge?: boolean } = {},
): void {
  const all = names.split('|');
  const entry: Unit = { name: all[0]!, dimension, factor, offset: 0, system, ...more };
  for (const name of all) {
    const key = name.toLowerCase();
    const meanings = units.get(key) ?? [];
    if (!meanings.includes(entry)) units.set(key, [...meanings, entry]);
  }
}

add('length', US, by('in', 'm'), 'in|inch|inches|"');
add('length', US, by('ft', 'm'), "ft|foot|feet|'");
add('length', US, by('yard', 'm'), 'yd|yard|yards');
add('length', metric, 1e-3, 'mm|millimetre|millimetres|millimeter|millimeters');
add('length', metric, 1e-2, 'cm|centimetre|centimetres|centimeter|centimeters');
add('length', metric, 1, 'm|metre|metres|meter|meters');

add('mass', US, by('lb', 'kg'), 'lb|lbs|pound|pounds');
add('mass', US, by('oz', 'kg'), 'oz|ounce|ounces');
add('mass', metric, 1, 'kg|kgs|kilo|kilos|kilogram|kilograms');
add('mass', metric, 1e-3, 'g|gram|grams');
add('mass', metric, 1e3, 't|tonne|tonnes');

add('volume', US, by('gallon', 'm^3'), 'gal|US gal|gals|gallon|gallons|US gallon|US gallons');
add('volume', US, IMPERIAL_GALLON_M3, 'imp gal|imperial gallon|imperial gallons');
add('volume', US, by('quart', 'm^3'), 'qt|qts|quart|quarts');
add('volume', US, by('pint', 'm^3'), 'pint|pints|pt');
add('volume', US, by('cup', 'm^3'), 'cup|cups');
add('volume', US, by('fluidounce', 'm^3'), 'fl oz|floz|fl. oz|fluid ounce|fluid ounces|oz|ounce|ounces');
add('volume', metric, 1e-3, 'L|litre|litres|liter|liters');
add('volume', metric, 1e-6, 'ml|millilitre|millilitres|milliliter|milliliters|cc|cm3|cm^3');
add('volume', metric, 1, 'm3|m^3|cubic metre|cubic metres|cubic meter|cubic meters');
add('volume', US, CUBIC_FOOT_M3, 'cu ft|cu. ft|cuft|ft3|ft^3|cubic foot|cubic feet');
add('volume', US, by('in', 'm') ** 3, 'cu in|cu. in|in3|in^3|cubic inch|cubic inches');

const CELSIUS = '°C|C|degC|deg C|celsius';
const FAHRENHEIT = '°F|F|degF|deg F|fahrenheit';
const KELVIN = 'K|kelvin';
add('temperature', metric, 1, CELSIUS, { offset: ZERO_C_K });
add('temperature', US, 5 / 9, FAHRENHEIT, { offset: by('degF', 'K') - 5 / 9 });
add('temperature', metric, 1, KELVIN);
add('temperature-difference', metric, 1, CELSIUS);
add('temperature-difference', US, 5 / 9, FAHRENHEIT);
add('temperature-difference', metric, 1, KELVIN);

add('pressure', US, by('psi', 'Pa'), 'psi');
add('pressure', US, by('psi', 'Pa'), 'psig', { gauge: true });
add('pressure', US, by('psi', 'Pa'), 'psia', { gauge: false });
add('pressure', metric, 1e5, 'bar');
add('pressure', metric, 1e2, 'mbar');
add('pressure', metric, 1e3, 'kPa');
add('pressure', metric, 1, 'Pa');
add('pressure', US, INCH_OF_WATER_PA, 'inWC|in wc|in w.c|"wc|" wc|inH2O|in H2O|inches wc|inches of water');

add('flow', US, CUBIC_FOOT_M3 / 60, 'cfm|cu ft/min|ft3/min');
add('flow', metric, 1 / 3600, 'm3/h');
add('flow', metric, 1e-3, 'L/s');
add('flow', metric, 1e-3 / 60, 'L/min');

add('mass-flow', metric, 1 / 3600, 'kg/h|kg/hr|kg per hour');
add('mass-flow', metric, 1, 'kg/s');
add('mass-flow', metric, 1e-3 / 60, 'g/min');
add('mass-flow', US, by('lb', 'kg') / 3600, 'lb/h|lb/hr|lbs/h|lbs/hr|lb per hour');

add('speed', metric, 1, 'm/s');
add('speed', US, by('ft', 'm'), 'ft/s|fps');

add('power', metric, 1, 'W|watt|watts');
add('power', metric, 1e3, 'kW|kilowatt|kilowatts');
add('power', US, by('BTU/hour', 'W'), 'Btu/h|Btu/hr|Btuh|Btu per hour');

add('energy', metric, 1e6, 'MJ');
add('energy', metric, 1e3, 'kJ');
add('energy', metric, 1, 'J');
add('energy', metric, 3.6e6, 'kWh');
add('energy', US, by('BTU', 'J'), 'Btu|Btus');

add('time', undefined, 1, 's|sec|secs|second|seconds');
add('time', undefined, 60, 'min|mins|minute|minutes');
add('time', undefined, 3600, 'h|hr|hrs|hour|hours');
add('time', undefined, 86_400, 'day|days|d');
add('time', undefined, 604_800, 'week|weeks|wk|wks');

add('fraction', undefined, 0.01, '%|percent');
add('money', undefined, 1, 'USD|$|dollar|dollars');
add('density', metric, 1, 'kg/m3|kg/m^3');
add('density', US, by('lb', 'kg') / CUBIC_FOOT_M3, 'lb/ft3|lb/ft^3|lb/cu ft|pcf');
add('conductivity', metric, 1, 'W/mK|W/(m K)|W/m K|W/m.K');

/** Every name a unit may be typed as, in lower case, with its meanings: `oz` is a mass and a volume. */
export const UNITS: ReadonlyMap<string, readonly Unit[]> = units;

const longestFirst = [...UNITS.keys()].sort((a, b) => b.length - a.length);

/** The longest unit name that starts at `at` and is not cut out of a longer word. */
export function unitNameAt(lower: string, at: number): string | undefined {
  return longestFirst.find(
    (name) => lower.startsWith(name, at) && !(/[a-z]$/.test(name) && /^[a-z]/.test(lower.slice(at + name.length))),
  );
}

/** The meaning of a unit name among the wanted dimensions, in their order; else its first meaning. */
export function meaningOf(name: string, wanted: readonly Dimension[]): Unit | undefined {
  const meanings = UNITS.get(name.toLowerCase());
  for (const dimension of wanted) {
    const found = meanings?.find((meaning) => meaning.dimension === dimension);
    if (found) return found;
  }
  return meanings?.[0];
}

/** The listed unit whose name is fewest edits away from a mistyped one, of the wanted dimensions. */
export function nearestUnit(typed: string, wanted: readonly Dimension[]): Unit {
  const word = typed.toLowerCase();
  let best: Unit | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  for (const [name, meanings] of UNITS) {
    const meaning = meanings.find(({ dimension }) => wanted.includes(dimension));
    const count = meaning ? edits(word, name) : Number.POSITIVE_INFINITY;
    if (count < fewest) {
      fewest = count;
      best = meaning;
    }
  }
  return best ?? UNITS.get('in')![0]!;
}

/** Letters to add, drop or change to make `b` of `a`. */
function edits(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      next.push(Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
    }
    row = next;
  }
  return row[b.length]!;
}
