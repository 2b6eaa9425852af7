import { AskError } from '../ask-error.ts';
import type { Element, Pour } from '../materials/pour.ts';
import type { Spread } from '../materials/spread.ts';
import type { Step } from '../step.ts';
import { liquidHeat_J_kg, meltingPoint_K, solidHeat_J_kg, sourceOfHeat } from './metals.ts';

/** One point of the way from cold to pour: heat above the metal as charged, J/kg. */
export interface HeatPoint {
  readonly T_K: number;
  readonly heat_J_kg: number;
}

const HOTTEST_K = 2100;
const KNOTS = 12;

const shares = ({ composition }: Pour) => Object.entries(composition) as [Element, number][];

/** Kopp's rule: an alloy holds the heat of its elements by mass. Above the solid elements at 298.15 K. */
const solid_J_kg = (alloy: Pour, T_K: number): number =>
  shares(alloy).reduce((sum, [element, share]) => sum + share * solidHeat_J_kg({ element, T_K }), 0);

const liquid_J_kg = (alloy: Pour, T_K: number): number =>
  shares(alloy).reduce((sum, [element, share]) => sum + share * liquidHeat_J_kg({ element, T_K }), 0);

export interface MeltHeatQuestion {
  readonly alloy: Pour;
  readonly from_K: number;
  readonly pour_K: number;
  /** From `alloy.melting_correction_J_kg`; its typical value where none is given. */
  readonly correction_J_kg?: number;
}

/**
 * Heat from cold metal to the pour, J/kg:
 *     q = Σ wᵢ hᵢ,liquid(pour) + correction − Σ wᵢ hᵢ,solid(from)
 * with each element liquid at the pour, below its own melting point too, and the alloy's correction for mixing and for
 * the spread of handbooks. 200 K to the solidus, liquidus to 2100 K. Pure metals ±1.5 %, alloys ±3 to 8 % by their datum.
 */
export function meltHeat_J_kg({ alloy, from_K, pour_K, correction_J_kg }: MeltHeatQuestion): number {
  refuseOutside(alloy, from_K, pour_K);
  const correction = correction_J_kg ?? alloy.melting_correction_J_kg.typical;
  return liquid_J_kg(alloy, pour_K) + correction - solid_J_kg(alloy, from_K);
}

/**
 * The same way as points, T rising and heat rising: solid to the solidus, straight from there to the liquidus (a pure
 * metal melts at one temperature), liquid to the pour.
 */
export function heatCurve(question: MeltHeatQuestion): readonly HeatPoint[] {
  const { alloy, from_K, pour_K } = question;
  refuseOutside(alloy, from_K, pour_K);
  const solidus_K = alloy.solidus_K.typical;
  const liquidus_K = alloy.liquidus_K.typical;
  const cold_J_kg = solid_J_kg(alloy, from_K);
  const correction = question.correction_J_kg ?? alloy.melting_correction_J_kg.typical;
  const molten = (T_K: number): HeatPoint => ({
    T_K,
    heat_J_kg: liquid_J_kg(alloy, T_K) + correction - cold_J_kg,
  });
  return Object.freeze([
    ...Array.from({ length: KNOTS + 1 }, (_, index) => {
      const T_K = from_K + ((solidus_K - from_K) * index) / KNOTS;
      return { T_K, heat_J_kg: solid_J_kg(alloy, T_K) - cold_J_kg };
    }),
    molten(liquidus_K),
    molten(pour_K),
  ]);
}

/**
 * The curve for another pour and correction, at next to no cost: liquid metals heat in a straight line (to 0.2 % here),
 * so the last stretch is lengthened and the liquid shifted. For the samples of a range, which lend `into`, a copy of
 * the curve.
 */
