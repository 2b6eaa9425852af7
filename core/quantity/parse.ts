import { AskError } from '../ask-error.ts';
import { type Evaluated, Expression } from './expression.ts';
import type { SiUnit, UnitSystem } from './figure.ts';
import { formatBoth } from './format.ts';
import { bothSpellings, isTwoWay, LONGEST, quoted, refuseCodes, spellFractions, tidy } from './typed.ts';
import { type Dimension, meaningOf } from './units.ts';

export type { Dimension } from './units.ts';

export interface Quantity {
  readonly dimension: Dimension;
  /** In m, kg, m3, K, Pa, m3/s, W, J, s, 1, USD, kg/m3 or W/(m K), by dimension. */
  readonly si: number;
  /** As typed, tidied. */
  readonly text: string;
  /** Of the unit typed or taken; `undefined` for time, money, shares and plain numbers. */
  readonly system: UnitSystem | undefined;
  /** The unit taken for a plain number. */
  readonly assumedUnit?: string;
  /** Pressures only: above the air around it (true) or above nothing (false, typed `abs`). */
  readonly gauge?: boolean;
}

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
  power: { metric: '30 kW', US: '100000 Btu/h', si: 'W', words: 'a heat rate' },
  energy: { metric: '10 MJ', US: '9500 Btu', si: 'J', words: 'an amount of heat' },
  time: { metric: '3 h', US: '3 h', si: 's', words: 'a time' },
  fraction: { metric: '10%', US: '10%', si: '1', words: 'a share' },
  money: { metric: '$9', US: '$9', si: 'USD', words: 'an amount of money' },
  density: { metric: '1900 kg/m3', US: '120 lb/ft3', si: 'kg/m3', words: 'a density' },
  conductivity: { metric: '0.3 W/mK', US: '0.3 W/mK', si: 'W/(m K)', words: 'a conductivity' },
  number: { metric: '3', US: '3', si: 'count', words: 'a plain number' },
};

const HOTTER = / (hotter|warmer|higher|cooler|colder|lower)$/i;
const PRESSURE_BASE = / ?\(?\b(abs|absolute|gauge|gage)\.?\)?$/i;

