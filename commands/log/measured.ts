import { type Calibration, calibrate, type Reading, type TakenReading } from '../../core/build/log-calibrate.ts';
import { readingErrors } from '../../core/build/log-data.ts';
import type { Tie } from '../../core/doubt/together.ts';
import type { Spread } from '../../core/materials/spread.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import { readKey } from '../../core/quantity/key.ts';
import type { Answer } from '../command.ts';
import type { Memory } from '../memory.ts';
import type { LogEntry } from '../memory-weeks.ts';
import { bucketIn, type LoggedBucket } from './entry.ts';
import { dayOf } from './family.ts';

/** The log of the build that a question takes up by for=, oldest entry first. */
export interface Measured {
  readonly build: string;
  readonly entries: readonly LogEntry[];
}

/** Kinds that an estimate can be calibrated by. */
const telling: readonly string[] = ['bucket', 'shell', 'burn'];

/** Nothing where nothing was measured that tells an estimate anything. */
export async function measuredOf(
  build: string,
  { asker, memory }: { readonly asker: string; readonly memory: Memory },
): Promise<Measured | undefined> {
  const entries = (await memory.entries(asker, build)).filter(({ kind }) => telling.includes(kind));
  return entries.length === 0 ? undefined : { build, entries };
}

/** Of buckets of these materials, filled so: each reads the input that stands for its density. */
export function bucketReadings(
  measured: Measured | undefined,
  { how, inputs }: { readonly how: LoggedBucket['how']; readonly inputs: Readonly<Record<string, string>> },
): readonly Reading[] {
  return (measured?.entries ?? []).flatMap((entry): readonly Reading[] => {
    const bucket = bucketIn(entry);
    const input = bucket && inputs[bucket.material];
    if (!bucket || bucket.how !== how || input === undefined) return [];
    const value = bucket.dry_density_kg_m3;
    const share = readingErrors[how === 'rammed' ? 'rammed_bucket' : 'loose_bucket'].value;
    return [
      {
        name: `bucket of ${dayOf(entry)}`,
        value,
        unit: 'kg_m3',
        error: (share / 2) * value,
        predicted: (draw) => draw[input]!,
      },
    ];
  });
}

/** Nothing where no reading is about this question. */
export function calibration(
  inputs: Readonly<Record<string, Spread>>,
  readings: readonly Reading[],
  together?: readonly Tie<string>[],
): Calibration | undefined {
  return readings.length === 0 ? undefined : calibrate({ inputs, readings, ...(together ? { together } : {}) });
}

/** The answer with what it was calibrated by: first among what was given, and its steps before the others. */
export function calibrated(answer: Answer, found: Calibration | undefined, units: UnitSystem): Answer {
  if (!found) return answer;
  const steps = found.steps();
  const used = found.readings.filter((one) => one.used);
  const against = found.readings.filter((one) => !one.used);
  return {
    ...answer,
    given: [...newest(used, (one) => usedWords(one, units), 'used as well'), ...(answer.given ?? [])],
    notes: [...newest(against, (one) => againstWords(one, units), 'not used either'), ...(answer.notes ?? [])],
    working: [...steps, ...(answer.working ?? [])],
    sources: [...new Set([...answer.sources, ...steps.map(({ source }) => source)])],
  };
}

/** A long log is not told reading by reading. */
const mostTold = 3;

function newest(
  readings: readonly TakenReading[],
  words: (one: TakenReading) => string,
  rest: string,
): readonly string[] {
  const more = readings.length - mostTold;
  return [
    ...readings.slice(-mostTold).map(words),
    ...(more > 0 ? [`${more} earlier ${more === 1 ? 'reading' : 'readings'} ${rest}`] : []),
  ];
}

/** Central 95 % of a bell curve, in standard deviations. */
const both = 1.96;

type Shown = Pick<TakenReading, 'unit' | 'logarithm'>;

/** From the low to the high end, in the unit of the reading. */
function rangeWords(
  { estimate, spread }: { readonly estimate: number; readonly spread: number },
  { unit, logarithm }: Shown,
  units: UnitSystem,
): string {
  const [low, high] = [estimate - both * spread, estimate + both * spread].map((end) =>
    showed(logarithm ? Math.exp(end) : end, unit, units),
  );
  return `${low} to ${high}`.replace(/ \S+ to /, ' to ');
}

const showed = (value: number, unit: string, units: UnitSystem): string =>
  formatSi(value, readKey(`x_${unit}`).unit, units);

/** `calibrated by your bucket of 2026-04-12: 1720 kg/m3 read instead of 1730 to 1970 kg/m3 expected, now taken as 1690 to 1810 kg/m3, …`. */
function usedWords(reading: TakenReading, units: UnitSystem): string {
  const { name, value, unit, spread, after, left } = reading;
  const now = rangeWords({ estimate: after, spread: left }, reading, units);
  return `calibrated by your ${name}: ${showed(value, unit, units)} read instead of ${rangeWords(reading, reading, units)} expected, now taken as ${now}, ${Math.round((100 * left) / spread)} % as wide`;
}

function againstWords(reading: TakenReading, units: UnitSystem): string {
  const { name, value, unit, met, off } = reading;
  return `Your ${name} (${showed(value, unit, units)}) contradicts the model by ${Number(off.toPrecision(2))} σ: it holds ${rangeWords(met, reading, units)} possible. Nothing was narrowed by it; measure again, or the model misses something there.`;
}
