import { AskError } from '../ask-error.ts';
import { rootBetween } from './steady-root.ts';

interface Sighting {
  /** What the thermometer is set to. */
  readonly set_emissivity: number;
  /** What the surface has, between 8 and 14 µm. */
  readonly emissivity: number;
  /** What is mirrored in it. */
  readonly surroundings_K: number;
}

/** µm K: h c ÷ k, CODATA 2018. */
const SECOND_RADIATION = 14_387.768775;
/** µm: what nearly every handheld thermometer sees. */
const BAND = { from: 8, to: 14 } as const;
const STRIPS = 12;

/** Planck's law at one wavelength, up to a constant that cancels. */
const planck = (wavelength_um: number, T_K: number): number =>
  wavelength_um ** -5 / Math.expm1(SECOND_RADIATION / (wavelength_um * T_K));

/**
 * What a black body sends the thermometer between 8 and 14 µm, in a unit of its own: Simpson's rule, to 1e-5 from 220 K
 * up. Total radiation (T⁴) would read a shiny surface tens of kelvin too cold: a hot body sends less of its own in this band.
 */
export function bandSignal(T_K: number): number {
  const step = (BAND.to - BAND.from) / STRIPS;
  let sum = planck(BAND.from, T_K) + planck(BAND.to, T_K);
  for (let i = 1; i < STRIPS; i++) sum += (i % 2 === 0 ? 2 : 4) * planck(BAND.from + i * step, T_K);
  return (sum * step) / 3;
}

function temperatureOf(signal: number): number {
  let high = 300;
  while (bandSignal(high) < signal) high *= 2;
  return rootBetween((T_K) => bandSignal(T_K) - signal, 1, high);
}

/**
 * What an infrared thermometer shows of a surface: set × signal(reading) = e × signal(surface) + (set − e) ×
 * signal(surroundings), the instrument taking itself to be at the surroundings' temperature. Derived.
 */
export function infraredReading_K({ surface_K, ...sighting }: Sighting & { readonly surface_K: number }): number {
  checkSighting(sighting);
  const { set_emissivity: set, emissivity, surroundings_K } = sighting;
  const signal = emissivity * bandSignal(surface_K) + (set - emissivity) * bandSignal(surroundings_K);
  if (signal > 0) return temperatureOf(signal / set);
  throw new AskError({
    code: 'impossible',
    what: `set to ${set}, a thermometer shows nothing of a surface this cold among surroundings at ${inWords(surroundings_K)}`,
    expected: 'a warmer surface, or an emissivity set nearer to the true one',
    example: '0.95',
  });
}

/**
 * The way back: true temperature of a surface from what was read. The less it radiates, the more a small error in
 * emissivity or surroundings counts.
 * @throws AskError `impossible` where the reading is lower than the surroundings' reflection alone.
 */
export function trueTemperature_K({ reading_K, ...sighting }: Sighting & { readonly reading_K: number }): number {
  checkSighting(sighting);
  const { set_emissivity: set, emissivity, surroundings_K } = sighting;
  const own = (set * bandSignal(reading_K) - (set - emissivity) * bandSignal(surroundings_K)) / emissivity;
  if (own > 0) return temperatureOf(own);
  throw new AskError({
    code: 'impossible',
    what: `a reading of ${inWords(reading_K)} is less than what surroundings at ${inWords(surroundings_K)} alone would show`,
    expected: 'a reading above the surroundings, or cooler surroundings',
    example: '60 °C',
  });
}

const inWords = (T_K: number): string => `${Math.round(T_K - 273.15)} °C`;

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
