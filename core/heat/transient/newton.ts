import { evaluate, linearise } from './evaluate.ts';
import type { Wall } from './state.ts';
import { BOIL_K } from './water.ts';

export interface Scratch {
  /** Known side of a stage: heat = known + κ h gain. */
  readonly known: Float64Array;
  readonly right: Float64Array;
  readonly upper: Float64Array;
}

const MOST_ROUNDS = 25;

/**
 * Finds the levels with heat = known + step × gain, from those the wall holds; the first node is fixed where its
 * temperature is given. Leaves everything evaluated there. False where it does not settle.
 */
export function solveStage(wall: Wall, scratch: Scratch, step_s: number, within_K: number): boolean {
  const { level, heat, gain, capacity, plateau } = wall;
  const { known, right } = scratch;
  const first = wall.into_W_m2 ? 0 : 1;
  const nodes = level.length;
  evaluate(wall);
  linearise(wall);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let worst = 0;
    for (let node = first; node < nodes; node++) {
      const rest = known[node]! + step_s * gain[node]! - heat[node]!;
      right[node] = rest;
      const off = Math.abs(rest) / capacity[node]!;
      // Written so that NaN counts as far off.
      if (!(off <= worst)) worst = off;
    }
    if (worst <= within_K) return true;
    if (!Number.isFinite(worst)) return false;
    if (round > 2) linearise(wall);
    solveLinear(wall, scratch, step_s);
    for (let node = first; node < nodes; node++) {
      const before = level[node]!;
      let after = before + right[node]!;
      // Late rounds stop at the ends of the plateau, so that no node jumps to and fro across it.
      if (round > 4 && plateau[node]! > 0) after = stopAtKinks(before, after, plateau[node]!);
      level[node] = after;
    }
    evaluate(wall);
  }
  return false;
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
  let before = 0;
  for (let node = first; node <= last; node++) {
    let pivot = capacity[node]!;
    if (node > 0) pivot += step_s * slope_far[node - 1]!;
    if (node === 0 && !boils(wall, 0)) pivot -= step_s * wall.into_slope;
    if (node < last) pivot += step_s * slope_near[node]!;
    else if (!boils(wall, last)) pivot += step_s * wall.outward_slope;
    const lower = node > first ? -step_s * slope_near[node - 1]! : 0;
    pivot -= lower * before;
    before = node < last ? (-step_s * slope_far[node]!) / pivot : 0;
    upper[node] = before;
    right[node] = (right[node]! - (node > first ? lower * right[node - 1]! : 0)) / pivot;
  }
  for (let node = last - 1; node >= first; node--) right[node]! -= upper[node]! * right[node + 1]!;
}

/** While it boils a surface keeps its temperature, so the heat through it does not change with the level. */
const boils = ({ level, plateau }: Wall, node: number): boolean =>
  level[node]! > BOIL_K && level[node]! < BOIL_K + plateau[node]!;
