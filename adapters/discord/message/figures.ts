import type { APIEmbedField } from 'discord.js';
import type { Card, Table } from '../../../commands/card.ts';
import type { Figure } from '../../../core/quantity/figure.ts';
import { formatFigure } from '../../../core/quantity/format.ts';
import { escaped, escapedTo } from '../escape.ts';
import { limits } from '../limits.ts';
import { fieldsOf, unnamed } from './chunks.ts';

/** Side by side, three abreast; more than these stand below them, a line each. */
const abreast = 9;

/** Those of a group stand under its heading, a line each; without groups the first ones stand side by side. */
export function figureFields({ figures, units }: Pick<Card, 'figures' | 'units'>, count: number) {
  const shown = figures.slice(0, count);
  const beside = shown.some(({ group }) => group !== undefined) ? 0 : abreast;
  const side = shown.slice(0, beside).map((figure) => besideOthers(figure, units));
  const below = Map.groupBy(shown.slice(beside), ({ group = 'More numbers' }) => group);
  return [
    ...side,
    ...[...below].flatMap(([group, all]) =>
      fieldsOf(
        escapedTo(group, limits.fieldName).trim() || unnamed,
        all.map((figure) => lineOf(figure, units)),
      ),
    ),
  ];
}

function besideOthers(figure: Figure, units: Card['units']): APIEmbedField {
  const { label, value, range, small } = wordsOf(figure, units);
  const below = [...(range === undefined ? [] : [range]), ...small].join('\n');
  const rest = below === '' || below.length > 800 ? '' : `\n${below}`;
  return {
    name: escapedTo(label, limits.fieldName).trim() || '–',
    value: `**${value}**${rest}`,
    inline: true,
  };
}

function lineOf(figure: Figure, units: Card['units']): string {
  const { label, value, range, small } = wordsOf(figure, units);
  const number = `${escapedTo(label, 300)}: **${value}**`;
  const rest = [...(range === undefined ? [] : [range]), ...small].join(' · ');
  const line = `${number}${range === undefined ? ' · ' : ' '}${rest}`;
  return rest === '' || line.length > limits.fieldValue ? number : line;
}

/** A number and its unit hold nothing that means anything here: only words that come with them are escaped. */
function wordsOf(figure: Figure, units: Card['units']) {
  const { lead, other, range } = formatFigure(figure, units);
  const small = [...(other === '' ? [] : [other]), ...(figure.note ? [escaped(figure.note)] : [])];
  return { label: figure.label, value: lead, range: range === undefined ? undefined : `(${range})`, small };
}

/** A line a row, its first cell standing out; the columns' names are the field's. */
export const tableFields = (table: Table, count: number): readonly APIEmbedField[] =>
  fieldsOf(escapedTo(namesOf(table), limits.fieldName).trim() || 'Table', tableLines(table, count));

/** The same as one text, under its columns' names: there is more room for it where the answer itself stands. */
export function tableText(table: Table, count: number): string {
  const names = escapedTo(namesOf(table), limits.fieldName).trim();
  return [...(names === '' ? [] : [`*${names}*`]), ...tableLines(table, count)].join('\n');
}

const namesOf = ({ columns }: Table): string => columns.filter((column) => column.trim() !== '').join(' · ');

const tableLines = ({ rows }: Table, count: number): readonly string[] =>
  rows.slice(0, count).map(([first = '', ...cells]) => {
    const head = first.trim() === '' ? '' : `**${escapedTo(first, 300)}**`;
    const rest = cells.filter((cell) => cell.trim() !== '').join(' · ');
    return [head, rest === '' ? '' : escapedTo(rest, 700)].filter((part) => part !== '').join(' ') || '–';
  });
