import type { Range } from '../doubt/sample.ts';
import type { Material } from '../materials/material.ts';
import type { LayerModel } from './wall-layers.ts';

/** How a layer stands its hot side: limits by their adverse end. */
export interface LayerHeat {
  readonly material: Material;
  /** Hottest its hot side gets: typical, and the adverse end. */
  readonly hot_side_K: number;
  readonly adverse_K: number;
  /** Low end of its service limit. */
  readonly limit_K?: number;
  /** The adverse end is above the limit. */
  readonly exceeds: boolean;
}

/** Each layer's hot side against its service limit. `peaks_K` and `ranges` start with the hot face. */
export function layerHeats(
  layers: readonly LayerModel[],
  peaks_K: readonly number[],
  ranges: readonly (Range | undefined)[],
): readonly LayerHeat[] {
  return layers.map(({ material }, index) => {
    const hot_side_K = peaks_K[index]!;
    const adverse_K = Math.max(hot_side_K, ranges[index]?.high ?? hot_side_K);
    const limit_K = material.properties.service_limit_K?.low;
    return {
      material,
      hot_side_K,
      adverse_K,
      ...(limit_K === undefined ? {} : { limit_K }),
      exceeds: limit_K !== undefined && adverse_K > limit_K,
    };
  });
}

/** Why an answer can have no range. */
export interface OutsideModel {
  readonly material: Material;
  /** `gone`: past even the high end of its limit, no longer what was computed. `unknown`: hotter than its conductivity is known. */
  readonly why: 'gone' | 'unknown';
  readonly past_K: number;
}

/** The layers that leave the model, judged by the typical run. `peaks_K` starts with the hot face. */
export function outsideModel(layers: readonly LayerModel[], peaks_K: readonly number[]): readonly OutsideModel[] {
  return layers.flatMap(({ material, known_to_K }, index): readonly OutsideModel[] => {
    const hot_K = peaks_K[index]!;
    const gone_K = material.properties.service_limit_K?.high;
    if (gone_K !== undefined && hot_K > gone_K) return [{ material, why: 'gone', past_K: gone_K }];
    return hot_K > known_to_K ? [{ material, why: 'unknown', past_K: known_to_K }] : [];
  });
}