export function shiftedCurve(
  curve: readonly HeatPoint[],
  { pour_K, shift_J_kg }: { readonly pour_K: number; readonly shift_J_kg: number },
  into: HeatPoint[] = [...curve],
): readonly HeatPoint[] {
  const melted = curve.at(-2)!;
  const poured = curve.at(-1)!;
  const slope = (poured.heat_J_kg - melted.heat_J_kg) / (poured.T_K - melted.T_K);
  const start_J_kg = melted.heat_J_kg + shift_J_kg;
  into[curve.length - 2] = { T_K: melted.T_K, heat_J_kg: start_J_kg };
  into[curve.length - 1] = { T_K: pour_K, heat_J_kg: start_J_kg + slope * (pour_K - melted.T_K) };
  return into;
}

export type Section = 'thin' | 'medium' | 'heavy';

/** Least superheat over the liquidus that still runs, K; from memory. */
const SUPERHEAT_K = 30;

/**
 * Where in the alloy's window a section is poured: heavy in its lower half, thin in its upper half, medium about the
 * usual value; `typical` is the middle of that part. Never less than 30 K above the liquidus. Common practice.
 */
export function pourFor({ pour_K, liquidus_K }: Pour, section: Section): Spread {
  const { low, typical, high } = pour_K;
  const middle = (a: number, b: number) => (a + b) / 2;
  const [from, at, to] = {
    heavy: [low, middle(low, typical), typical],
    medium: [middle(low, typical), typical, middle(typical, high)],
    thin: [typical, middle(typical, high), high],
  }[section] as [number, number, number];
  const least_K = liquidus_K.typical + SUPERHEAT_K;
  return { low: Math.max(from, least_K), typical: Math.max(at, least_K), high: Math.max(to, least_K) };
}

export function meltHeatSteps(question: MeltHeatQuestion): readonly Step[] {
  const { alloy, from_K, pour_K } = question;
  const correction = question.correction_J_kg ?? alloy.melting_correction_J_kg.typical;
  return [
    ...shares(alloy).map(
      ([element, share]): Step => ({
        formula: `heat of ${element}: liquid at the pour less solid at the start${pour_K < meltingPoint_K(element) ? ' (below its own melting point, in solution)' : ''}`,
        inputs: { from_K, pour_K, share_of_mass: share },
        gives: {
          heat_J_kg: liquidHeat_J_kg({ element, T_K: pour_K }) - solidHeat_J_kg({ element, T_K: from_K }),
        },
        source: sourceOfHeat(element),
      }),
    ),
    {
      formula: 'heat per mass = Σ share × heat of the element + correction for mixing and handbooks',
      inputs: { correction_J_kg: correction },
      gives: { melt_heat_J_kg: meltHeat_J_kg(question) },
      source: alloy.melting_correction_J_kg.source,
    },
  ];
}

function refuseOutside({ name, solidus_K, liquidus_K }: Pour, from_K: number, pour_K: number): void {
  const celsius = (kelvin: number) => `${Math.round(kelvin - 273.15)} °C`;
  if (!(from_K >= 200 && from_K <= solidus_K.typical))
    throw new AskError({
      code: 'out-of-range',
      what: `${name} at ${celsius(from_K)} is ${from_K < 200 ? 'colder than any yard' : 'no longer solid'}: it starts to melt at ${celsius(solidus_K.typical)}`,
      expected: 'the temperature of the metal as charged',
      example: '20 °C',
      option: 'from',
    });
  if (!(pour_K >= liquidus_K.typical && pour_K <= HOTTEST_K))
    throw new AskError({
      code: 'out-of-range',
      what: `${name} at ${celsius(pour_K)} is ${pour_K > HOTTEST_K ? 'beyond what the data cover' : `not all liquid: it wants ${celsius(liquidus_K.typical)}`}`,
      expected: `a pour from ${celsius(liquidus_K.typical + SUPERHEAT_K)} up`,
      example: celsius(Math.min(liquidus_K.typical + 100, HOTTEST_K)),
      option: 'pour',
    });
}

/** The face a metal asks for: its usual one, and hotter than a pour that was asked for. */
export const hotFace_K = ({ hot_face_K }: Pour, pour_K: number): number => Math.max(hot_face_K.typical, pour_K + 100);
