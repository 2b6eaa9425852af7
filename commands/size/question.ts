import { AskError } from '../../core/ask-error.ts';
import { findMaterial, findPour } from '../../core/materials/catalogue.ts';
import { findVessel, refuseClosedShell } from '../../core/materials/find-vessel.ts';
import type { Material } from '../../core/materials/material.ts';
import { recipes } from '../../core/mix/recipes.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { readQuantity } from '../../core/quantity/parse.ts';
import { type Crucible, crucibleFromMelt, crucibleFromSizes, crucibleFromWorking } from '../../core/shape/crucible.ts';
import type { VesselShape } from '../../core/shape/furnace.ts';
import { shapeOf } from '../../core/shape/profile.ts';
import { sizingRules } from '../../core/shape/rules.ts';
import type { SizeQuestion } from '../../core/shape/size.ts';
import type { AnswerContext } from '../command.ts';
import { readSubject } from '../melt/subject.ts';
import { about } from '../options.ts';
import { looksLikeSizes, partsOf, readLengths, readTilt, type Told } from './fields.ts';
import type { SharedOptions } from './options.ts';

export interface FoundVessel {
  readonly shape: VesselShape;
  readonly hazards: readonly string[];
}

const sizeBounds = { min: 0.02, max: 5 };
const grammar = 'a name from the catalogue, or inside sizes: diameter x height, bottom / top x height where it widens';

