import { AskError } from '../../core/ask-error.ts';
import { addDays, daysBetween, isoDay, middayOf, plainDay, readDay } from '../../core/dry/calendar.ts';
import {
  accesses,
  activation_J_mol,
  coverLets,
  exchanges,
  type OpenSides,
  places,
} from '../../core/dry/data/weather.ts';
import { type DryKind, findLining, type Lining } from '../../core/dry/kind.ts';
import type { Weighing } from '../../core/dry/weighing.ts';
import { findMaterial } from '../../core/materials/catalogue.ts';
import type { Material } from '../../core/materials/material.ts';
import { exactly, type Spread } from '../../core/materials/spread.ts';
import { recipes } from '../../core/mix/recipes.ts';
import { formatBoth, formatSi } from '../../core/quantity/format.ts';
import { ringVolume_m3 } from '../../core/shape/volume.ts';
import type { AnswerContext } from '../command.ts';
import { about } from '../options.ts';
import type { Behind } from './face.ts';
import type { DryOptions } from './options.ts';
import { readWeighings } from './weighings.ts';

const inch = 0.0254;
/** Where no size is said: a small furnace's. */
export const usual = { bore_m: 10 * inch, height_m: 12 * inch } as const;
/** Below this a wet lining freezes at night, and cement does not set. */
export const FROST_K = 278.15;

const names = {
  density: 'how densely it packs',
  water: 'how wet it was mixed',
  held: 'what the dry body holds',
  diffusivity: 'how fast damp moves inside',
  activation: 'what warmth does to that',
  exchange: 'how the air moves',
  access: 'how much of it gets to the face',
  sun: 'sun',
  covered: 'days under cover',
  thickness: 'how thick it is',
} as const;
export type DryKey = (typeof names)[keyof typeof names];
export { names as dryKeys };

export interface DryQuestion {
  readonly kind: DryKind;
  readonly material: Material | undefined;
  readonly behind: readonly Behind[];
  readonly thickness_m: number;
  /** Where it was not said, the thickest that such linings are made. */
  readonly thickest_m: number;
  readonly measured: boolean;
  /** As it is said: `1.5 in`, `32 to 65 mm`. */
  readonly size: string;
  /** How it is called back. */
  readonly name: string;
  readonly volume: { readonly volume_m3: number } | { readonly dry_mass_kg: number };
  readonly sized: boolean;
  readonly open: OpenSides;
  readonly covered: boolean;
  readonly place: (typeof places)[number];
  readonly air_K: number;
  readonly humidity: number;
  readonly wind: keyof typeof exchanges;
  readonly from: Date;
  readonly today: Date;
  readonly weighings: readonly Weighing[] | undefined;
  readonly happened: { readonly what: NonNullable<DryOptions['happened']>; readonly day: number } | undefined;
  readonly heat: 'thermometer' | 'charcoal';
  readonly end_K: number;
  readonly within_s: number | undefined;
  readonly spreads: Readonly<Record<DryKey, Spread>>;
}

export function dryQuestion(options: DryOptions, { now, units }: Pick<AnswerContext, 'now' | 'units'>): DryQuestion {
  const { face, behind } = faceOf(options);
  const { kind, material } = face;
  const thick = thicknessOf(options, kind);
  const thickness_m = thick.typical;
  const place = places.find(({ id }) => id === options.where) ?? places[0];
  const air_K = options.air?.si ?? place.air_K;
  if (air_K < FROST_K) throw frost(air_K);
  const today = middayOf(now);
  const from = options.from === undefined ? today : about('from', () => dayIn(options.from!, today));
  const open = options.open ?? 'bore only';
  const covered = options.cover === 'throughout';
  const wind = options.wind ?? place.wind;
  const airDried = kind.before === 'air-dry';
  const property = (name: 'density_kg_m3' | 'mixing_water' | 'moisture'): Spread | undefined => {
    const found = material?.properties[name];
    return found && { low: found.low, typical: found.typical, high: found.high };
  };
  const cloth = (access: Spread): Spread =>
    covered
      ? {
          low: access.low * coverLets.low,
          typical: access.typical * coverLets.typical,
          high: access.high * coverLets.high,
        }
      : access;
  return {
    kind,
    material,
    behind,
    thickness_m,
    thickest_m: thick.high,
    measured: thick.low === thick.high,
    size: sizeWords(thick, units),
    // The catalogue's `…, fired` is what it will be.
    name: (material?.name ?? kind.name).split(',')[0]!,
    ...sizeOf(options, thickness_m),
    open,
    covered,
    place,
    air_K,
    humidity: options.humidity?.si ?? place.humidity,
    wind,
    from,
    today,
    weighings:
      options.weighed === undefined
        ? undefined
        : about('weighed', () => readWeighings(options.weighed!, { from, system: units })),
    happened: happenedOf(options, { from, today }),
    heat: options.heat ?? 'thermometer',
    // A backup's end is its limit; a hot face goes as far as its furnace.
    end_K:
      kind.ends_K < usualEnd_K
        ? Math.min(options.hot?.si ?? kind.ends_K, kind.ends_K)
        : (options.hot?.si ?? kind.ends_K),
    within_s: options.within?.si,
    spreads: {
      [names.density]: property('density_kg_m3') ?? plastic.density_kg_m3,
      [names.water]: laidWet(kind) ? (property('mixing_water') ?? plastic.water) : dampened,
      [names.held]: laidWet(kind) ? (property('moisture') ?? plastic.held) : exactly(0),
      [names.diffusivity]: kind.diffusivity_m2_s ?? exactly(1e-9),
      [names.activation]: airDried ? activation_J_mol : exactly(activation_J_mol.typical),
      [names.exchange]: exchanges[wind],
      [names.access]: cloth(accesses[open]),
      [names.sun]: place.sun_W_m2,
      [names.covered]: kind.wait_s,
      [names.thickness]: thick,
    },
  };
}

