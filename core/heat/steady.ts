import { AskError } from '../ask-error.ts';
import type { Curve } from '../materials/material.ts';
import type { End } from '../materials/spread.ts';
import type { Step, WithSteps } from '../step.ts';
import { hotSideOfGap_K } from './gap.ts';
import { rootBetween } from './steady-root.ts';
import { type Theta, thetaOf } from './steady-theta.ts';

/** From the hot side out: a solid, an air gap, or a joint of no thickness. */
export type SteadyLayer =
  | { readonly thickness_m: number; readonly conductivity: Curve; readonly end?: End }
  | { readonly gap_m: number; readonly hot_emissivity: number; readonly cold_emissivity: number }
  | { readonly joint_m2K_W: number };

export type Geometry = 'plane' | 'cylinder' | 'sphere';

export interface SteadyQuestion {
  readonly geometry: Geometry;
  /** Of the hot face; no meaning for a plane. */
  readonly inner_radius_m?: number;
  /** Hot side first. */
  readonly layers: readonly SteadyLayer[];
  readonly hot_K: number;
  /** W per m² of the outermost surface, rising with its temperature: `lossFunction`. */
  readonly outward_W_m2: (surface_K: number) => number;
}

export interface Steady extends WithSteps {
  /** Through the whole: W per m² of a plane, per m of a cylinder's height, of a whole sphere. */
  readonly flow_W: number;
  readonly hot_flux_W_m2: number;
  readonly shell_flux_W_m2: number;
  readonly shell_K: number;
  /** Hot face, between layers, shell: one more than there are layers. */
  readonly faces_K: readonly number[];
  readonly outer_radius_m: number;
  /** Layers that are somewhere outside their conductivity table. */
  readonly extrapolated: readonly number[];
}

/** Area of a surface at a radius: of the metre (plane: m²) the flow is counted for. */
const areaAt: Readonly<Record<Geometry, (radius_m: number) => number>> = {
  plane: () => 1,
  cylinder: (r) => 2 * Math.PI * r,
  sphere: (r) => 4 * Math.PI * r ** 2,
};

/** What a flow is multiplied by to give the rise of θ across a layer: R = factor / k. */
const factorOf: Readonly<Record<Geometry, (inner_m: number, outer_m: number) => number>> = {
  plane: (inner, outer) => outer - inner,
  cylinder: (inner, outer) => Math.log(outer / inner) / (2 * Math.PI),
  sphere: (inner, outer) => (1 / inner - 1 / outer) / (4 * Math.PI),
};

interface Placed {
  readonly layer: SteadyLayer;
  readonly theta: Theta | undefined;
  readonly factor: number;
  /** Area its flux is counted on where it is a gap or a joint: at its middle. */
  readonly area: number;
}

/**
 * Steady heat through a stack in any of three shapes: exact for k(T) by way of the conductivity integral, marching from
 * a trial shell temperature inwards until the hot face fits. Air gaps and joints included.
 * @throws AskError `impossible` where no heat goes outwards, `out-of-range` for sizes that are none.
 */
export function steadyWall({ geometry, inner_radius_m = 0, layers, hot_K, outward_W_m2 }: SteadyQuestion): Steady {
  check(geometry, inner_radius_m, layers, hot_K);
  if (!(outward_W_m2(hot_K) > 0)) throw nothingFlows(hot_K);
  const { placed, outer_radius_m } = place(geometry, inner_radius_m, layers);
  const shellArea = areaAt[geometry](outer_radius_m);
  const faces = new Array<number>(layers.length + 1).fill(0);
  const march = (shell_K: number): number => {
    const flow = outward_W_m2(shell_K) * shellArea;
    faces[layers.length] = shell_K;
    for (let i = layers.length - 1; i >= 0; i--) faces[i] = hotSide(placed[i]!, faces[i + 1]!, flow);
    return faces[0]! - hot_K;
  };
  // A shell at the hot face's temperature would need a hotter face; a cold enough one needs a colder face.
  let low = hot_K * 0.8;
  while (march(low) > 0) low *= 0.8;
  const shell_K = rootBetween(march, low, hot_K);
  march(shell_K);
  const flow_W = outward_W_m2(shell_K) * shellArea;
  const faces_K = Object.freeze([hot_K, ...faces.slice(1)]);
  const extrapolated = layers.flatMap((layer, i) =>
    'conductivity' in layer && outsideTable(layer.conductivity, faces_K[i]!, faces_K[i + 1]!) ? [i] : [],
  );
  return Object.freeze({
    flow_W,
    hot_flux_W_m2: flow_W / areaAt[geometry](inner_radius_m),
    shell_flux_W_m2: flow_W / shellArea,
    shell_K,
    faces_K,
    outer_radius_m,
    extrapolated: Object.freeze(extrapolated),
    steps: () => stepsOf(placed, faces_K, flow_W, geometry),
  });
}

