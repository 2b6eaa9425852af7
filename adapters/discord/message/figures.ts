import type { APIEmbedField } from 'discord.js';
import type { Card, Table } from '../../../commands/card.ts';
import type { Figure } from '../../../core/quantity/figure.ts';
import { formatFigure } from '../../../core/quantity/format.ts';
import { escaped, escapedTo } from '../escape.ts';
import { limits } from '../limits.ts';
import { fieldsOf } from './chunks.ts';

/** Side by side, three abreast; more than these stand in one field below them, a line each. */
const abreast = 9;

export function figureFields({ figures, units }: Pick<Card, 'figures' | 'units'>, count: number) {
  const shown = figures.slice(0, count);
  const side = shown.slice(0, abreast).map((figure): APIEmbedField => {
    const { label, value, range, small } = wordsOf(figure, units);
    const below = escaped([...(range === undefined ? [] : [range]), ...small].join('\n'));
    const rest = below === '' || below.length > 800 ? '' : `\n${below}`;
    return {
      name: escapedTo(label, limits.fieldName).trim() || '–',
      value: `**${escapedTo(value, 200)}**${rest}`,
      inline: true,
    };
  });
  const below = shown.slice(abreast).map((figure) => {
    const { label, value, range, small } = wordsOf(figure, units);
    const said = [`${label}: ${range === undefined ? value : `${value} ${range}`}`, ...small];
    return escapedTo(said.join(' · '), limits.fieldValue);
  });
  return [...side, ...fieldsOf('More numbers', below)];
}

function wordsOf(figure: Figure, units: Card['units']) {
  const { lead, other, range } = formatFigure(figure, units);
  const small = [other, figure.note ?? ''].filter((one) => one !== '');
  return { label: figure.label, value: lead, range: range === undefined ? undefined : `(${range})`, small };
}

/** A line a row, its first cell standing out; the columns' names are the field's. */
export function tableFields({ columns, rows }: Table, count: number): readonly APIEmbedField[] {
  const lines = rows.slice(0, count).map(([first = '', ...cells]) => {
    const head = first.trim() === '' ? '' : `**${escapedTo(first, 300)}**`;
    const rest = cells.filter((cell) => cell.trim() !== '').join(' · ');
    return [head, rest === '' ? '' : escapedTo(rest, 700)].filter((part) => part !== '').join(' ') || '–';
  });
  const name = columns.filter((column) => column.trim() !== '').join(' · ');
  return fieldsOf(escapedTo(name, limits.fieldName).trim() || 'Table', lines);
}
