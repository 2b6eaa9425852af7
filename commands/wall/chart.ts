import type { WallAnswer } from '../../core/heat/wall-answer.ts';
import type { WallCurve } from '../../core/heat/wall-curves.ts';
import { touchLevels_K } from '../../core/heat/wall-firing.ts';
import { shortName } from '../../core/heat/wall-question.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import type { Chart, ChartPanel } from '../card.ts';
import { capital } from '../sentence.ts';
import { whenOf } from './words.ts';

/** Bore and interfaces above, the shell below on its own scale, over the hours of the firing and the cooling. */
export function wallChart(answer: WallAnswer, units: UnitSystem): Chart {
  const { curves, model, firing, layers } = answer;
  const time_s = curves.time_s;
  const hours = (time_s.at(-1) ?? 0) > 4 * 3600;
  const fireOut = { name: 'fire out', at: model.fire_out_s, axis: 'x' } as const;
  const names = layers.map(({ material }) => shortName(material.name));
  const inner = [
    { name: 'bore', curve: curves.bore },
    ...curves.interfaces.map((curve, index) => ({
      name: curves.interfaces.length === 1 ? `behind the ${names[0]}` : `${names[index]} to ${names[index + 1]}`,
      curve,
    })),
  ];
  const limits = layers.flatMap(({ limit_K }, index) =>
    limit_K === undefined ? [] : [{ name: `limit of ${names[index]}`, at: limit_K, axis: 'y' } as const],
  );
  const top_K = Math.max(...layers.map(({ adverse_K }) => adverse_K)) + 150;
  const temperature = (value: number) => formatSi(value, 'K', units);
  return {
    title: 'The wall through a firing',
    alt: [
      `Temperatures over ${formatSi(time_s.at(-1) ?? 0, 's', units, hours ? 'hours' : 'minutes')}.`,
      `The bore runs at ${temperature(model.question.hot_K.typical)} until the fire is out at ${formatSi(model.fire_out_s, 's', units, 'minutes')}.`,
      ...firing.interface_peaks_K.map(
        (peak_K, index) => `${capital(inner[index + 1]?.name ?? '')}: at most ${temperature(peak_K)}.`,
      ),
      `The shell peaks at ${temperature(firing.shell_peak_K)} ${whenOf(answer)}.`,
    ].join(' '),
    x: { label: 'time since lighting', unit: 's', shown: hours ? 'hours' : 'minutes' },
    panels: [
      panel('inside the wall', time_s, inner, [fireOut, ...limits.filter(({ at }) => at < top_K)]),
      panel(
        'shell',
        time_s,
        [{ name: 'shell', curve: curves.shell }],
        [fireOut, ...touchLevels_K.map((at) => ({ name: touchNames[at] ?? '', at, axis: 'y' as const }))],
      ),
    ],
  };
}

const touchNames: Readonly<Record<number, string>> = {
  316.15: 'hand rests on it',
  323.15: 'warm, short hold',
  333.15: 'hand off within seconds',
  343.15: 'burns on contact',
};

function panel(
  label: string,
  time_s: Float64Array,
  series: readonly { name: string; curve: WallCurve }[],
  lines: NonNullable<ChartPanel['lines']>,
): ChartPanel {
  const bands = series.flatMap(({ name, curve: { low_K, high_K } }) =>
    low_K && high_K
      ? [{ name, points: Array.from(time_s, (at, index) => [at, low_K[index]!, high_K[index]!] as const) }]
      : [],
  );
  return {
    y: { label, unit: 'K' },
    series: series.map(({ name, curve }) => ({
      name,
      points: Array.from(time_s, (at, index) => [at, curve.T_K[index]!] as const),
    })),
    ...(bands.length > 0 ? { bands } : {}),
    lines,
  };
}
