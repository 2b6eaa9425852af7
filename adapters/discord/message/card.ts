import type { APIEmbed, APIEmbedField } from 'discord.js';
import type { Card } from '../../../commands/card.ts';
import { sourceOf } from '../../../core/sources/sources.ts';
import { renderCard } from '../../terminal/render.ts';
import { escapedTo, plain } from '../escape.ts';
import { limits } from '../limits.ts';
import { firstAid } from '../names.ts';
import { cautionFields, colourOf, colours, type Reasons } from './cautions.ts';
import { fieldsOf, listed, unnamed } from './chunks.ts';
import { figureFields, tableFields, tableText } from './figures.ts';
import type { FileOut, Message } from './payload.ts';
import { fits, spread } from './spread.ts';
import { workingFields } from './working.ts';

/** What of a card is shown. What goes first where there is no room: sources, rows, figures, then the rest from the end. */
interface Kept {
  readonly sources: boolean;
  readonly rows: number;
  readonly figures: number;
  readonly steps: number;
  readonly rest: number;
  readonly notes: number;
  readonly reasons: Reasons;
}

/** More figures than these are a wall of numbers: then only so many are shown, and a button shows them all. */
const readable = { most: 20, first: 12 };

export const isLong = ({ figures }: Card): boolean => figures.length > readable.most;

/** A long card with what is needed first of it: sources and rows go before figures do. */
function briefly(card: Card): Card {
  const { table: _, ...rest } = card;
  const marked = card.figures.filter(({ first }) => first);
  return { ...rest, figures: (marked.length > 0 ? marked : card.figures).slice(0, readable.first), sources: [] };
}

/** A card as one message. What it has no room for stands in a text file beside it. */
export function messageOf(whole: Card, picture?: FileOut, { brief = false }: { brief?: boolean } = {}): Message {
  const card = brief ? briefly(whole) : whole;
  const entire: Kept = {
    sources: true,
    rows: card.table?.rows.length ?? 0,
    figures: card.figures.length,
    steps: card.command === 'why' ? card.working.length : 0,
    rest: 3,
    notes: card.notes.length,
    reasons: card.command === 'why' ? 'all' : 'dangers',
  };
  const { kept, embed: longest } = longestThatFits(entire, (some) => {
    const missing = leavesOut(some, entire) ? inFile : brief ? behindButton(card, whole) : undefined;
    return embedOf(card, some, missing, picture);
  });
  const { content, embed } = fits(longest) ? { embed: longest } : spread(longest);
  return {
    ...(content === undefined ? {} : { content }),
    embeds: [embed],
    components: [],
    files: [
      ...(picture ? [picture] : []),
      ...(leavesOut(kept, entire) && !card.attachment?.apart ? [textOf(whole)] : []),
      ...(card.attachment ? [attached(card.attachment)] : []),
    ],
  };
}

const inFile = 'No room here for all of it: the whole answer is in the text file.';
const behindButton = ({ figures }: Card, whole: Card): string =>
  `${figures.length} of ${whole.figures.length} figures${whole.table ? ', and no table' : ''}: All figures shows the rest.`;

/** Most cards fit whole. Else each step leaves out one thing more, so the longest embed that fits is found by halving. */
function longestThatFits(whole: Kept, embed: (kept: Kept) => APIEmbed) {
  const entire = embed(whole);
  if (fits(entire)) return { kept: whole, embed: entire };
  const steps: Kept[] = [];
  for (let next = fewer(whole); next; next = fewer(next)) steps.push(next);
  let [first, last] = [0, steps.length - 1];
  while (first < last) {
    const middle = (first + last) >> 1;
    if (fits(embed(steps[middle]!))) last = middle;
    else first = middle + 1;
  }
  const kept = steps[first]!;
  return { kept, embed: embed(kept) };
}

function fewer(kept: Kept): Kept | undefined {
  if (kept.sources) return { ...kept, sources: false };
  if (kept.rows > 0) return { ...kept, rows: kept.rows - 1 };
  if (kept.figures > 0) return { ...kept, figures: kept.figures - 1 };
  if (kept.steps > 0) return { ...kept, steps: kept.steps - 1 };
  if (kept.rest > 0) return { ...kept, rest: kept.rest - 1 };
  if (kept.notes > 0) return { ...kept, notes: kept.notes - 1 };
  const reasons = lessReason[kept.reasons];
  return reasons && { ...kept, reasons };
}

