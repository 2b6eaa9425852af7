import { type Fuel, findFuel } from '../../core/fire/fuel/fuel.ts';
import { findPour } from '../../core/materials/catalogue.ts';
import { type Dimension, type Quantity, readQuantity } from '../../core/quantity/parse.ts';
import type { Claimed, Comparison } from './claimed.ts';

const numberWords: readonly (readonly [RegExp, string])[] = [
  [/\bhalf an hour\b/g, '30 min'],
  [/\ban hour and a half\b/g, '90 min'],
  [/\b(?:an|one) hour\b/g, '1 h'],
  ...['two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'].map(
    (word, index) => [new RegExp(`\\b${word}\\b`, 'g'), String(index + 2)] as const,
  ),
];

/** Small letters, digits for numbers, and none of the phrases that say who says so. */
export function plain(sentence: string): string {
  let words = sentence
    .normalize('NFC')
    .toLowerCase()
    .replace(/[\s\u00a0\u202f]+/g, ' ')
    .replace(/[’‘]/g, "'")
    .replace(/[.!?\s]+$/, '')
    .replace(/^\s*(?:(?:i (?:think|say|heard)|they say|people say|it is said|someone says)(?: that)?,? )/, '')
    .trim();
  for (const [pattern, digits] of numberWords) words = words.replace(pattern, digits);
  return words;
}

/** Fragments of patterns: `q` is a number with one of some units, by name. */
export const number = String.raw`\d[\d.,/½¼¾]*(?: \d\/\d)?`;
export const q = (name: string, units: string) => `(?<${name}>${number} ?(?:${units}))`;
export const mass = 'kg|kilos?|g|grams?|lbs?|pounds?|oz|t';
export const degrees = '° ?[cf]|degrees? [cf]|k|c|f';
export const time = 'h|hours?|hrs?|min|minutes?|s|seconds?';
export const volume = 'l|litres?|liters?|gal|gallons?|cu ft|cubic feet';
export const length = 'mm|cm|in|inch|inches|"|ft|feet|m';
export const power = 'kw|w|btu\\/h';
export const more =
  '(?<limit>at most|at least|less than|more than|under|over|below|above|up to|no more than|only|about|around|roughly|some)? ?';
export const name = (group: string) => `(?<${group}>[a-z][a-z -]{1,30})`;

const compared: Readonly<Record<string, Comparison>> = {
  'at most': 'at most',
  'less than': 'at most',
  under: 'at most',
  below: 'at most',
  'up to': 'at most',
  'no more than': 'at most',
  only: 'at most',
  'at least': 'at least',
  'more than': 'at least',
  over: 'at least',
  above: 'at least',
};
export const compareOf = (limit: string | undefined, otherwise: Comparison): Comparison =>
  limit === undefined ? otherwise : (compared[limit.trim()] ?? 'about');

export type Groups = Readonly<Record<string, string | undefined>>;
export interface Pattern {
  readonly pattern: RegExp;
  /** Nothing where the words fit and yet make no claim. */
  readonly means: (groups: Groups) => Claimed | undefined;
}

export const whole = (text: string): RegExp => new RegExp(`^(?:${text})$`, 'u');

export function read(text: string | undefined, dimension: Dimension): Quantity {
  const typed = (text ?? '')
    .replace(/ ?degrees? ([cf])$/, ' °$1')
    .replace(/(?<=\d) ?([cf])$/, ' °$1')
    .replace(/° ?([cf])/, (_, unit: string) => `°${unit.toUpperCase()}`);
  const spelled = typed
    .replace(/\bkw\b/, 'kW')
    .replace(/\bw\b/, 'W')
    .replace(/\bbtu\b/, 'Btu')
    .replace(/\bmj\b/, 'MJ')
    .replace(/\bkj\b/, 'kJ')
    .replace(/\bkwh\b/, 'kWh')
    .replace(/(?<=\d) ?k$/, ' K')
    .replace(/(?<=\d) ?l$/, ' L');
  return readQuantity(spelled, { dimensions: [dimension], label: 'the claim' });
}

export const fuelOf = (text: string | undefined): Fuel =>
  findFuel((text ?? '').replace(/^(?:a|an|the|some) /, '').replace(/ (?:fire|burner|flame|furnace)$/, ''));
export const metalOf = (text: string | undefined): string =>
  findPour((text ?? '').replace(/^(?:of|the) /, '')).id.replaceAll('-', ' ');
export const typed = ({ text }: Quantity): string => text;
export const system = (...all: readonly Quantity[]) => all.find((one) => one.system !== undefined)?.system;
