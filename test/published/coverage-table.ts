import { type Covered, coverageOf, isBounded, isInside, type Share } from './coverage.ts';
import { type Cause, causes } from './coverage-why.ts';
import { markdownTable, shown } from './markdown-table.ts';

const HEADS = ['Subject', 'Property', 'Our 95 %', 'Outside', 'Inside', 'Independent', 'Source', 'Why not'] as const;
const LEFT = new Set<string>(['Subject', 'Property', 'Inside', 'Independent', 'Source', 'Why not']);

const percent = ({ inside, of }: Share): string => `${Math.round((100 * inside) / of)} %`;

/** How often what others published lies in our range, why it does not where it does not, and every row. */
export function coverageMarkdown(rows: readonly Covered[]): readonly string[] {
  if (rows.length === 0) return [];
  const { all, independent } = coverageOf(rows);
  const missed = rows.filter((row) => !isInside(row));
  const body = rows
    .toSorted((a, b) => (keyOf(a) < keyOf(b) ? -1 : 1))
    .map((row) => [
      row.subject,
      row.quantity,
      `${shown(row.low)} to ${shown(row.high)} ${row.unit}`,
      `${shown(row.theirs)} ${row.unit}`,
      isInside(row) ? 'yes' : 'no',
      row.independent ? 'yes' : 'no',
      row.source,
      row.outside?.says ?? '',
    ]);
  return [
    '## How often a published value lies in our 95 %',
    '',
    `Of ${all.of} measured or tabulated values that have a number of ours beside them, ${all.inside} (${percent(all)}) lie in our central 95 %; of the ${independent.of} for which our number does not come from that same table, is not checked against it in the catalogue, and is not from memory as theirs is, ${independent.inside} (${percent(independent)}).`,
    '',
    'Of each table every row is here, as far as the table was seen, that names something of ours in the state and at a density that ours has; volumes that vessels are sold as are left out, for they are not volumes to the brim. A value is inside where what its last printed digit may stand for is. No range of ours was widened for it.',
    '',
    `A range of 95 % that held what it claims would hold about that share; ours hold fewer. ${missed.filter(isBounded).length} of the ${missed.length} outside lie within the bounds that the datum itself states, beyond its 95 %. By reason:`,
    '',
    ...(Object.keys(causes) as Cause[]).flatMap((cause) => {
      const of = missed.filter(({ outside }) => outside?.cause === cause);
      return of.length === 0
        ? []
        : `- ${of.length}: ${causes[cause]} (${[...new Set(of.map(({ subject }) => subject))].sort().join(', ')}).`;
    }),
    '',
    ...markdownTable(HEADS, LEFT, body),
    '',
  ];
}

const keyOf = ({ subject, quantity, source }: Covered): string => `${subject}|${quantity}|${source}`;
