import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import type { Command } from '../command.ts';
import { text } from '../options.ts';
import { isPlace, ownerOf, whoOption } from '../owner.ts';
import { itemId, itemName } from '../prices.ts';
import { said } from '../said.ts';
import { priceFamily } from './family.ts';

const options = z.strictObject({ item: text({ label: 'a material or fuel', most: 60 }), who: whoOption() });

export const priceDrop = {
  ...priceFamily,
  name: 'price drop',
  summary: 'Forget a price of yours, or of this place.',
  options,
  subject: 'item',
  examples: [{ line: 'price drop sand', says: 'back to the common price' }],
  async answer({ item: typed, who }, context) {
    const item = itemId(typed, 'item');
    const owner = ownerOf(who, context);
    const whose = isPlace(owner) ? "this place's" : 'your';
    if (await context.memory.dropPrice(owner, item)) return said(`Dropped ${whose} price of ${itemName(item)}.`);
    throw new AskError({
      code: 'unknown-name',
      what: `there is no ${whose === 'your' ? 'price of yours' : 'price of this place'} for ${itemName(item)}`,
      expected: 'something that price list names',
      example: 'price list',
    });
  },
} satisfies Command<typeof options>;
