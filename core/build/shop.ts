import type { Spread } from '../materials/spread.ts';
import type { SourceId, Standing } from '../sources/source.ts';
import { applies, type Traits, type When } from './traits.ts';

/** Where things are bought, as kinds of shop. */
export type Shop =
  | 'pottery supplier'
  | 'refractory supplier'
  | 'building supplier'
  | 'garden centre'
  | 'hardware shop'
  | 'gas dealer'
  | 'plumbing supplier'
  | 'foundry supplier'
  | 'safety supplier'
  | 'second hand';

/** How a part is counted: pieces, or what is sold by length, area or volume. */
export type Counted = 'count' | 'm' | 'm2' | 'm3' | 'kg';

/** Something to buy beside the bags of the mix: pure data, its quantity a number or a key of the build's own numbers. */
export interface Part {
  readonly id: string;
  readonly name: string;
  readonly when?: When;
  /** A plain count, or which number of the build: see `BuildNumbers`. */
  readonly quantity: number | BuildNumber;
  readonly counted: Counted;
  /** For one unit of `counted`. A spread from memory in US dollars, unless the row says otherwise. */
  readonly price_USD: Spread;
  readonly shops: readonly Shop[];
  readonly note?: string;
  readonly source: SourceId;
  readonly standing: Standing;
}

/** Numbers of a build that parts are bought by, in SI: from its size, its forms and its mix. */
export type BuildNumber = 'mesh_m' | 'wire_m' | 'bricks_count' | 'blanket_m3' | 'sleeve_m2';
export type BuildNumbers = { readonly [Name in BuildNumber]?: Spread };

/** One row of the list: how much, and what it comes to. */
export interface ShopRow {
  readonly id: string;
  readonly name: string;
  /** Nothing where the build does not say it. */
  readonly quantity: Spread | undefined;
  readonly counted: Counted;
  /** Whole bags of it, where it is sold by the bag. */
  readonly bags?: Spread;
  readonly cost: Spread | undefined;
  readonly currency: string;
  readonly shops: readonly Shop[];
  readonly note?: string;
}

/** Parts of a build with its own numbers; a part whose number the build does not know stands there without a cost. */
export function partRows(parts: readonly Part[], traits: Traits, numbers: BuildNumbers): readonly ShopRow[] {
  return parts
    .filter(({ when }) => applies(when, traits))
    .map(({ id, name, quantity: asked, counted, price_USD, shops, note }) => {
      const quantity = typeof asked === 'number' ? { low: asked, typical: asked, high: asked } : numbers[asked];
      return {
        id,
        name,
        quantity,
        counted,
        cost: quantity && times(quantity, price_USD),
        currency: 'USD',
        shops,
        ...(note === undefined ? {} : { note }),
      };
    });
}

/** Ends go together: many at the dear price, few at the cheap one. */
export const times = (a: Spread, b: Spread): Spread => ({
  low: a.low * b.low,
  typical: a.typical * b.typical,
  high: a.high * b.high,
});

/** Sums of the rows that have a cost, by currency; ends added to ends. */
export function totals(rows: readonly ShopRow[]): ReadonlyMap<string, Spread> {
  const sums = new Map<string, Spread>();
  for (const { cost, currency } of rows) {
    if (!cost) continue;
    const { low, typical, high } = sums.get(currency) ?? { low: 0, typical: 0, high: 0 };
    sums.set(currency, { low: low + cost.low, typical: typical + cost.typical, high: high + cost.high });
  }
  return sums;
}

/**
 * Bricks laid flat under a round floor: area ÷ brick + a share for cutting, in whole layers. SI. Derived; the brick is
 * the common 230 × 114 × 64 mm, from memory.
 */
export function bricksUnder({ across_m, thick_m }: { across_m: number; thick_m: number }): Spread {
  if (thick_m <= 0) return { low: 0, typical: 0, high: 0 };
  const brick = { area_m2: 0.23 * 0.114, thick_m: 0.064 };
  const layers = Math.max(1, Math.round(thick_m / brick.thick_m));
  const flat = (Math.PI / 4) * across_m ** 2;
  const count = (waste: number) => layers * Math.ceil((flat * (1 + waste)) / brick.area_m2 - 1e-9);
  return { low: count(0), typical: count(0.15), high: count(0.3) };
}
