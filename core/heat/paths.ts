import type { Step, WithSteps } from '../step.ts';
import { openingLoss_W } from './opening.ts';
import { lossFunction, type Outside } from './outside.ts';
import { type Steady, type SteadyLayer, steadyWall } from './steady.ts';

/** Bare ground under a furnace: heat spreads from a disk into a half-space. */
export interface Ground {
  readonly ground_K: number;
  /** Soil or concrete; 1 W/(m K) is ordinary, dry sand 0.3, wet soil 2: from memory. */
  readonly ground_W_mK: number;
}

export interface PathsQuestion {
  readonly hot_K: number;
  readonly bore_radius_m: number;
  readonly bore_height_m: number;
  /** Hot side first, steel included, as every stack here. */
  readonly side: { readonly layers: readonly SteadyLayer[]; readonly outside: Outside };
  /** None where the bore stands open: then the mouth is the vent. */
  readonly lid?: { readonly layers: readonly SteadyLayer[]; readonly outside: Outside };
  /** On legs it loses to air like the rest; else to the ground. */
  readonly floor: { readonly layers: readonly SteadyLayer[]; readonly outside: Outside | Ground };
  readonly vent_radius_m?: number;
  readonly tuyere_radius_m?: number;
  /** What the openings look out on. */
  readonly air_K: number;
}

export type PathName = 'side' | 'lid' | 'floor' | 'corners' | 'vent' | 'tuyere';

export interface Path {
  readonly path: PathName;
  readonly loss_W: number;
  /** Of the total, 0 to 1. */
  readonly share: number;
  /** Outer surface, where the path has one. */
  readonly surface_K?: number;
  /** Some layer is outside its conductivity table. */
  readonly extrapolated: boolean;
}

export interface Paths extends WithSteps {
  /** Largest first. Gas that leaves by the vent is none of these. */
  readonly paths: readonly Path[];
  readonly total_W: number;
}

/** Conduction shape factor of an edge where two walls meet, per metre of it: from memory (Langmuir; handbooks). */
const EDGE = 0.54;
/**
 * The rim of a round bore is longer outside than inside. On a circle a quarter of the wall outside the bore the
 * straight edge's factor gives the round one's loss (within 4 % for walls 0.5 to 1 bore radius thick, by finite
 * differences in `test/reference/heat_steady.py`). A round rim has no three-way corners.
 */
const RIM = 0.25;

/**
 * Steady loss of a closed furnace by every path: side as a cylinder, lid and floor as planes of the bore's area, both
 * rims by an edge factor, openings by radiation. Inner faces all at `hot_K`: an upper bound where lid or floor are
 * cooler. Good while the bore is wider and taller than a fifth of the wall.
 */
export function lossByPath(question: PathsQuestion): Paths {
  const { hot_K, bore_radius_m, bore_height_m, side, lid, floor, air_K } = question;
  const { vent_radius_m = lid ? 0 : bore_radius_m, tuyere_radius_m = 0 } = question;
  const bore_m2 = Math.PI * bore_radius_m ** 2;
  const throughSide = steadyWall({
    geometry: 'cylinder',
    inner_radius_m: bore_radius_m,
    layers: side.layers,
    hot_K,
    outward_W_m2: lossFunction(side.outside),
  });
  const plane = (layers: readonly SteadyLayer[], outward_W_m2: (surface_K: number) => number) =>
    steadyWall({ geometry: 'plane', layers, hot_K, outward_W_m2 });
  const throughLid = lid && plane(lid.layers, lossFunction(lid.outside));
  const throughFloor = plane(floor.layers, floorLoss(floor.outside, bore_m2, throughSide.outer_radius_m));
  const sideWall_m = throughSide.outer_radius_m - bore_radius_m;
  const lidWall_m = throughLid?.outer_radius_m ?? 0;

  const rims_W = [throughLid, throughFloor].reduce(
    (sum, end) => (end ? sum + rimLoss_W(throughSide, end, bore_radius_m) : sum),
    0,
  );
  const vent_W = openingLoss_W({ radius_m: vent_radius_m, depth_m: lidWall_m, cavity_K: hot_K, air_K });
  const tuyere_W = openingLoss_W({ radius_m: tuyere_radius_m, depth_m: sideWall_m, cavity_K: hot_K, air_K });
  const lid_m2 = lid ? bore_m2 - Math.PI * vent_radius_m ** 2 : 0;
  const found: readonly Omit<Path, 'share'>[] = [
    wall('side', throughSide, throughSide.flow_W * bore_height_m),
    ...(throughLid ? [wall('lid', throughLid, throughLid.flow_W * lid_m2)] : []),
    wall('floor', throughFloor, throughFloor.flow_W * bore_m2),
    {
      path: 'corners',
      loss_W: rims_W,
      extrapolated: [throughSide, throughLid, throughFloor].some((each) => (each?.extrapolated.length ?? 0) > 0),
    },
    { path: 'vent', loss_W: vent_W, extrapolated: false },
    { path: 'tuyere', loss_W: tuyere_W, extrapolated: false },
  ];
  const total_W = found.reduce((sum, { loss_W }) => sum + loss_W, 0);
  const paths = found
    .filter(({ loss_W }) => loss_W > 0)
    .map((each): Path => Object.freeze({ ...each, share: each.loss_W / total_W }))
    .toSorted((a, b) => b.loss_W - a.loss_W);
  return Object.freeze({ paths: Object.freeze(paths), total_W, steps: () => stepsOf(question, found, total_W) });
}

