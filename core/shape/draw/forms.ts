import type { Drawing } from '../drawing.ts';
import type { Forms } from '../forms/forms.ts';
import { patternDrawing } from './patterns.ts';
import { rollDrawing } from './roll.ts';

/** One pattern a piece, full size, and where they lie on the roll. */
export const drawForms = (forms: Forms): readonly Drawing[] => [
  ...forms.pieces.map(patternDrawing),
  rollDrawing(forms),
];
