import { AskError } from '../ask-error.ts';
import { findPour } from '../materials/catalogue.ts';
import type { Spread } from '../materials/spread.ts';
import type { Step, WithSteps } from '../step.ts';
import type { CrucibleShape } from './furnace.ts';
import { sizingRules } from './rules.ts';

export interface Crucible extends WithSteps {
  readonly shape: CrucibleShape;
  readonly brimful_m3: number;
}

/** Just above its melting range, kg/m³. @throws AskError `unknown-name` where the metal is unknown. */
export function liquidDensity(metal: string): Spread & { readonly name: string } {
  const { name, liquid_density_kg_m3 } = findPour(metal);
  return { ...liquid_density_kg_m3, name };
}

const { crucible_wall_m, crucible_slimness, crucible_roundness, crucible_fill } = sizingRules;

/** Thin for small pots: the rule's wall, but no more than a tenth of the diameter. */
const wallOf = (diameter_m: number): number =>
  Math.min(crucible_wall_m.high, Math.max(0.003, Math.min(crucible_wall_m.typical, diameter_m / 10)));

/**
 * Brimful = roundness × π (R − w)² (H − w): a straight pot's room, less what the taper and the round bottom take.
 * m and m³; roundness 0.75 to 1. Derived; the roundness is from memory.
 */
export function brimfulOf_m3({
  outside_radius_m,
  height_m,
  wall_m,
}: Pick<CrucibleShape, 'outside_radius_m' | 'height_m' | 'wall_m'>): number {
  return crucible_roundness.typical * Math.PI * (outside_radius_m - wall_m) ** 2 * (height_m - wall_m);
}

/** From measured outside diameter (the largest) and height, m. */
export function crucibleFromSizes({ diameter_m, height_m }: { diameter_m: number; height_m: number }): Crucible {
  const wall_m = wallOf(diameter_m);
  const outside_radius_m = diameter_m / 2;
  const brimful_m3 = brimfulOf_m3({ outside_radius_m, height_m, wall_m });
  const working_m3 = crucible_fill.typical * brimful_m3;
  return Object.freeze({
    shape: Object.freeze({ outside_radius_m, height_m, wall_m, working_m3 }),
    brimful_m3,
    steps: (): readonly Step[] => [
      {
        formula: 'brimful = roundness × π × (outside radius − wall)² × (height − wall); working = fill × brimful',
        inputs: {
          outside_radius_m,
          height_m,
          wall_m,
          roundness: crucible_roundness.typical,
          fill: crucible_fill.typical,
        },
        gives: { brimful_m3, working_m3 },
        source: 'derived',
      },
    ],
  });
}

const least_m3 = 5e-6;
const most_m3 = 0.2;
/** So that 5 ml typed are 5 ml. */
const hair = 1e-9;

/**
 * From what is poured from it, m³, and height over diameter: the diameter at which the room × fill is that volume, by
 * bisection (room grows with diameter). 5 ml to 200 L.
 */
export function crucibleFromWorking({
  working_m3,
  slimness = crucible_slimness.typical,
}: {
  working_m3: number;
  slimness?: number;
}): Crucible {
  if (!(working_m3 >= least_m3 * (1 - hair) && working_m3 <= most_m3 * (1 + hair))) throw wrongVolume(working_m3);
  const holds = (diameter_m: number) =>
    crucibleFromSizes({ diameter_m, height_m: slimness * diameter_m }).shape.working_m3;
  let low = 0.01;
  let high = 2;
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    if (holds(middle) < working_m3) low = middle;
    else high = middle;
  }
  const diameter_m = (low + high) / 2;
  const made = crucibleFromSizes({ diameter_m, height_m: slimness * diameter_m });
  return Object.freeze({
    ...made,
    steps: (): readonly Step[] => [
      {
        formula: 'outside diameter at which fill × brimful is the working volume: height = slimness × diameter',
        inputs: { working_m3, slimness },
        gives: { diameter_m, height_m: slimness * diameter_m },
        source: crucible_slimness.source,
      },
      ...made.steps(),
    ],
  });
}

/** From the mass of a melt: working volume = mass ÷ density of the liquid. kg; the metal as the catalogue names it. */
export function crucibleFromMelt({ mass_kg, metal }: { mass_kg: number; metal: string }): Crucible {
  const { typical, name } = liquidDensity(metal);
  const working_m3 = mass_kg / typical;
  const made = crucibleFromWorking({ working_m3 });
  return Object.freeze({
    ...made,
    steps: (): readonly Step[] => [
      {
        formula: `volume of liquid ${name}: working = mass ÷ liquid density`,
        inputs: { mass_kg, liquid_density_kg_m3: typical },
        gives: { working_m3 },
        source: 'from-memory',
      },
      ...made.steps(),
    ],
  });
}

const wrongVolume = (working_m3: number) =>
  new AskError({
    code: 'out-of-range',
    what: `a crucible that pours ${Number((working_m3 * 1000).toPrecision(3))} L is outside 0.005 to 200 L`,
    expected: 'a working volume of a hand-sized crucible',
    example: '2 L',
  });