/** `20 gal can`, `14 in x 12 in`, `15 in / 17 in x 22 in`. */
export function readVessel(said: string, units: UnitSystem): FoundVessel {
  if (!looksLikeSizes(said)) return named(said);
  refuseClosedShell(said);
  const parts = partsOf(said);
  if (parts.length !== 2) throw unreadable(said, 'vessel', grammar, '15 in / 17 in x 22 in');
  const [across = '', high = ''] = parts;
  // A slash is a taper where it stands free or behind a unit; elsewhere it is a fraction.
  const ends = across.split(/\s+\/\s+|(?<=["'″”’′a-z])\s*\/\s*/i);
  if (ends.length > 2) throw unreadable(said, 'vessel', grammar, '15 in / 17 in x 22 in');
  const lengths = readLengths(
    [...ends, high],
    [...ends.map(() => ({ label: 'inside diameter', ...sizeBounds })), { label: 'inside height', ...sizeBounds }],
    units,
  );
  const [bottom_m = 0] = lengths;
  const top_m = ends.length === 2 ? (lengths[1] ?? bottom_m) : bottom_m;
  return {
    shape: {
      name: `your vessel, ${said}`,
      bottom_radius_m: bottom_m / 2,
      top_radius_m: top_m / 2,
      height_m: lengths.at(-1) ?? 0,
      wall_m: 0.0008,
      given: true,
    },
    hazards: [],
  };
}

function named(said: string): FoundVessel {
  try {
    const vessel = findVessel(said);
    return { shape: shapeOf(vessel), hazards: vessel.hazards };
  } catch (error) {
    if (!(error instanceof AskError) || error.code !== 'unknown-name') throw error;
    throw error.with({
      expected: `${grammar}. Near it: ${error.expected.replace('one of those listed, perhaps ', '')}`,
    });
  }
}

/** `6 in x 8 in` outside, `6 in` alone (height by the usual proportion), or a working volume `2 L`. */
export function readCrucible(said: string, units: UnitSystem): Crucible {
  try {
    return crucibleOf(said, units);
  } catch (error) {
    // What works here is two sizes, not one quantity.
    if (error instanceof AskError) throw error.with({ example: units === 'US' ? '6 in x 8 in' : '15 cm x 20 cm' });
    throw error;
  }
}

function crucibleOf(said: string, units: UnitSystem): Crucible {
  const parts = partsOf(said);
  if (parts.length > 2)
    throw unreadable(said, 'crucible', 'outside diameter x height, or working volume', '6 in x 8 in');
  if (parts.length === 2) {
    const bounds = { min: 0.02, max: 1 };
    const [diameter_m = 0, height_m = 0] = readLengths(
      parts,
      [
        { label: 'outside diameter', ...bounds },
        { label: 'height', ...bounds },
      ],
      units,
    );
    return crucibleFromSizes({ diameter_m, height_m });
  }
  const { dimension, si } = readQuantity(said, {
    dimensions: ['length', 'volume'],
    label: 'crucible: outside diameter x height, or working volume',
    system: units,
  });
  if (dimension === 'volume') return crucibleFromWorking({ working_m3: si });
  if (si < 0.02 || si > 1) throw unreadable(said, 'crucible', 'an outside diameter of 20 mm to 1 m', '6 in x 8 in');
  return crucibleFromSizes({ diameter_m: si, height_m: sizingRules.crucible_slimness.typical * si });
}

/** `5 kg aluminium`, in every way that `melt` reads it. */
export function readMelt(
  said: string,
  metal: string | undefined,
  { units, commands }: Pick<AnswerContext, 'units' | 'commands'>,
): { readonly crucible: Crucible; readonly metal: string } {
  const { alloy, amount } = readSubject({ said, metal, units, commands });
  return {
    metal: alloy.id,
    crucible:
      amount.dimension === 'mass'
        ? crucibleFromMelt({ mass_kg: amount.si, metal: alloy.id })
        : crucibleFromWorking({ working_m3: amount.si }),
  };
}

const unreadable = (said: string, option: string, expected: string, example: string) =>
  new AskError({ code: 'unreadable', what: `"${said.slice(0, 40)}" is no ${option}`, expected, example, option });

export interface Materials {
  readonly lining: string;
  readonly insulation: Material;
  readonly bricks: string;
  readonly metal: string;
}

export const defaults = { lining: 'clay-sand-lining', insulation: 'vermiculite', bricks: 'insulating-brick-23' };

/** Hot faces that `mix` can fill: what is sized here is rammed or cast. */
const filled = recipes.filter(({ role }) => role === 'hot face');
export const recipeFor = (lining: string): string =>
  (filled.find((recipe) => recipe.lining === lining) ?? filled[0]!).id;

/** Of a lining as typed. */
export const recipeNamed = (lining: string): string => recipeFor(about('lining', () => liningNamed(lining)));

function liningNamed(name: string): string {
  const { id, name: says } = findMaterial(name);
  if (filled.some(({ lining }) => lining === id)) return id;
  throw new AskError({
    code: 'unfit',
    what: `${says} is no hot face that is rammed or cast here`,
    expected: [...new Set(filled.map(({ lining }) => lining))].join(', '),
    example: 'dense-castable',
  });
}

/** Gas that leaves a furnace is about this much hotter than its wall; judged. */
const aboveFace_dK = 100;

export function readMaterials({ lining, insulation, metal }: SharedOptions): Materials {
  return {
    lining: about('lining', () => liningNamed(lining ?? defaults.lining)),
    insulation: about('insulation', () => insulationNamed(insulation ?? defaults.insulation)),
    bricks: defaults.bricks,
    metal: metal ?? 'aluminium',
  };
}

function insulationNamed(name: string): Material {
  const found = findMaterial(name);
  if (found.properties.density_kg_m3 && found.conductivity_W_mK) return found;
  throw new AskError({
    code: 'unfit',
    what: `${found.name} is no insulation: the catalogue has no ${found.conductivity_W_mK ? 'density' : 'conductivity'} of it`,
    expected: 'vermiculite, perlite, fibre blanket, insulating brick …',
    example: 'vermiculite',
  });
}

interface Subjects {
  readonly vessel?: Told | undefined;
  readonly crucible?: Crucible | undefined;
}

/** Options as the core takes them: what was not typed is left to its rules. */
export function sizeQuestion(
  options: SharedOptions,
  { vessel, crucible }: Subjects,
  { metal }: Materials,
  units: UnitSystem,
): { readonly question: SizeQuestion; readonly hazards: readonly string[] } {
  const found = vessel && about('vessel', () => readVessel(vessel.text, units));
  const tilt = options.tilt;
  const pour = about('metal', () => findPour(metal));
  const set = <K extends string>(key: K, value: { readonly si: number } | undefined) =>
    value === undefined ? {} : ({ [key]: value.si } as Record<K, number>);
  return {
    question: {
      fuel: options.fuel ?? 'gas',
      flue_K: pour.hot_face_K.typical + aboveFace_dK,
      units,
      taper: options.taper === 'yes',
      ...(found ? { vessel: found.shape } : {}),
      ...(crucible ? { crucible } : {}),
      ...set('wall_m', options.wall),
      ...set('floor_m', options.floor),
      ...set('lid_m', options.lid),
      ...set('gap_m', options.gap),
      ...set('behind_m', options.behind),
      ...set('underfloor_m', options.under),
      ...set('plinth_m', options.plinth),
      ...set('rim_m', options.rim),
      ...set('tube_m', options.tuyere),
      ...set('vent_m', options.vent),
      ...set('rate_W', options.rate),
      ...(tilt === undefined ? {} : { tilt_rad: about('tilt', () => readTilt(tilt)) }),
    },
    hazards: found?.hazards ?? [],
  };
}
