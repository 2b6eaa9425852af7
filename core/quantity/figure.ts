import type { Currency } from './currency.ts';

/** Units inside the core and in the JSON of a card: SI, with the two kinds of kelvin told apart. */
export type SiUnit =
  | 'm'
  | 'm2'
  | 'm3'
  | 'kg'
  | 's'
  | 'K'
  | 'dK'
  | 'Pa'
  | 'W'
  | 'J'
  | 'kg/m3'
  | 'W/(m K)'
  | 'J/(kg K)'
  | 'J/kg'
  | 'm/s'
  | 'm3/s'
  | 'kg/s'
  | 'W/m2'
  | 'W/(m2 K)'
  | '1/K'
  | '1'
  | 'count'
  | Currency;

/** Who reads: leads the output, the other system stands beside it. */
export type UnitSystem = 'metric' | 'US';

/** How a number likes to be shown where its SI unit does not say: water in gallons, a lining in cubic feet. */
export type Shown = 'liquid' | 'bulk' | 'sheet' | 'percent' | 'days' | 'hours' | 'minutes';

/** One number of an answer. Ids are `command.noun`, stable, listed by `help <command>`. */
export interface Figure {
  readonly id: string;
  readonly label: string;
  readonly value: number;
  readonly unit: SiUnit;
  readonly shown?: Shown;
  readonly range?: { readonly low: number; readonly high: number };
  readonly rangeBasis: 'sampled' | 'judged' | 'none';
  /** A few words that belong to the number: bags to buy, a test by hand. */
  readonly note?: string;
  /** A short heading that it stands under with its neighbours, where a card has many: `buy`. */
  readonly group?: string;
  /** Where there is no room for all of a long list, those that are needed first. */
  readonly first?: boolean;
}
