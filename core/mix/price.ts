import { exactly, type Spread } from '../materials/spread.ts';
import type { SourceId, Standing } from '../sources/source.ts';

/** A bag as shops sell it: by mass, or by loose volume for light aggregates. */
export interface Bag {
  readonly material: string;
  readonly mass_kg?: number;
  readonly volume_m3?: number;
  readonly price_USD: Spread;
  readonly source: SourceId;
  readonly standing: Standing;
}

const lb = 0.45359237;
const ft3 = 0.028316846592;
const spread = (low: number, typical: number, high: number): Spread => ({ low, typical, high });
const memory = { source: 'from-memory', standing: 'from memory' } as const;
const practice = { source: 'common-practice', standing: 'common practice' } as const;

/** Where the asker names no price of their own. Prices move: the range is wide and the card says whose they are. */
export const bags: readonly Bag[] = [
  { material: 'stoneware-clay', mass_kg: 50 * lb, price_USD: spread(8, 9, 15), ...practice },
  { material: 'fireclay', mass_kg: 50 * lb, price_USD: spread(8, 9, 20), ...practice },
  { material: 'earthenware-clay', mass_kg: 50 * lb, price_USD: spread(8, 9, 15), ...memory },
  { material: 'ball-clay', mass_kg: 50 * lb, price_USD: spread(9, 14, 25), ...memory },
  { material: 'kaolin', mass_kg: 50 * lb, price_USD: spread(12, 20, 35), ...memory },
  { material: 'bentonite', mass_kg: 50 * lb, price_USD: spread(10, 15, 30), ...memory },
  { material: 'garden-clay', mass_kg: 50 * lb, price_USD: exactly(0), ...memory },
  { material: 'silica-sand', mass_kg: 50 * lb, price_USD: spread(4, 5, 9), ...memory },
  { material: 'grog', mass_kg: 50 * lb, price_USD: spread(15, 25, 40), ...memory },
  { material: 'perlite', volume_m3: 4 * ft3, price_USD: spread(25, 33, 45), ...memory },
  { material: 'vermiculite', volume_m3: 4 * ft3, price_USD: spread(30, 35, 40), ...practice },
  { material: 'portland-cement', mass_kg: 94 * lb, price_USD: spread(12, 16, 22), ...memory },
  { material: 'aluminate-cement', mass_kg: 25, price_USD: spread(40, 60, 90), ...memory },
  { material: 'dense-castable', mass_kg: 25, price_USD: spread(35, 50, 80), ...memory },
  { material: 'insulating-castable', mass_kg: 25, price_USD: spread(45, 65, 100), ...memory },
];

export const bagOf = (material: string): Bag | undefined => bags.find((bag) => bag.material === material);

/** Whole bags that cover a need. */
export function bagsFor(
  bag: Pick<Bag, 'mass_kg' | 'volume_m3'>,
  { mass_kg, loose_volume_m3 }: { mass_kg: number; loose_volume_m3: number },
): number {
  const share = bag.mass_kg === undefined ? loose_volume_m3 / (bag.volume_m3 ?? 1) : mass_kg / bag.mass_kg;
  return Math.max(1, Math.ceil(share - 1e-9));
}
