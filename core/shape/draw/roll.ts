import type { UnitSystem } from '../../quantity/figure.ts';
import { formatTape } from '../../quantity/tape.ts';
import type { Area, Callout, Drawing, Line, Point } from '../drawing.ts';
import type { Forms } from '../forms/forms.ts';
import { level, rowOf, upright } from '../forms/marks.ts';
import { type Box, boxOf, rectangle } from '../forms/outline.ts';
import { placed } from '../layout/roll.ts';

/** A roll longer than this many widths is drawn upright, where the names beside it have room. */
const LONG = 1.5;

/**
 * Where every piece lies on the mesh to buy: the roll runs to the right, or upward where it is long. What each piece
 * begins at is told from the left edge and from the lower one, both running, so that no error adds up. m.
 */
export function rollDrawing({ pieces, mesh }: Pick<Forms, 'pieces' | 'mesh'>, units: UnitSystem): Drawing {
  const { length_m, width_m, waste, placements } = mesh;
  const tall = length_m > LONG * width_m;
  const turned = ([x, y]: Point): Point => (tall ? [width_m - y, x] : [x, y]);
  const sheet = rectangle({ left: 0, right: length_m, bottom: 0, top: width_m }).map(turned);
  const box = boxOf(sheet);
  const row = rowOf(box);
  const areas: Area[] = [{ kind: 'area', name: 'left over', matter: 'roll', outline: sheet }];
  const names: Callout[] = [];
  const boxes: Box[] = [];
  for (const placement of placements) {
    const piece = pieces.find(({ name }) => name === placement.name);
    if (piece === undefined) continue;
    const put = (points: readonly Point[]) => placed(points, piece.outline, placement).map(turned);
    const outline = put(piece.outline);
    areas.push({ kind: 'area', name: 'pieces', matter: 'mesh', outline, holes: piece.holes.map(put) });
    boxes.push(boxOf(outline));
    const [x, y] = placement.at;
    // Off the middle, where most holes are.
    const off = piece.holes.length > 0 ? 0.25 : 0.5;
    const at = turned([x + placement.along_m * 0.5, y + placement.across_m * off]);
    names.push(beside(shortly(piece.name), at, tall ? [box.right + row, at[1]] : at));
  }
  const starts = startsOf(boxes, box, units);
  return {
    id: 'roll',
    title: 'Where the pieces lie on the mesh',
    alt: `${placements.length} pieces cut from ${formatTape(length_m, units)} of mesh ${formatTape(width_m, units)} wide; ${(100 * waste).toFixed(0)} % is left over.`,
    shapes: [...areas, ...starts.lines],
    marks: [
      level(tall ? 'roll' : 'mesh to buy', [0, box.right], box.top, box.top + row),
      // Beside an upright roll stand the names: its length is told where the running lengths are.
      tall
        ? beside(`mesh to buy, ${formatTape(length_m, units)}`, [0, box.top], [-row, box.top])
        : upright('roll', [0, box.top], box.right, box.right + row),
      ...starts.marks,
      ...names,
    ],
  };
}

/** `outer form, panel 2 of 5` → `outer 2 of 5`: a long roll is drawn small, its names are not. */
const shortly = (name: string): string => name.replace(' form', '').replace(/, (panel|strip)/, '');

const beside = (text: string, at: Point, words: Point): Callout => ({ kind: 'callout', text, at, words });

/** What no tape tells apart, m. */
const HAIR_m = 5e-4;

/** Every distance at which a piece begins, once: a line from the edge it is measured along to the furthest such piece. */
function startsOf(
  boxes: readonly Box[],
  sheet: Box,
  units: UnitSystem,
): { readonly lines: readonly Line[]; readonly marks: readonly Callout[] } {
  const row = rowOf(sheet);
  const rows = distinct(boxes.map(({ bottom, left }) => [bottom, left]));
  const columns = distinct(boxes.map(({ left, bottom }) => [left, bottom]));
  const line = (points: readonly Point[]): Line => ({ kind: 'line', name: '', stroke: 'hidden', points });
  const start = (start_m: number, at: Point, words: Point) => beside(`at ${formatTape(start_m, units)}`, at, words);
  return {
    lines: [
      ...rows.map(([y, x]) =>
        line([
          [0, y],
          [x, y],
        ]),
      ),
      ...columns.map(([x, y]) =>
        line([
          [x, 0],
          [x, y],
        ]),
      ),
    ],
    marks: [...rows.map(([y]) => start(y, [0, y], [-row, y])), ...columns.map(([x]) => start(x, [x, 0], [x, -row]))],
  };
}

/** By their first number, those a hair apart as one with the largest second; not those at the edge. */
function distinct(pairs: readonly Point[]): readonly Point[] {
  const found: Point[] = [];
  for (const [start, reach] of pairs.toSorted(([a], [b]) => a - b)) {
    const last = found.at(-1);
    if (last && start - last[0] < HAIR_m) found[found.length - 1] = [last[0], Math.max(last[1], reach)];
    else if (start > HAIR_m) found.push([start, reach]);
  }
  return found;
}
