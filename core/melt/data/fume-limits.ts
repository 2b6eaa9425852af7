import type { Element } from '../../materials/pour.ts';
import type { SourceId, Standing } from '../../sources/source.ts';

/** Limits of fume in the air one breathes, as a card says them. */
export interface FumeLimit {
  readonly element: Element;
  /** Share of the alloy from which it is said. */
  readonly from_share: number;
  readonly says: string;
  readonly source: SourceId;
  readonly standing: Standing;
}

export const fumeLimits: readonly FumeLimit[] = [
  {
    element: 'Pb',
    from_share: 0.003,
    says: 'Lead in the air: OSHA 50 µg/m³ over 8 h, action level 30 µg/m³ (29 CFR 1910.1025); local law may be stricter.',
    source: 'osha-1910-1025',
    standing: 'published',
  },
  {
    element: 'Zn',
    from_share: 0.01,
    says: 'Zinc oxide fume: OSHA 5 mg/m³ over 8 h, NIOSH 10 mg/m³ for 15 min; the fever comes hours later.',
    source: 'osha-277000',
    standing: 'published',
  },
  {
    element: 'Cu',
    from_share: 0.5,
    says: 'Copper fume: OSHA and NIOSH 0.1 mg/m³ over 8 h.',
    source: 'niosh-copper-fume',
    standing: 'published',
  },
];
