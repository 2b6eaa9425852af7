import type { Reply } from '../../../commands/card.ts';
import { sentence } from '../../../commands/sentence.ts';
import type { Caution } from '../../../core/hazard/caution.ts';
import { escapedTo } from '../escape.ts';
import { cautionFields, colourOf, type Reasons } from './cautions.ts';
import { fieldsOf } from './chunks.ts';
import type { Message } from './payload.ts';
import { fits, spread } from './spread.ts';

/** What was wrong, what would be right and something that works, with the cautions of what was asked. */
export const errorMessage = ({ error, cautions, tryLine }: Extract<Reply, { kind: 'error' }>): Message =>
  saying(sentence(error.what), cautions, [
    ['Expected', error.expected],
    ['Try', tryLine ?? error.example],
  ]);

/** A sentence of the bot's own: a refusal, a fault, a word about an old button. */
export function saying(
  what: string,
  cautions: readonly Caution[] = [],
  more: readonly (readonly [name: string, value: string])[] = [],
): Message {
  const embed = (reasons: Reasons, room: number) => ({
    description: `**${escapedTo(what, room)}**`,
    color: colourOf(cautions),
    fields: [
      ...cautionFields(cautions, reasons),
      ...more.flatMap(([name, value]) => fieldsOf(name, value.trim() === '' ? [] : [escapedTo(value, room)])),
    ],
  });
  const found = attempts.map(([reasons, room]) => embed(reasons, room)).find(fits);
  if (found) return { embeds: [found], components: [], files: [] };
  const { content, embed: rest } = spread(embed('none', 130));
  return { content, embeds: [rest], components: [], files: [] };
}

const attempts: readonly (readonly [Reasons, room: number])[] = [
  ['dangers', 900],
  ['leads', 600],
  ['none', 300],
];
