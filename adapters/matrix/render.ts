import type { Card, Reply } from '../../commands/card.ts';
import { sentence } from '../../commands/sentence.ts';
import type { Caution } from '../../core/hazard/caution.ts';
import { formatFigure } from '../../core/quantity/format.ts';
import { sourceOf } from '../../core/sources/sources.ts';
import { workingLines } from '../terminal/working.ts';
import { type Block, htmlOf, type Row, textOf } from './blocks.ts';

/** The two faces of a message. */
export interface Faces {
  readonly body: string;
  readonly formatted_body: string;
  /** What is said and what can hurt, for clients that know no edits and see this as a message of its own. */
  readonly brief: string;
}

/**
 * An event may have 65,536 bytes. Encryption writes four for every three, and signatures, keys and relations come on
 * top of that; so the words may take this many, as JSON.
 */
export const mostBytes = 44_000;

/** What of a card is shown. Where there is no room: sources, table rows, figures, then the rest from the end. */
interface Kept {
  readonly sources: boolean;
  readonly rows: number;
  readonly figures: number;
  readonly working: boolean;
  readonly basis: boolean;
  readonly notes: boolean;
  readonly next: boolean;
}

export function renderReply(reply: Reply): Faces {
  return reply.kind === 'card' ? renderCard(reply.card) : renderError(reply);
}

/** Each step leaves out a little more, so the longest that fits is found by halving. */
function renderCard(card: Card): Faces {
  const steps: Kept[] = [
    {
      sources: true,
      rows: card.table?.rows.length ?? 0,
      figures: card.figures.length,
      working: card.command === 'why',
      basis: true,
      notes: true,
      next: true,
    },
  ];
  const brief = briefOf(card.headline, card.cautions);
  const faces = (at: number) => facesOf(cardBlocks(card, steps[at]!), brief);
  const whole = faces(0);
  if (fits(whole)) return whole;
  for (let next = fewer(steps[0]!); next; next = fewer(next)) steps.push(next);
  let [first, last] = [1, steps.length - 1];
  while (first < last) {
    const middle = (first + last) >> 1;
    if (fits(faces(middle))) last = middle;
    else first = middle + 1;
  }
  return faces(first);
}

function fewer(kept: Kept): Kept | undefined {
  if (kept.sources) return { ...kept, sources: false };
  if (kept.rows > 0) return { ...kept, rows: Math.floor(kept.rows * 0.9) };
  if (kept.figures > 0) return { ...kept, figures: Math.floor(kept.figures * 0.9) };
  const part = (['working', 'basis', 'notes', 'next'] as const).find((one) => kept[one]);
  return part && { ...kept, [part]: false };
}

function cardBlocks(card: Card, kept: Kept): readonly Block[] {
  const explains = card.command === 'why';
  const assumed = card.assumed.map(({ text, override }) => (override ? `${text} (${override})` : text));
  return [
    ...leading(card.cautions),
    { kind: 'strong', text: card.headline },
    ...hurting(card.cautions, explains),
    ...figureBlocks(card, kept.figures),
    ...tableBlocks(card, kept.rows),
    ...(kept.working ? workingBlocks(card) : []),
    ...(kept.notes ? list(undefined, card.notes) : []),
    ...(kept.basis ? [...words('You gave', card.given), ...words('I assumed', assumed)] : []),
    ...(kept.basis && card.doubt !== undefined ? words('Biggest doubt', [card.doubt]) : []),
    ...(kept.sources ? sourceBlocks(card, explains) : []),
    ...(kept.next ? nextBlocks(card) : []),
  ];
}

const words = (label: string, items: readonly string[]): readonly Block[] =>
  items.length === 0 ? [] : [{ kind: 'words', label, text: items.join(' · ') }];

const list = (label: string | undefined, items: readonly string[]): readonly Block[] =>
  items.length === 0 ? [] : [{ kind: 'list', items, ...(label === undefined ? {} : { label }) }];

/** A danger that this very question triggers stands above the answer. */
const leading = (cautions: readonly Caution[]): readonly Block[] =>
  cautions.filter(({ leads }) => leads).map((caution) => ({ kind: 'strong', text: said(caution, true) }));

const hurting = (cautions: readonly Caution[], withReasons: boolean): readonly Block[] =>
  list(
    'What can hurt',
    cautions.filter(({ leads }) => !leads).map((caution) => said(caution, withReasons)),
  );

const longestBrief = 300;

const briefOf = (headline: string, cautions: readonly Caution[]): readonly Block[] => [
  ...leading(cautions),
  { kind: 'strong', text: headline.slice(0, longestBrief) },
  ...hurting(cautions, false),
];

