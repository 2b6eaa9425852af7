import type { Card, Table } from '../../commands/card.ts';
import { formatFigure } from '../../core/quantity/format.ts';
import { columns } from './columns.ts';
import { type Look, paint, wrap } from './text.ts';

/**
 * Each figure as the lines it takes, so that a short answer can leave whole figures out; the first of a group brings
 * the group's heading.
 */
export function figureLines({ figures, units }: Card, look: Look): readonly (readonly string[])[] {
  if (figures.length === 0) return [];
  const rows = figures.map((figure) => {
    const { lead, other, range } = formatFigure(figure, units);
    return [figure.label, lead, range === undefined ? '' : `(${range})`, other, figure.note ?? ''];
  });
  const lines = columns(rows, { width: look.width, right: [1] }) ?? rows.map((row) => stacked(row, look));
  return lines.map((own, at) => {
    const group = figures[at]?.group;
    if (group === undefined || group === figures[at - 1]?.group) return own;
    return [...wrap(group, look.width).map((line) => paint('dim', line, look)), ...own];
  });
}

const stacked = ([label = '', ...rest]: readonly string[], { width }: Look): readonly string[] => [
  ...wrap(`${label}:`, width - 2).map((line) => `  ${line}`),
  ...wrap(rest.filter((cell) => cell !== '').join('  '), width - 4).map((line) => `    ${line}`),
];

/** The heading first, then each row as the lines it takes. */
export function tableLines({ columns: names, rows }: Table, look: Look): readonly (readonly string[])[] {
  const [head, ...body] = columns([names, ...rows], { width: look.width }) ?? [];
  if (head) return [head.map((line) => paint('dim', line, look)), ...body];
  return [
    [],
    ...rows.map((row) =>
      row.flatMap((cell, at) =>
        wrap(names[at] ? `${names[at]}: ${cell}` : cell, look.width - 4).map(
          (line, part) => `${at + part === 0 ? '  ' : '    '}${line}`,
        ),
      ),
    ),
  ];
}
