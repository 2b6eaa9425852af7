import type { Drawing } from '../drawing.ts';
import type { Furnace } from '../furnace.ts';
import { planDrawing } from './plan.ts';
import { sectionDrawing } from './section.ts';

/** Pictures of the whole furnace, the one to show first at the front. */
export const drawFurnace = (furnace: Furnace): readonly Drawing[] => [sectionDrawing(furnace), planDrawing(furnace)];
