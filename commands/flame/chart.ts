import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import type { Chart } from '../card.ts';
import { type FlameQuestion, flameOf, heatLeft, typicalOf } from './question.ts';

const POINTS = 25;

/** Flame temperature above, heat left below, over excess air; the asker's own air as a line. */
export function flameChart(question: FlameQuestion, units: UnitSystem): Chart {
  const typical = typicalOf(question);
  const here = typical.excess_air;
  const from = Math.min(-0.2, here);
  const to = Math.max(1, here * 1.25);
  const rows = Array.from({ length: POINTS }, (_, at) => {
    const excess_air = from + ((to - from) * at) / (POINTS - 1);
    const inputs = { ...typical, excess_air };
    return {
      excess_air,
      flame_K: flameOf(question, inputs).temperature_K,
      left: heatLeft(question, inputs).share_of_lower,
    };
  });
  const best = rows.reduce((hottest, row) => (row.flame_K > hottest.flame_K ? row : hottest));
  const last = rows.at(-1)!;
  const share = (value: number) => `${Math.round(value * 100)} %`;
  const line = [{ name: 'your air', at: here, axis: 'x' as const }];
  return {
    title: `Flame and heat left: ${question.fuel.name}`,
    alt: `The flame is hottest, ${formatSi(best.flame_K, 'K', units)}, near ${share(best.excess_air)} excess air, and ${formatSi(last.flame_K, 'K', units)} at ${share(last.excess_air)}; the heat left at the flue falls from ${share(best.left)} to ${share(last.left)} of the lower heating value.`,
    x: { label: 'excess air', unit: '1', shown: 'percent' },
    panels: [
      {
        y: { label: 'flame, upper bound', unit: 'K' },
        series: [{ name: 'flame', points: rows.map(({ excess_air, flame_K }) => [excess_air, flame_K] as const) }],
        lines: [...line, { name: 'flue', at: typical.flue_K, axis: 'y' }],
      },
      {
        y: { label: 'heat left, of the lower', unit: '1', shown: 'percent' },
        series: [{ name: 'heat left', points: rows.map(({ excess_air, left }) => [excess_air, left] as const) }],
        lines: line,
      },
    ],
  };
}
