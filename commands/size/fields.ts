import { AskError } from '../../core/ask-error.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { readNumber, readQuantity } from '../../core/quantity/parse.ts';
import { radians } from '../../core/shape/tuyere.ts';
import { type OptionMeta, text } from '../options.ts';

/** A text with units in it that the command reads itself; it has its say in which units lead the answer. */
export interface Told {
  readonly text: string;
  readonly dimension: 'length';
  readonly si: number;
  readonly system: UnitSystem | undefined;
}

const metricUnit = /\d\s*(?:mm|cm|m|l|ml|kg|g|t|litres?|liters?|kilos?)\b/i;
const usUnit =
  /\d\s*(?:["'″”’′]|(?:in|inch|inches|ft|feet|gal|gallons?|qt|quarts?|cups?|pints?|lbs?|pounds?|oz|cu in)\b)/i;

const systemIn = (said: string): UnitSystem | undefined =>
  usUnit.test(said) ? 'US' : metricUnit.test(said) ? 'metric' : undefined;

export function told({ label, most = 80 }: { label: string; most?: number }) {
  const meta: OptionMeta = { label, kind: 'text' };
  return text({ label, most })
    .transform((said): Told => ({ text: said, dimension: 'length', si: Number.NaN, system: systemIn(said) }))
    .meta({ ...meta });
}

/** Between sizes that say which they are. */
const worded_times =
  /\s*×\s*|\s+by\s+|\s*,\s*|\s+and\s+|\s+x\s+|(?<=\d|["'″”’′]|\d\s?(?:in|mm|cm|ft|m))\s*x\s*(?=[\d.½⅓⅔¼¾⅛⅜⅝⅞])/iu;
/** `a x b`, with ×, x or by between. */
const times = /\s*×\s*|\s+by\s+|(?<=\d|\s|["'″”’′]|\d\s?(?:in|mm|cm|ft|m))\s*x\s*(?=[\d.½⅓⅔¼¾⅛⅜⅝⅞])/iu;

const high = /\b(?:tall|high|height|deep|long)\b\.?/i;
const across = /\b(?:wide|across|width|diam(?:eter|etre)?|dia|outside|inside|o\.?d|i\.?d)\b\.?|[⌀øØ]/i;

/** The sizes of `6 in x 8 in`; `8 in tall and 6 in across` says itself which is which, and stands the other way round. */
export function partsOf(said: string): readonly string[] {
  const worded = high.test(said) || across.test(said);
  const parts = said.split(worded ? worded_times : times).map((part) => part.trim());
  if (!worded) return parts;
  const [first = '', second = ''] = parts;
  const turned =
    parts.length === 2 && !across.test(second)
      ? high.test(first)
      : parts.length === 2 && !high.test(second) && across.test(second) && !across.test(first);
  return (turned ? [second, first] : parts).map((part) =>
    part.replace(high, '').replace(across, '').replace(/\s+/g, ' ').trim(),
  );
}

const startsWithNumber = /^[\d.½⅓⅔¼¾⅛⅜⅝⅞]/u;
/** Sizes all through: every part starts with a number and there are two or more, or one that is a length. */
export const looksLikeSizes = (said: string): boolean => {
  const parts = partsOf(said);
  return parts.length > 1 && parts.every((part) => startsWithNumber.test(part));
};

export interface LengthWanted {
  readonly label: string;
  readonly min: number;
  readonly max: number;
}

const unitAtEnd = /(?:["'″”’′]|mm|cm|m|in|inch|inches|ft|feet|foot)\.?$/i;

/** Several lengths; one without a unit takes the unit of the others, none at all that of the reader. */
export function readLengths(
  parts: readonly string[],
  wanted: readonly LengthWanted[],
  units: UnitSystem,
): readonly number[] {
  const unit = parts.map((part) => unitAtEnd.exec(part)?.[0]).findLast((found) => found !== undefined);
  return parts.map((part, at) => {
    const whole = unitAtEnd.test(part) || unit === undefined ? part : `${part} ${unit}`;
    const { label, min, max } = wanted[at] ?? wanted[0]!;
    return readQuantity(whole, {
      dimensions: ['length'],
      plainUnit: { metric: 'cm', US: 'in' },
      system: units,
      label,
      min,
      max,
    }).si;
  });
}

/** `10`, `10°`, `10 degrees`, in rad. Negative ones are read: what is wrong with them is said by the tuyere. */
export function readTilt(said: string): number {
  const bare = said.replace(/\s*(?:°|º|degrees?|deg)\s*$/i, '').replace(/[−–]/g, '-');
  const angle = readNumber(bare, { label: 'tilt in degrees', min: -90, max: 90 });
  if (angle <= 45) return radians(angle);
  throw new AskError({
    code: 'out-of-range',
    what: `a tuyere that rises by ${angle}° leaves the lining through the rim`,
    expected: '5 to 20°, at most 45°',
    example: '10',
  });
}
