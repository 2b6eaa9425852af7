import { type Range, sampleDoubt } from '../doubt/sample.ts';
import type { Spread } from '../materials/spread.ts';
import { type Batch, type BatchInput, type BatchPart, batch, massesInto, waterIn } from './batch.ts';
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
  const looseKeys = input.parts.map(looseKey);
  const spreads: Record<string, Spread> = {
    [ramming]: input.dry_density_kg_m3,
    [spare]: input.spare,
    [water]: input.water,
    ...Object.fromEntries(input.parts.map((part, index) => [looseKeys[index]!, part.loose_density_kg_m3])),
  };
  const typicalDraw = Object.fromEntries(Object.entries(spreads).map(([name, { typical }]) => [name, typical]));
  const { ranges, movesMost } = sampleDoubt({ inputs: spreads, model: modelOf(input, looseKeys) });
  const typical = batchInput(input);
  draw(typical, input, looseKeys, typicalDraw);
  return {
    typical: batch(typical),
    volume_m3: typical.volume_m3,
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

type Mutable<Of> = { -readonly [Key in keyof Of]: Of[Key] };
/** A batch to be drawn again and again: making a new one for every sample takes most of an answer's time. */
type Drawn = Mutable<Omit<BatchInput, 'parts'>> & { readonly parts: readonly Mutable<BatchPart>[] };

const batchInput = ({ by, parts, clay_moisture }: EstimateInput): Drawn => ({
  volume_m3: 0,
  dry_density_kg_m3: 0,
  spare: 0,
  by,
  parts: parts.map(({ material, slot, parts: count }) => ({ material, slot, parts: count, loose_density_kg_m3: 0 })),
  water: 0,
  clay_moisture,
});

function draw(drawn: Drawn, { amount }: EstimateInput, looseKeys: readonly string[], values: Draw): void {
  drawn.dry_density_kg_m3 = values[ramming]!;
  drawn.spare = values[spare]!;
  drawn.water = values[water]!;
  drawn.volume_m3 =
    'volume_m3' in amount ? amount.volume_m3 : amount.dry_mass_kg / (drawn.dry_density_kg_m3 * (1 + drawn.spare));
  for (let at = 0; at < looseKeys.length; at++) drawn.parts[at]!.loose_density_kg_m3 = values[looseKeys[at]!]!;
}

/** Fills and gives the same object every time, as the sampling does. */
function modelOf(input: EstimateInput, looseKeys: readonly string[]) {
  const drawn = batchInput(input);
  const shared_kg = new Float64Array(drawn.parts.length);
  const keys = drawn.parts.map((_, index) => [`mass${index}`, `loose${index}`] as const);
  const found: Record<string, number> = { volume: 0, dry: 0, water: 0, wet: 0 };
  return (values: Draw): Readonly<Record<string, number>> => {
    draw(drawn, input, looseKeys, values);
    const masses = massesInto(shared_kg, drawn);
    found.volume = drawn.volume_m3;
    found.dry = masses.dry_mass_kg;
    found.water = masses.water_kg;
    found.wet = masses.wet_mass_kg;
    for (let at = 0; at < keys.length; at++) {
      const [mass, loose] = keys[at]!;
      const [part, dry_kg] = [drawn.parts[at]!, shared_kg[at]!];
      found[mass] = dry_kg + waterIn(part, dry_kg, drawn.clay_moisture);
      found[loose] = dry_kg / part.loose_density_kg_m3;
    }
    return found;
  };
}