const usualEnd_K = 1273.15;
/** A plastic as bought, from memory. */
const plastic = {
  density_kg_m3: { low: 2000, typical: 2200, high: 2400 },
  water: { low: 0.05, typical: 0.08, high: 0.12 },
  held: { low: 0.01, typical: 0.015, high: 0.03 },
} as const;
/** Bricks dipped for their mortar, blanket brushed with hardener: share of the dry mass, judged. */
const dampened: Spread = { low: 0.01, typical: 0.03, high: 0.08 };
const laidWet = ({ id }: DryKind): boolean => id !== 'brick' && id !== 'fibre';

function faceOf(options: DryOptions): { face: Lining; behind: readonly Behind[] } {
  const recipe = options.recipe === undefined ? undefined : about('recipe', () => liningOfRecipe(options.recipe!));
  if (options.layers) {
    const { face, behind } = options.layers;
    if (recipe && recipe.kind.id !== face.kind.id) throw twoLinings(face, recipe);
    return { face, behind };
  }
  if (recipe) return { face: recipe, behind: [] };
  throw new AskError({
    code: 'missing',
    what: 'dry needs to know what the lining is',
    expected: 'its thickness and what it is made of, or for= an answer that says so',
    example: 'dry 1.5 in clay-sand',
    option: 'layers',
  });
}

function liningOfRecipe(name: string): Lining {
  const wanted = name.trim().toLowerCase();
  const found = recipes.find(
    (one) =>
      one.id === wanted || one.name.toLowerCase() === wanted || (one.aliases as readonly string[]).includes(wanted),
  );
  return findLining(found ? findMaterial(found.lining).id : name);
}

function thicknessOf({ layers, thickness }: DryOptions, kind: DryKind): Spread {
  const typed = layers?.thickness ?? thickness;
  if (layers?.thickness && thickness && Math.abs(layers.thickness.si - thickness.si) > 1e-6)
    throw new AskError({
      code: 'ambiguous',
      what: `the lining is ${layers.thickness.text} thick, and then ${thickness.text}`,
      expected: 'one thickness',
      example: 'dry 1.5 in clay-sand',
      option: 'thickness',
    });
  if (!typed && kind.thickness_m) {
    const { low, typical: usually, high } = kind.thickness_m;
    return { low, typical: usually, high };
  }
  if (!typed)
    throw new AskError({
      code: 'missing',
      what: `dry needs to know how thick the ${kind.name} is`,
      expected: 'its thickness before its name, or thickness=…',
      example: '40 mm',
      option: 'thickness',
    });
  if (typed.si >= 0.0005) return exactly(typed.si);
  throw new AskError({
    code: 'out-of-range',
    what: `a lining ${typed.text} thick is none`,
    expected: 'from 0.5 mm, a coat, to 150 mm (5.9 in)',
    example: layers?.thickness ? '1.5 in clay-sand' : '40 mm',
    option: layers?.thickness ? 'layers' : 'thickness',
  });
}

function sizeWords({ low, high }: Spread, units: AnswerContext['units']): string {
  const [least, most] = [low, high].map((m) => formatSi(m, 'm', units).replace(/ \(.*\)$/, ''));
  return low === high ? most! : `${least!.replace(/ \D+$/, '')} to ${most}`;
}

function sizeOf({ amount, bore, height }: DryOptions, thickness_m: number): Pick<DryQuestion, 'volume' | 'sized'> {
  if (amount) {
    return { volume: amount.dimension === 'mass' ? { dry_mass_kg: amount.si } : { volume_m3: amount.si }, sized: true };
  }
  const inner_radius_m = (bore?.si ?? usual.bore_m) / 2;
  const height_m = height?.si ?? usual.height_m;
  const volume_m3 = ringVolume_m3({ inner_radius_m, outer_radius_m: inner_radius_m + thickness_m, height_m });
  return { volume: { volume_m3 }, sized: bore !== undefined && height !== undefined };
}

function happenedOf(
  { happened, on }: DryOptions,
  { from, today }: { from: Date; today: Date },
): DryQuestion['happened'] {
  if (happened === undefined) {
    if (on === undefined) return undefined;
    throw new AskError({
      code: 'missing',
      what: `something is said to be on ${on}, but not what`,
      expected: 'happened=rained, late, steams or dry',
      example: 'rained',
      option: 'happened',
    });
  }
  const day = daysBetween(from, on === undefined ? today : about('on', () => dayIn(on, today)));
  if (day >= 0) return { what: happened, day };
  throw new AskError({
    code: 'impossible',
    what: `${plainDay(addDays(from, day))} is before it was rammed, ${plainDay(from)}`,
    expected: 'the same day or a later one',
    example: isoDay(from),
    option: 'on',
  });
}

function dayIn(text: string, today: Date): Date {
  const word = text.trim().toLowerCase();
  if (word === 'today') return today;
  return word === 'yesterday' ? addDays(today, -1) : readDay(text);
}

const twoLinings = (face: Lining, recipe: Lining) =>
  new AskError({
    code: 'ambiguous',
    what: `the lining is ${face.kind.name}, the recipe ${recipe.kind.name}`,
    expected: 'one of them',
    example: 'dry 1.5 in clay-sand',
    option: 'recipe',
  });

const frost = (air_K: number) =>
  new AskError({
    code: 'unfit',
    what: `in air at ${formatBoth(air_K, 'K', 'metric')} frost is near: it breaks a wet lining, cement does not set in it, and drying all but stops`,
    expected: 'air that stays above 5 °C (41 °F), day and night: indoors, say',
    example: '15 °C',
    option: 'air',
  });
