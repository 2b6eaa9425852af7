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
    'how hard you ram': input.dry_density_kg_m3,
    'spare kept': input.spare,
    'water taken up': input.water,
  };
  for (const [index, part] of input.parts.entries()) spreads[looseKey(part, index)] = part.loose_density_kg_m3;
  const typicalDraw = Object.fromEntries(Object.entries(spreads).map(([name, { typical }]) => [name, typical]));
  const typical = batchOf(input, typicalDraw);
  const { ranges, movesMost } = sampleDoubt({ inputs: spreads, model: (draw: Draw) => outputs(input, draw) });
  return {
    typical,
    volume_m3: volumeOf(input, typicalDraw),
    ranges,
    movesMost: movesMost['volume_m3' in input.amount ? 'dry' : 'volume'],
  };
}

const looseKey = (part: Part, index: number) =>
  `bulk density of ${part.material.replaceAll('-', ' ')}${index === 0 ? '' : ` (${index + 1})`}`;

function volumeOf({ amount }: EstimateInput, draw: Draw): number {
  if ('volume_m3' in amount) return amount.volume_m3;
  return amount.dry_mass_kg / ((draw['how hard you ram'] ?? 0) * (1 + (draw['spare kept'] ?? 0)));
}

function batchOf(input: EstimateInput, draw: Draw): Batch {
  return batch({
    volume_m3: volumeOf(input, draw),
    dry_density_kg_m3: draw['how hard you ram'] ?? 0,
    spare: draw['spare kept'] ?? 0,
    by: input.by,
    parts: input.parts.map((part, index) => ({ ...part, loose_density_kg_m3: draw[looseKey(part, index)] ?? 0 })),
    water: draw['water taken up'] ?? 0,
    clay_moisture: input.clay_moisture,
  });
}

function outputs(input: EstimateInput, draw: Draw): Record<string, number> {
  const { dry_mass_kg, water_kg, wet_mass_kg, ingredients } = batchOf(input, draw);
  const found: Record<string, number> = {
    volume: volumeOf(input, draw),
    dry: dry_mass_kg,
    water: water_kg,
    wet: wet_mass_kg,
  };
  for (const [index, { weighed_kg, loose_volume_m3 }] of ingredients.entries()) {
    found[`mass${index}`] = weighed_kg;
    found[`loose${index}`] = loose_volume_m3;
  }
  return found;
}
