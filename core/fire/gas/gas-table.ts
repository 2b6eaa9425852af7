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

/** Of each product, `HELD` numbers: cp/R as a polynomial, h/(RT) and g°/(RT) with its divisions done. */
const polynomials = (T_K: number): Float64Array =>
  Float64Array.from(
    PRODUCTS.flatMap((name) => {
      const { pieces } = speciesOf(name);
      const { a } = pieces.find(({ to_K }) => T_K <= to_K) ?? pieces.at(-1)!;
      const [a0, a1, a2, a3, a4, a5, a6] = a as unknown as Seven;
      const enthalpy = [a1 / 2, a2 / 3, a3 / 4, a4 / 5, a5];
      const gibbs = [a1 / 2, a2 / 6, a3 / 12, a4 / 20, a6];
      return [a0, a1, a2, a3, a4, ...enthalpy, ...gibbs];
    }),
  );
type Seven = readonly [number, number, number, number, number, number, number];
const HELD = 15;
const cold = polynomials(MIDDLE_K - 1);
const hot = polynomials(MIDDLE_K + 1);

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
  const perLog = 1 - Math.log(T_K);
  const perT = 1 / T_K;
  for (let s = 0, i = 0; s < COUNT; s++, i += HELD) {
    const a0 = a[i]!;
    const a5 = a[i + 9]! * perT;
    cp[s] = a0 + T_K * (a[i + 1]! + T_K * (a[i + 2]! + T_K * (a[i + 3]! + T_K * a[i + 4]!)));
    h[s] = a0 + T_K * (a[i + 5]! + T_K * (a[i + 6]! + T_K * (a[i + 7]! + T_K * a[i + 8]!))) + a5;
    const entropic = T_K * (a[i + 10]! + T_K * (a[i + 11]! + T_K * (a[i + 12]! + T_K * a[i + 13]!)));
    g[s] = a0 * perLog - entropic + a5 - a[i + 14]!;
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
