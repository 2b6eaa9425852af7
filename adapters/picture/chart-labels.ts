import type { ChartPanel } from '../../commands/card.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatBoth } from '../../core/quantity/format.ts';
import type { Axis } from './axis.ts';
import type { Box, Px, Segment } from './box.ts';
import { widthOf } from './letters.ts';
import { type Candidate, placed, type Wanted } from './place.ts';
import { letter_px } from './theme.ts';

export interface PanelSize {
  readonly width: number;
  readonly height: number;
}

export interface ChartLabel {
  readonly text: string;
  readonly at: Px;
  /** The series it names, else a line. */
  readonly series?: string;
}

interface Draft extends Wanted {
  readonly text: string;
  readonly series?: string;
}

const nothing = { price: Infinity, candidates: () => [] };
const half_tall = 0.55 * letter_px;
const gap = 6;

/** Names of curves and lines beside them, set so that no words lie over one another or, if it can be helped, a curve. */
export function chartLabels(
  panel: ChartPanel,
  {
    x,
    y,
    size,
    units,
    beside = [],
  }: {
    x: Axis;
    y: Axis;
    size: PanelSize;
    units: UnitSystem;
    /** Lines that are named elsewhere. */
    beside?: NonNullable<ChartPanel['lines']>;
  },
): readonly ChartLabel[] {
  const toPx = ([sx, sy]: readonly [number, number]): Px => [
    ((x.of(sx) - x.low) / (x.high - x.low)) * size.width,
    size.height - ((y.of(sy) - y.low) / (y.high - y.low)) * size.height,
  ];
  const drafts: Draft[] = [];
  const add = (
    text: string,
    strokes: readonly Segment[],
    centres: (half_wide: number) => readonly Spot[],
    series?: string,
  ) => {
    const half: Px = [widthOf(text, letter_px) / 2 + 4, half_tall];
    const near = centres(half[0])
      .map(({ at, price }): Candidate => ({ lines: [text], box: { middle: at, half, turn_rad: 0 }, price }))
      .map((candidate) => (inside(candidate.box, size) ? candidate : { ...candidate, price: candidate.price + 3000 }));
    drafts.push({ text, strokes, near, far: nothing, ...(series === undefined ? {} : { series }) });
  };
  for (const line of panel.lines ?? []) {
    if (beside.includes(line)) continue;
    const { name, at, axis } = line;
    const [px, py] = toPx([axis === 'x' ? at : 0, axis === 'y' ? at : 0]);
    if (axis === 'x')
      add(
        name,
        [
          [
            [px, 0],
            [px, size.height],
          ],
        ],
        (w) => besideUpright(px, w, size),
      );
    else {
      const text = `${name} ${formatBoth(at, panel.y.unit, units, panel.y.shown).replace(/ \((.*)\)$/, ' · $1')}`;
      add(
        text,
        [
          [
            [0, py],
            [size.width, py],
          ],
        ],
        (w) => besideLevel(py, w, size),
      );
    }
  }
  for (const { name, points } of panel.series) {
    const way = thinned(points.map(toPx), 60);
    add(
      name,
      way.slice(1).map((to, at): Segment => [way[at]!, to]),
      (w) => besideCurve(way, w),
      name,
    );
  }
  const edges = beside.map(({ at }): Segment => {
    const [, py] = toPx([0, at]);
    return [
      [0, py],
      [size.width, py],
    ];
  });
  const chosen = placed(drafts, edges);
  return drafts.map(({ text, series }, at) => ({
    text,
    at: chosen[at]!.box.middle,
    ...(series === undefined ? {} : { series }),
  }));
}

interface Spot {
  readonly at: Px;
  readonly price: number;
}

const shares = Array.from({ length: 13 }, (_, at) => at / 12);

const besideUpright = (x: number, w: number, { height }: PanelSize): readonly Spot[] =>
  shares.flatMap((share) =>
    [1, -1].map((side): Spot => {
      const y = half_tall + gap + share * (height - 2 * (half_tall + gap));
      return { at: [x + side * (w + gap), y], price: (side < 0 ? 6 : 0) + 10 * share };
    }),
  );

const besideLevel = (y: number, w: number, { width }: PanelSize): readonly Spot[] =>
  shares.flatMap((share) =>
    [-1, 1].map((side): Spot => {
      const x = w + gap + share * (width - 2 * (w + gap));
      return { at: [x, y + side * (half_tall + 2)], price: (side > 0 ? 8 : 0) + 20 * share };
    }),
  );

/** Beside points all along it, and clear of it where it slopes. */
const besideCurve = (way: readonly Px[], w: number): readonly Spot[] => {
  const points = spaced(way, 40);
  return points.flatMap(([x, y], index) => {
    const [[x0, y0], [x1, y1]] = [points[Math.max(0, index - 1)]!, points[Math.min(points.length - 1, index + 1)]!];
    const rise = x1 === x0 ? 0 : Math.min(4 * half_tall, Math.abs((y1 - y0) / (x1 - x0)) * w);
    const price = 15 * (1 - index / points.length);
    const spots: readonly Px[] = [
      [x + w * 0.6, y - half_tall - gap],
      [x - w * 0.6, y - half_tall - gap],
      [x, y - half_tall - gap - rise],
      [x + w + gap, y],
      [x - w - gap, y],
      [x, y + half_tall + gap + rise],
    ];
    return spots.map((at, more): Spot => ({ at, price: price + more }));
  });
};

/** Points evenly along a way, however few it is told by. */
function spaced(way: readonly Px[], count: number): readonly Px[] {
  const lengths = way.slice(1).map(([x, y], at) => Math.hypot(x - way[at]![0], y - way[at]![1]));
  const step = lengths.reduce((sum, one) => sum + one, 0) / count;
  if (step === 0) return way;
  let before = 0;
  return [
    ...lengths.flatMap((length, at) => {
      const [[x0, y0], [x1, y1]] = [way[at]!, way[at + 1]!];
      const first = Math.ceil(before / step);
      const last = Math.ceil((before + length) / step);
      const points = Array.from({ length: last - first }, (_, more): Px => {
        const share = ((first + more) * step - before) / length;
        return [x0 + share * (x1 - x0), y0 + share * (y1 - y0)];
      });
      before += length;
      return points;
    }),
    way.at(-1)!,
  ];
}

const inside = ({ middle: [x, y], half: [w, h] }: Box, { width, height }: PanelSize): boolean =>
  x - w >= 0 && x + w <= width && y - h >= 0 && y + h <= height;

function thinned(points: readonly Px[], most: number): readonly Px[] {
  const every = Math.max(1, Math.ceil(points.length / most));
  return points.filter((_, at) => at % every === 0 || at === points.length - 1);
}
