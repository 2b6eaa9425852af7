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

/**
 * A batch at typical values, with the central 95 % over density, spare, water and loose densities (triangles, Halton).
 * Range keys: `volume`, `dry`, `water`, `wet`, and per part `mass0`, `loose0`, …
 */
export function estimateMix(input: EstimateInput): Estimate {
  const looseKeys = input.parts.map(looseKey);
  const spreads: Record<string, Spread> = {
    [names.ramming]: input.dry_density_kg_m3,
    [names.spare]: input.spare,
    [names.water]: input.water,
    ...Object.fromEntries(input.parts.map((part, index) => [looseKeys[index]!, part.loose_density_kg_m3])),
  };
  const asked = 'volume_m3' in input.amount ? 'dry' : 'volume';
  const { ranges, movesMost } = sampleDoubt({
    inputs: spreads,
    columnModel: (columns, count) => masses(input, looseKeys, columns, count),
    moved: [asked],
  });
  const typical = typicalOf(input);
  return { typical: batch(typical), volume_m3: typical.volume_m3, ranges, movesMost: movesMost[asked] };
}

/** Inputs in the reader's words: the card says which of them moves the answer most. */
const names = { ramming: 'how densely it packs', spare: 'spare kept', water: 'water taken up' } as const;

const looseKey = (part: Part, index: number) =>
  `bulk density of ${part.material.replaceAll('-', ' ')}${index === 0 ? '' : ` (${index + 1})`}`;

type Mutable<Of> = { -readonly [Key in keyof Of]: Of[Key] };
/** A batch to be drawn again and again: making a new one for every sample takes most of an answer's time. */
type Drawn = Mutable<Omit<BatchInput, 'parts'>> & { readonly parts: readonly Mutable<BatchPart>[] };

function typicalOf(input: EstimateInput): Drawn {
  const { by, parts, clay_moisture } = input;
  const [dry_density_kg_m3, spare] = [input.dry_density_kg_m3.typical, input.spare.typical];
  return {
    volume_m3: volumeOf(input, dry_density_kg_m3, spare),
    dry_density_kg_m3,
    spare,
    by,
    parts: parts.map((part) => ({ ...part, loose_density_kg_m3: part.loose_density_kg_m3.typical })),
    water: input.water.typical,
    clay_moisture,
  };
}

const volumeOf = ({ amount }: EstimateInput, dry_density_kg_m3: number, spare: number): number =>
  'volume_m3' in amount ? amount.volume_m3 : amount.dry_mass_kg / (dry_density_kg_m3 * (1 + spare));

/** What every draw comes to, a column an answer. */
function masses(
  input: EstimateInput,
  looseKeys: readonly string[],
  columns: Readonly<Record<string, Float64Array>>,
  count: number,
): Readonly<Record<string, Float64Array>> {
  const column = () => new Float64Array(count);
  const [dense, kept, taken] = [columns[names.ramming]!, columns[names.spare]!, columns[names.water]!];
  const loose = looseKeys.map((name) => columns[name]!);
  const [volume, dry, added, wet] = [column(), column(), column(), column()];
  const [weighed, filled] = [loose.map(column), loose.map(column)];
  const drawn = typicalOf(input);
  const { parts, clay_moisture } = drawn;
  const shared_kg = new Float64Array(parts.length);
  for (let at = 0; at < count; at++) {
    drawn.dry_density_kg_m3 = dense[at]!;
    drawn.spare = kept[at]!;
    drawn.water = taken[at]!;
    drawn.volume_m3 = volumeOf(input, drawn.dry_density_kg_m3, drawn.spare);
    for (let part = 0; part < parts.length; part++) parts[part]!.loose_density_kg_m3 = loose[part]![at]!;
    const made = massesInto(shared_kg, drawn);
    volume[at] = drawn.volume_m3;
    dry[at] = made.dry_mass_kg;
    added[at] = made.water_kg;
    wet[at] = made.wet_mass_kg;
    for (let part = 0; part < parts.length; part++) {
      const dry_kg = shared_kg[part]!;
      weighed[part]![at] = dry_kg + waterIn(parts[part]!, dry_kg, clay_moisture);
      filled[part]![at] = dry_kg / parts[part]!.loose_density_kg_m3;
    }
  }
  const ofParts = parts.flatMap((_, part) => [
    [`mass${part}`, weighed[part]!],
    [`loose${part}`, filled[part]!],
  ]);
  return { volume, dry, water: added, wet, ...Object.fromEntries(ofParts) };
}
