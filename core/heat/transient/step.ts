import { evaluate, setTemperatures } from './evaluate.ts';
import { type Scratch, solveLinear, solveStage } from './newton.ts';
import { rowsOf, setPlateau, type Wall } from './state.ts';
import { BOIL_K, LATENT_J_kg, WATER_J_kgK } from './water.ts';

/*
 * TR-BDF2 (Bank et al. 1985, in the form of Hosea and Shampine 1996): trapezoidal rule to t + γ h, then the second
 * backward difference formula to t + h. With γ = 2 − √2 both stages have the same matrix; second order, L-stable,
 * and the error is estimated from the three net gains.
 */
const GAMMA = 2 - Math.SQRT2;
const KAPPA = GAMMA / 2;
const MIDDLE = 1 / (GAMMA * (2 - GAMMA));
const WEIGHT = Math.SQRT2 / 4;
const ERROR = (-3 * GAMMA ** 2 + 4 * GAMMA - 2) / (6 * (2 - GAMMA));

/** Error a stage may leave in Newton's iteration, as a share of the error a step may make. */
const NEWTON_SHARE = 0.01;

export interface Stepper extends Scratch {
  /** At the begin of the step. */
  readonly level: Float64Array;
  readonly heat: Float64Array;
  readonly gain: Float64Array;
  /** At its middle stage. */
  readonly midLevel: Float64Array;
  readonly midGain: Float64Array;
  /** How fast the levels change at its begin, and how that changes, from the last step: where Newton starts. */
  readonly rate: Float64Array;
  readonly bend: Float64Array;
  into_W: number;
  out_W: number;
  /** Over the step. */
  in_J: number;
  out_J: number;
}

export function stepperFor(nodes: number): Stepper {
  const row = rowsOf(nodes, 10);
  return {
    known: row(),
    right: row(),
    upper: row(),
    level: row(),
    heat: row(),
    gain: row(),
    midLevel: row(),
    midGain: row(),
    rate: row(),
    bend: row(),
    into_W: 0,
    out_W: 0,
    in_J: 0,
    out_J: 0,
  };
}

/**
 * One step of the wall, whose levels must be evaluated; `faceAt` gives the level of a face with a given temperature.
 * Returns the error as a share of the tolerance (Infinity where Newton failed). Above 1 call `undo`, else `settle`.
 */
export function tryStep(
  wall: Wall,
  work: Stepper,
  {
    step_s,
    tolerance_dK,
    face_mid,
    face_end,
  }: { step_s: number; tolerance_dK: number; face_mid: number; face_end: number },
): number {
  const { level, heat, gain, grid } = wall;
  const { known, rate, bend, right } = work;
  const given = wall.into_W_m2 === undefined;
  const first = given ? 1 : 0;
  const part = KAPPA * step_s;
  const within_K = NEWTON_SHARE * tolerance_dK;
  const in0 = intoFace(wall);
  work.into_W = wall.into_W;
  work.out_W = wall.out_W;

  const ahead = GAMMA * step_s;
  for (let node = 0; node < grid.nodes; node++) {
    known[node] = heat[node]! + part * gain[node]!;
    work.level[node] = level[node]!;
    work.heat[node] = heat[node]!;
    work.gain[node] = gain[node]!;
    level[node]! += ahead * (rate[node]! + ahead * bend[node]!);
  }
  if (given) level[0] = face_mid;
  if (!solveStage(wall, work, part, within_K)) return Number.POSITIVE_INFINITY;
  const in1 = intoFace(wall);
  const out1 = wall.out_W;

  for (let node = 0; node < grid.nodes; node++) {
    known[node] = MIDDLE * heat[node]! + (1 - MIDDLE) * work.heat[node]!;
    const begin = work.level[node]!;
    work.midLevel[node] = level[node]!;
    work.midGain[node] = gain[node]!;
    const straight = (level[node]! - begin) / ahead;
    level[node] = begin + step_s * (straight + ((straight - rate[node]!) * (1 - GAMMA)) / GAMMA);
  }
  if (given) level[0] = face_end;
  if (!solveStage(wall, work, part, within_K)) return Number.POSITIVE_INFINITY;

  for (let node = first; node < grid.nodes; node++) {
    right[node] =
      ERROR *
      step_s *
      (work.gain[node]! / GAMMA - work.midGain[node]! / (GAMMA * (1 - GAMMA)) + gain[node]! / (1 - GAMMA));
  }
  solveLinear(wall, work, part);
  const worst = largestError(wall, right, first);
  work.in_J = step_s * (WEIGHT * (in0 + in1) + KAPPA * intoFace(wall)) + (given ? heat[0]! - work.heat[0]! : 0);
  work.out_J = step_s * (WEIGHT * (work.out_W + out1) + KAPPA * wall.out_W);
  return worst / tolerance_dK;
}

