import type { Card, Reply } from '../../commands/card.ts';
import { sentence } from '../../commands/sentence.ts';
import { cautionLines, leadingLines } from './cautions.ts';
import { chartLines, drawingLines } from './chart.ts';
import { figureLines, tableLines } from './figures.ts';
import { type Look, paint, plain, section, wrap } from './text.ts';
import { sourceLines, workingLines } from './working.ts';

type Block = readonly string[];

/** Where an answer must be short: what is left out, in the order of the house. Headline and cautions always stay. */
interface Kept {
  readonly sources: boolean;
  readonly rows: number;
  readonly pictures: boolean;
  readonly figures: number;
}

export function renderCard(card: Card, look: Look): string {
  let kept: Kept = { sources: true, rows: card.table?.rows.length ?? 0, pictures: true, figures: card.figures.length };
  let lines = cardLines(card, look, kept);
  while (look.maxLines !== undefined && lines.length > look.maxLines) {
    const fewer = shortened(kept);
    if (!fewer) break;
    kept = fewer;
    lines = cardLines(card, look, kept);
  }
  return lines.join('\n');
}

function shortened(kept: Kept): Kept | undefined {
  if (kept.sources) return { ...kept, sources: false };
  if (kept.rows > 0) return { ...kept, rows: kept.rows - 1 };
  if (kept.pictures) return { ...kept, pictures: false };
  if (kept.figures > 0) return { ...kept, figures: kept.figures - 1 };
  return undefined;
}

function cardLines(card: Card, look: Look, kept: Kept): readonly string[] {
  const explains = card.command === 'why';
  return spaced([
    leadingLines(card.cautions, look),
    wrap(card.headline, look.width).map((line) => paint('bold', line, look)),
    cautionLines(card.cautions, look, explains),
    leftOut(figureLines(card, look), kept.figures, 0),
    card.table ? leftOut(tableLines(card.table, look), kept.rows, 1) : [],
    kept.pictures && card.chart ? chartLines(card.chart, card.units, look) : [],
    kept.pictures ? drawingLines(card, look) : [],
    explains ? workingLines(card, look) : [],
    card.notes.flatMap((note) => hanging(note, look)),
    // Neither indented nor wrapped: it is to be copied.
    card.attachment && !card.attachment.apart ? card.attachment.text.split('\n').map(plain) : [],
    [...basis(card, look), ...(kept.sources ? sourcesOf(card, look, explains) : []), ...followUps(card, look)],
  ]);
}

/** What the answer rests on: typed, assumed, and the doubt that matters most. */
const basis = ({ given, assumed, doubt }: Card, look: Look): Block => [
  ...(given.length > 0 ? section('You gave', [given.join(' · ')], look) : []),
  ...(assumed.length > 0
    ? section(
        'I assumed',
        [assumed.map(({ text, override }) => (override ? `${text} (${override})` : text)).join(' · ')],
        look,
      )
    : []),
  ...(doubt === undefined ? [] : section('Biggest doubt', [doubt], look)),
];

function sourcesOf(card: Card, look: Look, explains: boolean): Block {
  if (explains) return sourceLines(card, look);
  return card.sources.length > 0 ? section('Sources', [`${card.sources.length} · why lists them`], look) : [];
}

const followUps = ({ next }: Card, look: Look): Block =>
  next.length === 0
    ? []
    : section(
        'Ask next',
        next.map(({ label, line }, at) => `${at + 1} ${line}${label === '' || label === line ? '' : `   ${label}`}`),
        look,
      );

/** The first `count` entries, and a word on how many are missing. `heading` entries do not count. */
function leftOut(entries: readonly Block[], count: number, heading: number): Block {
  const missing = Math.max(0, entries.length - heading - count);
  if (missing === 0) return entries.flat();
  return [...(count === 0 ? [] : entries.slice(0, heading + count).flat()), `  … ${missing} more left out`];
}

const hanging = (text: string, { width }: Look): Block =>
  wrap(text, width - 4).map((line, at) => `${at === 0 ? '  ' : '    '}${line}`);

/** One empty line between blocks that have something to say. */
const spaced = (blocks: readonly Block[]): readonly string[] =>
  blocks.filter((block) => block.length > 0).flatMap((block, at) => (at === 0 ? block : ['', ...block]));

export function renderReply(reply: Reply, look: Look): string {
  if (reply.kind === 'card') return renderCard(reply.card, look);
  const { error, cautions, tryLine } = reply;
  return spaced([
    leadingLines(cautions, look),
    [
      ...wrap(sentence(error.what), look.width).map((line) => paint('bold', line, look)),
      ...section('Expected', [error.expected], look),
      ...section('Try', [tryLine ?? error.example], look),
    ],
    cautionLines(cautions, look),
  ]).join('\n');
}
