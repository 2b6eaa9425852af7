import { AskError } from '../../core/ask-error.ts';
import { trueTemperature_K } from '../../core/heat/infrared.ts';
import { findTouched, type Touched } from '../../core/heat/touch.ts';
import type { Spread } from '../../core/materials/spread.ts';
import { about } from '../options.ts';
import type { TouchOptions } from './options.ts';

/** An infrared reading and what it was taken with. */
export interface Sighted {
  readonly reading_K: number;
  readonly set_emissivity: number;
  readonly surroundings_K: number;
}

export interface TouchQuestion {
  readonly touched: Touched;
  /** A range where it was worked out from a reading; what was typed otherwise. */
  readonly surface_K: Spread;
  readonly sighted: Sighted | undefined;
}

/** Where most thermometers are set when they leave the shop. */
export const USUAL_SETTING = 0.95;
/** 20 °C. */
export const USUAL_AIR_K = 293.15;

export function touchQuestion({ temperature, reads, set, surface, air }: TouchOptions): TouchQuestion {
  const touched = about('surface', () => findTouched(surface ?? 'bare metal'));
  if (temperature && reads) {
    throw new AskError({
      code: 'ambiguous',
      what: `both a temperature (${temperature.text}) and a reading (${reads.text}) were given`,
      expected: 'one of them',
      example: 'touch reads=60 °C surface=galvanised',
    });
  }
  if (temperature) {
    const { si } = temperature;
    return { touched, surface_K: { low: si, typical: si, high: si }, sighted: undefined };
  }
  if (!reads) {
    throw new AskError({
      code: 'missing',
      what: 'touch needs the temperature of the surface',
      expected: 'it right after the name, or what an infrared thermometer reads as reads=…',
      example: 'touch 60 °C',
      option: 'temperature',
    });
  }
  const sighted: Sighted = {
    reading_K: reads.si,
    set_emissivity: set?.si ?? USUAL_SETTING,
    surroundings_K: air?.si ?? USUAL_AIR_K,
  };
  const truly = (emissivity: number) => about('reads', () => trueTemperature_K({ ...sighted, emissivity }));
  const { low, typical, high } = touched.emissivity;
  const ends = [truly(low), truly(high)];
  return {
    touched,
    surface_K: { low: Math.min(...ends), typical: truly(typical), high: Math.max(...ends) },
    sighted,
  };
}
