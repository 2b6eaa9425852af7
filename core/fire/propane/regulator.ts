import { AskError } from '../../ask-error.ts';
import { formatBoth, formatSi } from '../../quantity/format.ts';
import { within } from '../within.ts';

export interface RegulatorDemand {
  /** Gauge, wanted behind the regulator. */
  readonly outlet_Pa: number;
  /** Gauge the regulator needs before it above that, `data/regulators.ts`. */
  readonly headroom_Pa: number;
  /** Of the air. */
  readonly pressure_Pa: number;
}

/**
 * Absolute pressure the bottle must hold for a regulator to let out what is set: air + outlet + headroom.
 * Outlet 0…700 kPa gauge, headroom 0…300 kPa. Source: sum of pressures; headroom from memory.
 * @throws AskError `out-of-range`.
 */
export function neededBottle_Pa({ outlet_Pa, headroom_Pa, pressure_Pa }: RegulatorDemand): number {
  within({ outlet_Pa }, { low: 0, high: 700e3, example: '100 kPa' });
  within({ headroom_Pa }, { low: 0, high: 300e3, example: '50 kPa' });
  within({ air_pressure_Pa: pressure_Pa }, { low: 50e3, high: 110e3, example: '101 kPa abs' });
  return pressure_Pa + outlet_Pa + headroom_Pa;
}

/**
 * Refuses a jet fed at more than the bottle can give.
 * @throws AskError `impossible`, with the bottle's pressure and the need, both gauge.
 */
export function requireBottle({ bottle_Pa, ...demand }: RegulatorDemand & { readonly bottle_Pa: number }): void {
  const needed_Pa = neededBottle_Pa(demand);
  if (bottle_Pa >= needed_Pa) return;
  const { outlet_Pa, headroom_Pa, pressure_Pa } = demand;
  const gauge = (absolute_Pa: number) => formatBoth(absolute_Pa - pressure_Pa, 'Pa', 'metric');
  const most_Pa = bottle_Pa - pressure_Pa - headroom_Pa;
  throw new AskError({
    code: 'impossible',
    what: `the bottle holds ${gauge(bottle_Pa)} gauge, and ${formatBoth(outlet_Pa, 'Pa', 'metric')} behind the regulator takes ${gauge(needed_Pa)} before it`,
    expected: most_Pa > 0 ? 'a lower setting or a warmer day' : 'a warmer day',
    // Rounded, the most itself might be too much.
    example: formatSi(Math.max(0.8 * most_Pa, 1000), 'Pa', 'metric'),
  });
}
