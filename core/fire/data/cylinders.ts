import { datum, MEMORY, published } from '../../materials/data/make.ts';
import type { Datum } from '../../materials/material.ts';

const lb = 0.45359237;

/** A kind of propane cylinder by what it is filled with. Read the water capacity (WC) stamped on the collar. */
export interface CylinderKind {
  readonly id: string;
  readonly name: string;
  /** Mass of water it holds. The fill is 42 % of it. */
  readonly water_capacity_kg: Datum;
  /** Inside. */
  readonly radius_m: Datum;
}

const pounds = (low: number, typical: number, high: number): [number, number, number] => [
  low * lb,
  typical * lb,
  high * lb,
];
const pages = published('propane-consumer-pages');

export const cylinderKinds: readonly CylinderKind[] = [
  {
    id: '5-kg',
    name: '5 kg (11 lb)',
    water_capacity_kg: datum(...pounds(25.5, 26.2, 27), MEMORY),
    radius_m: datum(0.11, 0.15, 0.155, MEMORY),
  },
  {
    id: '9-kg',
    name: '9 kg (20 lb)',
    water_capacity_kg: datum(...pounds(47.6, 47.7, 48), pages),
    radius_m: datum(0.15, 0.153, 0.157, pages),
  },
  {
    id: '14-kg',
    name: '13.6 kg (30 lb)',
    water_capacity_kg: datum(...pounds(71, 71.6, 73), MEMORY),
    radius_m: datum(0.15, 0.153, 0.158, MEMORY),
  },
  {
    id: '18-kg',
    name: '18 kg (40 lb)',
    water_capacity_kg: datum(...pounds(95, 95.5, 97), MEMORY),
    radius_m: datum(0.15, 0.155, 0.185, MEMORY),
  },
  {
    id: '45-kg',
    name: '45 kg (100 lb)',
    water_capacity_kg: datum(...pounds(238, 239, 240), MEMORY),
    radius_m: datum(0.18, 0.1875, 0.19, MEMORY),
  },
];

/**
 * From air through frost, shell and liquid. A supplier's table comes out at 12.6 for a 100 lb cylinder, its rule for
 * tanks at 19; still air and frost go down to 8.
 */
export const exchange_W_m2K: Datum = datum(8, 11, 19, { source: 'lp-gas-vapour-table', standing: 'derived' });

/** Share of the fill that is drawn before pressure fails for lack of liquid. */
export const usable_share: Datum = datum(0.85, 0.9, 0.95, MEMORY);
