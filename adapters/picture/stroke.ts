import type { Line } from '../../core/shape/drawing.ts';
import { short } from './svg.ts';
import { type Colours, letter_px } from './theme.ts';

const strokes: Readonly<Record<Line['stroke'], { width: number; dash?: string }>> = {
  cut: { width: 3 },
  fold: { width: 2, dash: '14 5 3 5' },
  axis: { width: 1.2, dash: '26 6 5 6' },
  wire: { width: 5 },
  hidden: { width: 1.6, dash: '8 6' },
};

/** How a line of a drawing looks beside letters of a size. */
export const strokeOf = (stroke: Line['stroke'], { ink, faint }: Colours, letter: number) => ({
  fill: 'none',
  stroke: stroke === 'axis' || stroke === 'hidden' ? faint : ink,
  'stroke-width': (strokes[stroke].width * letter) / letter_px,
  'stroke-dasharray': strokes[stroke].dash
    ?.split(' ')
    .map((part) => short((Number(part) * letter) / letter_px))
    .join(' '),
});
