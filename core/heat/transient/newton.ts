import { evaluate, linearise, setTemperatures } from './evaluate.ts';
import type { Wall } from './state.ts';
import { BOIL_K } from './water.ts';

export interface Scratch {
  /** Known side of a stage: heat = known + κ h gain. */
  readonly known: Float64Array;
  readonly right: Float64Array;
  readonly upper: Float64Array;
}

const MOST_ROUNDS = 25;
/** Share of an update squared, per K, that a wall linear over the update may be wrong by: half of k′/k and the like. */
const CURVED_per_K = 0.003;

/**
 * Finds the levels with heat = known + step × gain, from those the wall holds; the first node is fixed where its
 * temperature is given. Leaves temperatures, heats and gains of those levels. False where it does not settle.
 */
export function solveStage(wall: Wall, scratch: Scratch, step_s: number, within_K: number): boolean {
  const { level, heat, gain, capacity } = wall;
  const { known, right } = scratch;
  const first = wall.into_W_m2 ? 0 : 1;
  const nodes = level.length;
  const small_K = Math.sqrt(within_K / CURVED_per_K);
  evaluate(wall);
  linearise(wall);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let settled = true;
    for (let node = first; node < nodes; node++) {
      const rest = known[node]! + step_s * gain[node]! - heat[node]!;
      right[node] = rest;
      // Written so that NaN counts as not settled.
      if (!(Math.abs(rest) <= within_K * capacity[node]!)) settled = false;
    }
    if (settled) return true;
    if (round > 2) linearise(wall);
    solveLinear(wall, scratch, step_s);
    if (!Number.isFinite(right[first]!)) return false;
    if (isStraight(wall, right, first, small_K)) {
      goStraight(wall, scratch, step_s, first);
      return true;
    }
    for (let node = first; node < nodes; node++) {
      const before = level[node]!;
      const after = before + right[node]!;
      // Late rounds stop at the ends of the plateau, so that no node jumps to and fro across it.
      level[node] = round > 4 && wall.plateau[node]! > 0 ? stopAtKinks(before, after, wall.plateau[node]!) : after;
    }
    evaluate(wall);
  }
  return false;
}

/** Whether an update is so small, and no end of a plateau in it, that heats and gains change in proportion to it. */
function isStraight({ level, plateau, wet }: Wall, update: Float64Array, first: number, small_K: number): boolean {
  const boil_K = BOIL_K;
  for (let node = first; node < update.length; node++) {
    if (!(Math.abs(update[node]!) <= small_K)) return false;
    if (!wet || plateau[node]! === 0) continue;
    const before = level[node]!;
    const after = before + update[node]!;
    const end = boil_K + plateau[node]!;
    if (before > boil_K !== after > boil_K || before < end !== after < end) return false;
  }
  return true;
}

/** Takes a small update without evaluating again; the gains are those that conserve heat exactly. */
function goStraight(wall: Wall, { known, right }: Scratch, step_s: number, first: number): void {
  const { level, heat, gain, capacity } = wall;
  const last = level.length - 1;
  const perStep = 1 / step_s;
  for (let node = first; node <= last; node++) {
    const update = right[node]!;
    const stored = heat[node]! + capacity[node]! * update;
    level[node]! += update;
    heat[node] = stored;
    gain[node] = (stored - known[node]!) * perStep;
  }
  if (first > 0) gain[0]! += wall.slope_far[0]! * right[1]!;
  else if (!boils(wall, 0)) wall.into_W += wall.into_slope * right[0]!;
  if (!boils(wall, last)) wall.out_W += wall.outward_slope * right[last]!;
  setTemperatures(wall);
}

const BEYOND = 1e-6;

function stopAtKinks(before: number, after: number, width: number): number {
  const end = BOIL_K + width;
  if (after > before) {
    if (before < BOIL_K && after > BOIL_K) return BOIL_K + BEYOND;
    if (before < end && after > end) return end + BEYOND;
  } else {
    if (before > end && after < end) return end - BEYOND;
    if (before > BOIL_K && after < BOIL_K) return BOIL_K - BEYOND;
  }
  return after;
}

/** Replaces `right` by (C − step × ∂gain/∂level)⁻¹ right: one tridiagonal sweep, dominant by columns, so no pivots. */
export function solveLinear(wall: Wall, { right, upper }: Scratch, step_s: number): void {
  const { capacity, slope_near, slope_far, into_W_m2 } = wall;
  const last = capacity.length - 1;
  const first = into_W_m2 ? 0 : 1;
  for (let node = first; node <= last; node++) {
    let pivot = capacity[node]!;
    if (node > 0) pivot += step_s * slope_far[node - 1]!;
    if (node === 0 && !boils(wall, 0)) pivot -= step_s * wall.into_slope;
    if (node < last) pivot += step_s * slope_near[node]!;
    else if (!boils(wall, last)) pivot += step_s * wall.outward_slope;
    if (node > first) {
      const lower = step_s * slope_near[node - 1]!;
      pivot += lower * upper[node - 1]!;
      right[node]! += lower * right[node - 1]!;
    }
    const inverse = 1 / pivot;
    if (node < last) upper[node] = -step_s * slope_far[node]! * inverse;
    right[node]! *= inverse;
  }
  for (let node = last - 1; node >= first; node--) right[node]! -= upper[node]! * right[node + 1]!;
}

/** While it boils a surface keeps its temperature, so the heat through it does not change with the level. */
const boils = ({ level, plateau }: Wall, node: number): boolean =>
  level[node]! > BOIL_K && level[node]! < BOIL_K + plateau[node]!;
