import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import type { Chart } from '../card.ts';
import type { AskedSide } from './ask-side.ts';
import type { Verdict } from './verdict.ts';

const steps = 40;

/** How sure each side is of staying below a value: the samples in order. Nothing where nothing was sampled, or no side varies. */
export function verdictChart(
  { measure, measured }: Verdict,
  sides: readonly AskedSide[],
  units: UnitSystem,
): Chart | undefined {
  if (!measured || measured.values.some((values) => values.some((value) => !Number.isFinite(value)))) return undefined;
  const curves = measured.values.map((values) => cumulative(values));
  if (curves.some((points) => points.length < 2)) return undefined;
  const [figure] = measure.figures;
  const shown = figure?.shown ? { shown: figure.shown } : {};
  const middle = (index: number) => {
    const sorted = measured.values[index]!.slice().sort();
    return formatSi(sorted[sorted.length >> 1]!, measure.unit, units, figure?.shown);
  };
  return {
    title: `${measure.label}: share of the samples below`,
    alt: `Half of the samples lie below: ${sides.map(({ name }, index) => `${name} ${middle(index)}`).join(', ')}.`,
    x: { label: measure.label, unit: measure.unit, ...shown },
    panels: [
      {
        y: { label: 'samples below', unit: '1', shown: 'percent' },
        series: curves.map((points, index) => ({ name: sides[index]!.name, points })),
      },
    ],
  };
}

/** Points of the cumulative share, rising in x. */
function cumulative(values: Float64Array): readonly (readonly [number, number])[] {
  const sorted = values.slice().sort();
  const points: [number, number][] = [];
  for (let step = 0; step <= steps; step++) {
    const share = step / steps;
    const x = sorted[Math.round(share * (sorted.length - 1))]!;
    const last = points.at(-1);
    if (last && x <= last[0]) last[1] = share;
    else points.push([x, share]);
  }
  return points;
}
