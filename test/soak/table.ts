/** Rows as a table of Markdown, the first is the head; as wide as Biome wants it. */
export function table(lines: readonly (readonly string[])[]): string {
  const widths = (lines[0] ?? []).map((_, at) => Math.max(...lines.map((cells) => cells[at]?.length ?? 0)));
  const [head = '', ...body] = lines.map(
    (cells) => `| ${cells.map((cell, at) => cell.padEnd(widths[at] ?? 0)).join(' | ')} |`,
  );
  return [head, `| ${widths.map((width) => '-'.repeat(width)).join(' | ')} |`, ...body].join('\n');
}
