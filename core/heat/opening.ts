import { AskError } from '../ask-error.ts';
import { STEFAN_BOLTZMANN } from './outside.ts';

/**
 * Share of what one disk radiates that meets another of the same radius, coaxial, `depth_m` away. Exact for diffuse
 * disks (standard view factor). 1 at no depth.
 */
export function diskToDisk({ radius_m, depth_m }: { radius_m: number; depth_m: number }): number {
  if (depth_m === 0) return 1;
  const ratio = radius_m / depth_m;
  // S − √(S² − 4) cancels for a deep hole; this is the same number without the loss.
  const s = 2 + 1 / ratio ** 2;
  return 2 / (s + Math.sqrt(s ** 2 - 4));
}

/**
 * The same through a round hole whose side takes up nothing for itself and sends back all it gets. Such light and thin
 * gas pass a tube by one law (Clausing); Berman's closed form of it, from memory, within 0.1 % for any depth (checked
 * against a side cut in rings). Taking the side as of one temperature, (1 + F)/2, gives half as much again at 4 radii.
 */
export function reradiatingFactor({ radius_m, depth_m }: { radius_m: number; depth_m: number }): number {
  const l = depth_m / radius_m;
  // Below this both parts of the fraction vanish together.
  if (l < 0.02) return 1 - l / 2 + l ** 2 / 4;
  const root = Math.sqrt(l ** 2 + 4);
  const taken = ((8 - l ** 2) * root + l ** 3 - 16) ** 2;
  const over = 72 * l * root - 288 * Math.log((l + root) / 2);
  return 1 + l ** 2 / 4 - (l / 4) * root - taken / over;
}

/**
 * How black an open bore looks from outside: 1/(1 + (1 − e) Ao/(e Aw)) for a wall of one temperature and emissivity e,
 * floor included, Aw ≥ Ao. From memory (Gouffé's form without its small correction).
 */
export const apparentEmissivity = ({ emissivity, opening_ratio }: { emissivity: number; opening_ratio: number }) =>
  1 / (1 + ((1 - emissivity) * opening_ratio) / emissivity);

/**
 * Radiation out of a vent or tuyere, W: re-radiating hole through a wall `depth_m` thick, black cavity behind it. No
 * gas flow through the hole is in it.
 */
export function openingLoss_W({
  radius_m,
  depth_m,
  cavity_K,
  air_K,
}: {
  radius_m: number;
  depth_m: number;
  cavity_K: number;
  air_K: number;
}): number {
  if (!(radius_m >= 0 && depth_m >= 0)) {
    throw new AskError({
      code: 'out-of-range',
      what: `an opening ${radius_m} m in radius and ${depth_m} m deep`,
      expected: 'sizes of 0 or more',
      example: '0.04 m',
    });
  }
  if (radius_m === 0) return 0;
  const area_m2 = Math.PI * radius_m ** 2;
  return reradiatingFactor({ radius_m, depth_m }) * area_m2 * STEFAN_BOLTZMANN * (cavity_K ** 4 - air_K ** 4);
}

/** Film of air at the mouth of an open bore, W/(m² K): from memory. */
export const MOUTH_FILM_W_m2K = 10;

/**
 * Heat leaving an open bore, spread over its wall: W per m² of wall, negative below the air. `opening_ratio` is mouth
 * over wall, floor included; `emissivity` the wall's own. Radiation derived, film from memory.
 */
export function openBoreFlux({
  face_K,
  air_K,
  opening_ratio,
  emissivity,
  film_W_m2K = MOUTH_FILM_W_m2K,
}: {
  face_K: number;
  air_K: number;
  opening_ratio: number;
  emissivity: number;
  film_W_m2K?: number;
}): number {
  const radiated = apparentEmissivity({ emissivity, opening_ratio }) * STEFAN_BOLTZMANN * (face_K ** 4 - air_K ** 4);
  return opening_ratio * (radiated + film_W_m2K * (face_K - air_K));
}
