/** A table as lines, padded as the formatter pads it; columns in `left` are set left, all others right. */
export function markdownTable(
  heads: readonly string[],
  left: ReadonlySet<string>,
  body: readonly (readonly string[])[],
): readonly string[] {
  const cells = body.map((row) => row.map((cell) => cell.trim().replaceAll('|', '\\|')));
  const widths = heads.map((head, at) => Math.max(...[head, ...cells.map((row) => row[at]!)].map(widthOf)));
  const padded = (row: readonly string[]) =>
    `| ${row.map((cell, at) => pad(cell, widths[at]!, left.has(heads[at]!))).join(' | ')} |`;
  const rule = heads.map((head, at) => (left.has(head) ? '-'.repeat(widths[at]!) : `${'-'.repeat(widths[at]! - 1)}:`));
  return [padded(heads), padded(rule), ...cells.map(padded)];
}

/** Four digits tell all that a comparison can. */
export const shown = (value: number): string => String(Number(value.toPrecision(4)));

const widthOf = (cell: string): number => [...cell].length;

function pad(cell: string, width: number, left: boolean): string {
  const space = ' '.repeat(width - widthOf(cell));
  return left ? cell + space : space + cell;
}
