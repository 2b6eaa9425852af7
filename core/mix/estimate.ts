import { type Range, sampleDoubt } from '../doubt/sample.ts';
import type { Spread } from '../materials/spread.ts';
import { type Batch, batch } from './batch.ts';
import type { Part } from './recipe.ts';

export interface SpreadPart extends Part {
  readonly loose_density_kg_m3: Spread;
}

export interface EstimateInput {
  /** Either what is to be filled, or how much dry mix there is. */
  readonly amount: { readonly volume_m3: number } | { readonly dry_mass_kg: number };
  readonly by: 'loose volume' | 'mass';
  readonly parts: readonly SpreadPart[];
  readonly dry_density_kg_m3: Spread;
  readonly spare: Spread;
  readonly water: Spread;
  readonly clay_moisture: number;
}

export interface Estimate {
  readonly typical: Batch;
  readonly volume_m3: number;
  readonly ranges: Readonly<Record<string, Range | undefined>>;
  /** The input that moves the dry mass most, and its share of the variance. */
  readonly movesMost: { readonly input: string; readonly share: number } | undefined;
}

type Draw = Readonly<Record<string, number>>;

/**
 * A batch at typical values, with the central 95 % over density, spare, water and loose densities (triangles, Halton).
 * Range keys: `volume`, `dry`, `water`, `wet`, and per part `mass0`, `loose0`, …
 */
export function estimateMix(input: EstimateInput): Estimate {
  const spreads: Record<string, Spread> = {
    [ramming]: input.dry_density_kg_m3,
    [spare]: input.spare,
    [water]: input.water,
  };
  const looseKeys = input.parts.map(looseKey);
  for (const [index, part] of input.parts.entries()) spreads[looseKeys[index]!] = part.loose_density_kg_m3;
  const typicalDraw = Object.fromEntries(Object.entries(spreads).map(([name, { typical }]) => [name, typical]));
  const keys = input.parts.map((_, index) => [`mass${index}`, `loose${index}`] as const);
  const model = (draw: Draw) => outputs(input, looseKeys, keys, draw);
  const { ranges, movesMost } = sampleDoubt({ inputs: spreads, model });
  return {
    typical: batchOf(input, looseKeys, typicalDraw),
    volume_m3: volumeOf(input, typicalDraw),
    ranges,
    movesMost: movesMost['volume_m3' in input.amount ? 'dry' : 'volume'],
  };
}

// Inputs are named in the reader's words: the card says which of them moves the answer most.
const ramming = 'how densely it packs';
const spare = 'spare kept';
const water = 'water taken up';

const looseKey = (part: Part, index: number) =>
  `bulk density of ${part.material.replaceAll('-', ' ')}${index === 0 ? '' : ` (${index + 1})`}`;

function volumeOf({ amount }: EstimateInput, draw: Draw): number {
  if ('volume_m3' in amount) return amount.volume_m3;
  return amount.dry_mass_kg / ((draw[ramming] ?? 0) * (1 + (draw[spare] ?? 0)));
}

function batchOf(input: EstimateInput, looseKeys: readonly string[], draw: Draw): Batch {
  return batch({
    volume_m3: volumeOf(input, draw),
    dry_density_kg_m3: draw[ramming] ?? 0,
    spare: draw[spare] ?? 0,
    by: input.by,
    parts: input.parts.map(({ material, slot, parts }, index) => ({
      material,
      slot,
      parts,
      loose_density_kg_m3: draw[looseKeys[index]!] ?? 0,
    })),
    water: draw[water] ?? 0,
    clay_moisture: input.clay_moisture,
  });
}

function outputs(
  input: EstimateInput,
  looseKeys: readonly string[],
  keys: readonly (readonly [string, string])[],
  draw: Draw,
): Record<string, number> {
  const { dry_mass_kg, water_kg, wet_mass_kg, ingredients } = batchOf(input, looseKeys, draw);
  const found: Record<string, number> = {
    volume: volumeOf(input, draw),
    dry: dry_mass_kg,
    water: water_kg,
    wet: wet_mass_kg,
  };
  for (const [index, [mass, loose]] of keys.entries()) {
    found[mass] = ingredients[index]!.weighed_kg;
    found[loose] = ingredients[index]!.loose_volume_m3;
  }
  return found;
}
