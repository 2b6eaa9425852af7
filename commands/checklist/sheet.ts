import { z } from 'zod';
import type { Command } from '../command.ts';
import { family, listOption } from './family.ts';
import { needList } from './opened.ts';
import { sheetHtml } from './sheet-html.ts';
import { shopList } from './shop-rows.ts';
import { givenOf } from './show.ts';
import { barOf, factsAhead } from './words.ts';

const options = z.strictObject({ list: listOption() });

export const checklistSheet = {
  ...family,
  name: 'checklist sheet',
  summary: 'The whole checklist to print: boxes to tick, cautions in each stage, the shopping list.',
  options,
  subject: 'list',
  examples: [{ line: 'checklist sheet', says: 'a page for the shed wall' }],
  figures: {},
  slow: true,
  async answer({ list: name }, context) {
    const open = await needList(name, context);
    const { list, progress } = open;
    const { length } = progress.stages;
    return {
      headline: `${list.name} to print: ${length} stages, ${progress.item_count} boxes, the shopping list. ${barOf(progress)} ticked.`,
      figures: [],
      notes: ['Open the file in a browser and print it. What is ticked on paper is ticked here by checklist tick.'],
      given: givenOf(open, context),
      assumed: [],
      sources: [...new Set(progress.stages.map(({ stage }) => stage.source))],
      hazards: { facts: factsAhead(open) },
      next: [{ label: 'where the build stands', line: `checklist list=${list.name}` }],
      attachment: {
        name: 'checklist.html',
        text: sheetHtml(open, await shopList(open, context), context),
        apart: true,
      },
    };
  },
} satisfies Command<typeof options>;
