import { ELEMENTS } from './mixture.ts';
import { GAS_CONSTANT, type SpeciesName, speciesOf } from './nasa.ts';

/** What burned gas is made of here; graphite, the one solid, is last. */
export const PRODUCTS = [
  'N2',
  'O2',
  'CO2',
  'H2O',
  'CO',
  'H2',
  'OH',
  'O',
  'H',
  'NO',
  'Ar',
  'C(gr)',
] as const satisfies readonly SpeciesName[];
export type Product = (typeof PRODUCTS)[number];

/** Place of each product in the arrays here. */
export const AT = Object.fromEntries(PRODUCTS.map((name, at) => [name, at])) as Record<Product, number>;
export const GRAPHITE = AT['C(gr)'];
export const COUNT = PRODUCTS.length;
/** Both polynomials of every product meet here. */
const MIDDLE_K = 1000;

/** Atoms of `ELEMENTS[e]` in `PRODUCTS[s]` at `s × 5 + e`. */
export const ATOMS = Float64Array.from(
  PRODUCTS.flatMap((name) => ELEMENTS.map((element) => speciesOf(name).composition[element] ?? 0)),
);

export const MOLAR_MASS_kg_mol = Float64Array.from(PRODUCTS, (name) => speciesOf(name).molar_mass_kg_mol);

const seven = (T_K: number): Float64Array =>
  Float64Array.from(
    PRODUCTS.flatMap((name) => {
      const { pieces } = speciesOf(name);
      return [...(pieces.find(({ to_K }) => T_K <= to_K) ?? pieces.at(-1)!).a];
    }),
  );
const cold = seven(MIDDLE_K - 1);
const hot = seven(MIDDLE_K + 1);

/** cp/R, h/(RT) and g°/(RT) of every product at one temperature, written into arrays that are kept and refilled. */
export interface Reduced {
  readonly cp: Float64Array;
  readonly h: Float64Array;
  readonly g: Float64Array;
}
export const reducedArrays = (): Reduced => ({
  cp: new Float64Array(COUNT),
  h: new Float64Array(COUNT),
  g: new Float64Array(COUNT),
});

/** The polynomials of `nasa.ts` for all products at once; 200–5000 K, no check: the solver keeps inside. */
export function fillReduced({ cp, h, g }: Reduced, T_K: number): void {
  const a = T_K <= MIDDLE_K ? cold : hot;
  const logT = Math.log(T_K);
  for (let s = 0, i = 0; s < COUNT; s++, i += 7) {
    const t1 = a[i + 1]! * T_K;
    const t2 = a[i + 2]! * T_K * T_K;
    const t3 = a[i + 3]! * T_K * T_K * T_K;
    const t4 = a[i + 4]! * T_K * T_K * T_K * T_K;
    cp[s] = a[i]! + t1 + t2 + t3 + t4;
    const enthalpy = a[i]! + t1 / 2 + t2 / 3 + t3 / 4 + t4 / 5 + a[i + 5]! / T_K;
    h[s] = enthalpy;
    g[s] = enthalpy - (a[i]! * logT + t1 + t2 / 2 + t3 / 3 + t4 / 4 + a[i + 6]!);
  }
}

const scratch = reducedArrays();

/** Enthalpy of moles of `PRODUCTS` at a temperature, J, heats of formation counted. */
export function productsEnthalpy_J(moles: ArrayLike<number>, T_K: number): number {
  fillReduced(scratch, T_K);
  let sum = 0;
  for (let s = 0; s < COUNT; s++) sum += moles[s]! * scratch.h[s]!;
  return GAS_CONSTANT * T_K * sum;
}
