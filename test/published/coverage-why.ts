import type { Covered } from './coverage.ts';

/** Why a published value lies outside what we say of it nineteen times in twenty. */
export const causes = {
  edge: 'the least or the densest of its class, printed by density: at the end of our range by its choice',
  other: 'the table means another thing or another state of it',
  round: 'one round number for a whole family of metals or concretes',
  narrow: 'our own range is too narrow or lies beside it, and is not widened here to pass',
} as const;
export type Cause = keyof typeof causes;

interface Reason {
  readonly of: string;
  readonly quantity: RegExp;
  readonly cause: Cause;
  readonly says: string;
}

const reasons: readonly Reason[] = [
  {
    of: 'common-red-brick',
    quantity: /conductivity.*(1440|2080)/,
    cause: 'edge',
    says: 'the lightest and the densest brick of our range',
  },
  { of: 'perlite-cement-backup', quantity: /conductivity.*640/, cause: 'edge', says: 'the densest mix of our range' },
  { of: 'vermiculite-cement', quantity: /conductivity.*720/, cause: 'edge', says: 'the densest mix of our range' },
  {
    of: 'insulating-brick-23',
    quantity: /density/,
    cause: 'edge',
    says: 'a cast brick, lighter than pressed ones; it has its own entry',
  },
  {
    of: 'ordinary-concrete',
    quantity: /conductivity.*(2400|high density)/,
    cause: 'edge',
    says: 'the densest concrete of our range',
  },
  {
    of: 'perlite',
    quantity: /heat capacity/,
    cause: 'narrow',
    says: 'tables give 837 and 1090 J/(kg K); ours knows the first',
  },
  {
    of: 'vermiculite',
    quantity: /heat capacity/,
    cause: 'narrow',
    says: 'tables give 840, 1000 and 1340 J/(kg K); ours ends at 1008',
  },
  { of: 'perlite-cement-backup', quantity: /heat capacity/, cause: 'narrow', says: 'a heat capacity from memory' },
  { of: 'mineral-wool', quantity: /Slag wool/, cause: 'narrow', says: 'a heat capacity from memory' },
  { of: 'mild-steel', quantity: /conductivity/, cause: 'round', says: '50 beside the 53.3 of EN 1993-1-2' },
  { of: 'stainless-steel', quantity: /conductivity/, cause: 'round', says: '17 beside the 15 of other standards' },
  {
    of: 'stainless-steel',
    quantity: /heat capacity/,
    cause: 'narrow',
    says: 'a heat capacity from memory, above both codes',
  },
  {
    of: 'grey-iron',
    quantity: /density/,
    cause: 'round',
    says: '7500 for all cast irons; grey iron is 7100 to 7300 elsewhere',
  },
  { of: 'zinc', quantity: /density/, cause: 'round', says: '7200 for 7140' },
  {
    of: 'ordinary-concrete',
    quantity: /heat capacity/,
    cause: 'round',
    says: '1000 for every stone and concrete of that standard',
  },
  {
    of: 'insulating-brick-28',
    quantity: /heat capacity/,
    cause: 'narrow',
    says: 'one line from memory serves all light bricks',
  },
  {
    of: 'silica-brick',
    quantity: /heat capacity/,
    cause: 'narrow',
    says: 'from memory; the table itself lies 5 to 13 % below what its own silica would have',
  },
  {
    of: 'gypsum-plaster',
    quantity: /plaster of Paris/,
    cause: 'other',
    says: 'plaster that has set; ours is the powder',
  },
  {
    of: 'fireclay-brick',
    quantity: /density/,
    cause: 'narrow',
    says: 'ours is of one handbook row; dense brick goes to 2400',
  },
  { of: 'silica-brick', quantity: /density/, cause: 'narrow', says: 'ours is of one handbook row' },
  {
    of: 'ordinary-concrete',
    quantity: /density, concrete, gravel/,
    cause: 'narrow',
    says: 'less than our highest, beyond 95 %',
  },
  {
    of: 'portland-cement',
    quantity: /1506|cement, Portland/,
    cause: 'other',
    says: 'a bag as it was packed and shaken; ours is scooped',
  },
  { of: 'silica-sand', quantity: /sand, loose/, cause: 'narrow', says: 'loosely poured; ours begins at 45 % pores' },
  { of: 'kaolin', quantity: /pulverised/, cause: 'narrow', says: 'lighter than our lightest' },
  {
    of: 'lump-charcoal',
    quantity: /heating value/,
    cause: 'narrow',
    says: 'the driest, purest char; ours allows for ash',
  },
  { of: 'wood', quantity: /oak/, cause: 'narrow', says: 'our range of dry wood begins above it' },
  { of: 'propane', quantity: /another/, cause: 'narrow', says: '0.2 % below a range of 0.4 %' },
  {
    of: 'used-motor-oil',
    quantity: /waste oil/,
    cause: 'other',
    says: 'gross or net, and how much water, is not said there',
  },
  {
    of: 'methane',
    quantity: /real flame/,
    cause: 'other',
    says: 'a small still flame of a laboratory; ours is one in a furnace',
  },
  {
    of: 'propane',
    quantity: /real flame/,
    cause: 'other',
    says: 'a small still flame of a laboratory; ours is one in a furnace',
  },
  {
    of: 'butane',
    quantity: /real flame/,
    cause: 'other',
    says: 'a small still flame of a laboratory; ours is one in a furnace',
  },
];

export const reasonFor = ({ subject, quantity }: Pick<Covered, 'subject' | 'quantity'>): Reason | undefined =>
  reasons.find((reason) => reason.of === subject && reason.quantity.test(quantity));
