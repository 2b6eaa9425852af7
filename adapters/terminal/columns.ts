import { lengthOf, plain, wrap } from './text.ts';

const gap = '   ';
const leastForLast = 16;

/** Rows in aligned columns, the last one wrapped. Undefined where they do not fit the width. */
export function columns(
  rows: readonly (readonly string[])[],
  { width, right = [], indent = 2 }: { width: number; right?: readonly number[]; indent?: number },
): readonly (readonly string[])[] | undefined {
  const clean = rows.map((row) => row.map(plain));
  const used = usedColumns(clean);
  const sizes = used.map((column) => Math.max(...clean.map((row) => lengthOf(row[column] ?? ''))));
  const before = sizes.slice(0, -1).reduce((sum, size) => sum + size + gap.length, indent);
  const last = Math.min(sizes.at(-1) ?? 0, width - before);
  if (last < Math.min(sizes.at(-1) ?? 0, leastForLast)) return undefined;
  return clean.map((row) => {
    const cells = used.slice(0, -1).map((column, at) => pad(row[column] ?? '', sizes[at] ?? 0, right.includes(column)));
    const [first = '', ...more] = wrap(row[used.at(-1) ?? 0] ?? '', last);
    const lead = ' '.repeat(indent) + cells.map((cell) => cell + gap).join('');
    const aligned = used.length > 0 && right.includes(used.at(-1) ?? -1) ? pad(first, last, true) : first;
    return [(lead + aligned).trimEnd(), ...more.map((line) => ' '.repeat(before) + line)];
  });
}

/** Columns that are empty in every row take no room. */
function usedColumns(rows: readonly (readonly string[])[]): readonly number[] {
  const count = Math.max(0, ...rows.map((row) => row.length));
  return Array.from({ length: count }, (_, column) => column).filter((column) =>
    rows.some((row) => (row[column] ?? '') !== ''),
  );
}

const pad = (text: string, size: number, right: boolean): string => {
  const fill = ' '.repeat(Math.max(0, size - lengthOf(text)));
  return right ? fill + text : text + fill;
};
