import type { Card } from '../../commands/card.ts';
import { cautionsFor } from '../../core/hazard/cautions.ts';
import { facts, hazardNumbers } from '../../core/hazard/facts.ts';

/** A card with something of everything, for tests; its numbers are made up. */
export const sampleCard: Card = {
  command: 'mix',
  headline: '15 kg clay and 49 kg sand.',
  cautions: cautionsFor({ facts: ['hot-work', 'dry-powder'] }),
  figures: [
    {
      id: 'mix.clay',
      label: 'dry clay',
      value: 15,
      unit: 'kg',
      range: { low: 12, high: 18 },
      rangeBasis: 'sampled',
      note: '1 bag',
    },
    { id: 'mix.sand', label: 'sand', value: 49, unit: 'kg', rangeBasis: 'none' },
  ],
  table: {
    columns: ['batch', 'clay'],
    rows: [
      ['first', '8 kg'],
      ['second', '7 kg'],
    ],
  },
  notes: ['Squeeze it.'],
  given: ['amount 30 L'],
  assumed: [{ text: 'bone dry', override: 'damp=10%' }, { text: 'nothing else' }],
  doubt: 'how hard you ram',
  sources: ['derived', 'common-practice'],
  working: [
    {
      formula: 'dry mass = volume × density',
      inputs: { volume_m3: 0.03, density_kg_m3: 2000 },
      gives: { dry_mass_kg: 60 },
      source: 'derived',
    },
  ],
  next: [
    { label: 'drier', line: 'again damp=0%' },
    { label: 'why', line: 'why' },
  ],
  handsOver: {},
  units: 'metric',
};

/** Every fact holds and every number is beyond its limit: the longest list the rules can give. */
export const worstCautions = cautionsFor({
  facts,
  numbers: Object.fromEntries(hazardNumbers.map((name) => [name, Number.MAX_VALUE])),
});
