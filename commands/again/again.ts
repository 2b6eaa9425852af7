import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import type { Command } from '../command.ts';
import { text } from '../options.ts';

export const again = {
  name: 'again',
  summary: 'The last question once more, with changes.',
  options: z.strictObject({ change: text({ label: 'what changes' }).optional() }),
  subject: 'change',
  takesLine: true,
  examples: [{ line: 'again ratio=3 sand 1 clay', says: 'the last mix with another ratio (ask a mix first)' }],
  hazards: [],
  aboutLast: true,
  figures: {},
  async expand(ask, { memory, parse, commands }) {
    const last = await memory.lastAsk(ask);
    if (!last) {
      throw new AskError({
        code: 'nothing-before',
        what: 'there is no earlier question here to ask again',
        expected: 'a question first',
        example: 'mix 1.1 cu ft',
      });
    }
    const change = parse(`${last.command} ${ask.options.change ?? ''}`);
    const alternatives = commands.find(({ name }) => name === last.command)?.alternatives ?? [];
    const changed = Object.keys(change.options);
    const replaced = alternatives
      .filter((groups) => groups.some((group) => group.some((name) => changed.includes(name))))
      .flatMap((groups) => groups.filter((group) => !group.some((name) => changed.includes(name))).flat());
    const kept = Object.entries(last.options).filter(([name]) => !replaced.includes(name));
    const yields = 'for' in change.options ? kept.map(([name]) => name).filter((name) => !changed.includes(name)) : [];
    return { yields, ask: { ...last, options: { ...Object.fromEntries(kept), ...change.options } } };
  },
  answer: () => Promise.reject(new Error('again is expanded before it is answered')),
} satisfies Command<z.ZodObject>;
