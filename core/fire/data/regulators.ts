import { datum, MEMORY } from '../../materials/data/make.ts';
import type { Datum } from '../../materials/material.ts';

export interface Regulator {
  readonly id: string;
  readonly name: string;
  /** Gauge, the most it lets out; low = typical = high where it is fixed. */
  readonly outlet_Pa: Datum;
  /** Gauge pressure it needs before it, above what it lets out. */
  readonly headroom_Pa: Datum;
}

/** What regulators of a kind let out and need. Types approved for liquefied gas only. */
export const regulators: readonly Regulator[] = [
  {
    id: 'appliance',
    name: 'appliance regulator, 11 in of water (EU 37 mbar)',
    outlet_Pa: datum(2740, 2750, 3700, MEMORY),
    headroom_Pa: datum(20e3, 50e3, 70e3, MEMORY),
  },
  {
    id: 'adjustable-low',
    name: 'adjustable regulator, 0–100 kPa (15 psi)',
    outlet_Pa: datum(0, 100e3, 100e3, MEMORY),
    headroom_Pa: datum(30e3, 70e3, 100e3, MEMORY),
  },
  {
    id: 'adjustable-medium',
    name: 'adjustable regulator, 0–200 kPa (30 psi)',
    outlet_Pa: datum(0, 200e3, 200e3, MEMORY),
    headroom_Pa: datum(30e3, 70e3, 100e3, MEMORY),
  },
  {
    id: 'adjustable-high',
    name: 'adjustable regulator, 0–400 kPa (60 psi)',
    outlet_Pa: datum(0, 400e3, 400e3, MEMORY),
    headroom_Pa: datum(30e3, 70e3, 100e3, MEMORY),
  },
];
