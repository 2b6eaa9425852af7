import type { Command } from '../command.ts';
import { about } from '../options.ts';
import { sizeAnswer } from './answer.ts';
import { sizeHazards } from './can.ts';
import { sizeFigures } from './names.ts';
import { crucibleOptions } from './options.ts';
import { readCrucible } from './question.ts';

export const sizeCrucible = {
  name: 'size crucible',
  summary: 'The furnace round a crucible: bore, wall, floor, lid, tuyere, and which can or drum takes it.',
  options: crucibleOptions,
  subject: 'crucible',
  examples: [
    { line: 'size crucible 6 in x 8 in', says: 'outside diameter x height' },
    { line: 'size crucible 2 L fuel=charcoal', says: 'by what is poured from it' },
  ],
  hazards: sizeHazards,
  figures: sizeFigures,
  slow: true,
  async answer({ vessel, crucible, ...options }, context) {
    const pot = about('crucible', () => readCrucible(crucible.text, context.units));
    return sizeAnswer({ asked: 'crucible', options, vessel, crucible: pot, said: crucible.text }, context);
  },
} satisfies Command<typeof crucibleOptions>;
