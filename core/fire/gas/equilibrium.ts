import { AskError } from '../../ask-error.ts';
import { solveLinear } from './gas-linear.ts';
import { startFrom } from './gas-start.ts';
import * as table from './gas-table.ts';
import { ASH_J_kgK, ELEMENTS } from './mixture.ts';
import { ATMOSPHERE_Pa, GAS_CONSTANT, REFERENCE_K, STANDARD_Pa } from './nasa.ts';

export interface EquilibriumInput {
  /** Moles of C, H, O, N, Ar in the order of `ELEMENTS`; an element may be absent. */
  readonly elements_mol: readonly number[];
  readonly pressure_Pa?: number;
  /** Solid that only warms up. */
  readonly ash_kg?: number;
}

export interface Equilibrium {
  readonly T_K: number;
  /** Moles of `PRODUCTS`, graphite last. */
  readonly moles: Readonly<Record<Product, number>>;
  /** Of the gas alone: graphite takes no room in it. */
  readonly gas_mol: number;
  readonly iterations: number;
}

// Constants of this file: the innermost loops read them some hundred times a step.
const { ATOMS, COUNT, GRAPHITE, PRODUCTS, fillReduced } = table;
type Product = table.Product;

const LOWEST_K = 200;
const HIGHEST_K = 5000;
const MOST_ITERATIONS = 120;
/** Newton squares its error: after a step this small what is left to correct is some 1e-11. */
const SETTLED = 3e-6;
const ABSENT = 1e-12;
const LOG_TRACE = Math.log(1e-25);
const E = ELEMENTS.length;

// Kept between calls: an equilibrium is solved thousands of times for one range, in one thread.
const amounts = new Float64Array(COUNT);
const logs = new Float64Array(COUNT);
const step = new Float64Array(COUNT);
const potential = new Float64Array(COUNT);
const target = new Float64Array(E);
const present = new Uint8Array(COUNT);
/** Row of an element in the system, -1 where it is absent. */
const rowOf = new Int32Array(E);
const rowElement = new Int32Array(E);
/** Elements of each product, one after another, and where each product's begin. */
const HOLDS = Int32Array.from(
  PRODUCTS.flatMap((_, s) => ELEMENTS.flatMap((_, e) => (ATOMS[s * ELEMENTS.length + e]! > 0 ? [e] : []))),
);
const HOLDS_FROM = Int32Array.from([...PRODUCTS, ''], (_, s) =>
  ATOMS.subarray(0, s * ELEMENTS.length).reduce((sum, atoms) => sum + (atoms > 0 ? 1 : 0), 0),
);
const reduced = table.reducedArrays();
const matrix = new Float64Array((E + 3) * (E + 4));

/**
 * Chemical equilibrium at a given temperature and pressure: least Gibbs energy of 11 ideal gases and graphite.
 * 200–5000 K. Source: reduced iteration of Gordon and McBride, NASA RP-1311, data of NASA TM-4513.
 * @throws AskError `out-of-range`
 */
export const equilibriumAt = (input: EquilibriumInput & { readonly T_K: number }): Equilibrium => {
  if (!(input.T_K >= LOWEST_K && input.T_K <= HIGHEST_K)) throw outside(input.T_K);
  return solve(input, input.T_K, undefined);
};

/**
 * Equilibrium of an adiabatic flame at constant pressure: as `equilibriumAt`, with the temperature at which the products
 * (and ash) hold the enthalpy of what went in.
 * @throws AskError `impossible` where no temperature from 200 to 5000 K does.
 */
export const adiabaticEquilibrium = (input: EquilibriumInput & { readonly enthalpy_J: number }): Equilibrium =>
  solve(input, undefined, input.enthalpy_J);

