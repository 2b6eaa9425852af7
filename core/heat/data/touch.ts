import { type Cite, degrees, published } from '../../materials/data/make.ts';
import type { BurnThreshold, TouchBand, TouchSurfaceData } from '../touch.ts';

const order = published('czech-order-361-2007');
const memory: Cite = { source: 'iso-13732-1', standing: 'from memory' };
const minute = 60;
const hour = 3600;

const threshold = (time_s: number, T_K: BurnThreshold['T_K']): BurnThreshold => ({ time_s, T_K });

/** From ten minutes on it no longer matters what is touched. */
const long: readonly BurnThreshold[] = [
  threshold(10 * minute, degrees(48, 48, 48, order)),
  threshold(8 * hour, degrees(43, 43, 43, order)),
];

/**
 * Burn thresholds of adult skin after ISO 13732-1, which was not opened. Short times are from memory, and their low
 * end lies 3 K below what is remembered; the Order of 2007 confirms those from ten seconds on where it is named.
 */
export const touchSurfaceData = [
  {
    id: 'metal',
    name: 'bare metal',
    aliases: ['metal', 'iron', 'aluminium', 'bare'],
    emissivity: { low: 0.07, typical: 0.5, high: 0.98 },
    effusivity: 13_800,
    thresholds: [
      threshold(0.5, degrees(64, 70, 73, memory)),
      threshold(1, degrees(62, 67, 70, memory, 'A burn-institute list prints 68.')),
      threshold(
        10,
        degrees(
          52,
          56,
          57,
          memory,
          'The Order prints 51, likely a slip; a burn-institute list 57, a computer standard 55.',
        ),
      ),
      threshold(minute, degrees(51, 51, 51, order)),
      ...long,
    ],
  },
  {
    id: 'painted-metal',
    name: 'painted metal',
    aliases: ['painted', 'paint', 'enamelled metal', 'coated metal'],
    emissivity: { low: 0.8, typical: 0.9, high: 0.96 },
    effusivity: 13_800,
    thresholds: [
      threshold(0.5, degrees(67, 76, 79, memory, 'Thick paint, about 0.1 mm: 6 K more than bare.')),
      threshold(1, degrees(64, 71, 74, memory, 'Thick paint: 4 K more than bare.')),
      threshold(10, degrees(52, 57, 58, memory, 'Thick paint: 1 K more than bare.')),
      threshold(minute, degrees(51, 51, 51, order)),
      ...long,
    ],
  },
  {
    id: 'ceramic',
    name: 'ceramic, brick or stone',
    aliases: ['ceramic', 'stone', 'brick', 'clay', 'glass', 'porcelain', 'concrete', 'castable'],
    emissivity: { low: 0.75, typical: 0.9, high: 0.95 },
    effusivity: 1300,
    thresholds: [
      threshold(0.5, degrees(81, 87, 90, memory)),
      threshold(1, degrees(77, 83, 86, memory)),
      threshold(10, degrees(66, 68, 70, order)),
      threshold(minute, degrees(56, 56, 56, order)),
      ...long,
    ],
  },
  {
    id: 'plastic',
    name: 'plastic',
    aliases: ['plastics', 'rubber', 'grip'],
    emissivity: { low: 0.85, typical: 0.92, high: 0.96 },
    effusivity: 600,
    thresholds: [
      threshold(0.5, degrees(88, 95, 99, memory)),
      threshold(1, degrees(82, 89, 93, memory)),
      threshold(10, degrees(71, 73, 76, order)),
      threshold(minute, degrees(60, 60, 60, order)),
      ...long,
    ],
  },
  {
    id: 'wood',
    name: 'wood',
    aliases: ['wooden handle', 'timber', 'handle'],
    emissivity: { low: 0.85, typical: 0.9, high: 0.95 },
    effusivity: 400,
    thresholds: [
      threshold(0.5, degrees(112, 115, 120, memory, 'Remembered as above 115.')),
      threshold(1, degrees(107, 112, 115, memory)),
      threshold(10, degrees(89, 92, 95, order)),
      threshold(minute, degrees(60, 60, 60, order)),
      ...long,
    ],
  },
] as const satisfies readonly TouchSurfaceData[];

/** What a temperature of bare or painted steel means for a hand, in words. Edges from memory. */
export const touchBandData = [
  { id: 'hold', above_K: 0, says: 'can be held', allowed_s: 8 * hour },
  { id: 'warm', above_K: 316.15, says: 'warm: a short hold', allowed_s: minute },
  { id: 'seconds', above_K: 323.15, says: 'hand off within seconds', allowed_s: 1 },
  { id: 'recoil', above_K: 333.15, says: 'instant recoil, a burn is possible', allowed_s: 0.5 },
  { id: 'burns', above_K: 343.15, says: 'burns on contact', allowed_s: 0 },
] as const satisfies readonly TouchBand[];
