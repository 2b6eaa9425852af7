import type { Phase, WallInput, WallRun } from '../wall-run.ts';
import { checkWall } from './check.ts';
import { evaluate } from './evaluate.ts';
import { faceAt, faceUpTo, stopsOf } from './programme.ts';
import { keep, type Record, rateOf, recordFor, series } from './record.ts';
import { startWall, storedHeat, type Wall } from './state.ts';
import { middleOf, type Stepper, settle, stepperFor, tryStep, undo } from './step.ts';
import { BOIL_K } from './water.ts';

const CELLS = 24;
const TOLERANCE_dK = 0.3;
/** First step after a jump or another drive. */
const FIRST_STEP_s = 1;
/** A change of slope is met with a step over which it makes this many tolerances. */
const KINK_TOLERANCES = 10;
const SMALLEST_STEP_s = 1e-7;
const MOST_STEPS = 200_000;
/** While water boils its front passes from node to node: steps as fine as without it would only follow these jerks. */
const BOILING_TOLERANCES = 3;
/** How much longer the next step may be at most: less after one that had to be tried again. Shorter likewise. */
const FASTEST = 4;
const AFTER_REJECTION = 1.5;
const SLOWEST = 0.2;
const FAILED = 0.25;
/** Longest that is tried after a refusal. Refused again the error is not smooth, a node begins to boil: then a quarter, as where Newton fails. */
const REFUSED = 0.5;
/** Of the heat that went through: above it the answer is wrong, and so is the program. */
const WORST_IMBALANCE = 0.01;

interface Run {
  readonly wall: Wall;
  readonly work: Stepper;
  readonly record: Record;
  readonly tolerance_dK: number;
  time_s: number;
  step_s: number;
  in_J: number;
  out_J: number;
  /** Largest in or out so far. */
  through_J: number;
  rejected: number;
}

/**
 * Heat conduction through a layered wall over time: ρ c(T) ∂T/∂t = r⁻ⁿ ∂/∂r (rⁿ k(T) ∂T/∂r), n = 0 plane, 1
 * cylinder, 2 sphere, with free water that boils off at 100 °C, a thin steel shell and a loss from the outside that
 * may depend on its temperature in any smooth way.
 *
 * Finite volumes with nodes on faces and interfaces, flux through ∫k dT, heat and not temperature conserved; TR-BDF2
 * with Newton's iteration and steps chosen by their error. Water vapour leaves at the hot face with its heat, or
 * condenses at the shell (`vapour`). One dimension: no ends, no corners.
 *
 * @throws AskError `impossible` or `out-of-range` for a wall or programme that cannot be; Error where heat in, out and
 * stored differ by more than 1 %.
 */
export function runWall(input: WallInput): WallRun {
  checkWall(input);
  const wall = startWall(input, input.cells ?? CELLS);
  const run: Run = {
    wall,
    work: stepperFor(wall.grid.nodes),
    record: recordFor(wall),
    tolerance_dK: input.tolerance_dK ?? TOLERANCE_dK,
    time_s: 0,
    step_s: FIRST_STEP_s,
    in_J: 0,
    out_J: 0,
    through_J: 0,
    rejected: 0,
  };
  evaluate(wall);
  for (const [index, phase] of input.phases.entries()) {
    const until_K = index === input.phases.length - 1 ? input.until_shell_below_K : undefined;
    runPhase(run, phase, until_K);
  }
  return answer(run);
}

function runPhase(run: Run, { until_s, drive }: Phase, shellBelow_K: number | undefined): void {
  const { wall } = run;
  const points = drive.kind === 'temperature' ? drive.points : undefined;
  wall.into_W_m2 = drive.kind === 'flux' ? drive.into_W_m2 : undefined;
  run.step_s = FIRST_STEP_s;
  if (points) jump(run, faceAt(points, run.time_s));
  evaluate(wall);
  if (run.record.count === 0) note(run, 0);
  let slope = Number.NaN;
  let end_K = Number.NaN;
  for (const stop_s of stopsOf(drive, run.time_s, until_s)) {
    if (points) {
      end_K = faceUpTo(points, stop_s);
      const next = (end_K - wall.T_K[0]!) / (stop_s - run.time_s);
      const change = Math.abs(next - slope);
      if (change > 0) run.step_s = Math.min(run.step_s, (KINK_TOLERANCES * run.tolerance_dK) / change);
      slope = next;
    }
    while (run.time_s < stop_s) {
      advance(run, { stop_s, slope, end_K });
      if (shellBelow_K !== undefined && isOver(run, shellBelow_K)) return;
    }
    if (points && stop_s < until_s) jump(run, faceAt(points, stop_s));
  }
}

