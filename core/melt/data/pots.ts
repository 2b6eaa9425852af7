import { datum, MEMORY, published } from '../../materials/data/make.ts';
import type { Datum } from '../../materials/material.ts';

/** What a crucible is made of. */
export interface PotMaterial {
  readonly id: 'clay-graphite' | 'steel';
  readonly name: string;
  readonly density_kg_m3: Datum;
  /** Mean from cold to the pour. */
  readonly heat_capacity_J_kgK: Datum;
  /** Its wall where only the outside was said; `undefined`: the rule of sizing. */
  readonly wall_m?: Datum;
  /** Metal hotter than this is not for it; `undefined`: the metal's own limits come first. */
  readonly limit_K?: Datum;
}

export const pots: readonly PotMaterial[] = [
  {
    id: 'clay-graphite',
    name: 'clay-graphite or silicon carbide',
    density_kg_m3: datum(
      1900,
      2150,
      2600,
      published('vdi-via-ht'),
      'Silicon carbide brick 2400–2600; low end from memory.',
    ),
    heat_capacity_J_kgK: datum(1000, 1080, 1300, published('vdi-via-ht'), 'Silicon carbide brick 993–1126.'),
  },
  {
    id: 'steel',
    name: 'steel or cast iron',
    density_kg_m3: datum(7200, 7850, 7850, MEMORY),
    heat_capacity_J_kgK: datum(540, 620, 700, MEMORY, 'Mean to 700 °C; NASA iron gives 640.'),
    wall_m: datum(0.003, 0.005, 0.008, MEMORY, 'Pipe and cut cylinders.'),
    limit_K: datum(1020, 1070, 1120, MEMORY, '750–850 °C: scales, and aluminium dissolves it faster.'),
  },
];
