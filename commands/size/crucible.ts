import type { z } from 'zod';
import { shellFactsIn } from '../../core/hazard/words.ts';
import type { AnswerContext, Command } from '../command.ts';
import { about } from '../options.ts';
import { type Asked, sizeAnswer } from './answer.ts';
import { sizeHazards } from './can.ts';
import { sizeDoubt } from './doubt.ts';
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
  warns: shellFactsIn,
  figures: sizeFigures,
  slow: true,
  async answer(options, context) {
    return sizeAnswer(asked(options, context), context);
  },
  async doubt(options, context) {
    return sizeDoubt(asked(options, context), context.units);
  },
} satisfies Command<typeof crucibleOptions>;

function asked(
  { vessel, crucible, ...options }: z.infer<typeof crucibleOptions>,
  { units }: Pick<AnswerContext, 'units'>,
): Asked {
  const pot = about('crucible', () => readCrucible(crucible.text, units));
  return { asked: 'crucible', options, vessel, crucible: pot, said: crucible.text };
}
