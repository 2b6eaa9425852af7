import type { UnitSystem } from '../../core/quantity/figure.ts';
import type { Drawing, LengthMark } from '../../core/shape/drawing.ts';
import { type Bounds, between, boundsOf, moved, type Px, type Segment } from './box.ts';
import { arranged, marksSvg, outlinesOf, pathOf, shapeLinesSvg } from './drawing.ts';
import { sans } from './letters.ts';
import { toPx } from './marks.ts';
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
  const fit = arranged(drawnClose(drawing), { px_m: 1000, letter: letter_mm, units });
  const outlines = drawing.shapes
    .flatMap(outlinesOf)
    .map((outline) => outline.map((point) => toPx(point, fit.measure)));
  const upright = papers_mm[paper];
  const layouts = [upright, [upright[1], upright[0]] as const].map((size) => ({
    size,
    sheets: sheetsFor(fit.bounds, size),
  }));
  const { size, sheets } = layouts[0]!.sheets.length <= layouts[1]!.sheets.length ? layouts[0]! : layouts[1]!;
  const used = sheets.filter(({ shows }) => outlines.some((outline) => touches(outline, shows)));
  const colours = coloursOf('light');
  const pattern = `${shapeLinesSvg(drawing, fit.measure, colours)}${marksSvg(fit, colours)}`;
  return used.map((sheet, at) =>
    sheetSvg(drawing, sheet, { size, sheets, pattern, of: `${at + 1} of ${used.length}` }),
  );
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

function sheetSvg(
  { title, alt }: Drawing,
  { row, column, shows }: Sheet,
  {
    size: [width, height],
    sheets,
    pattern,
    of,
  }: { size: readonly [number, number]; sheets: readonly Sheet[]; pattern: string; of: string },
): string {
  const [w, h] = [shows.right - shows.left, shows.bottom - shows.top];
  const [x, y] = [margin_mm - shows.left, margin_mm - shows.top];
  const has = (r: number, c: number) => sheets.some((sheet) => sheet.row === r && sheet.column === c);
  const half = overlap_mm / 2;
  const across = [...(has(row, column - 1) ? [half] : []), ...(has(row, column + 1) ? [w - half] : [])];
  const down = [...(has(row - 1, column) ? [half] : []), ...(has(row + 1, column) ? [h - half] : [])];
  // Crosses stand in the middle of an overlap, a fifth and four fifths along it, so both sheets show the same ones.
  const crosses = [
    ...across.flatMap((cx) => [0.2, 0.8].map((share): Px => [cx, share * h])),
    ...down.flatMap((cy) => [0.2, 0.8].map((share): Px => [share * w, cy])),
  ].map(([cx, cy]): Px => [margin_mm + cx, margin_mm + cy]);
  const place = `row ${row + 1}, column ${column + 1}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}mm" height="${height}mm" role="img" font-family="${sans}, sans-serif" font-size="3.5">`,
    named(`${title}, ${place}`, alt),
    element(
      'defs',
      {},
      element('clipPath', { id: 'window' }, element('rect', { x: margin_mm, y: margin_mm, width: w, height: h })),
    ),
    element('rect', { width, height, fill: '#fff' }),
    element(
      'g',
      { 'clip-path': 'url(#window)' },
      element('g', { transform: `translate(${short(x)} ${short(y)})` }, pattern),
    ),
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
    element('path', { d: pathOf(crosses.flatMap(crossLines), ''), stroke: '#000', 'stroke-width': 0.25, fill: 'none' }),
    checkLengths(height - margin_mm - foot_mm / 2 + 1),
    element(
      'text',
      { x: width - margin_mm, y: height - margin_mm - 6, 'text-anchor': 'end' },
      escaped(`${title}: ${place}`),
    ),
    element(
      'text',
      { x: width - margin_mm, y: height - margin_mm - 1, 'text-anchor': 'end' },
      escaped(`sheet ${of} · print at 100 %`),
    ),
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

/** 100 mm and 4 in from one end, to be held against a rule. */
function checkLengths(y: number): string {
  const from = margin_mm;
  const bar = (at: number, length: number, text: string) =>
    element('path', {
      d: `M${from} ${at - 1.5}v3M${from} ${at}h${length}M${from + length} ${at - 1.5}v3`,
      stroke: '#000',
      'stroke-width': 0.3,
      fill: 'none',
      'data-length': text,
    }) + element('text', { x: from + 4 * inch_mm + 2, y: at + 1.2 }, text);
  return bar(y, 100, '100 mm') + bar(y + 5, 4 * inch_mm, '4 in');
}
