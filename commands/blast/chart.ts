import { fanPressure_Pa } from '../../core/fire/air/fan.ts';
import { type BlastInput, type BlastPoint, systemPressure_Pa } from '../../core/fire/air/operating-point.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import type { Chart } from '../card.ts';

const POINTS = 33;

/** What the blower gives and what the way takes, over the flow; where they meet, and the need. */
export function blastChart(
  input: BlastInput,
  { point, needed_m3_s, units }: { point: BlastPoint; needed_m3_s: number | undefined; units: UnitSystem },
): Chart {
  const { fan, speed, density_kg_m3 } = input;
  const most_m3_s = speed * fan.free_flow_m3_s;
  const shut_Pa = fanPressure_Pa({ fan, flow_m3_s: 0, density_kg_m3, speed });
  const flows = Array.from({ length: POINTS }, (_, at) => (most_m3_s * at) / (POINTS - 1));
  const blower = flows.map(
    (flow_m3_s) => [flow_m3_s, Math.max(0, fanPressure_Pa({ fan, flow_m3_s, density_kg_m3, speed }))] as const,
  );
  // A little past where they meet: beyond, it leaves the picture.
  const end_m3_s = Math.min(most_m3_s, 1.12 * point.flow_m3_s);
  const way = flows.flatMap((_, at) => {
    const flow_m3_s = (end_m3_s * at) / (POINTS - 1);
    const taken_Pa = systemPressure_Pa(input, flow_m3_s);
    return taken_Pa === undefined ? [] : [[flow_m3_s, taken_Pa] as const];
  });
  const show = (value: number, unit: 'm3/s' | 'Pa') => formatSi(value, unit, units);
  const need = needed_m3_s === undefined ? '' : ` The fire needs ${show(needed_m3_s, 'm3/s')}.`;
  return {
    title: 'Blower against pipe, tuyere and bed',
    alt: `The blower falls from ${show(shut_Pa, 'Pa')} shut off to nothing at ${show(most_m3_s, 'm3/s')}; the way takes more and more. They meet at ${show(point.flow_m3_s, 'm3/s')} and ${show(point.fan_Pa, 'Pa')}.${need}`,
    x: { label: 'air', unit: 'm3/s' },
    panels: [
      {
        y: { label: 'pressure', unit: 'Pa' },
        series: [
          { name: 'blower', points: blower },
          { name: 'pipe, tuyere and bed', points: way },
        ],
        lines: [
          { name: 'what it gives', at: point.flow_m3_s, axis: 'x' },
          ...(needed_m3_s !== undefined && needed_m3_s < 1.5 * most_m3_s
            ? [{ name: 'need', at: needed_m3_s, axis: 'x' as const }]
            : []),
        ],
      },
    ],
  };
}
