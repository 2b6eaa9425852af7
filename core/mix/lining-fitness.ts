import { runWall } from '../heat/transient/run-wall.ts';
import { firingOf } from '../heat/wall-firing.ts';
import { type Fineness, type WallQuestion, wallModel } from '../heat/wall-question.ts';
import { findMaterial } from '../materials/catalogue.ts';
import type { Material } from '../materials/material.ts';
import { shortBy_dK } from './fitness.ts';

/** A layer that does not stand the furnace it is in. */
export interface Unfit {
  readonly material: Material;
  /** `no face`: faces the fire and is none for it. `face`: below what the metal asks. `behind`: too near to the fire. */
  readonly why: 'no face' | 'face' | 'behind';
  readonly gets_K: number;
  readonly limit_K: number;
}

/** Interfaces within 2 K, see the samples of the wall. */
const fineness: Fineness = { cells: 5, tolerance_dK: 3 };

/**
 * The layers of a furnace that its own heat is too much for. The hot face by the low end of its limit, as a mix is judged;
 * what stands behind it by the middle of its limit, after the firing asked for: `wall` tells the low end of that too.
 */
export function unfitLayers(question: WallQuestion, end: 'low' | 'typical' = 'typical'): readonly Unfit[] {
  const hot_K = question.hot_K.typical;
  const limits = question.layers.map(({ material }) => material.properties.service_limit_K);
  // Nothing behind a face gets hotter than the face.
  const safe = limits.every((limit, at) => at === 0 || limit === undefined || hot_K <= limit[end]);
  const behind_K = safe ? [] : interfacePeaks_K(question);
  return question.layers.flatMap(({ material }, at): readonly Unfit[] => {
    const limit = limits[at];
    const fit = material.hotFace?.fit;
    if (at === 0 && (fit === 'backup only' || fit === 'never'))
      return [{ material, why: 'no face', gets_K: hot_K, limit_K: limit?.low ?? hot_K }];
    if (!limit) return [];
    if (at === 0)
      return shortBy_dK({ limit_K: limit.low, needed_K: hot_K }) > 0
        ? [{ material, why: 'face', gets_K: hot_K, limit_K: limit.low }]
        : [];
    const gets_K = behind_K[at - 1] ?? 0;
    return gets_K > limit[end] ? [{ material, why: 'behind', gets_K, limit_K: limit[end] }] : [];
  });
}

function interfacePeaks_K(question: WallQuestion): readonly number[] {
  const model = wallModel(question);
  return firingOf(model, model.typical, runWall(model.input(model.typical, fineness))).interface_peaks_K;
}

/** Faces that `mix` can fill and backings that are bought, the cheapest first. */
const faces = ['fireclay-sand-lining', 'fireclay-grog-lining', 'dense-castable'] as const;
const backings = ['insulating-castable', 'fibre-blanket', 'insulating-brick-26'] as const;

/** A face before a wall of one layer, which then stands behind it. */
export const newFace_m = 0.03;

/**
 * The same wall of other materials that stands its heat, by low ends where there is such a one: the first layer, and the
 * one behind it; a wall of one layer gets a face before it. Nothing where none here does.
 */
export const fittingMaterials = (question: WallQuestion): readonly Material[] | undefined =>
  fittingBy(question, 'low') ?? fittingBy(question, 'typical');

function fittingBy(question: WallQuestion, end: 'low' | 'typical'): readonly Material[] | undefined {
  const [first, ...behind] = question.layers;
  if (!first) return undefined;
  const walled = behind.length > 0 ? question.layers : [{ ...first, thickness_m: newFace_m }, first];
  const [face, second, ...rest] = walled;
  for (const front of [face!.material, ...faces.map(findMaterial)])
    for (const back of [second!.material, ...backings.map(findMaterial)]) {
      const layers = [{ ...face!, material: front }, { ...second!, material: back }, ...rest];
      if (unfitLayers({ ...question, layers }, end).length === 0) return layers.map(({ material }) => material);
    }
  return undefined;
}
