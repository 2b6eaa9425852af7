import { datum, MEMORY, published } from '../materials/data/make.ts';
import type { Datum } from '../materials/material.ts';

/** Heat of the metal over heat of the fuel, as told of furnaces: what a computed efficiency is held against. */
export const efficiencies = {
  single: datum(0.03, 0.07, 0.12, MEMORY, 'Hobby furnace, one melt from cold.'),
  repeated: datum(0.08, 0.13, 0.2, MEMORY, 'Hobby furnace, melt after melt.'),
  commercial: datum(0.035, 0.15, 0.28, published('casting-course-20'), 'About 7.7 MJ of fuel a kilogram of aluminium.'),
  gas_crucible: datum(0.07, 0.13, 0.19, MEMORY, 'Reviews for the US Department of Energy; their table was not seen.'),
} as const satisfies Readonly<Record<string, Datum>>;
