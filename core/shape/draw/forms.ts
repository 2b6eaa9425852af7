import type { UnitSystem } from '../../quantity/figure.ts';
import type { Drawing } from '../drawing.ts';
import type { Forms } from '../forms/forms.ts';
import { patternDrawing } from './patterns.ts';
import { rollDrawing } from './roll.ts';

/** One pattern a piece, full size, and where they lie on the roll; words lead with `units`. */
export const drawForms = (forms: Forms, units: UnitSystem): readonly Drawing[] => [
  ...forms.pieces.map((piece) => patternDrawing(piece, units)),
  rollDrawing(forms, units),
];