const wall = (path: PathName, { shell_K, extrapolated }: Steady, loss_W: number): Omit<Path, 'share'> => ({
  path,
  loss_W,
  surface_K: shell_K,
  extrapolated: extrapolated.length > 0,
});

/** A disk on a half-space passes 4 k r (W/K): from memory, shape factor tables. Spread over the floor's area. */
function floorLoss(outside: Outside | Ground, area_m2: number, disk_radius_m: number): (surface_K: number) => number {
  if (!('ground_K' in outside)) return lossFunction(outside);
  const film_W_m2K = (4 * outside.ground_W_mK * disk_radius_m) / area_m2;
  return (surface_K) => film_W_m2K * (surface_K - outside.ground_K);
}

/** The edge factor times the mean of what both walls make of ∫ k dT. */
function rimLoss_W(side: Steady, end: Steady, bore_radius_m: number): number {
  const side_W_m = (side.flow_W * Math.log(side.outer_radius_m / bore_radius_m)) / (2 * Math.PI);
  const end_W_m = end.flow_W * end.outer_radius_m;
  const wall_m = (side.outer_radius_m - bore_radius_m + end.outer_radius_m) / 2;
  const rim_m = 2 * Math.PI * (bore_radius_m + RIM * wall_m);
  return EDGE * rim_m * ((side_W_m + end_W_m) / 2);
}

function stepsOf(question: PathsQuestion, found: readonly Omit<Path, 'share'>[], total_W: number): Step[] {
  const { hot_K, bore_radius_m, bore_height_m } = question;
  const loss = (name: PathName) => found.find(({ path }) => path === name)?.loss_W ?? 0;
  const { outside } = question.floor;
  return [
    {
      formula: 'side = flow of a metre × height; lid and floor = flux × area',
      inputs: { hot_K, bore_radius_m, bore_height_m },
      gives: { side_W: loss('side'), lid_W: loss('lid'), floor_W: loss('floor') },
      source: 'derived',
    },
    ...('ground_K' in outside
      ? [
          {
            formula: 'ground takes 4 × k of ground × outer radius, W/K',
            inputs: { ground_K: outside.ground_K, ground_W_mK: outside.ground_W_mK },
            gives: { floor_W: loss('floor') },
            source: 'from-memory',
          },
        ]
      : []),
    {
      formula: 'corners = 0.54 × rim × mean of ∫ k dT of both walls, rim a quarter of the wall outside the bore',
      inputs: { bore_radius_m, hot_K },
      gives: { corners_W: loss('corners') },
      source: 'from-memory',
    },
    {
      formula: 'opening = share through a re-radiating hole × area × σ × (hot⁴ − air⁴)',
      inputs: {
        hot_K,
        air_K: question.air_K,
        vent_radius_m: question.vent_radius_m ?? (question.lid ? 0 : bore_radius_m),
        tuyere_radius_m: question.tuyere_radius_m ?? 0,
      },
      gives: { vent_W: loss('vent'), tuyere_W: loss('tuyere') },
      source: 'derived',
    },
    {
      formula: `total = ${found.map(({ path }) => path).join(' + ')}`,
      inputs: Object.fromEntries(found.map(({ path, loss_W }) => [`${path}_W`, loss_W])),
      gives: { total_W },
      source: 'derived',
    },
  ];
}
