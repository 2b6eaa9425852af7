import type { z } from 'zod';
import { shellFactsIn } from '../../core/hazard/words.ts';
import type { AnswerContext, Command } from '../command.ts';
import { about } from '../options.ts';
import { type Asked, sizeAnswer } from './answer.ts';
import { sizeDoubt } from './doubt.ts';
import { sizeFigures } from './names.ts';
import { canOptions } from './options.ts';
import { readCrucible } from './question.ts';

export const sizeHazards = ['hot-work', 'silica-dust', 'cut-wire'] as const;

export const sizeCan = {
  name: 'size can',
  summary: 'What goes where in a can or drum: does the crucible fit, what to cut, what it weighs.',
  options: canOptions,
  subject: 'vessel',
  examples: [
    { line: 'size can 20 gal crucible=6 in x 8 in', says: 'a 20 gal can and a crucible six inches wide' },
    { line: 'size can 31 gal fuel=charcoal', says: 'the largest crucible it takes, over charcoal' },
    { line: 'size can 15 in / 17 in x 22 in wall=1 1/2 in', says: 'own can, measured inside: bottom / top x height' },
    { line: 'size can 5 gal pail crucible=6 in x 8 in', says: 'one that does not fit, and what to change' },
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
} satisfies Command<typeof canOptions>;

function asked(
  { vessel, crucible, ...options }: z.infer<typeof canOptions>,
  { units }: Pick<AnswerContext, 'units'>,
): Asked {
  const pot = crucible && about('crucible', () => readCrucible(crucible.text, units));
  return { asked: 'can', options, vessel, crucible: pot, said: crucible?.text };
}
