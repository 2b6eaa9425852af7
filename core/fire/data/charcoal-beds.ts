import { datum, degrees, MEMORY, PRACTICE, published } from '../../materials/data/make.ts';
import type { Datum } from '../../materials/material.ts';

/** What is assumed of a bed where nobody measured it. */
export const charcoalBeds = {
  void_share: datum(0.4, 0.5, 0.6, published('charcoal-lump-density'), 'From lump and bulk density 0.47–0.56.'),
  sphericity: datum(0.65, 0.72, 0.8, published('fuel-2015-sphericity')),
  lump_m: datum(0.015, 0.03, 0.06, MEMORY, 'EN 1860 asks for more than 80 % over 20 mm; a bed breaks it down.'),
  roughness_factor: datum(1, 1.2, 1.55, published('olatunde-2019'), 'Found for pine grinds.'),
  /** Mean of the gas through the bed. */
  bed_K: degrees(900, 1150, 1400, MEMORY),
  /** Of the carbon, leaving the furnace as CO; a flame standing on the vent is it burning too late. */
  co_share: datum(0.1, 0.35, 0.7, PRACTICE, 'Shallow and well blown low, deep or choked high.'),
} as const satisfies Readonly<Record<string, Datum>>;

/** Losses of a mixing tube lumped on its velocity, `tubeAreaRatio`. */
export const mixingTubeLosses: Datum = datum(1.3, 1.8, 2.5, MEMORY);
