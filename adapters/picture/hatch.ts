import type { Matter } from '../../core/shape/drawing.ts';
import type { Px } from './box.ts';
import { element, short } from './svg.ts';
import type { Colours } from './theme.ts';

/** Lines at one angle, so far apart. */
interface Ruled {
  readonly turn_rad: number;
  readonly apart_px: number;
}

/** What is drawn over the fill: each matter is known by its hatch, its colour only helps. */
type Hatch =
  | { readonly ruled: readonly Ruled[]; readonly width?: number }
  /** A sign repeated on a grid, every other row set off by half; `reach` is how far it goes from its middle. */
  | { readonly sign: string; readonly apart_px: number; readonly reach_px: number; readonly width?: number };

const eighth = Math.PI / 4;
const rising = (apart_px: number): Ruled => ({ turn_rad: -eighth, apart_px });
const falling = (apart_px: number): Ruled => ({ turn_rad: eighth, apart_px });
const level = (apart_px: number): Ruled => ({ turn_rad: 0, apart_px });
const upright = (apart_px: number): Ruled => ({ turn_rad: Math.PI / 2, apart_px });

const hatches: Readonly<Record<Matter, Hatch | undefined>> = {
  // Solid, and empty: signs of their own.
  shell: undefined,
  hollow: undefined,
  'hot face': { ruled: [rising(11)] },
  insulation: { sign: 'm-1.4 0h2.8', apart_px: 11, reach_px: 2, width: 2.8 },
  brick: { sign: 'm-6 -4h12v8h-12z', apart_px: 16, reach_px: 7 },
  crucible: { ruled: [rising(8.5), falling(8.5)] },
  metal: { ruled: [level(7)], width: 1.5 },
  charcoal: { sign: 'm-5 2l5 -4l4 3l-3 4z', apart_px: 15, reach_px: 6 },
  sleeve: { ruled: [upright(8)] },
  sheet: { ruled: [falling(18)] },
  mesh: { ruled: [level(10), upright(10)] },
  wire: { ruled: [falling(4)], width: 1.5 },
  roll: { sign: 'm-8 0q4 -5 8 0t8 0', apart_px: 20, reach_px: 9 },
  ground: { sign: 'm-4 0h8', apart_px: 18, reach_px: 5 },
};

/** Closed outlines filled and hatched, with their edge; an outline within another is a hole. */
export function filled(outlines: readonly (readonly Px[])[], matter: Matter, colours: Colours, edge_px = 1.6): string {
  const d = outlines.map((points) => `M${points.map(([x, y]) => `${short(x)} ${short(y)}`).join('L')}Z`).join('');
  const shape = { d, 'fill-rule': 'evenodd' };
  const hatch = hatchPath(outlines, matter);
  return [
    element('path', { ...shape, fill: colours.fills[matter] }),
    hatch === ''
      ? ''
      : element('path', {
          d: hatch,
          fill: 'none',
          stroke: colours.hatch,
          'stroke-width': hatches[matter]?.width ?? 1,
        }),
    element('path', {
      ...shape,
      fill: 'none',
      stroke: colours.ink,
      'stroke-width': edge_px,
      'stroke-linejoin': 'round',
    }),
  ].join('');
}

/**
 * The hatch cut to the outlines here: a pattern of SVG takes the rasteriser as long as all the rest of a picture.
 * Empty where the matter has none.
 */
export function hatchPath(outlines: readonly (readonly Px[])[], matter: Matter): string {
  const hatch = hatches[matter];
  if (!hatch) return '';
  if ('ruled' in hatch) return hatch.ruled.flatMap((ruled) => ruledIn(outlines, ruled)).join('');
  const { sign, apart_px, reach_px } = hatch;
  const crossings = (y: number) => crossingsAt(outlines, y);
  const path: string[] = [];
  for (const [row, y] of steps(outlines, apart_px).entries()) {
    // Whole signs only: what the sign reaches above and below must be inside too.
    const spans = common([crossings(y - reach_px), crossings(y), crossings(y + reach_px)]);
    for (const [from, to] of spans) {
      const off = row % 2 === 0 ? 0 : apart_px / 2;
      for (let at = Math.ceil((from + reach_px - off) / apart_px); at * apart_px + off <= to - reach_px; at++) {
        path.push(`M${short(at * apart_px + off)} ${short(y)}${sign}`);
      }
    }
  }
  return path.join('');
}

type Span = readonly [from: number, to: number];

/** Level lines across the outlines turned the other way, turned back. */
function ruledIn(outlines: readonly (readonly Px[])[], { turn_rad, apart_px }: Ruled): readonly string[] {
  const [cos, sin] = [Math.cos(turn_rad), Math.sin(turn_rad)];
  const turned = outlines.map((points) => points.map(([x, y]): Px => [x * cos + y * sin, y * cos - x * sin]));
  const back = (x: number, y: number) => `${short(x * cos - y * sin)} ${short(x * sin + y * cos)}`;
  return steps(turned, apart_px).flatMap((y) =>
    crossingsAt(turned, y).map(([from, to]) => `M${back(from, y)}L${back(to, y)}`),
  );
}

/** Heights on a grid that is the same for all, so that one matter in two pieces reads as one. */
function steps(outlines: readonly (readonly Px[])[], apart_px: number): readonly number[] {
  const heights = outlines.flat().map(([, y]) => y);
  const first = Math.ceil(Math.min(...heights) / apart_px);
  const last = Math.floor(Math.max(...heights) / apart_px);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => (first + at) * apart_px);
}

/** Where a level line is inside: between its first and second crossing, its third and fourth, and so on. */
function crossingsAt(outlines: readonly (readonly Px[])[], y: number): readonly Span[] {
  const found: number[] = [];
  for (const points of outlines) {
    // By index: asked for every row of every hatch, and a pair taken apart makes an iterator each time.
    let a = points[points.length - 1]!;
    for (let at = 0; at < points.length; at++) {
      const b = points[at]!;
      if (a[1] > y !== b[1] > y) found.push(a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]));
      a = b;
    }
  }
  found.sort((a, b) => a - b);
  return Array.from({ length: found.length >> 1 }, (_, at): Span => [found[2 * at]!, found[2 * at + 1]!]);
}

/** What lies in a span of each. */
const common = (all: readonly (readonly Span[])[]): readonly Span[] =>
  all.reduce((one, other) =>
    one.flatMap(([from, to]) =>
      other.flatMap(([start, end]): readonly Span[] => {
        const span: Span = [Math.max(from, start), Math.min(to, end)];
        return span[0] < span[1] ? [span] : [];
      }),
    ),
  );
