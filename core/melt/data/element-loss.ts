import { datum, MEMORY, published } from '../../materials/data/make.ts';
import type { Datum } from '../../materials/material.ts';
import type { Element } from '../../materials/pour.ts';

/** Share of an element lost in a melt of clean heavy pieces. Wide: handbooks give it by furnace and habit. */
export const elementLoss: Readonly<Record<Exclude<Element, 'Zn'>, Datum>> = {
  Al: datum(0.01, 0.025, 0.04, published('furnace-loss-note')),
  Cu: datum(0.005, 0.008, 0.015, published('melt-loss-note'), 'About 0.5 % quoted; the rest from memory.'),
  Fe: datum(0.01, 0.02, 0.03, MEMORY),
  Si: datum(0.005, 0.01, 0.02, MEMORY),
  Sn: datum(0.005, 0.01, 0.02, MEMORY),
  Pb: datum(0.01, 0.02, 0.03, MEMORY),
  Mg: datum(0.1, 0.2, 0.3, MEMORY),
  Mn: datum(0.02, 0.05, 0.1, MEMORY),
  C: datum(0, 0.02, 0.1, MEMORY),
};

/** Zinc of brass by how the melt is kept, and of zinc alloys, which are poured far below its boil. */
export const zincLoss = {
  covered: datum(0.02, 0.035, 0.05, MEMORY),
  uncovered: datum(0.05, 0.08, 0.12, MEMORY, 'Hot or long.'),
  unsaid: datum(0.02, 0.06, 0.12, MEMORY),
  inZincAlloy: datum(0.005, 0.015, 0.03, MEMORY, 'Poured below 500 °C.'),
} as const;

/** In a cupola, beside a melt in a crucible: what blast and slag do to iron's elements. */
export const cupolaLoss = {
  Mn: datum(0.15, 0.18, 0.2, published('cupola-course-13')),
  Si: datum(0.1, 0.1, 0.3, published('cupola-course-13')),
} as const;
