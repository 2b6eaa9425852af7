import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import { factsOf } from '../../core/build/stage.ts';
import type { Command } from '../command.ts';
import { text } from '../options.ts';
import { checklistFigures, family, listOption } from './family.ts';
import { findItem } from './find-item.ts';
import { needList, type Opened, progressWith } from './opened.ts';
import { listAnswer } from './show.ts';

const options = z.strictObject({
  item: text({ label: 'what is open again', most: 80 }),
  list: listOption(),
});

export const checklistUntick = {
  ...family,
  name: 'checklist untick',
  summary: 'Take a tick back; what rests on it is held again.',
  options,
  subject: 'item',
  examples: [{ line: 'checklist untick 1.1', says: 'open again' }],
  figures: checklistFigures,
  async answer({ item: typed, list: name }, context) {
    const { memory } = context;
    const open = await needList(name, context);
    const found = findItem(typed, open.progress, ({ ticked }) => ticked);
    const ticked = found.items.filter((one) => one.ticked);
    if (ticked.length === 0) {
      throw new AskError({
        code: 'refused',
        what: `${found.whole ? found.at.stage.name : found.items[0]!.text} is not ticked`,
        expected: 'something that is; checklist shows the ticks',
        example: 'checklist',
        facts: factsOf(found.at.stage, open.kind),
      });
    }
    for (const { id } of ticked) await memory.untick(open.list.id, id);
    const list = (await memory.checklist(context.place, open.list.name)) ?? open.list;
    const after: Opened = { ...open, list, progress: progressWith(list, open.kind, open.logged) };
    const what = found.whole
      ? `stage ${found.at.number}, ${found.at.stage.name}`
      : `${ticked[0]!.number}, ${ticked[0]!.text}`;
    const answer = listAnswer(after, context, `Open again: ${what}.`);
    const facts = [...factsOf(found.at.stage, open.kind), ...(answer.hazards?.facts ?? [])];
    return { ...answer, hazards: { facts } };
  },
} satisfies Command<typeof options>;
