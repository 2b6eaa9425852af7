import type { WallInput } from '../wall-run.ts';

/** Nodes on both faces and on every interface, closer to the hot face in the first layer, evenly spaced in the others; everything per m² of the hot face. */
export interface Grid {
  readonly layers: number;
  readonly cells: number;
  readonly nodes: number;
  /** From the hot face. */
  readonly depth_m: Float64Array;
  /** m³ of layer l that belong to its j-th node: at l × (cells + 1) + j. */
  readonly volume: Float64Array;
  /** Area over length, 1/m, between a node and the next: heat flux = conductance × difference of ∫k dT. */
  readonly conductance: Float64Array;
  /** m² of the outermost surface, steel included. */
  readonly outer_area: number;
  /** m³ of steel. */
  readonly shell_volume: number;
}

/** In the first layer the last cell is so many times as wide as the first: where a step of the fire bites, cells are closer. */
const SPREAD = 3;

export function gridOf({ geometry, inner_radius_m, layers, shell }: WallInput, cells: number): Grid {
  const nodes = layers.length * cells + 1;
  const depth_m = new Float64Array(nodes);
  const volume = new Float64Array(layers.length * (cells + 1));
  const conductance = new Float64Array(nodes - 1);
  const shape = SHAPES[geometry];
  let node = 0;
  let slot = 0;
  for (const [layer, { thickness_m }] of layers.entries()) {
    const begin = depth_m[node]!;
    const ratio = layer === 0 && cells > 1 ? SPREAD ** (1 / (cells - 1)) : 1;
    let width = ratio > 1 ? (thickness_m * (ratio - 1)) / (ratio ** cells - 1) : thickness_m / cells;
    for (let cell = 0; cell < cells; cell++, width *= ratio) {
      const from = inner_radius_m + depth_m[node]!;
      conductance[node] = 1 / shape.resistance(from, width, inner_radius_m);
      volume[slot]! += shape.volume(from, width / 2, inner_radius_m);
      volume[++slot]! += shape.volume(from + width / 2, width / 2, inner_radius_m);
      depth_m[node + 1] = cell + 1 === cells ? begin + thickness_m : depth_m[node]! + width;
      node++;
    }
    slot++;
  }
  const outer_m = inner_radius_m + depth_m[nodes - 1]!;
  const steel_m = shell?.thickness_m ?? 0;
  return {
    layers: layers.length,
    cells,
    nodes,
    depth_m,
    volume,
    conductance,
    outer_area: shape.area(outer_m + steel_m, inner_radius_m),
    shell_volume: shape.volume(outer_m, steel_m, inner_radius_m),
  };
}

interface Shape {
  /** Area at a radius, volume and resistance of a ring from a radius on, each over the area at `inner`. */
  readonly area: (radius: number, inner: number) => number;
  readonly volume: (from: number, width: number, inner: number) => number;
  readonly resistance: (from: number, width: number, inner: number) => number;
}

const SHAPES: Readonly<Record<WallInput['geometry'], Shape>> = {
  plane: {
    area: () => 1,
    volume: (_, width) => width,
    resistance: (_, width) => width,
  },
  cylinder: {
    area: (radius, inner) => radius / inner,
    volume: (from, width, inner) => (width * (from + width / 2)) / inner,
    resistance: (from, width, inner) => inner * Math.log1p(width / from),
  },
  sphere: {
    area: (radius, inner) => (radius / inner) ** 2,
    volume: (from, width, inner) => (width * (from * (from + width) + (width * width) / 3)) / inner ** 2,
    resistance: (from, width, inner) => (inner / from) * (inner / (from + width)) * width,
  },
};
