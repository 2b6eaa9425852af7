import { findMaterial } from '../materials/catalogue.ts';
import type { Outside } from './outside.ts';
import { lossByPath, type Paths } from './paths.ts';
import type { SteadyLayer } from './steady.ts';
import type { AskedLayer } from './wall-layers.ts';
import { outsideOf, type WallModel } from './wall-question.ts';

/** Soil or concrete under the furnace, and a tuyere of an inch and a half: from memory. */
const ground_W_mK = 1;
const tuyereRadius_m = 0.019;

/** By which path the furnace of this wall loses heat once it has been held long: the steady end of the firing. */
export function wallPaths({ question, typical, outer_radius_m }: WallModel): Paths {
  const side = outsideOf(question, outer_radius_m, typical);
  // A disk's area over its perimeter.
  const lidOutside: Outside = { ...side, face: 'up', length_m: outer_radius_m / 2 };
  return lossByPath({
    hot_K: question.hot_K.typical,
    bore_radius_m: question.bore_m / 2,
    bore_height_m: question.height_m,
    side: { layers: [...stackOf(question.layers), ...sheet(question.shell_m)], outside: side },
    lid: { layers: stackOf(question.lid), outside: lidOutside },
    floor: { layers: stackOf(question.floor), outside: { ground_K: side.air_K, ground_W_mK } },
    vent_radius_m: Math.min(question.vent_radius_m, question.bore_m / 2),
    tuyere_radius_m: tuyereRadius_m,
    air_K: side.air_K,
  });
}

const stackOf = (layers: readonly AskedLayer[]): readonly SteadyLayer[] =>
  layers.flatMap(({ material, thickness_m }) =>
    material.conductivity_W_mK ? [{ thickness_m, conductivity: material.conductivity_W_mK }] : [],
  );

function sheet(thickness_m: number): readonly SteadyLayer[] {
  const conductivity = findMaterial('mild-steel').conductivity_W_mK;
  return thickness_m > 0 && conductivity ? [{ thickness_m, conductivity }] : [];
}
