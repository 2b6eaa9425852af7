import { within } from '../within.ts';

const inch = 0.0254;

/** Number drills 1 to 80 in thousandths of an inch (ASME B94.11M, from memory). */
// biome-ignore format: a table
const NUMBERS = [
  228, 221, 213, 209, 205.5, 204, 201, 199, 196, 193.5, 191, 189, 185, 182, 180, 177, 173, 169.5, 166, 161,
  159, 157, 154, 152, 149.5, 147, 144, 140.5, 136, 128.5, 120, 116, 113, 111, 110, 106.5, 104, 101.5, 99.5, 98,
  96, 93.5, 89, 86, 82, 81, 78.5, 76, 73, 70, 67, 63.5, 59.5, 55, 52, 46.5, 43, 42, 41, 40,
  39, 38, 37, 36, 35, 33, 32, 31, 29.2, 28, 26, 25, 24, 22.5, 21, 20, 18, 16, 14.5, 13.5,
] as const;

export type DrillSeries = 'metric' | 'number' | 'fraction';

export interface Drill {
  readonly series: DrillSeries;
  readonly name: string;
  readonly bore_m: number;
}

const metric = Array.from({ length: 98 }, (_, at): Drill => {
  const tenths = at + 3;
  return { series: 'metric', name: `${(tenths / 10).toFixed(1)} mm`, bore_m: tenths * 1e-4 };
});
const numbered = NUMBERS.map(
  (thousandths, at): Drill => ({ series: 'number', name: `no. ${at + 1}`, bore_m: (thousandths / 1000) * inch }),
);
const fractions = Array.from({ length: 24 }, (_, at): Drill => {
  const count = at + 1;
  const divisor = [64, 32, 16, 8, 4].findLast((d) => (count * d) % 64 === 0) ?? 64;
  return { series: 'fraction', name: `${(count * divisor) / 64}/${divisor} in`, bore_m: (count / 64) * inch };
});

/** Drills 0.3 to 10 mm: metric in 0.1 mm, US numbers 1 to 80, inch fractions to 3/8. */
export const drills: readonly Drill[] = Object.freeze([...metric, ...numbered, ...fractions]);

export interface NearDrill extends Drill {
  /** Flow against the wanted hole's: (bore/wanted)². */
  readonly flow_share: number;
}

/**
 * The drill nearest to a bore in each series, the nearest first. 0.3…10 mm.
 * @throws AskError `out-of-range`.
 */
export function nearestDrills({ bore_m }: { readonly bore_m: number }): readonly NearDrill[] {
  within({ drill_m: bore_m }, { low: 3e-4, high: 0.01, example: '0.8 mm' });
  const off = (drill: Drill) => Math.abs(drill.bore_m - bore_m);
  return [metric, numbered, fractions]
    .map((series) => series.reduce((best, drill) => (off(drill) < off(best) ? drill : best)))
    .sort((a, b) => off(a) - off(b))
    .map((drill) => ({ ...drill, flow_share: (drill.bore_m / bore_m) ** 2 }));
}
