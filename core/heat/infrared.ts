import { AskError } from '../ask-error.ts';

interface Sighting {
  /** What the thermometer is set to. */
  readonly set_emissivity: number;
  /** What the surface has. */
  readonly emissivity: number;
  /** What is mirrored in it: the surroundings. */
  readonly surroundings_K: number;
}

/**
 * What an infrared thermometer shows of a surface: reading⁴ = (e T⁴ + (set − e) Ta⁴)/set. Total radiation; real
 * instruments see 8–14 µm and differ by some kelvin. Derived.
 */
export function infraredReading_K({ surface_K, ...sighting }: Sighting & { readonly surface_K: number }): number {
  checkSighting(sighting);
  const { set_emissivity: set, emissivity, surroundings_K } = sighting;
  return fourthRoot((emissivity * surface_K ** 4 + (set - emissivity) * surroundings_K ** 4) / set);
}

/**
 * The way back: true temperature of a surface from what was read. The less it radiates the more a small error of
 * the surroundings counts.
 * @throws AskError `impossible` where the reading is lower than the surroundings' reflection alone.
 */
export function trueTemperature_K({ reading_K, ...sighting }: Sighting & { readonly reading_K: number }): number {
  checkSighting(sighting);
  const { set_emissivity: set, emissivity, surroundings_K } = sighting;
  const own = (set * reading_K ** 4 - (set - emissivity) * surroundings_K ** 4) / emissivity;
  if (own > 0) return fourthRoot(own);
  throw new AskError({
    code: 'impossible',
    what: `a reading of ${Math.round(reading_K - 273.15)} °C is less than what surroundings at ${Math.round(surroundings_K - 273.15)} °C alone would show`,
    expected: 'a reading above the surroundings, or cooler surroundings',
    example: '60 °C',
  });
}

const fourthRoot = (value: number): number => Math.sqrt(Math.sqrt(value));

function checkSighting({ set_emissivity, emissivity, surroundings_K }: Sighting): void {
  const wrong = [set_emissivity, emissivity].find((share) => !(share > 0 && share <= 1));
  if (wrong === undefined && surroundings_K > 0) return;
  throw new AskError({
    code: 'out-of-range',
    what: wrong === undefined ? `the surroundings are at ${surroundings_K} K` : `the emissivity is ${wrong}`,
    expected: wrong === undefined ? 'above 0 K' : 'above 0, at most 1',
    example: wrong === undefined ? '20 °C' : '0.95',
  });
}
