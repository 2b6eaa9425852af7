import type { WallLayer } from '../wall-run.ts';

/**
 * A material's k(T) and volumetric heat capacity as one list of linear pieces over the temperatures of both tables,
 * with their integrals, so that one look-up gives conductivity, ∫k dT, heat capacity and ∫ρc dT, all exact.
 * `ROW` numbers a piece: from_K, k, dk/dT, ∫k, ρc, dρc/dT, ∫ρc; a first and a last piece hold the end values.
 */
export type Table = Float64Array;
export const ROW = 7;

/** Conductivity W/(m K), heat capacity J/(m³ K): piecewise linear, held beyond the rows. T rising. */
export function layerTable({ conductivity, heat_capacity, density_kg_m3 }: Omit<WallLayer, 'thickness_m' | 'water'>) {
  return tableOf(conductivity.T_K, conductivity.k_W_mK, heat_capacity.T_K, heat_capacity.c_J_kgK, density_kg_m3);
}

/** Of a lumped part, whose conductivity plays no part. */
export const heatTable = (heat_capacity: WallLayer['heat_capacity'], density_kg_m3: number): Table =>
  tableOf([heat_capacity.T_K[0]!], [1], heat_capacity.T_K, heat_capacity.c_J_kgK, density_kg_m3);

function tableOf(
  kAt_K: readonly number[],
  k: readonly number[],
  cAt_K: readonly number[],
  c: readonly number[],
  density_kg_m3: number,
): Table {
  const breaks = merged(kAt_K, cAt_K);
  const table = new Float64Array(ROW * (breaks.length + 1));
  let theta = 0;
  let heat = 0;
  for (let piece = 0; piece <= breaks.length; piece++) {
    const from = breaks[Math.max(piece - 1, 0)]!;
    const to = breaks[Math.min(piece, breaks.length - 1)]!;
    const k0 = linear(kAt_K, k, from);
    const c0 = density_kg_m3 * linear(cAt_K, c, from);
    const width = to - from;
    const kSlope = width > 0 ? (linear(kAt_K, k, to) - k0) / width : 0;
    const cSlope = width > 0 ? (density_kg_m3 * linear(cAt_K, c, to) - c0) / width : 0;
    const row = piece * ROW;
    table[row] = from;
    table[row + 1] = k0;
    table[row + 2] = kSlope;
    table[row + 3] = theta;
    table[row + 4] = c0;
    table[row + 5] = cSlope;
    table[row + 6] = heat;
    theta += width * (k0 + 0.5 * kSlope * width);
    heat += width * (c0 + 0.5 * cSlope * width);
  }
  return table;
}

/** Both rising lists as one, what stands in both once. By hand: a range makes thousands of tables. */
function merged(one: readonly number[], other: readonly number[]): readonly number[] {
  const all: number[] = [];
  for (let a = 0, b = 0; a < one.length || b < other.length; ) {
    const next = Math.min(one[a] ?? Infinity, other[b] ?? Infinity);
    if (one[a] === next) a++;
    if (other[b] === next) b++;
    all.push(next);
  }
  return all;
}

function linear(x: readonly number[], y: readonly number[], at: number): number {
  let above = 0;
  while (above < x.length && x[above]! < at) above++;
  if (above === 0) return y[0]!;
  if (above === x.length) return y[above - 1]!;
  const share = (at - x[above - 1]!) / (x[above]! - x[above - 1]!);
  return y[above - 1]! + share * (y[above]! - y[above - 1]!);
}

/** The piece in which T lies, looked for from the one where it lay last. */
export function pieceAt(table: Table, T_K: number, last: number): number {
  let piece = last;
  while ((piece + 1) * ROW < table.length && T_K > table[(piece + 1) * ROW]!) piece++;
  while (piece > 0 && T_K <= table[piece * ROW]!) piece--;
  return piece;
}

/** ∫ρc dT from the table's first row to T, J/m³. */
export function heatAt(table: Table, T_K: number): number {
  const row = pieceAt(table, T_K, 0) * ROW;
  const rise = T_K - table[row]!;
  return table[row + 6]! + rise * (table[row + 4]! + 0.5 * table[row + 5]! * rise);
}

/** ρc at T, J/(m³ K). */
export function capacityAt(table: Table, T_K: number): number {
  const row = pieceAt(table, T_K, 0) * ROW;
  return table[row + 4]! + table[row + 5]! * (T_K - table[row]!);
}