function solve(input: EquilibriumInput, T_K: number | undefined, enthalpy_J: number | undefined): Equilibrium {
  const { elements_mol, pressure_Pa = ATMOSPHERE_Pa, ash_kg = 0 } = input;
  let atoms = 0;
  for (let e = 0; e < E; e++) atoms += elements_mol[e]!;
  if (!(atoms > 0 && pressure_Pa > 0 && Number.isFinite(atoms) && Number.isFinite(pressure_Pa)))
    throw new RangeError('An equilibrium needs atoms and a pressure above zero.');
  for (let e = 0; e < E; e++) target[e] = elements_mol[e]! / atoms;
  const rowCount = chooseRows();
  const logPressure = Math.log(pressure_Pa / STANDARD_Pa);
  const ash = (ash_kg * ASH_J_kgK) / (atoms * GAS_CONSTANT);
  const heat_K = enthalpy_J === undefined ? 0 : enthalpy_J / (atoms * GAS_CONSTANT);

  const fixed = T_K !== undefined;
  const T = startFrom({ target, amounts, reduced, logPressure, ash, heat_K, T_K });
  for (let s = 0; s < COUNT; s++) {
    if (!present[s]) amounts[s] = 0;
    else logs[s] = Math.log(amounts[s]!);
  }
  // Below one oxygen atom a carbon atom no gas here holds the carbon: soot is there from the start.
  const soot = present[GRAPHITE] === 1 && target[2]! <= target[0]! * (1 + 1e-9);
  if (!soot) amounts[GRAPHITE] = 0;
  const system: System = { rowCount, soot, logPressure, ash, heat_K, T, fixed };
  let switches = 0;

  for (let iterations = 1; iterations <= MOST_ITERATIONS; iterations++) {
    fillReduced(reduced, system.T);
    const size = assemble(system);
    if (!solveLinear(matrix, size)) break;
    const largest = advance(system, size);
    if (!(largest < SETTLED)) continue;
    if (switches < 4 && sootIsWrong(system.soot, size)) {
      // Soot may run below nothing on the way; only at rest is it dropped, or taken in where gas would shed it.
      system.soot = !system.soot;
      amounts[GRAPHITE] = 0;
      switches++;
      continue;
    }
    if (!(system.T >= LOWEST_K && system.T <= HIGHEST_K)) throw outside(system.T);
    return result(system.T, atoms, iterations);
  }
  throw unsettled(system.T);
}

/** Rows for the elements that are there, and the products that can be made of them. */
function chooseRows(): number {
  let count = 0;
  for (let e = 0; e < E; e++) {
    const there = target[e]! > ABSENT;
    rowOf[e] = there ? count : -1;
    if (there) rowElement[count++] = e;
  }
  for (let s = 0; s < COUNT; s++) {
    present[s] = 1;
    for (let e = 0; e < E; e++) if (ATOMS[s * E + e]! > 0 && !(target[e]! > ABSENT)) present[s] = 0;
  }
  return count;
}

interface System {
  readonly rowCount: number;
  soot: boolean;
  readonly logPressure: number;
  readonly ash: number;
  readonly heat_K: number;
  T: number;
  readonly fixed: boolean;
}

let gas = 0;

/**
 * The reduced Newton system: a row for each element's potential, one for soot, one for ln of all gas, one for ln T.
 * The right side stands in the last column. Symmetric but for rounding.
 */
function assemble({ rowCount, soot, logPressure, ash, heat_K, T, fixed }: System): number {
  const sootAt = rowCount;
  const gasAt = rowCount + (soot ? 1 : 0);
  const heatAt = gasAt + 1;
  const size = gasAt + (fixed ? 1 : 2);
  const width = size + 1;
  matrix.fill(0, 0, size * width);
  const { cp, h, g } = reduced;
  let sum = 0;
  for (let s = 0; s < GRAPHITE; s++) sum += amounts[s]!;
  gas = sum;
  const logGas = Math.log(gas);

  let heat = 0;
  let heatPotential = 0;
  let heatSquare = 0;
  let capacity = 0;
  let gasPotential = 0;
  for (let s = 0; s < GRAPHITE; s++) {
    const n = amounts[s]!;
    if (n === 0) continue;
    const mu = g[s]! + logs[s]! - logGas + logPressure;
    potential[s] = mu;
    gasPotential += n * mu;
    heat += n * h[s]!;
    heatPotential += n * h[s]! * mu;
    heatSquare += n * h[s]! * h[s]!;
    capacity += n * cp[s]!;
    const to = HOLDS_FROM[s + 1]!;
    for (let j = HOLDS_FROM[s]!; j < to; j++) {
      const e = HOLDS[j]!;
      const row = rowOf[e]! * width;
      const share = n * ATOMS[s * E + e]!;
      for (let k = j; k < to; k++) {
        const other = HOLDS[k]!;
        matrix[row + rowOf[other]!]! += share * ATOMS[s * E + other]!;
      }
      matrix[row + gasAt]! += share;
      if (!fixed) matrix[row + heatAt]! += share * h[s]!;
      matrix[row + size]! += share * (mu - 1);
    }
  }
  for (let i = 0; i < rowCount; i++) {
    matrix[i * width + size]! += target[rowElement[i]!]!;
    for (let k = 0; k < i; k++) matrix[i * width + k] = matrix[k * width + i]!;
    matrix[gasAt * width + i] = matrix[i * width + gasAt]!;
    if (!fixed) matrix[heatAt * width + i] = matrix[i * width + heatAt]!;
  }
  matrix[gasAt * width + size] = gasPotential;
  if (soot) {
    // Carbon is the first row where it is there at all.
    matrix[sootAt] = 1;
    matrix[sootAt * width] = 1;
    matrix[sootAt * width + size] = g[GRAPHITE]!;
    matrix[size]! -= amounts[GRAPHITE]!;
    heat += amounts[GRAPHITE]! * h[GRAPHITE]!;
    capacity += amounts[GRAPHITE]! * cp[GRAPHITE]!;
  }
  if (!fixed) {
    const ashHeat = ash * (1 - REFERENCE_K / T);
    const gasHeat = heat - (soot ? amounts[GRAPHITE]! * h[GRAPHITE]! : 0);
    matrix[gasAt * width + heatAt] = gasHeat;
    matrix[heatAt * width + gasAt] = gasHeat;
    if (soot) {
      matrix[sootAt * width + heatAt] = h[GRAPHITE]!;
      matrix[heatAt * width + sootAt] = h[GRAPHITE]!;
    }
    matrix[heatAt * width + heatAt] = capacity + ash + heatSquare;
    matrix[heatAt * width + size] = heat_K / T - heat - ashHeat + heatPotential;
  }
  return size;
}

