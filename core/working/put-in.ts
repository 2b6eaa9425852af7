import type { SiUnit } from '../quantity/figure.ts';
import { readKey } from '../quantity/key.ts';
import type { Step } from '../step.ts';
import { constants, type Equation, equationsOf, type Operator, type Term, worth } from './equation.ts';

/** A formula with its numbers put in: `dry mass = 0.031149 m³ × 1850 kg/m³ × (1 + 0.1) = 63.387 kg`. */
export interface PutIn {
  readonly title?: string;
  readonly text: string;
  /** How far the numbers put in are from the one that was worked out, as a share of it: rounding, or a balance that is not quite closed. */
  readonly off: number;
}

/** Worse than this is no rounding: a balance of heat that a solver closes is the worst there is. */
export const worstOff = 0.01;

/**
 * The arithmetic of a step in SI, so that every line can be reckoned again as it stands. What would not come to the
 * number that the step gives is left out: then the formula was said too roughly, and a test names it.
 */
export const putIn = (step: Step): readonly PutIn[] =>
  equationsOf(step).flatMap((equation) => {
    const off = offOf(equation, step);
    return off <= worstOff ? [{ ...titleOf(equation), text: lineOf(equation, step), off }] : [];
  });

export function offOf({ key, right }: Equation, { gives }: Step): number {
  const [given = Number.NaN, found] = [gives[key], worth(right)];
  return given === found ? 0 : Math.abs(found - given) / Math.max(Math.abs(given), Math.abs(found));
}

const titleOf = ({ title }: Equation) => (title === undefined ? {} : { title });

function lineOf({ key, right }: Equation, { gives }: Step): string {
  const { label, unit } = readKey(key);
  return `${label} = ${written(right, 0, false)} = ${siText(gives[key] ?? Number.NaN, unit)}`;
}

const strength: Readonly<Record<Operator, number>> = { '+': 1, '−': 1, '×': 2, '÷': 2 };

/** Parentheses only where the order would change without them. */
function written(term: Term, outer: number, isRight: boolean): string {
  switch (term.kind) {
    case 'number':
      return digits(term.value);
    case 'constant':
      return term.name === 'π' ? 'π' : `${digits(constants.σ)} W/(m² K⁴)`;
    case 'key':
      return numberOf(term, outer);
    case 'call':
      return `${term.name}(${written(term.of, 0, false)})`;
    case 'power':
      return `(${written(term.base, 0, false)})${raised[term.exponent]}`;
    case 'operation': {
      const own = strength[term.operator];
      const text = `${written(term.left, own, false)} ${term.operator} ${written(term.right, own, true)}`;
      return own < outer || (own === outer && isRight) ? `(${text})` : text;
    }
  }
}

const raised: Readonly<Record<number, string>> = { 2: '²', 3: '³', 4: '⁴' };

/** A negative number, and a unit that is a fraction, keep to themselves. */
function numberOf({ key, value }: Extract<Term, { kind: 'key' }>, outer: number): string {
  const text = siText(value, readKey(key).unit);
  return value < 0 && outer > 0 ? `(${text})` : text;
}

/** In SI with five digits: enough to reckon on with. */
export function siText(value: number, unit: SiUnit): string {
  const name = unitNames[unit] ?? unit;
  return name === '' ? digits(value) : `${digits(value)} ${name}`;
}

const unitNames: Partial<Record<SiUnit, string>> = {
  '1': '',
  count: '',
  dK: 'K',
  m2: 'm²',
  m3: 'm³',
  'kg/m3': 'kg/m³',
  'm3/s': 'm³/s',
  'W/m2': 'W/m²',
  'W/(m2 K)': 'W/(m² K)',
};

const kept = 5;

function digits(value: number): string {
  const size = Math.abs(value);
  if (!Number.isFinite(value)) return String(value);
  if (value === 0) return '0';
  if (size < 1e-4 || size >= 1e12) {
    const [front = '', power = ''] = value.toExponential(kept - 1).split('e');
    return `${trimmed(front)} × 10${[...power.replace('+', '')].map((one) => superscript[one] ?? one).join('')}`;
  }
  const rounded = Number(value.toPrecision(kept));
  const [whole = '', rest] = trimmed(
    size >= 10 ** kept ? rounded.toFixed(0) : rounded.toFixed(kept - 1 - Math.floor(Math.log10(size))),
  )
    .replace('-', '')
    .split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, ',') : whole;
  return `${value < 0 ? '−' : ''}${grouped}${rest === undefined ? '' : `.${rest}`}`;
}

const trimmed = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);
const superscript: Readonly<Record<string, string>> = {
  '-': '⁻',
  '0': '⁰',
  '1': '¹',
  '2': '²',
  '3': '³',
  '4': '⁴',
  '5': '⁵',
  '6': '⁶',
  '7': '⁷',
  '8': '⁸',
  '9': '⁹',
};
