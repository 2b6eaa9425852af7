import { AskError } from '../../core/ask-error.ts';
import { findMaterial } from '../../core/materials/catalogue.ts';
import { nearest } from '../../core/materials/nearest.ts';
import { exactly, type Spread } from '../../core/materials/spread.ts';
import type { EstimateInput, SpreadPart } from '../../core/mix/estimate.ts';
import { type Fitness, judgeFitness, type Role } from '../../core/mix/fitness.ts';
import { ingredientId, readRatio } from '../../core/mix/ratio.ts';
import type { Part, Recipe } from '../../core/mix/recipe.ts';
import { recipes } from '../../core/mix/recipes.ts';
import { withWhatIsAtHand } from '../../core/mix/stand-in.ts';
import { ringVolume_m3 } from '../../core/shape/volume.ts';
import { about } from '../options.ts';
import type { MixOptions } from './options.ts';

/** The question with every default filled in, ready for the core. */
export interface MixQuestion {
  readonly recipe: Recipe;
  readonly ownRatio: boolean;
  readonly role: Role;
  readonly fitness: Fitness;
  readonly changes: readonly string[];
  readonly estimate: EstimateInput;
}

const usualSpare: Spread = { low: 0.05, typical: 0.1, high: 0.2 };

export function mixQuestion(options: MixOptions): MixQuestion {
  if (options.recipe !== undefined && options.ratio !== undefined) throw bothGiven(options.ratio);
  const recipe = recipeOf(options.recipe);
  const ratio = options.ratio === undefined ? undefined : readRatio(options.ratio);
  const asked = ratio ?? recipe.parts;
  const { parts, changes } =
    options.have === undefined
      ? { parts: asked, changes: [] }
      : withWhatIsAtHand(
          asked,
          about('have', () => options.have?.split(',').map(ingredientId) ?? []),
        );
  const light = parts.some(({ slot }) => slot === 'light');
  const role = options.as ?? (ratio && !light ? 'hot face' : ratio ? 'backup' : recipe.role);
  const fitness = about('metal', () =>
    judgeFitness({ parts, role, ...(options.metal === undefined ? {} : { metal: options.metal }) }),
  );
  const spreadParts = parts.map((part): SpreadPart => ({ ...part, loose_density_kg_m3: looseDensity(part) }));
  const by = ratio ? 'loose volume' : recipe.by;
  return {
    recipe,
    ownRatio: ratio !== undefined,
    role,
    fitness,
    changes,
    estimate: {
      amount: amountOf(options),
      by,
      parts: spreadParts,
      dry_density_kg_m3: rammed(ratio && light ? blendDensity(spreadParts) : liningDensity(recipe), options.ram),
      spare: options.spare ? exactly(options.spare.si) : usualSpare,
      water: findMaterial(recipe.lining).properties.mixing_water ?? { low: 0.04, typical: 0.07, high: 0.1 },
      clay_moisture: options.damp?.si ?? 0,
    },
  };
}

function recipeOf(name: string | undefined): Recipe {
  const wanted = (name ?? 'clay-sand').trim().toLowerCase();
  const found = recipes.find(
    (one) =>
      one.id === wanted || one.name.toLowerCase() === wanted || (one.aliases as readonly string[]).includes(wanted),
  );
  if (found) return found;
  const [near] = nearest(
    wanted,
    recipes.map(({ id }) => id),
    1,
  );
  throw new AskError({
    code: 'unknown-name',
    what: `there is no recipe "${wanted.slice(0, 40)}"`,
    expected: recipes.map(({ id }) => id).join(', '),
    example: near ?? 'clay-sand',
    option: 'recipe',
  });
}

const bothGiven = (ratio: string) =>
  new AskError({
    code: 'impossible',
    what: 'a recipe and an own ratio were both given',
    expected: 'one of recipe= and ratio=',
    example: `mix 30 L ratio=${ratio}`,
    option: 'recipe',
  });

/** An amount, or a ring's three dimensions; never both, never neither. */
function amountOf({ amount, outside, inside, height }: MixOptions): EstimateInput['amount'] {
  const ring = [outside, inside, height].filter((one) => one !== undefined).length;
  if (amount && ring === 0) return amount.dimension === 'mass' ? { dry_mass_kg: amount.si } : { volume_m3: amount.si };
  if (!amount && outside && inside && height) {
    if (inside.si >= outside.si) throw insideOut(inside.text, outside.text);
    return {
      volume_m3: ringVolume_m3({
        outer_radius_m: outside.si / 2,
        inner_radius_m: inside.si / 2,
        height_m: height.si,
      }),
    };
  }
  throw new AskError({
    code: amount ? 'impossible' : 'missing',
    what: amount ? 'an amount and the dimensions of a ring were both given' : 'mix needs to know how much to fill',
    expected: 'a volume, a dry mass, or a ring by outside=, inside= and height=',
    example: amount ? `mix ${amount.text}` : 'mix outside=14 in inside=11 in height=19 in',
    option: 'amount',
  });
}

const insideOut = (inside: string, outside: string) =>
  new AskError({
    code: 'impossible',
    what: `the ring's inside (${inside}) is not smaller than its outside (${outside}): no wall is left`,
    expected: 'inside smaller than outside',
    example: 'mix outside=14 in inside=11 in height=19 in',
    option: 'inside',
  });

function looseDensity({ material }: Part): Spread {
  const { name, properties } = findMaterial(material);
  const found = properties.loose_density_kg_m3 ?? properties.density_kg_m3;
  if (found) return found;
  throw new AskError({
    code: 'impossible',
    what: `the catalogue has no bulk density of ${name}`,
    expected: 'an ingredient with a known bulk density',
    example: 'mix 30 L ratio=2 sand 1 clay',
    option: 'ratio',
  });
}

const liningDensity = ({ lining }: Recipe): Spread =>
  findMaterial(lining).properties.density_kg_m3 ?? { low: 1700, typical: 1850, high: 2000 };

/** Own light mixes: the loose blend, rammed to 0.7–0.9 of its loose volume (from memory). */
function blendDensity(parts: readonly SpreadPart[]): Spread {
  const total = parts.reduce((sum, part) => sum + part.parts, 0);
  const blend = (end: keyof Spread) =>
    parts.reduce((sum, part) => sum + part.parts * part.loose_density_kg_m3[end], 0) / total;
  return { low: blend('low') * 1.1, typical: blend('typical') * 1.25, high: blend('high') * 1.45 };
}

/** Rammed hard is the catalogue's range; lightly rammed, its lower half and a tenth below. */
function rammed(density: Spread, ram: 'hard' | 'light' | undefined): Spread {
  if (ram !== 'light') return { low: density.low, typical: density.typical, high: density.high };
  return { low: density.low * 0.9, typical: density.low, high: density.typical };
}