function hotSide({ layer, theta, factor, area }: Placed, cold_K: number, flow: number): number {
  if (theta) return theta.back(theta.of(cold_K) + flow * factor);
  if ('joint_m2K_W' in layer) return cold_K + (flow / area) * layer.joint_m2K_W;
  if ('gap_m' in layer) return hotSideOfGap_K({ width_m: layer.gap_m, ...layer }, cold_K, flow / area);
  return cold_K;
}

const thicknessOf = (layer: SteadyLayer): number =>
  'thickness_m' in layer ? layer.thickness_m : 'gap_m' in layer ? layer.gap_m : 0;

function place(geometry: Geometry, inner_radius_m: number, layers: readonly SteadyLayer[]) {
  let radius = inner_radius_m;
  const placed = layers.map((layer): Placed => {
    const inner = radius;
    radius += thicknessOf(layer);
    return {
      layer,
      theta: 'conductivity' in layer ? thetaOf(layer.conductivity, layer.end) : undefined,
      factor: factorOf[geometry](inner, radius),
      area: areaAt[geometry]((inner + radius) / 2),
    };
  });
  return { placed, outer_radius_m: radius };
}

const outsideTable = ({ T_K }: Curve, ...faces_K: readonly number[]) =>
  faces_K.some((face) => face < T_K[0]! - 1e-9 || face > T_K[T_K.length - 1]! + 1e-9);

const flowKey = { plane: 'flux_W_m2', cylinder: 'flow_of_one_metre_W', sphere: 'flow_W' } as const;

function stepsOf(placed: readonly Placed[], faces_K: readonly number[], flow_W: number, geometry: Geometry): Step[] {
  return placed.map(({ layer }, i): Step => {
    const hot_side_K = faces_K[i]!;
    const cold_side_K = faces_K[i + 1]!;
    const through = { [flowKey[geometry]]: flow_W };
    if (!('conductivity' in layer)) {
      const joint = 'joint_m2K_W' in layer;
      return {
        formula: joint ? 'drop = flux × resistance of the joint' : 'flux = k of air × drop ÷ gap + radiation across it',
        inputs: joint ? through : { ...through, gap_m: layer.gap_m },
        gives: { hot_side_K, cold_side_K },
        source: joint ? 'derived' : 'coolprop',
      };
    }
    const theta = placed[i]!.theta!;
    const mean_W_mK =
      hot_side_K === cold_side_K ? 0 : (theta.of(hot_side_K) - theta.of(cold_side_K)) / (hot_side_K - cold_side_K);
    return {
      formula: formulas[geometry],
      inputs: { ...through, thickness_m: layer.thickness_m, mean_conductivity_W_mK: mean_W_mK },
      gives: { hot_side_K, cold_side_K },
      source: layer.conductivity.source,
    };
  });
}

const formulas: Readonly<Record<Geometry, string>> = {
  plane: 'flux = ∫ k dT ÷ thickness',
  cylinder: 'flow of a metre = 2π ∫ k dT ÷ ln(outer ÷ inner radius)',
  sphere: 'flow = 4π ∫ k dT ÷ (1 ÷ inner − 1 ÷ outer radius)',
};

function check(geometry: Geometry, inner_radius_m: number, layers: readonly SteadyLayer[], hot_K: number): void {
  const fail = (what: string, expected: string, example: string) => {
    throw new AskError({ code: 'out-of-range', what, expected, example });
  };
  if (!(hot_K > 0 && Number.isFinite(hot_K))) fail(`the hot face is at ${hot_K} K`, 'above 0 K', '1000 °C');
  if (layers.length === 0) fail('the wall has no layers', 'at least one', '1 in castable');
  if (geometry !== 'plane' && !(inner_radius_m > 0)) {
    fail(`the bore's radius is ${inner_radius_m} m`, 'above 0', '5 in');
  }
  for (const [i, layer] of layers.entries()) {
    const [size, unit] = 'joint_m2K_W' in layer ? [layer.joint_m2K_W, 'm²K/W'] : [thicknessOf(layer), 'm'];
    const fine = 'joint_m2K_W' in layer ? size >= 0 : size > 0;
    if (!(fine && Number.isFinite(size))) fail(`layer ${i + 1} is ${size} ${unit} thick`, 'above 0', '1 in');
  }
}

const nothingFlows = (hot_K: number) =>
  new AskError({
    code: 'impossible',
    what: `a hot face at ${Math.round(hot_K - 273.15)} °C is not hotter than what is around the shell: no heat goes outwards`,
    expected: 'a hot face above the air, and above what the sun alone makes of the shell',
    example: '1000 °C',
  });
