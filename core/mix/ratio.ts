import { AskError } from '../ask-error.ts';
import { findMaterial } from '../materials/catalogue.ts';
import type { Material } from '../materials/material.ts';
import type { Part } from './recipe.ts';
import { slotOf } from './slots.ts';

/** What plain words mean in a mix. */
const plain: Readonly<Record<string, string>> = {
  clay: 'stoneware-clay',
  sand: 'silica-sand',
  cement: 'portland-cement',
  castable: 'dense-castable',
};

export const ingredientId = (name: string): string => plain[name.trim().toLowerCase()] ?? findMaterial(name).id;

/** `2 sand 1 clay`, `3 sand: 1 fireclay`, `1.5 grog, 1 kaolin`: numbers before names. */
export function readRatio(text: string): readonly Part[] {
  const found = [...text.matchAll(/(\d{1,4}(?:[.,]\d{1,3})?)\s*(?:parts?\s+(?:of\s+)?)?([\p{L}][\p{L} -]*)/gu)];
  const rest = text.replace(/(\d{1,4}(?:[.,]\d{1,3})?)\s*([\p{L}][\p{L} -]*)/gu, '').replace(/[\s:,;+&]|and/g, '');
  if (found.length === 0 || found.length > 6 || rest !== '') throw unreadable(text);
  return found.map(([, number, name]) => {
    const parts = Number((number ?? '').replace(',', '.'));
    if (!(parts > 0)) throw unreadable(text);
    const material = ingredient((name ?? '').replace(/\s+(?:to|and)$/i, '').trim(), text);
    return { material: material.id, slot: slotOf(material), parts };
  });
}

function ingredient(name: string, ratio: string): Material {
  try {
    return findMaterial(ingredientId(name));
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
    throw error.with({ option: 'ratio', example: ratio.replace(name, error.example) });
  }
}

const unreadable = (text: string) =>
  new AskError({
    code: 'unreadable',
    what: `"${text.slice(0, 40)}" is not a ratio`,
    expected: 'up to six ingredients, each with its number of parts before it',
    example: '2 sand 1 clay',
    option: 'ratio',
  });
