import { z } from 'zod';
import type { Command } from '../command.ts';
import { text } from '../options.ts';
import { isPlace, ownerOf, whoOption } from '../owner.ts';
import { ageOf, amountText, priceText, readPrice } from '../prices.ts';
import { said } from '../said.ts';
import { sentence } from '../sentence.ts';
import { priceFamily } from './family.ts';

const options = z.strictObject({
  what: text({ label: 'a material or fuel, an amount of it and the price', most: 120 }),
  who: whoOption(),
});

export const price = {
  ...priceFamily,
  name: 'price',
  summary: 'Keep what you pay for a material or a fuel, in your own currency.',
  options,
  subject: 'what',
  examples: [
    { line: 'price vermiculite 4 cu ft $33', says: 'a bag by volume' },
    { line: 'price charcoal 9 kg €21', says: 'a fuel, in euros' },
    { line: 'price propane 2.40 CAD per kg who=place', says: 'what people here pay' },
  ],
  async answer({ what, who }, context) {
    const named = readPrice(what, 'what');
    const owner = ownerOf(who, context);
    const whose = isPlace(owner) ? 'place' : 'asker';
    const before = (await context.memory.prices(context)).find((one) => one.item === named.item && one.owner === whose);
    await context.memory.setPrice(owner, named, context.now);
    const { units, now } = context;
    const text = priceText(named, { whose, units });
    return said(sentence(text), {
      notes: [
        ...(before
          ? [
              `Before: ${before.price} ${before.currency} for ${amountText(before.amount, units)}, set ${ageOf(before.setAt, now)}.`,
            ]
          : []),
        ...(isPlace(owner) ? ['A price of one’s own goes before it.'] : []),
      ],
      next: [
        { label: 'all prices', line: 'price list' },
        { label: 'take it back', line: `price drop ${named.item}${isPlace(owner) ? ' who=place' : ''}` },
      ],
    });
  },
} satisfies Command<typeof options>;
