import type { Area, Callout, Drawing } from '../drawing.ts';
import type { Forms } from '../forms/forms.ts';
import { level, rowOf, upright } from '../forms/marks.ts';
import { boxOf, rectangle } from '../forms/outline.ts';
import { placed } from '../layout/roll.ts';
import { size } from './words.ts';

/** Where every piece lies on the mesh to buy: the roll runs to the right. m. */
export function rollDrawing({ pieces, mesh }: Pick<Forms, 'pieces' | 'mesh'>): Drawing {
  const { length_m, width_m, waste, placements } = mesh;
  const sheet = rectangle({ left: 0, right: length_m, bottom: 0, top: width_m });
  const row = rowOf(boxOf(sheet));
  const areas: Area[] = [{ kind: 'area', name: 'left over', matter: 'roll', outline: sheet }];
  const names: Callout[] = [];
  for (const placement of placements) {
    const piece = pieces.find(({ name }) => name === placement.name);
    if (piece === undefined) continue;
    const put = (points: Area['outline']) => placed(points, piece.outline, placement);
    areas.push({
      kind: 'area',
      name: 'pieces',
      matter: 'mesh',
      outline: put(piece.outline),
      holes: piece.holes.map(put),
    });
    const [x, y] = placement.at;
    // Off the middle, where most holes are.
    const at = [x + placement.along_m * 0.5, y + placement.across_m * (piece.holes.length > 0 ? 0.25 : 0.5)] as const;
    names.push({ kind: 'callout', text: shortly(piece.name), at, words: at });
  }
  return {
    id: 'roll',
    title: 'Where the pieces lie on the mesh',
    alt: `${placements.length} pieces cut from ${size(length_m)} of mesh ${size(width_m)} wide; ${(100 * waste).toFixed(0)} % is left over.`,
    shapes: areas,
    marks: [level('mesh to buy', [0, length_m], 0, -row), upright('roll', [0, width_m], 0, -row), ...names],
  };
}

/** `outer form, panel 2 of 5` → `outer 2 of 5`: a long roll is drawn small, its names are not. */
const shortly = (name: string): string => name.replace(' form', '').replace(/, (panel|strip)/, '');
