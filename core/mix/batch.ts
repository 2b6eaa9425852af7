import type { Step, WithSteps } from '../step.ts';
import type { Slot } from './recipe.ts';

export interface BatchPart {
  readonly material: string;
  readonly slot: Slot;
  readonly parts: number;
  readonly loose_density_kg_m3: number;
}

export interface BatchInput {
  readonly volume_m3: number;
  /** As rammed or cast, dry. */
  readonly dry_density_kg_m3: number;
  /** Share added for spill, the tub's sides and the handful kept back. */
  readonly spare: number;
  readonly by: 'loose volume' | 'mass';
  readonly parts: readonly BatchPart[];
  /** Water wanted in the mix, share of dry mass. */
  readonly water: number;
  /** Water already in the clay, share of the clay's dry mass (ASTM D2216 counts so). */
  readonly clay_moisture: number;
}

export interface BatchIngredient {
  readonly material: string;
  readonly slot: Slot;
  readonly dry_mass_kg: number;
  /** What the scale shows: damp clay weighs its water too. */
  readonly weighed_kg: number;
  readonly loose_volume_m3: number;
}

export interface Batch extends WithSteps {
  readonly dry_mass_kg: number;
  readonly ingredients: readonly BatchIngredient[];
  /** Water to add; never below zero. */
  readonly water_kg: number;
  readonly wet_mass_kg: number;
}

/** What a batch comes to, without names; the parts' dry masses stand in `shared_kg`, in their order. */
export interface Masses {
  readonly dry_mass_kg: number;
  /** Water that comes in with damp clay. */
  readonly brought_kg: number;
  readonly water_kg: number;
  readonly wet_mass_kg: number;
}

/**
 * What fills a volume: dry mass = volume × dry density × (1 + spare), shared out over the parts; by loose volume each
 * part counts with its loose density. Writes the parts into `shared_kg`: asked a thousand times for a range, it makes
 * no arrays. SI; valid for volumes > 0 and densities > 0. Source: mass balance, derived here.
 */
export function massesInto(
  shared_kg: Float64Array,
  { volume_m3, dry_density_kg_m3, spare, by, parts, water, clay_moisture }: BatchInput,
): Masses {
  const dry_mass_kg = volume_m3 * dry_density_kg_m3 * (1 + spare);
  let total = 0;
  for (let at = 0; at < parts.length; at++) {
    const part = parts[at]!;
    const weight = part.parts * (by === 'mass' ? 1 : part.loose_density_kg_m3);
    shared_kg[at] = weight;
    total += weight;
  }
  let brought_kg = 0;
  for (let at = 0; at < parts.length; at++) {
    const dry_kg = dry_mass_kg * (shared_kg[at]! / total);
    shared_kg[at] = dry_kg;
    brought_kg += waterIn(parts[at]!, dry_kg, clay_moisture);
  }
  const water_kg = Math.max(0, dry_mass_kg * water - brought_kg);
  return { dry_mass_kg, brought_kg, water_kg, wet_mass_kg: dry_mass_kg + brought_kg + water_kg };
}

/** Water that a part brings along, as dug or as delivered. */
export const waterIn = ({ slot }: BatchPart, dry_kg: number, clay_moisture: number): number =>
  slot === 'clay' ? dry_kg * clay_moisture : 0;

/** A batch by its ingredients, with its steps; see `massesInto`. */
export function batch(input: BatchInput): Batch {
  const shared_kg = new Float64Array(input.parts.length);
  const { dry_mass_kg, brought_kg, water_kg, wet_mass_kg } = massesInto(shared_kg, input);
  const ingredients = input.parts.map((part, index) => {
    const { material, slot, loose_density_kg_m3 } = part;
    const dry = shared_kg[index]!;
    const weighed_kg = dry + waterIn(part, dry, input.clay_moisture);
    return { material, slot, dry_mass_kg: dry, weighed_kg, loose_volume_m3: dry / loose_density_kg_m3 };
  });
  return {
    dry_mass_kg,
    ingredients,
    water_kg,
    wet_mass_kg,
    steps: () => batchSteps(input, { dry_mass_kg, ingredients, water_kg, wet_mass_kg }, brought_kg),
  };
}

function batchSteps(input: BatchInput, result: Omit<Batch, 'steps'>, brought_kg: number): readonly Step[] {
  const { volume_m3, dry_density_kg_m3, spare, water } = input;
  const all_kg_m3 = input.parts.reduce((sum, { parts, loose_density_kg_m3 }) => sum + parts * loose_density_kg_m3, 0);
  return [
    {
      formula: 'dry mass = volume × dry density × (1 + spare)',
      inputs: { volume_m3, dry_density_kg_m3, spare },
      gives: { dry_mass_kg: result.dry_mass_kg },
      source: 'derived',
    },
    ...result.ingredients.map((one, index): Step => {
      const part = input.parts[index];
      return {
        formula:
          input.by === 'mass'
            ? `${spoken(one.material)}: its parts by mass of the dry mass`
            : `${spoken(one.material)}, by its share of all parts: dry mass = parts × loose density ÷ all parts × batch; loose volume = dry mass ÷ loose density`,
        inputs: {
          parts_count: part?.parts ?? 0,
          loose_density_kg_m3: part?.loose_density_kg_m3 ?? 0,
          ...(input.by === 'mass' ? {} : { all_parts_kg_m3: all_kg_m3 }),
          batch_kg: result.dry_mass_kg,
        },
        gives: { dry_mass_kg: one.dry_mass_kg, weighed_kg: one.weighed_kg, loose_volume_m3: one.loose_volume_m3 },
        source: 'derived',
      };
    }),
    {
      formula:
        result.water_kg > 0
          ? 'water to add: water = dry mass × water share − water in clay; wet mass = dry mass + water in clay + water'
          : 'the clay brings all the water there is to be, so none is added: wet mass = dry mass + water in clay',
      inputs: { dry_mass_kg: result.dry_mass_kg, water_share: water, water_in_clay_kg: brought_kg },
      gives: { water_kg: result.water_kg, wet_mass_kg: result.wet_mass_kg },
      source: 'derived',
    },
  ];
}

const spoken = (id: string): string => id.replaceAll('-', ' ');
