import { datum, MEMORY, published } from '../../materials/data/make.ts';
import type { Datum } from '../../materials/material.ts';

/** Loss coefficients on the velocity in the pipe they sit in. */
const library = published('fluids-fittings');

export const fittings = {
  'sharp entrance': datum(0.5, 0.5, 0.57, library),
  'bell entrance': datum(0.03, 0.05, 0.1, MEMORY),
  outlet: datum(1, 1, 1, library, 'All of the velocity is lost in the room it blows into.'),
  'long bend': datum(0.24, 0.28, 0.4, library, '90°, radius 1.5 bores.'),
  'threaded elbow': datum(0.6, 0.9, 1.5, library, '90°; 0.68 at 38 mm and Re 50,000.'),
  'mitre elbow': datum(1.1, 1.2, 1.45, library, '90°, sharp.'),
  'ball valve, open': datum(0.05, 0.06, 0.1, library),
  'gate valve, open': datum(0.1, 0.16, 0.2, library),
  'gate valve, half open': datum(2, 3, 5, MEMORY),
  'butterfly, open': datum(0.5, 0.86, 1.2, library),
  'tee, into the branch': datum(1, 1.4, 1.8, MEMORY),
} as const satisfies Readonly<Record<string, Datum>>;

export type Fitting = keyof typeof fittings;

/** Height of the roughness inside, m. */
export const roughness_m = {
  'drawn tube': datum(1.5e-6, 3e-6, 1e-5, MEMORY),
  'steel pipe': datum(3e-5, 4.5e-5, 9e-5, MEMORY),
  'rusty steel pipe': datum(1.5e-4, 3e-4, 5e-4, MEMORY),
  'smooth plastic': datum(1.5e-6, 5e-6, 1e-5, MEMORY),
} as const satisfies Readonly<Record<string, Datum>>;

export type PipeKind = keyof typeof roughness_m;

/** Friction factor of corrugated hose: its ribs, not its Reynolds number, set it. */
export const corrugated_friction: Datum = datum(0.05, 0.07, 0.1, MEMORY);
