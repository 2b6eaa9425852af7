import { z } from 'zod';
import { formatPrice } from '../../core/quantity/format.ts';
import type { Command } from '../command.ts';
import { ageOf, amountText, itemName, pricesFor } from '../prices.ts';
import { said } from '../said.ts';
import { priceFamily } from './family.ts';

const options = z.strictObject({});

export const priceList = {
  ...priceFamily,
  name: 'price list',
  summary: 'The prices that answers reckon with: yours, then those of this place.',
  options,
  examples: [{ line: 'price list', says: 'with whose they are and how old' }],
  async answer(_options, context) {
    const { units, now } = context;
    const prices = [...(await pricesFor(context)).values()];
    const [first] = prices;
    if (!first) {
      return said('No price is set here: answers take common ones, in US dollars.', {
        next: [{ label: 'set one', line: 'price sand 50 lb $5' }],
      });
    }
    return said(prices.length === 1 ? 'One price is set.' : `${prices.length} prices are set.`, {
      table: {
        columns: ['what', 'price', 'for', 'whose', 'set'],
        rows: prices.map(({ item, price, currency, amount, whose, setAt }) => [
          itemName(item),
          formatPrice(price, currency),
          amountText(amount, units),
          whose === 'place' ? "this place's" : 'yours',
          setAt ? ageOf(setAt, now) : '',
        ]),
      },
      next: [
        { label: 'take one back', line: `price drop ${first.item}${first.whose === 'place' ? ' who=place' : ''}` },
      ],
    });
  },
} satisfies Command<typeof options>;
