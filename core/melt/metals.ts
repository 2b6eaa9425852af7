import { enthalpy_J_mol, heatCapacity_J_molK, type SpeciesName, speciesOf } from '../fire/gas/nasa.ts';
import type { Element } from '../materials/pour.ts';
import type { SourceId } from '../sources/source.ts';

/** Cold metal is taken as the solid at 298.15 K: heats below are counted from there. */
const REFERENCE_K = 298.15;

/** Heat content above the cold solid, J/kg, and its slope, inside the temperatures it is known for. */
interface Phase {
  readonly from_K: number;
  readonly to_K: number;
  readonly heat_J_kg: (T_K: number) => number;
  readonly capacity_J_kgK: (T_K: number) => number;
}

interface Metal {
  readonly melting_K: number;
  readonly source: SourceId;
  /** Coldest first: iron changes its lattice twice. */
  readonly solid: readonly Phase[];
  readonly liquid: Phase;
}

const nasaPhase = (species: SpeciesName, zero_J_mol: number, from_K: number, to_K: number): Phase => {
  const { molar_mass_kg_mol } = speciesOf(species);
  return {
    from_K,
    to_K,
    heat_J_kg: (T_K) => (enthalpy_J_mol({ species, T_K, extrapolate: true }) - zero_J_mol) / molar_mass_kg_mol,
    capacity_J_kgK: (T_K) => heatCapacity_J_molK({ species, T_K, extrapolate: true }) / molar_mass_kg_mol,
  };
};

function nasa(solid: readonly SpeciesName[], liquid: SpeciesName): Metal {
  const zero_J_mol = enthalpy_J_mol({ species: solid[0]!, T_K: REFERENCE_K });
  const ends = (species: SpeciesName) => {
    const { pieces } = speciesOf(species);
    return [pieces[0]!.from_K, pieces.at(-1)!.to_K] as const;
  };
  const [melting_K, hottest_K] = ends(liquid);
  return {
    melting_K,
    source: 'nasa-tm-4513',
    solid: solid.map((species) => nasaPhase(species, zero_J_mol, ...ends(species))),
    liquid: nasaPhase(liquid, zero_J_mol, melting_K, hottest_K),
  };
}

interface Constants {
  readonly melting_K: number;
  readonly fusion_J_kg: number;
  /** c = a + b T of the solid, from 298.15 K to the melting point. */
  readonly solid_J_kgK: readonly [a: number, b_per_K: number];
  readonly liquid_J_kgK: number;
  readonly to_K: number;
}

function constants({ melting_K, fusion_J_kg, solid_J_kgK: [a, b], liquid_J_kgK, to_K }: Constants): Metal {
  const solidHeat = (T_K: number) => a * (T_K - REFERENCE_K) + (b / 2) * (T_K ** 2 - REFERENCE_K ** 2);
  const melted_J_kg = solidHeat(melting_K) + fusion_J_kg;
  return {
    melting_K,
    source: 'crc-fusion',
    solid: [{ from_K: REFERENCE_K, to_K: melting_K, heat_J_kg: solidHeat, capacity_J_kgK: (T_K) => a + b * T_K }],
    liquid: {
      from_K: melting_K,
      to_K,
      heat_J_kg: (T_K) => melted_J_kg + liquid_J_kgK * (T_K - melting_K),
      capacity_J_kgK: () => liquid_J_kgK,
    },
  };
}

/** Tin by the Gibbs energy of its phases: G = a + b T + c T ln T + d T² + e T³ + f/T + g T⁻⁹, so H = G − T dG/dT. */
function sgtePhase(
  [a, c, d, e, f, g]: readonly [number, number, number, number, number, number],
  from_K: number,
  to_K: number,
): Phase {
  const molar_mass_kg_mol = 0.11871;
  return {
    from_K,
    to_K,
    heat_J_kg: (T) => (a - c * T - d * T ** 2 - 2 * e * T ** 3 + (2 * f) / T + 10 * g * T ** -9) / molar_mass_kg_mol,
    capacity_J_kgK: (T) => (-c - 2 * d * T - 6 * e * T ** 2 - (2 * f) / T ** 2 - 90 * g * T ** -10) / molar_mass_kg_mol,
  };
}

