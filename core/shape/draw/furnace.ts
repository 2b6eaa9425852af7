import type { UnitSystem } from '../../quantity/figure.ts';
import type { Drawing } from '../drawing.ts';
import type { Furnace } from '../furnace.ts';
import { planDrawing } from './plan.ts';
import { sectionDrawing } from './section.ts';

/** Pictures of the whole furnace, the one to show first at the front; words lead with `units`. */
export const drawFurnace = (furnace: Furnace, units: UnitSystem): readonly Drawing[] => [
  sectionDrawing(furnace, units),
  planDrawing(furnace, units),
];
