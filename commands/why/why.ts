import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import type { Command } from '../command.ts';

export const why = {
  name: 'why',
  summary: 'How the last answer was worked out: formulas, numbers, sources.',
  options: z.strictObject({}),
  examples: [{ line: 'why', says: 'the working of the last answer (ask something first)' }],
  hazards: [],
  aboutLast: true,
  figures: {},
  passing: true,
  async answer(_options, context) {
    const last = await context.memory.lastAsk(context);
    if (!last) {
      throw new AskError({
        code: 'nothing-before',
        what: 'there is no earlier answer here to explain',
        expected: 'a question first, then why',
        example: 'mix 1.1 cu ft',
      });
    }
    const reply = await context.ask(last);
    if (reply.kind === 'error') throw new AskError(reply.error);
    const { card } = reply;
    return {
      headline: `How ${last.command} came to: ${card.headline}`,
      figures: [],
      assumed: card.assumed,
      given: card.given,
      ...(card.doubt === undefined ? {} : { doubt: card.doubt }),
      sources: [...new Set([...card.sources, ...card.working.map(({ source }) => source)])],
      working: card.working,
      cautions: card.cautions,
    };
  },
} satisfies Command<z.ZodObject>;