const lessReason: Readonly<Record<Reasons, Reasons | undefined>> = {
  all: 'dangers',
  dangers: 'leads',
  leads: 'none',
  none: undefined,
};

/** Sources alone are a word away (`why`), so a card that only lost those needs no file. */
const leavesOut = (kept: Kept, whole: Kept): boolean =>
  (['rows', 'figures', 'steps', 'rest', 'notes', 'reasons'] as const).some((part) => kept[part] !== whole[part]);

function embedOf(card: Card, kept: Kept, missing: string | undefined, picture: FileOut | undefined): APIEmbed {
  const explains = card.command === 'why';
  const basis: readonly (readonly [string, readonly string[]])[] = [
    ['Biggest doubt', card.doubt === undefined ? [] : [card.doubt]],
    ['I assumed', card.assumed.map(({ text, override }) => (override ? `${text} (${override})` : text))],
    ['You gave', card.given],
  ];
  const rows = card.table ? tableFields(card.table, kept.rows) : [];
  // A list that is all there is to read goes on where the answer stands, which holds four fields' worth in one piece.
  const isRead = rows.length > 1 && card.cautions.length === 0 && card.figures.length === 0;
  const read = isRead && card.table ? `\n\n${tableText(card.table, kept.rows)}` : '';
  const fields: readonly APIEmbedField[] = [
    ...cautionFields(card.cautions, kept.reasons),
    ...figureFields(card, kept.figures),
    ...(isRead ? [] : rows),
    ...workingFields(card, kept.steps),
    ...noteFields(card, kept.notes),
    ...basis.slice(0, kept.rest).flatMap(([name, lines]) =>
      fieldsOf(
        name,
        lines.map((line) => fieldLine(line)),
        ' · ',
      ),
    ),
    ...(explains && kept.sources
      ? fieldsOf(
          'Sources',
          card.sources.map((id) => fieldLine(sourceOf(id).title)),
        )
      : []),
  ];
  const small = [
    ...(missing === undefined ? [] : [missing]),
    ...(kept.sources && !explains && card.sources.length > 0 ? [sourcesLine(card.sources)] : []),
  ].join('\n');
  return {
    description: `**${escapedTo(card.headline, limits.content - 100)}**${read}`,
    color: card.command === firstAid ? colours.danger : colourOf(card.cautions),
    fields: [...fields],
    ...(picture ? { image: { url: `attachment://${picture.name}` } } : {}),
    ...(small === '' ? {} : { footer: { text: small } }),
  };
}

/** Beside numbers they are remarks; without any they are what is said. */
const noteFields = ({ notes, figures }: Card, count: number): readonly APIEmbedField[] => {
  const lines = notes.slice(0, count);
  if (figures.length === 0)
    return fieldsOf(
      unnamed,
      lines.map((line) => fieldLine(line)),
    );
  return fieldsOf(
    'Beside it',
    lines.map((line) => listed(fieldLine(line, limits.fieldValue - listed('').length))),
  );
};

const fieldLine = (line: string, room: number = limits.fieldValue): string => escapedTo(line, room).trim() || '–';

const sourcesRoom = 400;

function sourcesLine(ids: Card['sources']): string {
  const titles = ids.map((id) => sourceOf(id).title).join(' · ');
  const line = titles.length <= sourcesRoom ? titles : `${ids.length}, /why lists them`;
  return plain(`Sources: ${line}`);
}

const attached = ({ name, text }: NonNullable<Card['attachment']>): FileOut => ({
  name,
  bytes: new TextEncoder().encode(text),
});

const textWidth = 100;

const textOf = (card: Card): FileOut => ({
  name: `${card.command.replaceAll(' ', '-')}.txt`,
  bytes: new TextEncoder().encode(`${renderCard(card, { color: false, width: textWidth })}\n`),
  alt: 'The whole answer as text',
});
