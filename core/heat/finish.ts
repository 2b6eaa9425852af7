import type { Fact } from '../hazard/facts.ts';
import { finder } from '../materials/catalogue.ts';
import type { Datum } from '../materials/material.ts';
import { finishData } from './data/finishes.ts';

/** What a hand meets: its burn thresholds differ by how fast the surface gives off its heat. */
export type TouchSurface = 'metal' | 'painted-metal' | 'ceramic' | 'plastic' | 'wood';

/** What the outside of a furnace is. */
export interface Finish {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly emissivity: Datum;
  readonly touch: TouchSurface;
  readonly hazards: readonly Fact[];
}

export const finishes: readonly Finish[] = Object.freeze([...finishData]);

/** @throws AskError `unknown-name`, with the nearest ids. */
export const findFinish = finder('finish', finishes);