/** Puts the face at a temperature at once: what its half cell takes up for that has gone in at the face. */
function jump(run: Run, face_K: number): void {
  const { wall } = run;
  if (face_K === wall.T_K[0]) return;
  const before_J = wall.heat[0]!;
  wall.level[0] = levelOf(wall, face_K);
  evaluate(wall);
  run.in_J += wall.heat[0]! - before_J;
  run.step_s = FIRST_STEP_s;
}

/** Of a face with a given temperature: above 100 °C its water is gone. */
const levelOf = ({ plateau }: Wall, face_K: number): number => (face_K > BOIL_K ? face_K + plateau[0]! : face_K);

/** One accepted step, at most to `stop_s`; a face with a given temperature climbs by `slope` to `end_K` there. */
function advance(run: Run, { stop_s, slope, end_K }: { stop_s: number; slope: number; end_K: number }): void {
  const { wall, work } = run;
  const tolerance_dK = run.tolerance_dK * (wall.boiling ? BOILING_TOLERANCES : 1);
  for (let tries = 0; ; tries++) {
    const left_s = stop_s - run.time_s;
    // No sliver is left over before the stop.
    const last = run.step_s >= left_s;
    const step_s = last ? left_s : Math.min(run.step_s, left_s / 2);
    const face_K = wall.T_K[0]!;
    const share = tryStep(wall, work, {
      step_s,
      tolerance_dK,
      face_mid: levelOf(wall, face_K + slope * middleOf(step_s)),
      face_end: levelOf(wall, last ? end_K : face_K + slope * step_s),
    });
    if (share <= 1) {
      settle(wall, work, step_s);
      run.time_s = last ? stop_s : run.time_s + step_s;
      run.in_J += work.in_J;
      run.out_J += work.out_J;
      note(run, step_s);
      // A step cut short at a stop says nothing about the next one but that it may be longer.
      run.step_s = Math.max(
        last ? run.step_s : 0,
        step_s * Math.min(growth(share), tries > 0 ? AFTER_REJECTION : FASTEST),
      );
      return;
    }
    undo(wall, work);
    run.rejected++;
    run.step_s = step_s * (share < Number.POSITIVE_INFINITY && tries === 0 ? Math.min(growth(share), REFUSED) : FAILED);
    if (run.step_s < SMALLEST_STEP_s || run.record.count + run.rejected > MOST_STEPS) {
      throw new Error(`the wall solver got stuck at ${run.time_s} s with steps of ${run.step_s} s`);
    }
  }
}

const growth = (share: number): number => Math.min(FASTEST, Math.max(SLOWEST, 0.9 * share ** (-1 / 3)));

function note(run: Run, step_s: number): void {
  const { time_s, in_J, out_J } = run;
  run.through_J = Math.max(run.through_J, Math.abs(in_J), Math.abs(out_J));
  keep(run.record, run.wall, { time_s, step_s, in_J, out_J, before: run.work.gain });
}

/** The shell has been warmer, by more than the error of a step, and cools; or nothing in the wall is warm any more. */
function isOver({ wall, record, tolerance_dK }: Run, below_K: number): boolean {
  const surface = wall.grid.nodes - 1;
  const surface_K = wall.T_K[surface]!;
  if (surface_K >= below_K || rateOf(wall, surface) > 0) return false;
  const peak_K = record.hottest_K[surface]!;
  const peaked = peak_K > wall.start_K + 2 * tolerance_dK && surface_K < peak_K - 2 * tolerance_dK;
  return peaked || wall.T_K.every((one) => one < below_K);
}

function answer({ wall, record, in_J, out_J, through_J, rejected }: Run): WallRun {
  const { grid, water_kg, capacity } = wall;
  // A wall in which nothing happens has rounding and nothing else.
  const least_J = 1e-3 * capacity.reduce((sum, one) => sum + one, 0);
  const stored_J = storedHeat(wall);
  const imbalance = Math.abs(in_J - out_J - stored_J) / Math.max(through_J, least_J);
  if (!(imbalance <= WORST_IMBALANCE)) {
    throw new Error(
      `heat is out of balance by ${(100 * imbalance).toPrecision(2)} %: in ${in_J}, out ${out_J}, stored ${stored_J} J/m²`,
    );
  }
  return Object.freeze({
    ...series(record),
    depth_m: grid.depth_m,
    water_left_kg_m2: water_kg.reduce((sum, one) => sum + one, 0),
    stored_J_m2: stored_J,
    imbalance,
    steps_count: record.count - 1,
    rejected_count: rejected,
  });
}
