import { z } from 'zod';
import type { Command } from '../command.ts';
import { choice, text } from '../options.ts';
import { checklistFigures, family } from './family.ts';
import { listAnswer } from './show.ts';
import { startList } from './start-list.ts';

const options = z.strictObject({
  name: text({ label: 'a build of yours, or a name for the list', most: 80 }).optional(),
  for: text({ label: 'of what: last, a build, or a line in parentheses', most: 1000 }).optional(),
  recipe: text({ label: 'lining, as mix names it', most: 60 }).optional(),
  fuel: choice({ label: 'fuel', choices: ['gas', 'charcoal', 'oil'] }).optional(),
});

export const checklistStart = {
  ...family,
  name: 'checklist start',
  summary: 'Start the checklist of a build in this place; anyone here can tick it.',
  options,
  subject: 'name',
  examples: [
    { line: 'checklist start club lining', says: 'of a build you kept' },
    {
      line: 'checklist start Little Hob for=(size can 20 gal crucible=6 in x 8 in) recipe=castable',
      says: 'of a question, cast instead of rammed',
    },
  ],
  figures: checklistFigures,
  slow: true,
  async answer({ name, for: source, recipe, fuel }, context) {
    const chosen = { ...(recipe === undefined ? {} : { recipe }), ...(fuel === undefined ? {} : { fuel }) };
    const { renewed, ...started } = await startList({ name, for: source, chosen }, context);
    return listAnswer(started, context, renewed ? 'Of that question from now on; what was ticked stays.' : 'Started.');
  },
} satisfies Command<typeof options>;