/** Reads one typed quantity. Every refusal is an AskError with an example that works. */
export function readQuantity(text: string, wanted: Wanted): Quantity {
  const hint = hintOf(wanted);
  const fail = (code: AskError['code'], what: string, expected = hint.expected): AskError =>
    new AskError({ code, what, expected, example: hint.example });

  if (text.length > LONGEST) {
    throw fail('too-long', `That is ${text.length} characters; a quantity has at most ${LONGEST}.`);
  }
  const typed = tidy(text);
  if (typed === '') throw fail('missing', `Nothing was given${wanted.label ? ` for ${wanted.label}` : ''}.`);
  refuseCodes(typed, hint.example);

  const difference = HOTTER.exec(typed)?.[1];
  const base = PRESSURE_BASE.exec(typed)?.[1];
  // Our own output is readable too: the eighths behind decimal inches say nothing new.
  const bare = typed
    .replace(HOTTER, '')
    .replace(PRESSURE_BASE, '')
    .replace(/(?<=\d in) \([\d /]+\)$/, '');
  const spelled = spellFractions(bare);
  if (/\d ?x ?\d/i.test(spelled) && !/[+(]| - /.test(spelled)) {
    throw fail('ambiguous', `${quoted(typed)} may be a product or two sizes.`, 'one size, or * for times');
  }

  const dimensions = difference ? (['temperature-difference'] as const) : wanted.dimensions;
  const read = (decimals: 'point' | 'comma'): Quantity =>
    settle(new Expression(spelled, decimals, dimensions, hint.example).evaluate());

  const settle = (value: Evaluated): Quantity => {
    const turn = difference && /cooler|colder|lower/i.test(difference) ? -1 : 1;
    const found = dimensioned(value, typed, wanted, fail);
    if (!Number.isFinite(found.si)) throw fail('out-of-range', `${quoted(typed)} is too large to calculate with.`);
    if (base && found.dimension !== 'pressure') {
      throw fail('wrong-dimension', `${quoted(typed)} says ${base}, but is no pressure.`);
    }
    const gauge = base ? /^ga/i.test(base) : (value.unit?.gauge ?? true);
    return { ...found, si: turn * found.si, ...(found.dimension === 'pressure' && { gauge }) };
  };

  const within = ({ si }: Quantity): boolean => si >= (wanted.min ?? -Infinity) && si <= (wanted.max ?? Infinity);
  const twoWay = (spelled.match(/[\d.,]+/g) ?? []).some(isTwoWay);
  const readings = twoWay ? [read('point'), read('comma')] : [read('point')];
  const fitting = readings.filter(within);
  if (fitting.length === 1) return fitting[0]!;
  const words = readings.map((each) => shown(each, hint.system));
  if (fitting.length === 2) {
    const what = `${quoted(typed)} can be read as ${words.join(' or as ')}.`;
    const [grouped, decimal] = bothSpellings(typed);
    throw new AskError({ code: 'ambiguous', what, expected: `${grouped} or ${decimal}`, example: grouped });
  }
  throw fail(
    'out-of-range',
    `${quoted(typed)} is ${words.join(' or ')}${boundsOf(readings[0]!, wanted, hint.system)}.`,
  );
}

/** Reads a plain number, with the same separators, fractions and arithmetic as a quantity. */
export function readNumber(text: string, bounds: Omit<Wanted, 'dimensions' | 'plainUnit'> = {}): number {
  return readQuantity(text, { ...bounds, dimensions: ['number'] }).si;
}

/** What is asked for, in words, and an example in the asker's units. */
function hintOf(wanted: Wanted): { expected: string; example: string; system: UnitSystem } {
  const system = wanted.system ?? 'metric';
  const names = wanted.dimensions.map((dimension) => EXAMPLES[dimension].words);
  const label = wanted.label ? ` for ${wanted.label}` : '';
  return {
    system,
    expected: `${names.join(' or ') || 'a quantity'}${label}`,
    example: EXAMPLES[wanted.dimensions[0] ?? 'number'][system],
  };
}

/** Gives a plain number the asker's unit, and refuses what is not among the wanted dimensions. */
function dimensioned(
  { dimension, si, unit }: Evaluated,
  text: string,
  wanted: Wanted,
  fail: (code: AskError['code'], what: string) => AskError,
): Quantity {
  if (dimension === 'number' && wanted.plainUnit) {
    const assumedUnit = wanted.plainUnit[wanted.system ?? 'metric'];
    const taken = meaningOf(assumedUnit, wanted.dimensions);
    if (!taken) throw new Error(`plainUnit ${assumedUnit} is not a listed unit`);
    return {
      dimension: taken.dimension,
      si: si * taken.factor + taken.offset,
      text,
      system: taken.system,
      assumedUnit,
    };
  }
  if (wanted.dimensions.includes(dimension)) return { dimension, si, text, system: unit?.system };
  if (dimension === 'number') throw fail('unknown-unit', `${quoted(text)} has no unit.`);
  throw fail('wrong-dimension', `${quoted(text)} is ${EXAMPLES[dimension].words}.`);
}

function shown({ dimension, si }: Quantity, system: UnitSystem): string {
  return dimension === 'number' ? String(si) : formatBoth(si, EXAMPLES[dimension].si, system);
}

/** `; it must be from … to …`, as far as there are bounds. */
function boundsOf(read: Quantity, { min, max }: Wanted, system: UnitSystem): string {
  const at = (si: number): string => shown({ ...read, si }, system);
  if (min !== undefined && max !== undefined) return `; it can be ${at(min)} to ${at(max)}`;
  if (min !== undefined) return `; it must be at least ${at(min)}`;
  return max === undefined ? '' : `; it can be at most ${at(max)}`;
}
