import { AskError } from '../../ask-error.ts';
import type { WallInput, WallLayer } from '../wall-run.ts';

const EXAMPLE = 'wall 1 in castable; 2.5 in perlite hot=1000 °C';
/** Of a layer: thinner is a coat of paint, thicker no furnace. */
const THICKEST_m = 5;
const HOTTEST_K = 4000;

/** @throws AskError where the wall or what is done to it cannot be; Error where a table of a material is wrong. */
export function checkWall(input: WallInput): void {
  const { geometry, inner_radius_m, layers, shell, start_K, phases, cells, tolerance_dK } = input;
  if (layers.length === 0) refuse('the wall has 0 layers', 'one layer or more, hot side first', 'missing');
  if (geometry !== 'plane' && !(inner_radius_m > 0 && inner_radius_m < Number.POSITIVE_INFINITY)) {
    refuse(`a bore with a radius of ${inner_radius_m} m`, 'a radius above 0');
  }
  for (const [index, layer] of layers.entries()) checkLayer(layer, index + 1);
  if (shell && !(shell.thickness_m > 0 && shell.thickness_m <= THICKEST_m)) {
    refuse(`a steel shell ${shell.thickness_m} m thick`, 'a thickness above 0, or no shell');
  }
  if (shell) checkTable('heat capacity of the shell', shell.heat_capacity.T_K, shell.heat_capacity.c_J_kgK);
  checkTemperature('the wall starts', start_K);
  checkPhases(phases);
  if (cells !== undefined && !(Number.isInteger(cells) && cells >= 1)) throw new Error(`${cells} cells a layer`);
  if (tolerance_dK !== undefined && !(tolerance_dK > 0)) throw new Error(`a tolerance of ${tolerance_dK} K`);
}

function checkLayer(layer: WallLayer, number: number): void {
  const { thickness_m, density_kg_m3, water, conductivity, heat_capacity } = layer;
  if (!(thickness_m > 0 && thickness_m <= THICKEST_m)) {
    refuse(`layer ${number} is ${thickness_m} m thick`, `a thickness above 0 and at most ${THICKEST_m} m`);
  }
  if (!(density_kg_m3 > 0 && density_kg_m3 < Number.POSITIVE_INFINITY)) {
    refuse(`layer ${number} weighs ${density_kg_m3} kg/m³`, 'a density above 0');
  }
  if (!(water >= 0 && water <= 10))
    refuse(`layer ${number} holds ${water} of its dry mass as water`, 'a share from 0 to 10');
  checkTable(`conductivity of layer ${number}`, conductivity.T_K, conductivity.k_W_mK);
  checkTable(`heat capacity of layer ${number}`, heat_capacity.T_K, heat_capacity.c_J_kgK);
}

function checkPhases(phases: WallInput['phases']): void {
  if (phases.length === 0) refuse('nothing is done to the wall: 0 phases', 'one phase or more', 'missing');
  let before_s = 0;
  for (const { until_s, drive } of phases) {
    if (!(until_s > before_s && until_s < Number.POSITIVE_INFINITY)) {
      refuse(
        `a phase ends at ${until_s} s, the one before it at ${before_s} s`,
        'each phase ends after the one before it',
      );
    }
    before_s = until_s;
    if (drive.kind === 'flux') continue;
    if (drive.points.length === 0) refuse('a programme of the hot face with 0 points', 'one point or more', 'missing');
    let last_s = Number.NEGATIVE_INFINITY;
    for (const [time_s, face_K] of drive.points) {
      checkTemperature('the hot face is', face_K);
      if (!(time_s >= last_s && Number.isFinite(time_s))) {
        refuse(`the hot face has a point at ${time_s} s after one at ${last_s} s`, 'points in order of time');
      }
      last_s = time_s;
    }
  }
}

function checkTemperature(what: string, T_K: number): void {
  if (T_K > 0 && T_K <= HOTTEST_K) return;
  refuse(`${what} at ${T_K} K`, `a temperature above 0 and at most ${HOTTEST_K} K`);
}

/** A material's own data: wrong is a fault of the program, not of the asker. */
function checkTable(what: string, T_K: readonly number[], values: readonly number[]): void {
  const right =
    T_K.length > 0 &&
    T_K.length === values.length &&
    T_K.every((one, row) => Number.isFinite(one) && (row === 0 || one > T_K[row - 1]!)) &&
    values.every((one) => one > 0 && one < Number.POSITIVE_INFINITY);
  if (!right) throw new Error(`${what}: [${values}] at [${T_K}] K is no rising table of positive values`);
}

function refuse(what: string, expected: string, code: 'missing' | 'out-of-range' = 'out-of-range'): never {
  throw new AskError({ code, what, expected, example: EXAMPLE });
}
