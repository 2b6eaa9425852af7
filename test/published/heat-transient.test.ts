import { describe, expect, it } from 'vitest';
import { lossFunction, type Outside } from '../../core/heat/outside.ts';
import { closedBore, gas, netPower } from '../../core/heat/transient/drives.ts';
import { runWall } from '../../core/heat/transient/run-wall.ts';
import type { Phase, WallInput, WallLayer, WallRun } from '../../core/heat/wall-run.ts';
import { librariesOf, stored } from '../reference/stored.ts';
import { outside } from './outside.ts';

type Table = [T_K: number[], values: number[]];

interface Body {
  kind: 'body';
  power: 0 | 1 | 2;
  biot: number;
  fourier: number;
  x: 0 | 1;
}
interface HalfSpace {
  kind: 'half-space film' | 'half-space flux';
  conductivity_W_mK: number;
  heat_J_m3K: number;
  strength: number;
  at_s: number;
  depth_m: number;
}
interface FurnaceWall {
  kind: 'wall';
  power: 0 | 1 | 2;
  inner_radius_m: number;
  layers: { thickness_m: number; density_kg_m3: number; k: Table; c: Table; water: number }[];
  shell: { thickness_m: number; density_kg_m3: number; c: Table };
  outward: keyof typeof outwards;
  start_K: number;
  phases: { until_s: number; drive: { kind: 'flux' } | Extract<Phase['drive'], { kind: 'temperature' }> }[];
  quantity: 'shell' | 'heat in' | 'shell at its hottest' | 'time of it';
  at_s: number | null;
}

const reference = stored<Body | HalfSpace | FurnaceWall>('heat_transient');
const shapes = ['plane', 'cylinder', 'sphere'] as const;
const air_K = 298.15;
const painted: Outside = { face: 'vertical', length_m: 0.4, air_K, emissivity: 0.8, wind_m_s: 0 };
const outwards = {
  '10 W/m2K': (T: number) => 10 * (T - air_K),
  '6 W/m2K and 0.8': (T: number) => 6 * (T - air_K) + 0.8 * 5.670374419e-8 * (T ** 4 - air_K ** 4),
  'upright 0.4 m, 0.8': lossFunction(painted),
};

describe('heat through a wall over time, beside series and another solver', () => {
  it.each(reference.cases)('$id', ({ id, inputs, expected, tolerance, why }) => {
    const [subject = id, quantity = 'temperature'] = id.split(': ');
    const { ours, unit, method } = answerOf(inputs);
    outside({
      subject: `wall: ${subject}`,
      quantity,
      ours,
      theirs: expected,
      unit,
      source: `${librariesOf(reference)}, ${method}`,
      tolerance,
      reason: why,
    });
  });
});

const series = 'series of conduction textbooks';

function answerOf(inputs: Body | HalfSpace | FurnaceWall): { ours: number; unit: string; method: string } {
  switch (inputs.kind) {
    case 'body':
      return { ours: shareLeft(inputs), unit: 'of 1', method: series };
    case 'half-space film':
      return { ours: (halfSpace_K(inputs) - start_K) / hotter_dK, unit: 'of 1', method: series };
    case 'half-space flux':
      return { ours: halfSpace_K(inputs) - start_K, unit: 'K', method: series };
    case 'wall':
      return { ours: ofWall(inputs), unit: unitOf(inputs), method: 'method of lines, solve_ivp BDF' };
  }
}

const unitOf = ({ quantity }: FurnaceWall) => (quantity === 'heat in' ? 'J/m²' : quantity === 'time of it' ? 's' : 'K');

const start_K = 300;
const hotter_dK = 500;
const fine = { cells: 200, tolerance_dK: 0.01 };

/** A body of radius or half thickness 0.1 m, insulated in the middle: a bore of a thousandth stands for none. */
function shareLeft({ power, biot, fourier, x }: Body): number {
  const size_m = 0.1;
  const hole_m = power === 0 ? 0 : size_m / 1000;
  const k_W_mK = 1;
  const heat_J_m3K = 1e6;
  const run = runWall({
    geometry: shapes[power],
    inner_radius_m: hole_m,
    layers: [constant(size_m - hole_m, k_W_mK, heat_J_m3K)],
    start_K: start_K + hotter_dK,
    outward_W_m2: (T) => ((biot * k_W_mK) / size_m) * (T - start_K),
    phases: [{ until_s: (fourier * size_m ** 2 * heat_J_m3K) / k_W_mK, drive: closedBore() }],
    ...fine,
  });
  return ((x === 0 ? run.face_K : run.shell_K).at(-1)! - start_K) / hotter_dK;
}

/** Deep enough that its far side, insulated, has felt nothing. */
function halfSpace_K({ kind, conductivity_W_mK, heat_J_m3K, strength, at_s, depth_m }: HalfSpace): number {
  const run = runWall({
    geometry: 'plane',
    inner_radius_m: 0,
    layers: [0.01, 0.04, 0.15].map((thickness_m) => constant(thickness_m, conductivity_W_mK, heat_J_m3K)),
    start_K,
    outward_W_m2: () => 0,
    phases: [
      {
        until_s: at_s,
        drive:
          kind === 'half-space flux'
            ? netPower(strength)
            : gas({ gas_K: start_K + hotter_dK, film_W_m2K: strength, emissivity: 0 }),
      },
    ],
    ...fine,
  });
  expect(run.shell_K.at(-1)! - start_K).toBeLessThan(1e-3);
  return (depth_m === 0 ? run.face_K : run.interfaces_K[0]!).at(-1)!;
}

const constant = (thickness_m: number, k_W_mK: number, heat_J_m3K: number): WallLayer => ({
  thickness_m,
  density_kg_m3: 1000,
  conductivity: { T_K: [start_K], k_W_mK: [k_W_mK] },
  heat_capacity: { T_K: [start_K], c_J_kgK: [heat_J_m3K / 1000] },
  water: 0,
});

/** As the program runs a wall when nothing else is asked for; up to the time in question. */
function ofWall(inputs: FurnaceWall): number {
  const run = runWall(wallInput(inputs));
  const last: Record<FurnaceWall['quantity'], (run: WallRun) => number> = {
    shell: ({ shell_K }) => shell_K.at(-1)!,
    'heat in': ({ in_J_m2 }) => in_J_m2.at(-1)!,
    'shell at its hottest': ({ shell_peak }) => shell_peak.T_K,
    'time of it': ({ shell_peak }) => shell_peak.time_s,
  };
  return last[inputs.quantity](run);
}

function wallInput({ power, inner_radius_m, layers, shell, outward, start_K, phases, at_s }: FurnaceWall): WallInput {
  const end_s = at_s ?? Number.POSITIVE_INFINITY;
  return {
    geometry: shapes[power],
    inner_radius_m,
    layers: layers.map(({ k, c, ...layer }) => ({
      ...layer,
      conductivity: { T_K: k[0], k_W_mK: k[1] },
      heat_capacity: { T_K: c[0], c_J_kgK: c[1] },
    })),
    shell: { ...shell, heat_capacity: { T_K: shell.c[0], c_J_kgK: shell.c[1] } },
    start_K,
    outward_W_m2: outwards[outward],
    phases: phases
      .filter((_, index) => index === 0 || phases[index - 1]!.until_s < end_s)
      .map(({ until_s, drive }) => ({
        until_s: Math.min(until_s, end_s),
        drive: drive.kind === 'flux' ? closedBore() : drive,
      })),
  };
}
