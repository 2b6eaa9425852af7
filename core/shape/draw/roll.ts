import type { UnitSystem } from '../../quantity/figure.ts';
import { formatTape } from '../../quantity/tape.ts';
import type { Area, Callout, Drawing, Point } from '../drawing.ts';
import type { Forms } from '../forms/forms.ts';
import { level, rowOf, upright } from '../forms/marks.ts';
import { boxOf, rectangle } from '../forms/outline.ts';
import { placed } from '../layout/roll.ts';

/** A roll longer than this many widths is drawn upright, where the names beside it have room. */
const LONG = 1.5;

/** Where every piece lies on the mesh to buy: the roll runs to the right, or upward where it is long. m. */
export function rollDrawing({ pieces, mesh }: Pick<Forms, 'pieces' | 'mesh'>, units: UnitSystem): Drawing {
  const { length_m, width_m, waste, placements } = mesh;
  const tall = length_m > LONG * width_m;
  const turned = ([x, y]: Point): Point => (tall ? [width_m - y, x] : [x, y]);
  const sheet = rectangle({ left: 0, right: length_m, bottom: 0, top: width_m }).map(turned);
  const box = boxOf(sheet);
  const row = rowOf(box);
  const areas: Area[] = [{ kind: 'area', name: 'left over', matter: 'roll', outline: sheet }];
  const names: Callout[] = [];
  for (const placement of placements) {
    const piece = pieces.find(({ name }) => name === placement.name);
    if (piece === undefined) continue;
    const put = (points: readonly Point[]) => placed(points, piece.outline, placement).map(turned);
    areas.push({
      kind: 'area',
      name: 'pieces',
      matter: 'mesh',
      outline: put(piece.outline),
      holes: piece.holes.map(put),
    });
    const [x, y] = placement.at;
    // Off the middle, where most holes are.
    const off = piece.holes.length > 0 ? 0.25 : 0.5;
    const at = turned([x + placement.along_m * 0.5, y + placement.across_m * off]);
    names.push({ kind: 'callout', text: shortly(piece.name), at, words: tall ? [box.right + row, at[1]] : at });
  }
  return {
    id: 'roll',
    title: 'Where the pieces lie on the mesh',
    alt: `${placements.length} pieces cut from ${formatTape(length_m, units)} of mesh ${formatTape(width_m, units)} wide; ${(100 * waste).toFixed(0)} % is left over.`,
    shapes: areas,
    marks: [
      level(tall ? 'roll' : 'mesh to buy', [0, box.right], 0, -row),
      upright(tall ? 'mesh to buy' : 'roll', [0, box.top], 0, -row),
      ...names,
    ],
  };
}

/** `outer form, panel 2 of 5` → `outer 2 of 5`: a long roll is drawn small, its names are not. */
const shortly = (name: string): string => name.replace(' form', '').replace(/, (panel|strip)/, '');