/** A node that boils does not change its temperature, one that dries in this step starts on its own: both count little. */
const BOILING_SHARE = 0.1;
/** So far below 100 °C a front of boiling counts as on its way. */
const NEARLY_dK = 20;

function largestError({ level, water_kg }: Wall, error: Float64Array, first: number): number {
  const boil_K = BOIL_K;
  let worst = 0;
  for (let node = first; node < error.length; node++) {
    const boils = water_kg[node]! > 0 && level[node]! > boil_K;
    const off = Math.abs(error[node]!) * (boils ? BOILING_SHARE : 1);
    if (!(off <= worst)) worst = off;
  }
  return worst;
}

/** Into the wall behind the face's own half cell, where the temperature is given; else what the drive gives. */
const intoFace = (wall: Wall): number => (wall.into_W_m2 ? wall.into_W : -wall.gain[0]!);

export const middleOf = (step_s: number): number => GAMMA * step_s;

/** Back to the begin of the step. */
export function undo(wall: Wall, work: Stepper): void {
  wall.level.set(work.level);
  wall.heat.set(work.heat);
  wall.gain.set(work.gain);
  wall.into_W = work.into_W;
  wall.out_W = work.out_W;
  setTemperatures(wall);
}

/** Keeps the step: how the levels move, and the water that is gone for good. */
export function settle(wall: Wall, work: Stepper, step_s: number): void {
  const { level, grid } = wall;
  for (let node = 0; node < grid.nodes; node++) {
    const early = (work.midLevel[node]! - work.level[node]!) / (GAMMA * step_s);
    const late = (level[node]! - work.midLevel[node]!) / ((1 - GAMMA) * step_s);
    const bend = (late - early) / step_s;
    work.bend[node] = bend;
    work.rate[node] = late + bend * (1 - GAMMA) * step_s;
  }
  if (!wall.wet && wall.vapour_W === 0) return;
  const boiled_J = wall.wet ? dry(wall) : 0;
  if (!wall.condenses) return;
  wall.vapour_W = boiled_J / step_s;
  evaluate(wall);
}

/** What has boiled leaves the nodes: their levels go back to the begin of what plateau is left. Its latent heat, J. */
function dry(wall: Wall): number {
  const { level, heat, water_kg, plateau, start_K } = wall;
  const [boil_K, latent, warm] = [BOIL_K, LATENT_J_kg, WATER_J_kgK];
  let left = false;
  let boiling = false;
  let latent_J = 0;
  for (let node = 0; node < level.length; node++) {
    const water = water_kg[node]!;
    if (water === 0) continue;
    const over = level[node]! - boil_K;
    if (over > 0) {
      const boiled = Math.min(over / plateau[node]!, 1) * water;
      wall.spent_J += boiled * (latent + warm * (boil_K - start_K));
      heat[node]! -= boiled * latent;
      latent_J += boiled * latent;
      water_kg[node] = boiled < water ? water - boiled : 0;
      level[node] = Math.max(boil_K, level[node]! - plateau[node]!);
      setPlateau(wall, node);
    }
    if (water_kg[node]! === 0) continue;
    left = true;
    if (level[node]! >= boil_K - NEARLY_dK) boiling = true;
  }
  wall.wet = left;
  wall.boiling = boiling;
  return latent_J;
}
