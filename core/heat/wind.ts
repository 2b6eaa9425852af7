import { finder } from '../materials/catalogue.ts';
import type { Datum } from '../materials/material.ts';
import { windData } from './data/winds.ts';

/** A word for the wind and the speeds it stands for. */
export interface Wind {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly speed_m_s: Datum;
}

export const winds: readonly Wind[] = Object.freeze([...windData]);

/** @throws AskError `unknown-name`, with the nearest ids. */
export const findWind = finder('wind', winds);
