import { styleText } from 'node:util';

export interface Look {
  readonly color: boolean;
  readonly width: number;
  /** At most this many lines, where an answer must be short. */
  readonly maxLines?: number;
}

type Style = Parameters<typeof styleText>[0];

export const paint = (style: Style, text: string, { color }: Pick<Look, 'color'>): string =>
  color && text !== '' ? styleText(style, text, { validateStream: false }) : text;

/** What was typed is echoed, so nothing in it may steer the terminal. */
export const plain = (text: string): string => text.replace(/[\p{Cc}\p{Cf}]/gu, ' ');

export const lengthOf = (text: string): number => [...text].length;

/** Breaks at spaces; a word longer than the line is cut rather than left to run over. */
export function wrap(text: string, width: number): readonly string[] {
  const most = Math.max(width, 10);
  const lines: string[] = [];
  let line = '';
  for (const word of plain(text).split(' ').flatMap(cutTo(most))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && lengthOf(longer) > most) {
      lines.push(line.trimEnd());
      line = word;
    } else line = longer;
  }
  return [...lines, line.trimEnd()];
}

const cutTo = (most: number) => (word: string) => {
  const letters = [...word];
  const parts = [letters.slice(0, most).join('')];
  for (let at = most; at < letters.length; at += most) parts.push(letters.slice(at, at + most).join(''));
  return parts;
};

const labelWidth = 16;
const narrow = 56;

/** A label at the left and wrapped items beside it; below it where the terminal is narrow. */
export function section(
  label: string,
  items: readonly string[],
  look: Look,
  style?: (at: number) => Style | undefined,
) {
  const stacked = look.width < narrow;
  const indent = stacked ? 2 : labelWidth;
  const body = items.flatMap((item, at) => {
    const wanted = style?.(at);
    return wrap(item, look.width - indent).map((line) => (wanted ? paint(wanted, line, look) : line));
  });
  const head = paint('cyan', label, look);
  if (stacked) return [head, ...body.map((line) => `${' '.repeat(indent)}${line}`)];
  const gap = ' '.repeat(labelWidth - lengthOf(label));
  return body.map((line, at) => (at === 0 ? head + gap : ' '.repeat(labelWidth)) + line);
}
