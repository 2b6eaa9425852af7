import type { UnitSystem } from '../../core/quantity/figure.ts';
import type { Drawing, LengthMark } from '../../core/shape/drawing.ts';
import { type Bounds, type Box, between, boundsOf, cornersOf, crosses, moved, type Px, type Segment } from './box.ts';
import { arranged, marksSvg, outlinesOf, pathOf, shapeLinesSvg } from './drawing.ts';
import { linesOf, sans } from './letters.ts';
import { laid, toPx } from './marks.ts';
import { element, escaped, named, short } from './svg.ts';
import { coloursOf } from './theme.ts';

export type Paper = 'A4' | 'letter';

export const paperOf = (units: UnitSystem): Paper => (units === 'US' ? 'letter' : 'A4');

const papers_mm: Readonly<Record<Paper, readonly [number, number]>> = { A4: [210, 297], letter: [215.9, 279.4] };
/** What no printer reaches. */
const margin_mm = 10;
/** Below the pattern: the check lengths and which sheet this is. */
const foot_mm = 16;
/** Of two sheets that lie side by side. */
const overlap_mm = 12;
const letter_mm = 4;
/** How far a dimension stands off its edge. */
const closest_m = 6e-3;
const cross_mm = 4;
const inch_mm = 25.4;
/** Of the words below the pattern. */
const footLetter_mm = 3.1;
/** Room for the map of the sheets, wide and tall. */
const map_mm = [24, 13] as const;

/** One sheet: its rank in the grid, and what of the drawing (mm, y down) it shows. */
interface Sheet {
  readonly row: number;
  readonly column: number;
  readonly shows: Bounds;
}

/**
 * A pattern at full size over as many sheets as it takes, row by row from the top left. Each carries its place, crosses
 * that lie on those of its neighbours, and lengths to be checked with a rule, since printers like to shrink pages.
 */
export function sheetSvgs(drawing: Drawing, { paper }: { paper: Paper }): readonly string[] {
  const units = paper === 'letter' ? 'US' : 'metric';
  const measure = { px_m: 1000, letter: letter_mm, units } as const;
  const close = drawnClose(drawing);
  const outlines = drawing.shapes.flatMap(outlinesOf).map((outline) => outline.map((point) => toPx(point, measure)));
  const lines = close.marks.flatMap((mark) => laid(mark, measure).strokes.flat());
  const body = boundsOf([...outlines.flat(), ...lines]);
  const upright = papers_mm[paper];
  const layouts = [upright, [upright[1], upright[0]] as const].map((size) => ({ size, sheets: sheetsFor(body, size) }));
  const { size, sheets } = layouts[0]!.sheets.length <= layouts[1]!.sheets.length ? layouts[0]! : layouts[1]!;
  const used = sheets.filter(({ shows }) => outlines.some((outline) => touches(outline, shows)));
  // Words go where one sheet has them whole, which is known only now.
  const fit = arranged(close, measure, seams(used));
  const colours = coloursOf('light');
  const pattern = `${shapeLinesSvg(drawing, measure, colours)}${marksSvg(fit, colours)}`;
  return used.map((sheet) => sheetSvg(drawing, sheet, { size, used, pattern }));
}

/** Words that no sheet has whole, or that lie on a cross; words that the sheet beside repeats in part. */
const cutWords = 5000;
const partlyRepeated = 300;

/** What it costs to set words at a place of a pattern that will be cut into sheets. */
function seams(used: readonly Sheet[]): (box: Box) => number {
  const lines = used.flatMap((sheet) => crossesOf(sheet, used)).flatMap(crossLines);
  return (box) => {
    const { left, top, right, bottom } = boundsOf(cornersOf(box));
    const inside = (w: Bounds) => left > w.left && right < w.right && top > w.top && bottom < w.bottom;
    const apart = (w: Bounds) => left > w.right || right < w.left || top > w.bottom || bottom < w.top;
    if (!used.some(({ shows }) => inside(shows)) || lines.some((line) => crosses(box, line))) return cutWords;
    return used.every(({ shows }) => inside(shows) || apart(shows)) ? 0 : partlyRepeated;
  };
}

