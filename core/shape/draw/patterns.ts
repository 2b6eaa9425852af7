import type { UnitSystem } from '../../quantity/figure.ts';
import type { Drawing, Line, Point } from '../drawing.ts';
import type { Piece } from '../forms/piece.ts';

/** One piece flat, seen from outside, to be printed full size: its cut edges, folds, wires and dimensions. */
export function patternDrawing(piece: Piece, units: UnitSystem): Drawing {
  const { name, outline, holes, lines, from } = piece;
  const says = piece.says(units);
  const edges = [outline, ...holes].map(
    (edge): Line => ({ kind: 'line', name: from === 'mesh' ? 'cut' : 'edge', stroke: 'cut', points: closed(edge) }),
  );
  return {
    id: name.toLowerCase().replace(/[^a-z0-9]+/g, '-'),
    title: `${name.charAt(0).toUpperCase()}${name.slice(1)}, ${from === 'mesh' ? 'flat, seen from outside' : 'from above'}`,
    alt: `${says.charAt(0).toUpperCase()}${says.slice(1)}.`,
    shapes: [
      from === 'mesh'
        ? { kind: 'area', name: 'mesh', matter: 'mesh', outline, holes }
        : { kind: 'area', name: 'lid', matter: 'hot face', outline, holes },
      ...edges,
      ...lines,
    ],
    marks: piece.marks(units),
    fullSize: true,
  };
}

const closed = (outline: readonly Point[]): readonly Point[] => [...outline, ...outline.slice(0, 1)];
