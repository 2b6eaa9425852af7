import { type Currency, isCurrency, isSign, nameOf } from './currency.ts';
import type { Figure, Shown, SiUnit, UnitSystem } from './figure.ts';
import { type Scale, scaleOf } from './scale.ts';

/** Digits of a number without a range. */
const PLAIN_DIGITS = 3;

const otherOf = (system: UnitSystem): UnitSystem => (system === 'US' ? 'metric' : 'US');
const onScale = (si: number, { factor, offset }: Scale): number => (si - offset) / factor;

/** Place of the leading digit: 0 for 1 to 9.99, −1 for 0.1 to 0.99. */
const placeOf = (size: number): number =>
  size > 0 && Number.isFinite(size) ? Math.floor(Math.log10(size) + 1e-12) : 0;

/** Last decimal place worth printing beside an uncertainty: its second digit below 20, else its first. */
function lastPlace(uncertainty: number): number {
  const place = placeOf(uncertainty);
  return uncertainty / 10 ** place < 2 - 1e-9 ? place - 1 : place;
}

/** Rounded at a place of ten; commas from 10,000 on, where nobody reads bare digits. */
function print(value: number, place: number, most: number): string {
  const last = Math.max(place, -most);
  const decimals = Math.min(Math.max(-last, 0), 20);
  const rounded = last > 0 ? Math.round(value / 10 ** last) * 10 ** last : value;
  const text = Math.abs(rounded) < 1e15 ? rounded.toFixed(decimals) : rounded.toPrecision(PLAIN_DIGITS);
  const signed = text.startsWith('-') ? text.replace(/^-(?=[0.]*$)/, '') : text;
  const point = signed.indexOf('.');
  const whole = point < 0 ? signed : signed.slice(0, point);
  if (whole.length <= 4) return signed;
  const grouped = whole.replace('-', '').length > 4 && /^-?\d+$/.test(whole);
  const front = grouped ? whole.replace(/\B(?=(\d{3})+$)/g, ',') : whole;
  return point < 0 ? front : `${front}${signed.slice(point)}`;
}

/** Without needless zeros: `14.0` typed as 14 stays 14. */
const trimmed = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

function withUnit(number: string, { name }: Pick<Scale, 'name'>): string {
  if (isSign(name)) return number.startsWith('-') ? `-${name}${number.slice(1)}` : `${name}${number}`;
  return name === '' ? number : `${number} ${name}`;
}

/** ` (1 9/16)` beside decimal inches that are no whole sixteenth, as a tape reads them; nothing for other units. */
function sixteenths(value: number, number: string, unit: Scale): string {
  if (unit.name !== 'in' || unit.most > 2 || value < 1 / 16) return '';
  const count = Math.round(value * 16 + 1e-6);
  if (count % 16 === 0 && Number(number) === count / 16) return '';
  const divisor = [8, 4, 2].find((d) => count % d === 0) ?? 1;
  const fraction = count % 16 === 0 ? '' : `${(count % 16) / divisor}/${16 / divisor}`;
  const whole = Math.floor(count / 16);
  return ` (${[whole || '', fraction].filter(Boolean).join(' ')})`;
}

/** Place for a value without a range: three digits, whole dollars or euros from 10 on and whole pieces. */
function plainPlace(value: number, unit: SiUnit): number {
  if (unit === 'count') return Number.isInteger(value) ? 0 : Math.min(0, placeOf(Math.abs(value)) - PLAIN_DIGITS + 1);
  if (isCurrency(unit)) return Math.abs(value) < 10 && !Number.isInteger(value) ? -2 : 0;
  if (unit === 'K') return 0;
  return placeOf(Math.abs(value)) - PLAIN_DIGITS + 1;
}

function printPlain(si: number, unit: SiUnit, scale: Scale): string {
  const value = onScale(si, scale);
  // Nearly all is not all: 99.98 % of some samples is not 100 %.
  const place = scale.name === '%' && value > 99.9 && value < 100 ? placeOf(100 - value) : plainPlace(value, unit);
  const number = print(value, place, scale.name === '%' ? Math.max(scale.most, -place) : scale.most);
  return isCurrency(unit) ? number : trimmed(number);
}

/** One value in one system, three digits: `1.57 in (1 9/16)`, `40 mm`, `$24`, `10 %`. */
export function formatSi(value: number, unit: SiUnit, system: UnitSystem, shown?: Shown): string {
  const scale = scaleOf(value, unit, system, shown);
  const number = printPlain(value, unit, scale);
  return withUnit(number, scale) + sixteenths(onScale(value, scale), number, scale);
}

/** A price as it was named, to the cent: `$33.50`, `€21`, `30 CAD`. */
export const formatPrice = (price: number, currency: Currency): string =>
  withUnit(print(price, Number.isInteger(price) ? 0 : -2, 2), { name: nameOf(currency) });

/** One value in the reader's units with the other system behind it: `33 lb (15 kg)`. */
export function formatBoth(value: number, unit: SiUnit, system: UnitSystem, shown?: Shown): string {
  const [lead, other] = [system, otherOf(system)].map((each) => {
    const scale = scaleOf(value, unit, each, shown);
    return withUnit(printPlain(value, unit, scale), scale);
  });
  return lead === other ? lead! : `${lead} (${other})`;
}

/**
 * A figure for a reader: the value rounded to what its range justifies, the other system beside it (empty where both
 * read the same), and the range in the unit of `lead`, e.g. `27 to 40`.
 */
export function formatFigure(figure: Figure, system: UnitSystem): { lead: string; other: string; range?: string } {
  const { value, unit, shown, range } = figure;
  const size = value || range?.high || 0;
  const scale = scaleOf(size, unit, system, shown);
  const otherScale = scaleOf(size, unit, otherOf(system), shown);
  const spread = range ? Math.abs(range.high - range.low) / 2 : 0;
  if (!range || !(spread > 0)) {
    const lead = formatSi(value, unit, system, shown);
    const other = formatSi(value, unit, otherOf(system), shown);
    return { lead, other: other === lead ? '' : other };
  }
  // Never coarser than the value's own first digit, so that a wide range does not print it as nothing; but a value
  // that is nothing beside its range gets no row of zeros.
  const finestOn = (on: Scale): number => {
    const last = lastPlace(spread / on.factor);
    const finest = Math.max(Math.min(last, placeOf(Math.abs(onScale(value, on)))), last - 3);
    // A price has cents or none.
    return finest === -1 && isCurrency(unit) ? -2 : finest;
  };
  const finest = finestOn(scale);
  const printed = (si: number): string => print(onScale(si, scale), finest, scale.most);
  const number = printed(value);
  // A value that is known to the inch has no sixteenths.
  const lead = withUnit(number, scale) + (finest < 0 ? sixteenths(onScale(value, scale), number, scale) : '');
  const other = withUnit(print(onScale(value, otherScale), finestOn(otherScale), otherScale.most), otherScale);
  const [low, high] = [printed(range.low), printed(range.high)];
  const both = { lead, other: otherScale.name === scale.name ? '' : other };
  // A range narrower than the last printed place says nothing.
  if (low === high) return both;
  return {
    ...both,
    range: isSign(scale.name) ? `${withUnit(low, scale)} to ${withUnit(high, scale)}` : `${low} to ${high}`,
  };
}
