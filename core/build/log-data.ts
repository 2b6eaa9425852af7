import { type Cite, datum, MEMORY, PRACTICE } from '../materials/data/make.ts';
import type { Datum } from '../materials/material.ts';

const error = (value: number, cite: Cite, note: string) => ({ value, ...cite, note }) as const;

/** How exact a home measurement is: half of its 95 % width, as a share or in K. */
export const readingErrors = {
  rammed_bucket: error(0.05, PRACTICE, 'A bucket rammed in lifts and weighed, for the whole lining.'),
  loose_bucket: error(
    0.06,
    PRACTICE,
    'A bucket levelled off, its volume found with water (3 %), for a fill of several bags.',
  ),
  shell_K: error(5, MEMORY, 'A wire thermocouple under a clip, or an infrared gun on matt black paint.'),
  firing_rise: error(
    0.1,
    MEMORY,
    'Of the rise of a shell over the air, from one firing to the next in one furnace. Judged.',
  ),
  firing_fuel: error(0.15, MEMORY, 'Of the fuel, from one melt to the next in one furnace. Judged.'),
  fuel: error(0.05, PRACTICE, 'Weighed by the scoop, what is left over weighed cold.'),
  metal: error(0.02, MEMORY, 'Ingots and castings on a kitchen scale.'),
} as const;

/** How far the models themselves may be off on one furnace, inputs aside: half of a 95 % width, share. Judged. */
export const modelErrors = {
  shell_rise: error(0.2, MEMORY, 'Of the rise over the air: one dimension, no seams, no tuyere. Judged.'),
  fuel: error(0.3, MEMORY, 'Of the fuel of a melt: how long the fire idles, how often the lid is lifted. Judged.'),
} as const;

const judged = (low: number, typical: number, high: number, note: string): Datum =>
  datum(low, typical, high, MEMORY, note);

/** Burns that a hot face stands before it wants patching through or ramming anew. Judged: nobody counts them. */
export const lives: readonly { readonly materials: readonly string[]; readonly burns: Datum }[] = [
  {
    materials: ['clay-sand-lining', 'fireclay-sand-lining', 'clay-sand-unfired', 'fireclay-grog-lining'],
    burns: judged(15, 50, 150, 'Rammed clay and sand; a slow first fire and a closed cooling lengthen it.'),
  },
];

/** Any other hot face. */
export const anyLife: Datum = judged(20, 80, 300, 'Castables, bricks and coated blanket; wider for want of counts.');
