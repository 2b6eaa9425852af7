/** Words of people and of the catalogue in Markdown: nothing in them is markup, and no line of theirs begins one. */
export const md = (text: string): string =>
  text
    .replace(/[\p{Cc}\p{Cf}]+/gu, ' ')
    .replace(/[\\`*_[\]<>|~]/g, '\\$&')
    .replace(/^(\s*\d*)([#+.)-])(?=\s|$)/, '$1\\$2')
    .trim();

/** As it stands, in a fence of its own kind. */
export const code = (text: string): string => {
  const longest = Math.max(0, ...(text.match(/`+/g) ?? []).map(({ length }) => length));
  const fence = '`'.repeat(longest + 1);
  const pad = longest > 0 ? ' ' : '';
  return `${fence}${pad}${text.replace(/[\p{Cc}\p{Cf}]+/gu, ' ')}${pad}${fence}`;
};

export const list = (items: readonly string[]): readonly string[] => items.map((item) => `- ${item}`);

export function table(head: readonly string[], rows: readonly (readonly string[])[]): readonly string[] {
  const row = (cells: readonly string[]) => `| ${head.map((_, at) => cells[at] ?? '').join(' | ')} |`;
  return [row(head), row(head.map(() => '---')), ...rows.map(row)];
}

/** Blocks with an empty line between them; empty ones are left out. */
export const blocks = (parts: readonly (readonly string[])[]): string =>
  `${parts
    .filter((part) => part.length > 0)
    .map((part) => part.join('\n'))
    .join('\n\n')}\n`;
