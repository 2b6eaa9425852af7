import type { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import { shellFactsIn } from '../../core/hazard/words.ts';
import type { AnswerContext, Command } from '../command.ts';
import { about } from '../options.ts';
import { type Asked, sizeAnswer } from './answer.ts';
import { sizeHazards } from './can.ts';
import { sizeDoubt } from './doubt.ts';
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
  warns: shellFactsIn,
  figures: sizeFigures,
  slow: true,
  async answer(options, context) {
    try {
      return sizeAnswer(asked(options, context), context);
    } catch (error) {
      // The crucible followed from the melt: that is what the asker can change.
      if (!(error instanceof AskError) || error.option !== 'crucible') throw error;
      const { metal } = asked(options, context);
      const little = context.units === 'US' ? '2 lb' : '1 kg';
      throw error.with({
        option: 'melt',
        expected: 'a smaller melt, or a wider vessel',
        example: `${little} ${metal.replaceAll('-', ' ')}`,
      });
    }
  },
  async doubt(options, context) {
    return sizeDoubt(asked(options, context), context.units);
  },
} satisfies Command<typeof meltOptions>;

function asked(
  { melt, vessel, ...options }: z.infer<typeof meltOptions>,
  context: Pick<AnswerContext, 'units' | 'commands'>,
) {
  const { crucible, metal } = about('melt', () => readMelt(melt.text, options.metal, context));
  return { asked: 'melt', options, vessel, crucible, metal } satisfies Asked;
}
