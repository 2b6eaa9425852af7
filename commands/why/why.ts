import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import { catalogueRevision } from '../../core/materials/revision.ts';
import type { Command } from '../command.ts';
import { lineOf } from '../source.ts';
import { workingFile } from './file.ts';
import { mainSteps } from './main-steps.ts';

export const why = {
  name: 'why',
  summary: 'How the last answer was worked out: formulas with the numbers put in, sources, all of it in a file.',
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
    const { program, runtime } = context.versions ?? {};
    const data = catalogueRevision();
    const line = lineOf(last, context.commands);
    const versions = [
      ...(program === undefined ? [] : [['Program', program] as const]),
      ...(runtime === undefined ? [] : [['Run by', runtime] as const]),
      ['Data of the catalogue, by its hash', data] as const,
      ['Worked out on', context.now.toISOString().slice(0, 10)] as const,
    ];
    const name = `why-${last.command.replaceAll(' ', '-')}.md`;
    const working = mainSteps(card);
    return {
      headline: `How ${last.command} came to: ${card.headline}`,
      figures: [],
      assumed: card.assumed,
      given: card.given,
      ...(card.doubt === undefined ? {} : { doubt: card.doubt }),
      sources: [...new Set([...card.sources, ...card.working.map(({ source }) => source)])],
      working,
      notes: [
        `${countOf(working.length, card.working.length)} All of it, to check and to repeat, is in ${name}${program === undefined ? '' : ` (${program}, data ${data.slice(0, 8)})`}.`,
      ],
      attachment: { name, text: workingFile(card, { line, versions }), apart: true as const },
      cautions: card.cautions,
    };
  },
} satisfies Command<z.ZodObject>;

const countOf = (shown: number, all: number): string =>
  all === 0
    ? 'Nothing was calculated for this.'
    : shown === all
      ? `${all} ${all === 1 ? 'step' : 'steps'}.`
      : `The ${shown} steps of ${all} that lead to what was shown.`;
