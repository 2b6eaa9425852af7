import type { Source } from './source.ts';

/** Standings that are not a publication, and constants that everything uses. */
export const generalSources = [
  { id: 'derived', title: 'Derived here: geometry, mass balance or arithmetic on cited values', opened: 'derived' },
  { id: 'common-practice', title: 'Common practice of the trade, no published source found', opened: 'practice' },
  {
    id: 'from-memory',
    title: 'From memory: a handbook value that was not opened; the range is kept wide',
    opened: 'memory',
  },
  { id: 'codata-2018', title: 'CODATA recommended values of the fundamental constants, 2018', opened: 'memory' },
  {
    id: 'si-brochure',
    title: 'BIPM, The International System of Units, 9th edition (2019), conversion factors',
    opened: 'memory',
  },
] as const satisfies readonly Source[];
