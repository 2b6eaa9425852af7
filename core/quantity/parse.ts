import { AskError } from '../ask-error.ts';
import { type Evaluated, Expression } from './expression.ts';
import type { UnitSystem } from './figure.ts';
import { boundsOf, hintOf, inBounds, shownAs, type Wanted, wordsFor } from './hint.ts';
import { bothSpellings, isTwoWay, LONGEST, quoted, refuseCodes, spellNumbers, tidy } from './typed.ts';
import { type Dimension, meaningOf } from './units.ts';

export type { Wanted } from './hint.ts';
export type { Dimension } from './units.ts';

export interface Quantity {
  readonly dimension: Dimension;
  /** In m, kg, m3, K, Pa, m3/s, kg/s, m/s, W, J, s, 1, USD, kg/m3 or W/(m K), by dimension. */
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
  // Our own output is readable too: the sixteenths behind decimal inches say nothing new.
  const bare = typed
    .replace(HOTTER, '')
    .replace(PRESSURE_BASE, '')
    .replace(/(?<=\d in) \([\d /]+\)$/, '');
  const spelled = spellNumbers(bare);
  if (/\d\D*( to |\.\.)\D*\d/i.test(spelled)) {
    throw fail('unreadable', `${quoted(typed)} is a range.`, `one value: ${hint.expected}`);
  }
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
    const gauge = base ? /^ga/i.test(base) : (value.unit?.gauge ?? true);
    if (found.si < 0 && (found.dimension === 'temperature' || (found.dimension === 'pressure' && !gauge))) {
      throw fail('out-of-range', `${quoted(typed)} is below absolute zero.`);
    }
    if (base && found.dimension !== 'pressure') {
      throw fail('wrong-dimension', `${quoted(typed)} says ${base}, but is no pressure.`);
    }
    return { ...found, si: turn * found.si, ...(found.dimension === 'pressure' && { gauge }) };
  };

  const twoWay = (spelled.match(/[\d.,]+/g) ?? []).some(isTwoWay);
  const readings = twoWay ? possible([() => read('point'), () => read('comma')]) : [read('point')];
  const fitting = readings.filter(({ si }) => inBounds(si, wanted));
  if (fitting.length === 1) return fitting[0]!;
  const words = readings.map((each) => shownAs(each.dimension, each.si, hint.system));
  if (fitting.length === 2) {
    const what = `${quoted(typed)} can be read as ${words.join(' or as ')}.`;
    const [grouped, decimal] = bothSpellings(typed);
    throw new AskError({ code: 'ambiguous', what, expected: `${grouped} or ${decimal}`, example: grouped });
  }
  // In the units it was typed in, where the asker has chosen none.
  const lead = wanted.system ?? readings[0]!.system ?? hint.system;
  const { expected, example } = hintOf({ ...wanted, system: lead });
  const bounds = boundsOf(readings[0]!.dimension, wanted, lead);
  const shown = readings.map(({ dimension, si }) => shownAs(dimension, si, lead));
  throw new AskError({
    code: 'out-of-range',
    what: `${quoted(typed)} is ${shown.join(' or ')}.`,
    expected: `${expected}${bounds}`,
    example,
  });
}

/** The readings that come to something; where none does, the first refusal. */
function possible(ways: readonly (() => Quantity)[]): readonly Quantity[] {
  const refusals: unknown[] = [];
  const readings = ways.flatMap((way) => {
    try {
      return [way()];
    } catch (error) {
      if (!(error instanceof AskError)) throw error;
      refusals.push(error);
      return [];
    }
  });
  if (readings.length === 0) throw refusals[0];
  return readings;
}

/** Reads a plain number, with the same separators, fractions and arithmetic as a quantity. */
export function readNumber(text: string, bounds: Omit<Wanted, 'dimensions' | 'plainUnit'> = {}): number {
  return readQuantity(text, { ...bounds, dimensions: ['number'] }).si;
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
  if (dimension === 'energy' && wanted.dimensions.includes('power') && /btus?$/i.test(text)) {
    throw fail('wrong-dimension', `${quoted(text)} is ${wordsFor(dimension)}; a burner's is so much an hour.`).with({
      example: `${Math.round(si / (unit?.factor ?? 1))} Btu/h`,
    });
  }
  throw fail('wrong-dimension', `${quoted(text)} is ${wordsFor(dimension)}.`);
}
