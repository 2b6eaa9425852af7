import type { Calibration } from '../../core/build/log-calibrate.ts';
import type { Spread } from '../../core/materials/spread.ts';
import { bucketReadings, calibration, type Measured } from '../log/measured.ts';
import type { MixQuestion } from './question.ts';

const packs = 'how densely it packs';
const lies = (material: string) => `how densely ${material} lies loose`;

/** The question with its densities as the build's own buckets leave them. */
export function byBuckets(
  question: MixQuestion,
  measured: Measured | undefined,
): { readonly question: MixQuestion; readonly found: Calibration | undefined } {
  const { estimate, recipe, ownRatio } = question;
  const inputs: Record<string, Spread> = {
    [packs]: estimate.dry_density_kg_m3,
    ...Object.fromEntries(estimate.parts.map((part) => [lies(part.material), part.loose_density_kg_m3])),
  };
  const found = calibration(inputs, [
    ...bucketReadings(measured, { how: 'rammed', inputs: ownRatio ? {} : { [recipe.lining]: packs } }),
    ...bucketReadings(measured, {
      how: 'loose',
      inputs: Object.fromEntries(estimate.parts.map(({ material }) => [material, lies(material)])),
    }),
  ]);
  if (!found) return { question, found };
  return {
    found,
    question: {
      ...question,
      estimate: {
        ...estimate,
        dry_density_kg_m3: found.spreads[packs]!,
        parts: estimate.parts.map((part) => ({ ...part, loose_density_kg_m3: found.spreads[lies(part.material)]! })),
      },
    },
  };
}
