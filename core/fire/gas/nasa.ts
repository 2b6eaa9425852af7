import { AskError } from '../../ask-error.ts';
import table from '../data/nasa-species.json' with { type: 'json' };

/** Molar gas constant, J/(mol K): exact by the SI of 2019. */
export const GAS_CONSTANT = 8.31446261815324;
/** Pressure that the entropies of the table belong to, 1 bar. */
export const STANDARD_Pa = table.pressure_Pa;
/** One atmosphere, where no other pressure is said. */
export const ATMOSPHERE_Pa = 101_325;
/** Where heats of formation and heating values are given. */
export const REFERENCE_K = 298.15;

export type Element = 'C' | 'H' | 'O' | 'N' | 'Ar';

const NAMES = [
  'N2 O2 CO2 H2O CO H2 OH O H NO Ar CH4 C3H8 n-C4H10 i-C4H10 Zn',
  'C(gr) H2O(L) AL(cr) AL(L) Cu(cr) Cu(L) Zn(cr) Zn(L) Fe(a) Fe(c) Fe(d) Fe(L) Si(cr) Si(L)',
] as const;
type Words<S extends string> = S extends `${infer Head} ${infer Tail}` ? Head | Words<Tail> : S;
export type SpeciesName = Words<(typeof NAMES)[number]>;

/** One temperature range of a polynomial: a1 to a7 as the report numbers them. */
export interface Piece {
  readonly from_K: number;
  readonly to_K: number;
  readonly a: readonly number[];
}

export interface Species {
  readonly name: SpeciesName;
  readonly phase: 'gas' | 'condensed';
  readonly molar_mass_kg_mol: number;
  readonly composition: Readonly<Record<string, number>>;
  /** Coldest first, without gaps. */
  readonly pieces: readonly Piece[];
}

const byName = new Map(table.species.map((entry) => [entry.name, entry as unknown as Species]));

export const speciesNames = NAMES.flatMap((line) => line.split(' ')) as readonly SpeciesName[];
export const speciesOf = (name: SpeciesName): Species => byName.get(name)!;

/** cp/R = a1 + a2 T + a3 T² + a4 T³ + a5 T⁴ */
export const cpOverR = (a: readonly number[], T_K: number): number =>
  a[0]! + T_K * (a[1]! + T_K * (a[2]! + T_K * (a[3]! + T_K * a[4]!)));

/** h/(R T) = a1 + a2 T/2 + a3 T²/3 + a4 T³/4 + a5 T⁴/5 + a6/T */
export const hOverRT = (a: readonly number[], T_K: number): number =>
  a[0]! + T_K * (a[1]! / 2 + T_K * (a[2]! / 3 + T_K * (a[3]! / 4 + (T_K * a[4]!) / 5))) + a[5]! / T_K;

/** s/R = a1 ln T + a2 T + a3 T²/2 + a4 T³/3 + a5 T⁴/4 + a7 */
export const sOverR = (a: readonly number[], T_K: number): number =>
  a[0]! * Math.log(T_K) + T_K * (a[1]! + T_K * (a[2]! / 2 + T_K * (a[3]! / 3 + (T_K * a[4]!) / 4))) + a[6]!;

export interface State {
  readonly species: SpeciesName;
  readonly T_K: number;
  /** Past the ends of the table the nearest range is carried on: for a liquid just below its melting point. */
  readonly extrapolate?: boolean;
}

/** Lowest and highest temperature of a species in the table. */
export const rangeOf = (species: SpeciesName): { readonly from_K: number; readonly to_K: number } => {
  const { pieces } = speciesOf(species);
  return { from_K: pieces[0]!.from_K, to_K: pieces.at(-1)!.to_K };
};

/**
 * Molar properties by the seven-coefficient polynomials of McBride, Gordon and Reno, NASA TM-4513 (1993), J/(mol K) and
 * J/mol. Enthalpy counts the heat of formation at 298.15 K; entropy is at 1 bar. Valid inside `rangeOf(species)`.
 * @throws AskError `out-of-range` outside it, unless `extrapolate`.
 */
export const heatCapacity_J_molK = (state: State): number => GAS_CONSTANT * cpOverR(coefficients(state), state.T_K);
/** See `heatCapacity_J_molK`. */
export const enthalpy_J_mol = (state: State): number =>
  GAS_CONSTANT * state.T_K * hOverRT(coefficients(state), state.T_K);
/** See `heatCapacity_J_molK`. */
export const entropy_J_molK = (state: State): number => GAS_CONSTANT * sOverR(coefficients(state), state.T_K);
/** g = h − T s, at 1 bar. See `heatCapacity_J_molK`. */
export const gibbs_J_mol = (state: State): number => enthalpy_J_mol(state) - state.T_K * entropy_J_molK(state);

function coefficients({ species, T_K, extrapolate = false }: State): readonly number[] {
  const { pieces } = speciesOf(species);
  const { from_K, to_K } = rangeOf(species);
  if (!(T_K >= from_K && T_K <= to_K) && !(extrapolate && T_K > 0))
    throw new AskError({
      code: 'out-of-range',
      what: `${species} has no data at ${T_K.toFixed(0)} K`,
      expected: `a temperature from ${from_K} to ${to_K} K`,
      example: `${Math.round(Math.min(Math.max(T_K, from_K), to_K) || from_K)} K`,
    });
  return (pieces.find((piece) => T_K <= piece.to_K) ?? pieces.at(-1)!).a;
}
