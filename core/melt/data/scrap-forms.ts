import { datum, MEMORY, published } from '../../materials/data/make.ts';
import type { Datum } from '../../materials/material.ts';

/** How scrap comes to the pot. */
export interface ScrapForm {
  readonly id: string;
  readonly name: string;
  readonly words: readonly string[];
  /** Aluminium lost of an aluminium charge, share of mass, by a fired crucible. */
  readonly aluminium_loss: Datum;
  /** Surface to burn beside heavy clean pieces: multiplies the losses of the other elements. */
  readonly surface: Datum;
  /** Bulk density over that of the solid. */
  readonly bulk: Datum;
  readonly hazards: readonly string[];
  readonly note?: string;
}

const loss = published('furnace-loss-note');

export const scrapForms: readonly ScrapForm[] = [
  {
    id: 'heavy',
    name: 'clean heavy pieces',
    words: ['heavy', 'clean', 'ingot', 'ingots', 'bar', 'billet', 'plate'],
    aluminium_loss: datum(0.01, 0.025, 0.04, loss, 'Fired crucible 2–4 %; 1–3 % from memory.'),
    surface: datum(1, 1, 1, MEMORY),
    bulk: datum(0.35, 0.45, 0.55, MEMORY),
    hazards: [],
  },
  {
    id: 'castings',
    name: 'broken castings',
    words: ['castings', 'casting', 'cast', 'wheels', 'wheel', 'engine', 'pistons', 'fittings', 'broken', 'scrap'],
    aluminium_loss: datum(0.02, 0.035, 0.06, MEMORY),
    surface: datum(1, 1.2, 1.6, MEMORY),
    bulk: datum(0.25, 0.35, 0.45, MEMORY),
    hazards: [],
  },
  {
    id: 'sheet',
    name: 'sheet, tube and extrusions',
    words: ['sheet', 'tube', 'pipe', 'extrusion', 'extrusions', 'profile', 'foil', 'wire', 'gutter', 'siding'],
    aluminium_loss: datum(0.05, 0.07, 0.1, MEMORY),
    surface: datum(1, 1.7, 2.5, MEMORY),
    bulk: datum(0.1, 0.2, 0.3, MEMORY),
    hazards: [],
  },
  {
    id: 'cans',
    name: 'drink cans',
    words: ['cans', 'can', 'drink cans', 'beverage cans'],
    aluminium_loss: datum(0.1, 0.2, 0.3, MEMORY, 'Lacquer and magnesium burn as well.'),
    surface: datum(2, 3, 5, MEMORY),
    bulk: datum(0.04, 0.1, 0.25, MEMORY, 'Loose to crushed.'),
    hazards: ['dross', 'damp-charge'],
    note: 'Cans: crush and dry them, and push them under liquid metal; floating they burn.',
  },
  {
    id: 'swarf',
    name: 'swarf and turnings',
    words: ['swarf', 'turnings', 'chips', 'filings', 'shavings'],
    aluminium_loss: datum(0.1, 0.15, 0.3, published('msf-2014-1083'), '10 % pushed under in a heel; 30 % from memory.'),
    surface: datum(2, 3, 5, MEMORY),
    bulk: datum(0.08, 0.15, 0.3, MEMORY),
    hazards: ['dross', 'damp-charge'],
    note: 'Swarf: no oil or coolant in it; push it under a heel of liquid metal, where about a tenth is lost.',
  },
];