/** On paper at full size there is room beside an edge, inside the pattern, and every sheet less is a sheet saved. */
function drawnClose(drawing: Drawing): Drawing {
  const close = (value: number, most: number) => Math.sign(value) * Math.min(Math.abs(value), most);
  const body = boundsOf(drawing.shapes.flatMap(outlinesOf).flat());
  const marks = drawing.marks.map((mark): Drawing['marks'][number] => {
    if (mark.kind === 'angle') return mark;
    if (mark.kind === 'length') {
      const off_m = close(mark.off_m, closest_m);
      return { ...mark, off_m: leaves(body, mark, off_m) ? -off_m : off_m };
    }
    const [x, y] = mark.at;
    return {
      ...mark,
      words: [x + close(mark.words[0] - x, 2 * closest_m), y + close(mark.words[1] - y, 2 * closest_m)],
    };
  });
  return { ...drawing, marks };
}

/** Whether the middle of a dimension line lies outside everything that is cut. */
function leaves(body: Bounds, { from, to }: LengthMark, off_m: number): boolean {
  const turn = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const [x, y] = moved(between(from, to, 0.5), turn, 0, off_m);
  return x < body.left || x > body.right || y < body.top || y > body.bottom;
}

function sheetsFor(body: Bounds, [width, height]: readonly [number, number]): readonly Sheet[] {
  const window: Px = [width - 2 * margin_mm, height - 2 * margin_mm - foot_mm];
  const count = (span: number, view: number) => Math.max(1, Math.ceil((span - overlap_mm) / (view - overlap_mm)));
  const [wide, tall] = [body.right - body.left, body.bottom - body.top];
  const [columns, rows] = [count(wide, window[0]), count(tall, window[1])];
  // In the middle of its sheets, so that no edge of the pattern lies on an edge of the paper.
  const before = (span: number, sheets: number, view: number) => (sheets * (view - overlap_mm) + overlap_mm - span) / 2;
  const [left0, top0] = [body.left - before(wide, columns, window[0]), body.top - before(tall, rows, window[1])];
  return Array.from({ length: rows * columns }, (_, at) => {
    const [row, column] = [Math.floor(at / columns), at % columns];
    const left = left0 + column * (window[0] - overlap_mm);
    const top = top0 + row * (window[1] - overlap_mm);
    return { row, column, shows: { left, top, right: left + window[0], bottom: top + window[1] } };
  });
}

/** Whether any edge of the outline lies in the window: a sheet without one would be a blank. */
function touches(outline: readonly Px[], { left, top, right, bottom }: Bounds): boolean {
  return outline.some((to, at) => {
    const from = outline[at - 1] ?? to;
    const [x, y] = [
      [from[0], to[0]],
      [from[1], to[1]],
    ].map((ends) => [Math.min(...ends), Math.max(...ends)] as const);
    return x![1] >= left && x![0] <= right && y![1] >= top && y![0] <= bottom;
  });
}

/** Crosses stand in the middle of an overlap, a fifth and four fifths along it, so both sheets show the same ones. */
function crossesOf({ row, column, shows }: Sheet, used: readonly Sheet[]): readonly Px[] {
  const has = (r: number, c: number) => used.some((sheet) => sheet.row === r && sheet.column === c);
  const { left, top, right, bottom } = shows;
  const half = overlap_mm / 2;
  const across = [...(has(row, column - 1) ? [left + half] : []), ...(has(row, column + 1) ? [right - half] : [])];
  const down = [...(has(row - 1, column) ? [top + half] : []), ...(has(row + 1, column) ? [bottom - half] : [])];
  return [
    ...across.flatMap((x) => [0.2, 0.8].map((share): Px => [x, top + share * (bottom - top)])),
    ...down.flatMap((y) => [0.2, 0.8].map((share): Px => [left + share * (right - left), y])),
  ];
}

