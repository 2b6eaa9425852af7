import { formatSi } from '../../core/quantity/format.ts';
import type { Chart } from '../card.ts';
import type { BurnerParts } from './parts.ts';
import { type BurnerInputs, typicalOf } from './question.ts';
import { bottleOf } from './work.ts';

/** The bottle's pressure while it is drawn from, with what the regulator needs. Gauge, as a dial shows it. */
export function burnerChart({ question, point, draw, context }: BurnerParts): Chart {
  const { pressure_Pa, spreads } = question;
  const at = (end: 'low' | 'high'): BurnerInputs => ({
    ...typicalOf(question),
    exchange_W_m2K: spreads.exchange_W_m2K[end],
    pressure_factor: spreads.pressure_factor[end],
  });
  const rowsOf = (x: BurnerInputs) => {
    try {
      return bottleOf(question, point, x).down.rows;
    } catch {
      return [];
    }
  };
  const [low, high] = [rowsOf(at('low')), rowsOf(at('high'))];
  const gauge = (Pa: number) => Math.max(0, Pa - pressure_Pa);
  const { rows, cold_s } = draw.down;
  // Where a row of the cold end is missing, the bottle has nothing left to give.
  const band = rows.map(
    ({ time_s }, index) => [time_s, gauge(low[index]?.bottle_Pa ?? 0), gauge(high[index]?.bottle_Pa ?? 0)] as const,
  );
  const last = rows.at(-1)!;
  const show = (Pa: number) => formatSi(gauge(Pa), 'Pa', context.units);
  const hours = last.time_s > 5400;
  const time = (s: number) => formatSi(s, 's', context.units, hours ? 'hours' : 'minutes');
  const end =
    cold_s === undefined
      ? `It ends empty after ${time(draw.lasts_s)}.`
      : `It is too cold for the regulator after ${time(cold_s)}.`;
  return {
    title: 'Pressure in the bottle',
    alt: `From ${show(rows[0]!.bottle_Pa)} gauge at the start it falls to ${show(last.bottle_Pa)}; the regulator needs ${show(draw.needed_Pa)}. ${end}`,
    x: { label: 'time drawn', unit: 's', shown: hours ? 'hours' : 'minutes' },
    panels: [
      {
        y: { label: 'pressure, gauge', unit: 'Pa' },
        series: [{ name: 'bottle', points: rows.map(({ time_s, bottle_Pa }) => [time_s, gauge(bottle_Pa)] as const) }],
        ...(high.length >= rows.length ? { bands: [{ name: 'bottle', points: band }] } : {}),
        lines: [
          { name: 'regulator needs', at: gauge(draw.needed_Pa), axis: 'y' },
          ...(cold_s !== undefined && cold_s < last.time_s
            ? [{ name: 'too cold', at: cold_s, axis: 'x' as const }]
            : []),
        ],
      },
    ],
  };
}
