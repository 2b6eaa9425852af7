import { type Cite, celsius, DERIVED, datum, MEMORY } from '../../materials/data/make.ts';
import type { Datum } from '../../materials/material.ts';

const judged: Cite = MEMORY;

/** Where a lining stands to dry, and what the air there is taken for where nobody says. */
export const places = [
  {
    id: 'shade',
    name: 'in the shade outdoors',
    air_K: celsius(18),
    humidity: 0.6,
    wind: 'calm',
    sun_W_m2: datum(0, 0, 5, judged),
  },
  {
    id: 'sun',
    name: 'in the sun',
    air_K: celsius(20),
    humidity: 0.55,
    wind: 'calm',
    sun_W_m2: datum(5, 25, 80, judged, 'Into the bore and the shell, mean of day and night.'),
  },
  {
    id: 'indoors',
    name: 'indoors',
    air_K: celsius(20),
    humidity: 0.5,
    wind: 'indoors',
    sun_W_m2: datum(0, 0, 0, judged),
  },
] as const;
export type PlaceId = (typeof places)[number]['id'];

/** Heat exchange of an open face by convection alone, W/(m² K): a cylinder of 0.35 m in that wind, and still air. */
export const exchanges: Readonly<Record<'indoors' | 'calm' | 'breezy' | 'windy', Datum>> = {
  indoors: datum(1.5, 2.5, 4, DERIVED),
  calm: datum(2, 4, 8, DERIVED),
  breezy: datum(7, 13, 20, DERIVED),
  windy: datum(14, 21, 32, DERIVED),
};

/** Share of that air which gets to the face. */
export const accesses = {
  'bore only': datum(0.3, 0.6, 1, judged, 'Lid off, tuyere and vent open.'),
  'both sides': datum(0.5, 0.8, 1, judged, 'Out of its mould, standing on bricks.'),
} as const;
export type OpenSides = keyof typeof accesses;

/** Left of it under a cloth or a loose sheet that stays on. */
export const coverLets: Datum = datum(0.2, 0.4, 0.7, judged);

/** How diffusion grows with temperature, J/mol: between the viscosity of water and its vapour pressure. */
export const activation_J_mol: Datum = datum(16e3, 25e3, 43e3, judged);