/** The reason stands beside a danger, and beside everything where the working is asked for. */
export const said = ({ severity, text, reason, standing }: Caution, withReason: boolean): string =>
  [
    severity === 'danger' ? `Danger: ${text}` : text,
    ...(withReason || severity === 'danger' ? [reason] : []),
    ...(standing === 'from memory' ? ['(from memory)'] : []),
  ].join(' ');

function figureBlocks({ figures, units }: Card, count: number): readonly Block[] {
  if (figures.length === 0) return [];
  const rows = figures.slice(0, count).flatMap((figure, at): readonly Row[] => {
    const { lead, other, range } = formatFigure(figure, units);
    const row = [figure.label, lead, range === undefined ? '' : `(${range})`, other, figure.note ?? ''];
    const heads = figure.group !== undefined && figure.group !== figures[at - 1]?.group;
    return heads ? [figure.group, row] : [row];
  });
  return [...table(rows), ...missing(figures.length - count)];
}

function tableBlocks({ table: shown }: Card, count: number): readonly Block[] {
  if (!shown) return [];
  return [...table(shown.rows.slice(0, count), shown.columns), ...missing(shown.rows.length - count)];
}

/** Columns that are empty in every row are left out. */
function table(rows: readonly Row[], head?: readonly string[]): readonly Block[] {
  if (rows.length === 0) return [];
  const cells = rows.filter((row) => typeof row !== 'string');
  const wide = Math.max(head?.length ?? 0, ...cells.map((row) => row.length));
  const used = Array.from({ length: wide }, (_, at) => at).filter((at) =>
    [...cells, head ?? []].some((row) => (row[at] ?? '').trim() !== ''),
  );
  const pick = (row: readonly string[]) => used.map((at) => row[at] ?? '');
  const picked = rows.map((row) => (typeof row === 'string' ? row : pick(row)));
  return [{ kind: 'table', rows: picked, ...(head?.some((cell) => cell.trim() !== '') ? { head: pick(head) } : {}) }];
}

const missing = (count: number): readonly Block[] =>
  count > 0 ? [{ kind: 'words', text: `… ${count} more left out` }] : [];

const workingWidth = 80;

function workingBlocks(card: Card): readonly Block[] {
  const lines = workingLines(card, { color: false, width: workingWidth });
  return lines.length === 0 ? [] : [{ kind: 'code', label: 'The working', text: lines.join('\n') }];
}

function sourceBlocks({ sources }: Card, explains: boolean): readonly Block[] {
  if (sources.length === 0) return [];
  const titles = sources.map((id) => sourceOf(id).title);
  return explains ? list('Sources', titles) : words('Sources', [`${titles.length}, why lists them`]);
}

const nextBlocks = ({ next }: Card): readonly Block[] =>
  next.length === 0 ? [] : [numbered('Ask next', next.slice(0, 9))];

/** In words: not every letter set has the sign of the key. */
export const byNumber = 'Answer with a number, or react with the key of its digit, and I ask it for you.';

const numbered = (label: string, items: Card['next']): Block => ({
  kind: 'numbered',
  label,
  items: items.map(({ line, label: says }) => ({ line, label: says === line ? '' : says })),
  after: byNumber,
});

function renderError({ error, cautions, tryLine }: Extract<Reply, { kind: 'error' }>): Faces {
  const what = sentence(error.what);
  return facesOf(
    [
      ...leading(cautions),
      { kind: 'strong', text: what },
      ...words('Expected', [error.expected]),
      numbered('Try', [{ label: '', line: tryLine ?? error.example }]),
      ...hurting(cautions, false),
    ],
    briefOf(what, cautions),
  );
}

/** A sentence of the bot's own, with what can hurt in what it is about. */
export function saying(text: string, cautions: readonly Caution[] = []): Faces {
  const blocks: readonly Block[] = [...leading(cautions), { kind: 'words', text }, ...hurting(cautions, false)];
  return facesOf(blocks, blocks);
}

/** What can be asked by number below a reply, first to last. */
export const linesBelow = (reply: Reply): string[] =>
  reply.kind === 'card' ? reply.card.next.slice(0, 9).map(({ line }) => line) : [reply.tryLine ?? reply.error.example];

const facesOf = (blocks: readonly Block[], brief: readonly Block[]): Faces => ({
  body: textOf(blocks),
  formatted_body: htmlOf(blocks),
  brief: textOf(brief),
});

const fits = (faces: Faces): boolean => new TextEncoder().encode(JSON.stringify(faces)).length <= mostBytes;
