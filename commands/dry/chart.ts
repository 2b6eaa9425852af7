import { formatSi } from '../../core/quantity/format.ts';
import type { Chart } from '../card.ts';
import type { DryParts } from './words.ts';

/** Red hot quartz jumps here, K. */
const QUARTZ_K = 846;

/** The first fire as it should go: hot face against hours, with what a wet pore bears. */
export function dryChart({ work, context }: DryParts): Chart {
  const { firing, limit } = work;
  const show = (K: number) => formatSi(K, 'K', context.units);
  const hours = (s: number) => formatSi(s, 's', context.units, 'hours');
  const first = firing.stages[0]!;
  const top = firing.stages.at(-1)!.to_K;
  return {
    title: 'First fire',
    alt: `The hot face rises to ${show(first.to_K)} in ${hours(first.ramp_s.typical)} and stays there ${hours(first.hold_s.typical)}, then on by steps to ${show(top)} after ${hours(firing.total_s.typical)}; while any pore is wet it stays below ${show(limit.limit_K)}.`,
    x: { label: 'time from lighting', unit: 's', shown: 'hours' },
    panels: [
      {
        y: { label: 'hot face', unit: 'K' },
        series: [{ name: 'schedule', points: firing.points }],
        lines: [
          { name: 'wet pores burst above', at: limit.limit_K, axis: 'y' },
          ...(top > QUARTZ_K ? [{ name: 'quartz jumps', at: QUARTZ_K, axis: 'y' as const }] : []),
          { name: 'fire out', at: firing.total_s.typical, axis: 'x' },
        ],
      },
    ],
  };
}
