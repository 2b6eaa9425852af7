import type { Drawing, Line, Matter } from '../../core/shape/drawing.ts';
import type { Px } from './box.ts';
import { filled } from './hatch.ts';
import { widthOf } from './letters.ts';
import { bothSystems, type Measure } from './marks.ts';
import { strokeOf } from './stroke.ts';
import { element, escaped, short } from './svg.ts';
import { type Colours, letter_px } from './theme.ts';

/** Beside everything that is drawn. */
export const margin_px = 26;

/** Lengths a scale bar may have: whole numbers of the reader's units, m. */
const bars_m = {
  metric: [1, 2, 5].flatMap((digit) => [1e-3, 1e-2, 0.1, 1].map((ten) => digit * ten)).sort((a, b) => a - b),
  US: [0.125, 0.25, 0.5, 1, 2, 3, 6, 12, 24, 48, 120].map((inches) => inches * 0.0254),
};

/** Scale bar and legend. */
export function footOf(
  { shapes }: Drawing,
  { px_m, units }: Measure,
  { top, width, colours }: { top: number; width: number; colours: Colours },
): { svg: string; bottom: number } {
  const bar_m = bars_m[units].findLast((length) => length * px_m <= width * 0.24) ?? bars_m[units][0]!;
  const bar = bar_m * px_m;
  const y = top + 14;
  const text = (x: number, at: number, words: string) => element('tspan', { x, y: at }, escaped(words));
  const words = [text(margin_px + bar + 14, y + 8, bothSystems(bar_m, units).join(' · '))];
  const parts = [
    element('path', {
      d: `M${margin_px} ${y - 9}v18M${margin_px} ${y}h${short(bar)}M${short(margin_px + bar)} ${y - 9}v18`,
      stroke: colours.ink,
      'stroke-width': 2.5,
      fill: 'none',
    }),
  ];
  const swatch = { wide: 52, tall: 28 };
  let [x, row] = [margin_px, y + 26];
  for (const entry of legendOf(shapes)) {
    const wide = swatch.wide + 10 + widthOf(entry.name, letter_px) + 30;
    if (x > margin_px && x + wide > width - margin_px) [x, row] = [margin_px, row + swatch.tall + 12];
    const middle = row + swatch.tall / 2;
    parts.push(
      entry.kind === 'area'
        ? filled([corners([x, row], swatch)], entry.matter, colours)
        : element('path', { d: `M${x} ${middle}h${swatch.wide}`, ...strokeOf(entry.stroke, colours, letter_px) }),
    );
    words.push(text(x + swatch.wide + 10, middle + 8, entry.name));
    x += wide;
  }
  return {
    svg: [...parts, element('text', { fill: colours.ink }, words.join(''))].join('\n'),
    bottom: row + swatch.tall,
  };
}

const corners = ([x, y]: Px, { wide, tall }: { wide: number; tall: number }): readonly Px[] => [
  [x, y],
  [x + wide, y],
  [x + wide, y + tall],
  [x, y + tall],
];

type Entry = { name: string; kind: 'area'; matter: Matter } | { name: string; kind: 'line'; stroke: Line['stroke'] };

function legendOf(shapes: Drawing['shapes']): readonly Entry[] {
  const entries = new Map<string, Entry>();
  for (const shape of shapes) {
    if (shape.name === '') continue;
    const { name } = shape;
    const entry: Entry =
      shape.kind === 'area'
        ? { name, kind: 'area', matter: shape.matter }
        : { name, kind: 'line', stroke: shape.stroke };
    entries.set(`${name}/${shape.kind === 'area' ? shape.matter : shape.stroke}`, entry);
  }
  return [...entries.values()];
}
