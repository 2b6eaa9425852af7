import type { Calibration } from '../../core/build/log-calibrate.ts';
import { type Weighed, type WeighQuestion, weigh, weightModel } from '../../core/shape/weights.ts';
import { bucketReadings, calibration, type Measured } from '../log/measured.ts';

const [rammed, fill] = ['how densely the lining is rammed', 'density of the insulation'];

/** The weights with their densities as the build's own buckets leave them. */
export function weighByBuckets(
  question: WeighQuestion,
  measured: Measured | undefined,
): { readonly weighed: Weighed; readonly found: Calibration | undefined } {
  if (!measured) return { weighed: weigh(question), found: undefined };
  const { spreads, loose } = weightModel(question);
  const { lining, insulation } = question;
  const found = calibration({ [rammed]: spreads.lining_kg_m3, [fill]: spreads.insulation_kg_m3 }, [
    ...bucketReadings(measured, {
      how: 'rammed',
      inputs: { ...(loose ? {} : { [insulation]: fill }), [lining]: rammed },
    }),
    ...bucketReadings(measured, { how: 'loose', inputs: loose ? { [insulation]: fill } : {} }),
  ]);
  if (!found) return { weighed: weigh(question), found };
  const densities = { lining_kg_m3: found.spreads[rammed]!, insulation_kg_m3: found.spreads[fill]! };
  return { weighed: weigh({ ...question, densities }), found };
}
