import { lossFunction } from '../heat/outside.ts';
import { runWall } from '../heat/transient/run-wall.ts';
import { type AskedLayer, layerModel } from '../heat/wall-layers.ts';
import { outsideOf, type WallModel } from '../heat/wall-question.ts';
import type { Phase } from '../heat/wall-run.ts';

/** Bare ground takes 4 k r from a disk, W/K: from memory, soil or concrete at 1 W/(m K). */
const ground_W_mK = 1;

/**
 * What lid and floor take over a firing, of what the side wall takes: each as a plane of the bore's area, the vent left
 * out of the lid, by the same transient solver under the same programme. Corners are not in it.
 */
export function endsShare(wall: WallModel, phase: Phase, side_J: number): number {
  const { question, outer_radius_m, typical } = wall;
  const bore_m2 = (Math.PI / 4) * question.bore_m ** 2;
  const vent_m2 = Math.min(bore_m2, Math.PI * question.vent_radius_m ** 2);
  const outside = outsideOf(question, outer_radius_m, typical);
  const lid = lossFunction({ ...outside, face: 'up', length_m: outer_radius_m / 2 });
  const ground_W_m2K = (4 * ground_W_mK * outer_radius_m) / bore_m2;
  const taken_J =
    (bore_m2 - vent_m2) * planeTakes_J_m2(question.lid, phase, outside.air_K, lid) +
    bore_m2 *
      planeTakes_J_m2(question.floor, phase, outside.air_K, (surface_K) => ground_W_m2K * (surface_K - outside.air_K));
  return taken_J / side_J;
}

function planeTakes_J_m2(
  layers: readonly AskedLayer[],
  phase: Phase,
  start_K: number,
  outward_W_m2: (surface_K: number) => number,
): number {
  if (layers.length === 0) return 0;
  const drawn = layers.map((layer) => {
    const { draw, density_kg_m3, water } = layerModel(layer);
    return draw({ conductivity: 0, density_kg_m3: density_kg_m3.typical, water: water.typical });
  });
  const run = runWall({
    geometry: 'plane',
    inner_radius_m: 1,
    layers: drawn,
    start_K,
    outward_W_m2,
    phases: [phase],
    cells: 8,
    tolerance_dK: 2,
  });
  return run.in_J_m2.at(-1)!;
}
