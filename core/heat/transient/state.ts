import type { WallInput } from '../wall-run.ts';
import { type Grid, gridOf } from './grid.ts';
import { capacityAt, heatAt, heatTable, layerTable, type Table } from './table.ts';
import { BOIL_K, CONDENSES_dK, LATENT_J_kg, WATER_J_kgK } from './water.ts';

/**
 * The wall while it is being solved, per m² of hot face. The unknown of a node is its *level* s, a temperature
 * scale with the boiling plateau unrolled: T = s below 100 °C, T = 100 °C while s climbs `plateau` further, T =
 * s − plateau once the water is gone. T(s) and the heat U(s) are then both plain functions, and Newton in s is Newton
 * in enthalpy without inverting a table.
 */
export interface Wall {
  readonly grid: Grid;
  readonly tables: readonly Table[];
  readonly shell: Table | undefined;
  readonly outward_W_m2: (surface_K: number) => number;
  readonly start_K: number;
  /** W/m² into the face; undefined while its temperature is given. */
  into_W_m2: ((face_K: number) => number) | undefined;
  into_slope: number;
  outward_slope: number;
  wet: boolean;
  /** Some node with water left is at 100 °C or nearly: a front is on its way. */
  boiling: boolean;

  readonly level: Float64Array;
  readonly T_K: Float64Array;
  /** Heat stored from a fixed zero, J, and its derivative to the level. */
  readonly heat: Float64Array;
  readonly capacity: Float64Array;
  /** Net heat into the node, W. The first one lacks the unknown drive where the face's temperature is given. */
  readonly gain: Float64Array;
  /** Derivatives of the heat flux between a node and the next, to the level of either. */
  readonly slope_near: Float64Array;
  readonly slope_far: Float64Array;
  /** Piece of its table in which each layer's node lies: where the next look-up begins. */
  readonly piece: Int32Array;
  into_W: number;
  out_W: number;

  /** Water not yet boiled, kg, and the width it gives the plateau. */
  readonly water_kg: Float64Array;
  readonly plateau: Float64Array;
  /** Heat that left with the water, J. */
  spent_J: number;
  /** Latent heat of what boiled in the last step, W: where vapour goes outward it comes to the shell in the next one. */
  readonly condenses: boolean;
  vapour_W: number;
}

/** Rows of one block of memory: a run needs twenty, and each array of its own costs a microsecond. */
export function rowsOf(length: number, count: number): () => Float64Array {
  const { buffer } = new Float64Array(length * count);
  let used = 0;
  return () => new Float64Array(buffer, 8 * length * used++, length);
}

export function startWall(input: WallInput, cells: number): Wall {
  const grid = gridOf(input, cells);
  const { nodes } = grid;
  const row = rowsOf(nodes, 9);
  const tables = input.layers.map(layerTable);
  const { shell, start_K, outward_W_m2 } = input;
  const condenses = input.vapour === 'shell';
  const wall: Wall = {
    grid,
    tables,
    shell: shell && heatTable(shell.heat_capacity, shell.density_kg_m3),
    outward_W_m2: condenses ? (surface_K) => outward_W_m2(surface_K) - condensing_W_m2(wall, surface_K) : outward_W_m2,
    start_K,
    into_W_m2: undefined,
    into_slope: 0,
    outward_slope: 0,
    wet: false,
    boiling: false,
    level: row().fill(start_K),
    T_K: row().fill(start_K),
    heat: row(),
    capacity: row(),
    gain: row(),
    slope_near: row(),
    slope_far: row(),
    piece: new Int32Array(grid.volume.length),
    into_W: 0,
    out_W: 0,
    water_kg: row(),
    plateau: row(),
    spent_J: 0,
    condenses,
    vapour_W: 0,
  };
  for (const [layer, { water, density_kg_m3 }] of input.layers.entries()) {
    // A wall that starts above 100 °C has none left.
    if (!(water > 0) || start_K > BOIL_K) continue;
    wall.wet = true;
    forNodes(grid, layer, (node, volume) => {
      wall.water_kg[node]! += water * density_kg_m3 * volume;
    });
  }
  for (let node = 0; wall.wet && node < nodes; node++) setPlateau(wall, node);
  return wall;
}

/** Given back to a shell below 100 °C. */
function condensing_W_m2({ grid, vapour_W }: Wall, surface_K: number): number {
  const share = Math.min(Math.max((BOIL_K - surface_K) / CONDENSES_dK, 0), 1);
  return (share * vapour_W) / grid.outer_area;
}

/** As wide as makes the level climb on the plateau as it does below it for the same heat: Newton feels no step. */
export function setPlateau(wall: Wall, node: number): void {
  const water = wall.water_kg[node]!;
  wall.plateau[node] = water > 0 ? (water * LATENT_J_kg) / (dryCapacity(wall, node, BOIL_K) + water * WATER_J_kgK) : 0;
}

function forNodes({ cells, volume }: Grid, layer: number, use: (node: number, volume: number) => void): void {
  for (let j = 0; j <= cells; j++) use(layer * cells + j, volume[layer * (cells + 1) + j]!);
}

/** J/K of a node at T without its water; steel belongs to the last. */
function dryCapacity({ grid, tables, shell }: Wall, node: number, T_K: number): number {
  let sum = shell && node === grid.nodes - 1 ? grid.shell_volume * capacityAt(shell, T_K) : 0;
  for (const [layer, table] of tables.entries()) {
    const j = node - layer * grid.cells;
    if (j >= 0 && j <= grid.cells) sum += grid.volume[layer * (grid.cells + 1) + j]! * capacityAt(table, T_K);
  }
  return sum;
}

/** Heat taken up since the start, J, from what the wall is now: temperatures, water left, water gone. */
export function storedHeat(wall: Wall): number {
  const { grid, tables, shell, T_K, start_K, water_kg, plateau, level } = wall;
  let sum = wall.spent_J;
  for (const [layer, table] of tables.entries()) {
    forNodes(grid, layer, (node, volume) => {
      sum += volume * (heatAt(table, T_K[node]!) - heatAt(table, start_K));
    });
  }
  if (shell) sum += grid.shell_volume * (heatAt(shell, T_K[grid.nodes - 1]!) - heatAt(shell, start_K));
  for (let node = 0; node < grid.nodes; node++) {
    const water = water_kg[node]!;
    if (water === 0) continue;
    const boiled = Math.min(Math.max((level[node]! - BOIL_K) / plateau[node]!, 0), 1);
    sum += water * (WATER_J_kgK * (T_K[node]! - start_K) + boiled * LATENT_J_kg);
  }
  return sum;
}