function sheetSvg(
  { title, alt }: Drawing,
  sheet: Sheet,
  { size: [width, height], used, pattern }: { size: Px; used: readonly Sheet[]; pattern: string },
): string {
  const { row, column, shows } = sheet;
  const [w, h] = [shows.right - shows.left, shows.bottom - shows.top];
  const shift = `translate(${short(margin_mm - shows.left)} ${short(margin_mm - shows.top)})`;
  const crossPath = pathOf(crossesOf(sheet, used).flatMap(crossLines), '');
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}mm" height="${height}mm" role="img" font-family="${sans}, sans-serif" font-size="${footLetter_mm}">`,
    named(`${title}, row ${row + 1}, column ${column + 1}`, alt),
    element(
      'defs',
      {},
      element('clipPath', { id: 'window' }, element('rect', { x: margin_mm, y: margin_mm, width: w, height: h })),
    ),
    element('rect', { width, height, fill: '#fff' }),
    element('g', { 'clip-path': 'url(#window)' }, element('g', { transform: shift }, pattern)),
    element('rect', {
      x: margin_mm,
      y: margin_mm,
      width: w,
      height: h,
      fill: 'none',
      stroke: '#999',
      'stroke-width': 0.15,
      'stroke-dasharray': '2 2',
    }),
    element(
      'g',
      { transform: shift },
      element('path', { d: crossPath, stroke: '#000', 'stroke-width': 0.25, fill: 'none' }),
    ),
    footSvg(title, sheet, { top: height - margin_mm - foot_mm, width, used }),
    '</svg>\n',
  ].join('\n');
}

const crossLines = ([x, y]: Px): readonly Segment[] => [
  [
    [x - cross_mm, y],
    [x + cross_mm, y],
  ],
  [
    [x, y - cross_mm],
    [x, y + cross_mm],
  ],
];

/** From the left: lengths to check, which sheet of what this is, a map of the sheets. */
function footSvg(
  title: string,
  { row, column }: Sheet,
  { top, width, used }: { top: number; width: number; used: readonly Sheet[] },
): string {
  const map = mapSvg({ row, column }, used, { right: width - margin_mm, top: top + 2 });
  const left = margin_mm + 4 * inch_mm + 5;
  const at = used.findIndex((sheet) => sheet.row === row && sheet.column === column);
  const lines = [
    ...linesOf(title, footLetter_mm, map.left - 3 - left),
    `row ${row + 1}, column ${column + 1}: sheet ${at + 1} of ${used.length}`,
    'print at 100 %',
  ];
  const words = lines.map((line, n) =>
    element('text', { x: left, y: top + 4.6 + n * 1.2 * footLetter_mm }, escaped(line)),
  );
  return checkLengths(top) + words.join('') + map.svg;
}

/** The used sheets as they lie beside one another, this one filled. */
function mapSvg(
  here: Pick<Sheet, 'row' | 'column'>,
  used: readonly Sheet[],
  { right, top }: { right: number; top: number },
): { readonly svg: string; readonly left: number } {
  const most = (of: (sheet: Sheet) => number) => Math.max(...used.map(of)) + 1;
  const [columns, rows] = [most(({ column }) => column), most((sheet) => sheet.row)];
  const [view] = used.map(({ shows }) => [shows.right - shows.left, shows.bottom - shows.top] as const);
  const share = Math.min(map_mm[0] / (columns * view![0]), map_mm[1] / (rows * view![1]));
  const [wide, tall] = [share * view![0], share * view![1]];
  const left = right - columns * wide;
  const cells = used.map(({ row, column }) =>
    element('rect', {
      x: left + column * wide,
      y: top + row * tall,
      width: wide,
      height: tall,
      fill: row === here.row && column === here.column ? '#000' : '#fff',
      stroke: '#000',
      'stroke-width': 0.2,
    }),
  );
  return { svg: cells.join(''), left };
}

/** 100 mm and 4 in, to be held against a rule. */
function checkLengths(top: number): string {
  const bar = (at: number, length: number, text: string) =>
    element('path', {
      d: `M${margin_mm} ${short(at - 1.5)}v3M${margin_mm} ${short(at)}h${length}M${margin_mm + length} ${short(at - 1.5)}v3`,
      stroke: '#000',
      'stroke-width': 0.3,
      fill: 'none',
      'data-length': text,
    }) + element('text', { x: margin_mm + 2, y: at - 0.9 }, text);
  return bar(top + 6.5, 100, '100 mm') + bar(top + 14, 4 * inch_mm, '4 in');
}