const tin: Metal = {
  melting_K: 505.08,
  source: 'sgte-dinsdale-1991',
  solid: [sgtePhase([-5855.135, -15.961, -18.8702e-3, 3.121167e-6, -61_960, 0], 250, 505.08)],
  liquid: sgtePhase([2524.724 + 6971.587, -8.2590486, -16.814429e-3, 2.623131e-6, -1_081_244, 0], 505.08, 800),
};

const graphite = nasa(['C(gr)'], 'C(gr)');

const metals: Readonly<Record<Element, Metal>> = {
  Al: nasa(['AL(cr)'], 'AL(L)'),
  Cu: nasa(['Cu(cr)'], 'Cu(L)'),
  Zn: nasa(['Zn(cr)'], 'Zn(L)'),
  Fe: nasa(['Fe(a)', 'Fe(c)', 'Fe(d)'], 'Fe(L)'),
  Si: nasa(['Si(cr)'], 'Si(L)'),
  Sn: tin,
  // Carbon dissolves and does not melt: the heat of solution is left to the alloy's correction.
  C: { ...graphite, melting_K: Number.POSITIVE_INFINITY },
  // Fusion and melting point from CRC; heat capacities from memory, within 2 % of NASA's.
  Pb: constants({
    melting_K: 600.6,
    fusion_J_kg: 23_000,
    solid_J_kgK: [116, 0.0455],
    liquid_J_kgK: 146,
    to_K: 1300,
  }),
  Mg: constants({
    melting_K: 923,
    fusion_J_kg: 348_900,
    solid_J_kgK: [890, 0.46],
    liquid_J_kgK: 1411,
    to_K: 1300,
  }),
  // A minor element here: all of it from memory but the fusion.
  Mn: constants({
    melting_K: 1519,
    fusion_J_kg: 235_000,
    solid_J_kgK: [420, 0.25],
    liquid_J_kgK: 870,
    to_K: 2000,
  }),
};

/** Past the ends a phase is known for, its heat goes on straight: a supercooled liquid, an element melted in an alloy. */
function heatOf({ from_K, to_K, heat_J_kg, capacity_J_kgK }: Phase, T_K: number): number {
  const known_K = Math.min(Math.max(T_K, from_K), to_K);
  return heat_J_kg(known_K) + (T_K === known_K ? 0 : capacity_J_kgK(known_K) * (T_K - known_K));
}

export interface ElementAt {
  readonly element: Element;
  readonly T_K: number;
}

/**
 * Heat content of the solid element above the solid at 298.15 K, J/kg. NASA TM-4513 polynomials (tin by SGTE; lead,
 * magnesium, manganese by CRC constants) up to the melting point; straight on above it. Tables of fusion
 * agree within 1.5 %, of tin within 1.8 %, of zinc within 3.5 %.
 */
export function solidHeat_J_kg({ element, T_K }: ElementAt): number {
  const { solid } = metals[element];
  return heatOf(solid.find(({ to_K }) => T_K <= to_K) ?? solid.at(-1)!, T_K);
}

/**
 * Heat content of the liquid element above the solid at 298.15 K, J/kg: fusion is in it. As `solidHeat_J_kg`; straight
 * on below the melting point, where the element is liquid only in an alloy.
 */
export const liquidHeat_J_kg = ({ element, T_K }: ElementAt): number => heatOf(metals[element].liquid, T_K);

/** K. Carbon has none: it dissolves. */
export const meltingPoint_K = (element: Element): number => metals[element].melting_K;

export const sourceOfHeat = (element: Element): SourceId => metals[element].source;

/** Heat of fusion at the melting point, J/kg. */
export const fusion_J_kg = (element: Element): number => {
  const T_K = meltingPoint_K(element);
  return liquidHeat_J_kg({ element, T_K }) - solidHeat_J_kg({ element, T_K });
};
