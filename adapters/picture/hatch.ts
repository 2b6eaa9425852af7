import type { Matter } from '../../core/shape/drawing.ts';
import { element } from './svg.ts';
import type { Colours } from './theme.ts';

/** What is drawn over the fill, on a tile of `size`: each matter is known by its hatch, its colour only helps. */
interface Hatch {
  readonly size: number;
  readonly path: string;
  readonly width?: number;
}

const hatches: Readonly<Record<Matter, Hatch | undefined>> = {
  // Solid, and empty: signs of their own.
  shell: undefined,
  hollow: undefined,
  'hot face': { size: 16, path: 'M-4 4L4 -4M0 16L16 0M12 20L20 12' },
  insulation: { size: 22, path: 'M4 5h.1M15 16h.1M15 5h.1M4 16h.1', width: 3.2 },
  crucible: { size: 12, path: 'M0 0L12 12M12 0L0 12' },
  metal: { size: 7, path: 'M0 3.5H7', width: 1.5 },
  charcoal: { size: 18, path: 'M2 3l5 -2l3 4l-4 3zM11 11l4 -3l2 5l-5 2zM3 13l3 1l-2 2z' },
  sleeve: { size: 8, path: 'M4 0V8' },
  sheet: { size: 26, path: 'M-4 22L4 30M0 0L26 26M22 -4L30 4' },
  mesh: { size: 10, path: 'M0 5H10M5 0V10' },
  wire: { size: 6, path: 'M0 0L6 6', width: 1.5 },
  roll: { size: 20, path: 'M0 5q5 -5 10 0t10 0M0 15q5 -5 10 0t10 0' },
  ground: { size: 22, path: 'M2 6h8M13 17h8' },
};

export const hatchOf = (matter: Matter): string | undefined => hatches[matter]?.path;

const idOf = (matter: Matter): string => `hatch-${matter.replace(' ', '-')}`;

export function hatchDefinitions(matters: Iterable<Matter>, { hatch: stroke }: Colours): string {
  return [...matters]
    .map((matter) => {
      const hatch = hatches[matter];
      if (!hatch) return '';
      const { size, path, width = 1 } = hatch;
      const tile = element('path', { d: path, fill: 'none', stroke, 'stroke-width': width, 'stroke-linecap': 'round' });
      return element('pattern', { id: idOf(matter), width: size, height: size, patternUnits: 'userSpaceOnUse' }, tile);
    })
    .join('');
}

/** A closed path filled and hatched, with its edge. */
export function filled(d: string, matter: Matter, { fills, ink }: Colours, edge_px = 1.6): string {
  const shape = { d, 'fill-rule': 'evenodd' };
  return [
    element('path', { ...shape, fill: fills[matter] }),
    hatches[matter] ? element('path', { ...shape, fill: `url(#${idOf(matter)})` }) : '',
    element('path', { ...shape, fill: 'none', stroke: ink, 'stroke-width': edge_px, 'stroke-linejoin': 'round' }),
  ].join('');
}
