import type { UnitSystem } from './figure.ts';

const inch_m = 0.0254;
/** Below this a sixteenth is too coarse: decimals, as for sheet. */
const least_m = 0.25 * inch_m;
const sixteenths = 16;

/**
 * A length as a builder's tape reads it: whole millimetres, or inches to the nearest sixteenth; below 1/4 in two
 * decimals of an inch and a tenth of a millimetre. m, 0 or more.
 */
export function onTape(length_m: number, system: UnitSystem): string {
  if (length_m < least_m) {
    return system === 'US' ? `${decimals(length_m / inch_m, 2)} in` : `${decimals(length_m * 1000, 1)} mm`;
  }
  return system === 'US' ? `${inchesOf(length_m)} in` : `${Math.round(length_m * 1000 + hair)} mm`;
}

/** So that half a millimetre from a drawing's points is still a half. */
const hair = 1e-6;

/** The same in both systems, the reader's first: `15 1/4 in (387 mm)`, `387 mm (15 1/4 in)`. */
export function formatTape(length_m: number, units: UnitSystem): string {
  const other = units === 'US' ? 'metric' : 'US';
  return `${onTape(length_m, units)} (${onTape(length_m, other)})`;
}

function inchesOf(length_m: number): string {
  const count = Math.round((length_m / inch_m) * sixteenths + hair);
  const [whole, rest] = [Math.floor(count / sixteenths), count % sixteenths];
  if (rest === 0) return `${whole}`;
  const shared = [8, 4, 2].find((each) => rest % each === 0) ?? 1;
  const fraction = `${rest / shared}/${sixteenths / shared}`;
  return whole === 0 ? fraction : `${whole} ${fraction}`;
}

const decimals = (value: number, most: number): string => String(Number(value.toFixed(most)));
