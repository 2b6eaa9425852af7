import { escaped, plain } from './plain.ts';

/** A piece of an answer, printed twice: as HTML and as text that is read without it. */
export type Block =
  | { readonly kind: 'strong'; readonly text: string }
  | { readonly kind: 'words'; readonly label?: string; readonly text: string }
  | { readonly kind: 'list'; readonly label?: string; readonly items: readonly string[] }
  /** Lines that can be asked by their number. */
  | { readonly kind: 'numbered'; readonly label: string; readonly items: readonly Numbered[]; readonly after: string }
  | { readonly kind: 'table'; readonly head?: readonly string[]; readonly rows: readonly Row[] }
  | { readonly kind: 'code'; readonly label: string; readonly text: string };

export interface Numbered {
  readonly line: string;
  readonly label: string;
}

/** Cells, or one heading over the rows that follow. */
export type Row = readonly string[] | string;

export const htmlOf = (blocks: readonly Block[]): string => blocks.map(blockHtml).join('');

function blockHtml(block: Block): string {
  switch (block.kind) {
    case 'strong':
      return `<p><strong>${lines(block.text)}</strong></p>`;
    case 'words':
      return `<p>${label(block.label)}${lines(block.text)}</p>`;
    case 'list':
      return `${heading(block.label)}<ul>${block.items.map((item) => `<li>${lines(item)}</li>`).join('')}</ul>`;
    case 'numbered':
      return `${heading(block.label)}<ol>${block.items.map(numberedHtml).join('')}</ol><p><em>${lines(block.after)}</em></p>`;
    case 'table':
      return tableHtml(block);
    case 'code':
      return `${heading(block.label)}<pre><code>${escaped(block.text)}</code></pre>`;
  }
}

const lines = (text: string): string => escaped(text).replaceAll('\n', '<br>');
const label = (text: string | undefined): string => (text === undefined ? '' : `<strong>${escaped(text)}</strong> `);
const heading = (text: string | undefined): string =>
  text === undefined ? '' : `<p><strong>${escaped(text)}</strong></p>`;
const numberedHtml = ({ line, label: says }: Numbered): string =>
  `<li><code>${escaped(line)}</code>${says === '' ? '' : ` ${escaped(says)}`}</li>`;

function tableHtml({ head, rows }: Extract<Block, { kind: 'table' }>): string {
  const wide = Math.max(head?.length ?? 0, ...rows.map((row) => (typeof row === 'string' ? 1 : row.length)));
  const body = rows.map((row) =>
    typeof row === 'string'
      ? `<tr><th colspan="${wide}">${lines(row)}</th></tr>`
      : `<tr>${row.map((cell) => `<td>${lines(cell)}</td>`).join('')}</tr>`,
  );
  const top = head ? `<thead><tr>${head.map((cell) => `<th>${lines(cell)}</th>`).join('')}</tr></thead>` : '';
  return `<table>${top}<tbody>${body.join('')}</tbody></table>`;
}

/** No columns: in letters of different widths they would not stand below one another. */
export const textOf = (blocks: readonly Block[]): string => plain(blocks.map(blockText).join('\n\n'));

function blockText(block: Block): string {
  switch (block.kind) {
    case 'strong':
      return block.text;
    case 'words':
      return block.label === undefined ? block.text : `${block.label}: ${block.text}`;
    case 'list':
      return [...headLine(block.label), ...block.items.map((item) => `- ${item}`)].join('\n');
    case 'numbered':
      return [
        `${block.label}:`,
        ...block.items.map(({ line, label: says }, at) => `${at + 1}. ${line}${says === '' ? '' : ` (${says})`}`),
        block.after,
      ].join('\n');
    case 'table':
      return [...headLine(filled(block.head ?? []).join(' · ') || undefined), ...block.rows.map(rowText)].join('\n');
    case 'code':
      return [`${block.label}:`, block.text].join('\n');
  }
}

const headLine = (text: string | undefined): readonly string[] => (text === undefined ? [] : [`${text}:`]);
const filled = (cells: readonly string[]): readonly string[] => cells.filter((cell) => cell.trim() !== '');

function rowText(row: Row): string {
  if (typeof row === 'string') return `${row}:`;
  const [first = '', ...rest] = filled(row);
  return rest.length === 0 ? `- ${first}` : `- ${first}: ${rest.join(' · ')}`;
}
