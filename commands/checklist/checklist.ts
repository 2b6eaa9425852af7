import { z } from 'zod';
import type { Command } from '../command.ts';
import { text } from '../options.ts';
import { checklistFigures, family, listOption } from './family.ts';
import { findList } from './opened.ts';
import { listAnswer } from './show.ts';
import { startList } from './start-list.ts';

const options = z.strictObject({
  list: listOption(),
  for: text({ label: 'start one of: last, a build, or a line in parentheses', most: 1000 }).optional(),
});

export const checklist = {
  ...family,
  name: 'checklist',
  summary: 'Where the build stands: the stage at hand, what holds it, what was ticked by whom.',
  options,
  subject: 'list',
  examples: [
    { line: 'checklist', says: 'the newest of this place; else one of your only build' },
    { line: 'checklist for=(size can 20 gal crucible=6 in x 8 in)', says: 'a new one, of a question' },
  ],
  figures: checklistFigures,
  async answer({ list, for: source }, context) {
    const found = source === undefined ? await findList(list, context) : undefined;
    if (found) return listAnswer(found, context);
    const { renewed, ...started } = await startList({ name: list, for: source, chosen: {} }, context);
    return listAnswer(started, context, renewed ? 'Of that question from now on.' : 'Started.');
  },
} satisfies Command<typeof options>;
