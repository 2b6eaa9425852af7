import { datum, MEMORY } from '../../materials/data/make.ts';
import type { Datum } from '../../materials/material.ts';

/** Discharge coefficient by how the hole is made. That shape matters is published (NBS TP 193), these numbers are not. */
export const jetEdges = {
  'drilled in thin plate': datum(
    0.6,
    0.62,
    0.65,
    MEMORY,
    'Plate thinner than half the hole; choked it rises by up to a fifth.',
  ),
  'drilled in a plug or cap': datum(0.75, 0.83, 0.9, MEMORY, 'Wall one to three holes thick, or edges rounded.'),
  'welding tip': datum(0.75, 0.82, 0.9, MEMORY, 'A long bore; friction takes some.'),
} as const satisfies Readonly<Record<string, Datum>>;

export type JetEdge = keyof typeof jetEdges;
