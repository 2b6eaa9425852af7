/**
 * Our side of wall_scipy.py, in a process of its own as it is: the test runner makes every use of an import slower
 * than it is in the program. Prints ms as JSON.
 */
import { runWall } from '../../core/heat/transient/run-wall.ts';
import type { WallInput, WallLayer } from '../../core/heat/wall-run.ts';
import { eightHours, fill, firing, furnace, lining } from './wall-samples.ts';

const scaled = (layer: WallLayer, k: number, c: number): WallLayer => ({
  ...layer,
  conductivity: { ...layer.conductivity, k_W_mK: layer.conductivity.k_W_mK.map((one) => k * one) },
  heat_capacity: { ...layer.heat_capacity, c_J_kgK: layer.heat_capacity.c_J_kgK.map((one) => c * one) },
});

function time_ms(run: () => void): number {
  const begin = performance.now();
  run();
  return performance.now() - begin;
}

function median_ms(input: WallInput, runs: number): number {
  const times = Array.from({ length: runs }, () => time_ms(() => runWall(input)));
  return times.sort((a, b) => a - b)[runs >> 1]!;
}

const { outward_W_m2 } = eightHours();
const samples = (count: number) => {
  for (let index = 0; index < count; index++) {
    const [k, c, film] = [0.7 + (index % 10) / 15, 0.9 + (index % 7) / 35, 0.6 + (index % 13) / 16];
    const layers = [scaled(lining(), k, c), scaled(fill(), k, c)];
    runWall(eightHours({ layers, outward_W_m2: (T) => film * outward_W_m2(T) }));
  }
};
const damp = (inLining: number, inFill: number) =>
  furnace({ layers: [lining({ water: inLining }), fill({ water: inFill })], phases: firing() });

const first_ms = time_ms(() => runWall(furnace()));
// Warm.
median_ms(eightHours(), 200);
const answer = {
  first_ms,
  as_many_cells_ms: median_ms(eightHours({ cells: 20 }), 500),
  usual_ms: median_ms(eightHours(), 500),
  thousand_ms: time_ms(() => samples(1000)),
  damp_lining_ms: median_ms(damp(0.06, 0), 100),
  damp_both_ms: median_ms(damp(0.06, 0.05), 100),
  soaked_ms: median_ms(damp(0.15, 1), 60),
};
process.stdout.write(`${JSON.stringify(answer)}\n`);