/** Takes the step, shortened where it is too long for logarithms. Returns the largest change, 1 where it was shortened. */
function advance(system: System, size: number): number {
  const { rowCount, soot, fixed } = system;
  const width = size + 1;
  const gasAt = rowCount + (soot ? 1 : 0);
  const logGas = matrix[gasAt * width + size]!;
  const logT = fixed ? 0 : matrix[(gasAt + 1) * width + size]!;
  let longest = Math.max(5 * Math.abs(logT), 5 * Math.abs(logGas));
  let largest = Math.abs(logT);
  for (let s = 0; s < GRAPHITE; s++) {
    const n = amounts[s]!;
    if (n === 0) continue;
    let change = logGas - potential[s]! + reduced.h[s]! * logT;
    for (let j = HOLDS_FROM[s]!; j < HOLDS_FROM[s + 1]!; j++) {
      const e = HOLDS[j]!;
      change += ATOMS[s * E + e]! * matrix[rowOf[e]! * width + size]!;
    }
    step[s] = change;
    const share = n / gas;
    if (share > 1e-8) longest = Math.max(longest, Math.abs(change));
    else if (change > 0) longest = Math.max(longest, (2 * change) / Math.max(2, -Math.log(share) - 9.2));
    largest = Math.max(largest, Math.abs(change) * share);
  }
  const sootStep = soot ? matrix[rowCount * width + size]! : 0;
  largest = Math.max(largest, Math.abs(sootStep));
  const part = longest > 2 ? 2 / longest : 1;
  for (let s = 0; s < GRAPHITE; s++) {
    if (amounts[s] === 0) continue;
    const log = Math.max(LOG_TRACE, logs[s]! + part * step[s]!);
    logs[s] = log;
    amounts[s] = Math.exp(log);
  }
  amounts[GRAPHITE]! += part * sootStep;
  system.T *= Math.exp(part * logT);
  if (!(system.T > LOWEST_K / 2 && system.T < HIGHEST_K * 1.2)) {
    system.T = Math.min(Math.max(system.T, LOWEST_K), HIGHEST_K);
  }
  return part < 1 ? 1 : largest;
}

/** Soot below nothing, or gas in which carbon weighs more than as soot. */
function sootIsWrong(soot: boolean, size: number): boolean {
  if (soot) return amounts[GRAPHITE]! < 0;
  if (present[GRAPHITE] === 0) return false;
  return matrix[size]! > reduced.g[GRAPHITE]! + 1e-9;
}

function result(T_K: number, atoms: number, iterations: number): Equilibrium {
  let gas_mol = 0;
  for (let s = 0; s < GRAPHITE; s++) gas_mol += amounts[s]! * atoms;
  return Object.freeze({ T_K, moles: Object.freeze(namedMoles(atoms)), gas_mol, iterations });
}

/** In the order of `PRODUCTS`; written out, since an object of one shape is made six times as quickly. */
const namedMoles = (atoms: number): Record<Product, number> => ({
  N2: amounts[0]! * atoms,
  O2: amounts[1]! * atoms,
  CO2: amounts[2]! * atoms,
  H2O: amounts[3]! * atoms,
  CO: amounts[4]! * atoms,
  H2: amounts[5]! * atoms,
  OH: amounts[6]! * atoms,
  O: amounts[7]! * atoms,
  H: amounts[8]! * atoms,
  NO: amounts[9]! * atoms,
  Ar: amounts[10]! * atoms,
  'C(gr)': amounts[11]! * atoms,
});

const outside = (T_K: number): AskError =>
  new AskError({
    code: 'impossible',
    what: `the burned gas would be at ${Number.isFinite(T_K) ? Math.round(T_K) : 'no'} K: too little burns to keep a flame, or too much to know`,
    expected: 'a mixture whose products are between 200 and 5000 K',
    example: '15%',
  });

const unsettled = (T_K: number): AskError =>
  new AskError({
    code: 'impossible',
    what: `no burned state was found near ${Math.round(T_K)} K`,
    expected: 'a mixture that can burn: from a third to two and a half times the balanced fuel',
    example: '15%',
  });
