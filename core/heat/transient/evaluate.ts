import type { Wall } from './state.ts';
import { pieceAt, ROW, type Table } from './table.ts';
import { BOIL_K, LATENT_J_kg, WATER_J_kgK } from './water.ts';

/** K over which the slopes of the heat through both faces are taken. */
const NUDGE_K = 0.05;

/**
 * From the levels: temperatures, heats, net gains and their derivatives. Flux between nodes through the integral of
 * k dT, exact for k(T) in all three shapes; the node on an interface has the heat of both its halves.
 */
export function evaluate(wall: Wall): void {
  const { grid, tables, shell, T_K, heat, capacity, gain, into_W_m2 } = wall;
  const last = grid.nodes - 1;
  setTemperatures(wall);
  let flux = 0;
  for (let layer = 0; layer < tables.length; layer++) flux = passLayer(wall, tables[layer]!, layer, flux);
  gain[last] = flux;
  if (shell) {
    const row = pieceAt(shell, T_K[last]!, 0) * ROW;
    const rise = T_K[last]! - shell[row]!;
    heat[last]! += grid.shell_volume * (shell[row + 6]! + rise * (shell[row + 4]! + 0.5 * shell[row + 5]! * rise));
    capacity[last]! += grid.shell_volume * (shell[row + 4]! + shell[row + 5]! * rise);
  }
  if (wall.wet) addWater(wall);
  if (into_W_m2) {
    wall.into_W = into_W_m2(T_K[0]!);
    gain[0]! += wall.into_W;
  }
  wall.out_W = grid.outer_area * wall.outward_W_m2(T_K[last]!);
  gain[last]! -= wall.out_W;
}

/** How the heat through both faces changes with their temperatures, from those it was evaluated at. */
export function linearise(wall: Wall): void {
  const { grid, T_K, into_W_m2, outward_W_m2 } = wall;
  const face_K = T_K[0]!;
  const surface_K = T_K[grid.nodes - 1]!;
  wall.into_slope = into_W_m2 ? (into_W_m2(face_K + NUDGE_K) - wall.into_W) / NUDGE_K : 0;
  wall.outward_slope = (grid.outer_area * outward_W_m2(surface_K + NUDGE_K) - wall.out_W) / NUDGE_K;
}

/** T of every level: the same until it boils, then 100 °C, then behind by the plateau. */
export function setTemperatures({ wet, level, T_K, plateau }: Wall): void {
  if (!wet) {
    // Quicker than `set` for so few.
    for (let node = 0; node < level.length; node++) T_K[node] = level[node]!;
    return;
  }
  const boil_K = BOIL_K;
  for (let node = 0; node < level.length; node++) {
    const s = level[node]!;
    T_K[node] = s <= boil_K ? s : Math.max(boil_K, s - plateau[node]!);
  }
}

/** Heats and gains of a layer's nodes, from the flux that reaches its first one; returns what reaches its last. */
function passLayer(wall: Wall, table: Table, layer: number, reaching: number): number {
  const { grid, T_K, heat, capacity, gain, slope_near, slope_far, piece } = wall;
  const { cells, volume, conductance } = grid;
  const rows = table.length;
  const wide = ROW;
  const slot = layer * (cells + 1);
  const first = layer * cells;
  let thetaBefore = 0;
  let kBefore = 0;
  let fluxBefore = reaching;
  for (let j = 0; j <= cells; j++) {
    const node = first + j;
    const T = T_K[node]!;
    let row = piece[slot + j]!;
    while (row + wide < rows && T > table[row + wide]!) row += wide;
    while (row > 0 && T <= table[row]!) row -= wide;
    piece[slot + j] = row;
    const rise = T - table[row]!;
    const kSlope = table[row + 2]! * rise;
    const cSlope = table[row + 5]! * rise;
    const k = table[row + 1]! + kSlope;
    const theta = table[row + 3]! + rise * (k - 0.5 * kSlope);
    const c = table[row + 4]! + cSlope;
    const part = volume[slot + j]!;
    const stored = part * (table[row + 6]! + rise * (c - 0.5 * cSlope));
    // The node on an interface has some from the layer before.
    const shared = j === 0 && layer > 0;
    heat[node] = shared ? heat[node]! + stored : stored;
    capacity[node] = shared ? capacity[node]! + part * c : part * c;
    if (j > 0) {
      const g = conductance[node - 1]!;
      const flux = g * (thetaBefore - theta);
      gain[node - 1] = fluxBefore - flux;
      fluxBefore = flux;
      slope_near[node - 1] = g * kBefore;
      slope_far[node - 1] = g * k;
    }
    thetaBefore = theta;
    kBefore = k;
  }
  return fluxBefore;
}

/** Heat of the water from 100 °C, and no temperature slope while it boils. */
function addWater({ level, heat, capacity, T_K, water_kg, plateau, slope_near, slope_far }: Wall): void {
  const last = level.length - 1;
  const [boil_K, latent, warm] = [BOIL_K, LATENT_J_kg, WATER_J_kgK];
  for (let node = 0; node <= last; node++) {
    const water = water_kg[node]!;
    if (water === 0) continue;
    const over = level[node]! - boil_K;
    if (over <= 0) {
      heat[node]! += water * warm * (T_K[node]! - boil_K);
      capacity[node]! += water * warm;
      continue;
    }
    const width = plateau[node]!;
    heat[node]! += water * latent * Math.min(over / width, 1);
    if (over >= width) continue;
    capacity[node] = (water * latent) / width;
    if (node < last) slope_near[node] = 0;
    if (node > 0) slope_far[node - 1] = 0;
  }
}
