import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import type { Command } from '../command.ts';
import { said } from '../said.ts';
import { family, listOption } from './family.ts';
import { needList } from './opened.ts';

const options = z.strictObject({ list: listOption() });

export const checklistDrop = {
  ...family,
  name: 'checklist drop',
  summary: 'Forget a checklist with its ticks: whoever started it, or who moderates the place.',
  options,
  subject: 'list',
  examples: [{ line: 'checklist drop', says: 'the newest of this place' }],
  hazards: [],
  figures: {},
  async answer({ list: name }, context) {
    const { list } = await needList(name, context);
    if (list.owner !== context.asker && !context.mayModerate) {
      throw new AskError({
        code: 'refused',
        what: `${list.name} was started by somebody else`,
        expected: 'whoever started it, or who moderates this place',
        example: `checklist list=${list.name}`,
      });
    }
    await context.memory.dropChecklist(list.id);
    const { for: question = '', recipe, fuel } = list.ask.options;
    const more = [recipe && ` recipe=${recipe}`, fuel && ` fuel=${fuel}`].filter(Boolean).join('');
    const ticks = list.ticks.length === 1 ? 'its one tick' : `its ${list.ticks.length} ticks`;
    return said(`Dropped the checklist ${list.name} with ${ticks}.`, {
      next: [
        { label: 'start it again, with nothing ticked', line: `checklist start ${list.name} for=${question}${more}` },
      ],
    });
  },
} satisfies Command<typeof options>;
