import { AskError } from '../../core/ask-error.ts';
import type { Command } from '../command.ts';
import { about } from '../options.ts';
import { sizeAnswer } from './answer.ts';
import { sizeHazards } from './can.ts';
import { sizeFigures } from './names.ts';
import { meltOptions } from './options.ts';
import { readMelt } from './question.ts';

export const sizeMelt = {
  name: 'size melt',
  summary: 'The crucible and the furnace for a mass of metal.',
  options: meltOptions,
  subject: 'melt',
  examples: [{ line: 'size melt 5 kg aluminium', says: 'crucible, furnace and drum for five kilograms' }],
  hazards: sizeHazards,
  figures: sizeFigures,
  slow: true,
  async answer({ melt, vessel, ...options }, context) {
    const { crucible, metal } = about('melt', () => readMelt(melt.text, options.metal, context.units));
    try {
      return sizeAnswer({ asked: 'melt', options, vessel, crucible, metal }, context);
    } catch (error) {
      // The crucible followed from the melt: that is what the asker can change.
      if (!(error instanceof AskError) || error.option !== 'crucible') throw error;
      throw error.with({ option: 'melt', expected: 'a smaller melt, or a wider vessel', example: `1 kg ${metal}` });
    }
  },
} satisfies Command<typeof meltOptions>;
