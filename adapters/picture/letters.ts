/** Advance widths of DejaVu Sans in thousandths of an em, from its hmtx table: printable ASCII, then a few signs. */
const ascii = [
  318, 401, 460, 838, 636, 950, 780, 275, 390, 390, 500, 838, 318, 361, 318, 337, 636, 636, 636, 636, 636, 636, 636,
  636, 636, 636, 337, 337, 838, 838, 838, 531, 1000, 684, 686, 698, 770, 632, 575, 775, 752, 295, 295, 656, 557, 863,
  748, 787, 603, 787, 695, 635, 611, 732, 684, 989, 685, 611, 685, 390, 337, 390, 838, 500, 500, 613, 635, 550, 635,
  615, 352, 635, 634, 278, 278, 579, 278, 974, 634, 612, 635, 635, 411, 521, 392, 634, 592, 818, 592, 592, 525, 636,
  337, 636, 838,
];
const signs: Readonly<Record<string, number>> = {
  '\u00a0': 318,
  '·': 318,
  '’': 318,
  '°': 500,
  '–': 500,
  '−': 838,
  '×': 838,
};
/** Wide enough for every other letter of a label. */
const other = 1000;
/** Bold is at most this much wider, over a line of words. */
const bolder = 1.13;

export const sans = 'DejaVu Sans';
export const mono = 'DejaVu Sans Mono';

/** Width of one line in the same unit as `size`. */
export function widthOf(text: string, size: number, { bold = false }: { bold?: boolean } = {}): number {
  let width = 0;
  for (const letter of text) width += ascii[letter.charCodeAt(0) - 32] ?? signs[letter] ?? other;
  return (width / 1000) * size * (bold ? bolder : 1);
}

/** Breaks at spaces into lines no wider than `most`; a word that is wider stands alone. */
export function linesOf(text: string, size: number, most: number, look: { bold?: boolean } = {}): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && widthOf(longer, size, look) <= most) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
