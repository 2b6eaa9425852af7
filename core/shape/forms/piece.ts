import type { UnitSystem } from '../../quantity/figure.ts';
import type { Drawing, Line, Point } from '../drawing.ts';
import { areaWithin_m2 } from './outline.ts';

export type PieceKind = 'rectangle' | 'sector' | 'disk' | 'strip' | 'ring';

/** One flat thing to cut or to bend wire on, in its own plane, m: y up the form, x to the right as seen from outside. */
export interface Piece {
  /** `inner form`, `outer form, panel 2 of 3`: unique among the pieces of one furnace. */
  readonly name: string;
  readonly kind: PieceKind;
  /** Cut from the roll, or a pattern on which wire is bent. */
  readonly from: 'mesh' | 'wire';
  readonly outline: readonly Point[];
  readonly holes: readonly (readonly Point[])[];
  /** Folds, seams, levels, wires. */
  readonly lines: readonly Line[];
  /** Its dimensions; lengths within words lead with the reader's units. Made only for the pieces that are drawn. */
  readonly marks: (units: UnitSystem) => Drawing['marks'];
  /** What it is and how large, in words. */
  readonly says: (units: UnitSystem) => string;
}

/** Mesh that stays in the piece, m²: outline less holes. */
export const pieceArea_m2 = ({ outline, holes }: Pick<Piece, 'outline' | 'holes'>): number =>
  areaWithin_m2(outline) - holes.reduce((sum, hole) => sum + areaWithin_m2(hole), 0);
