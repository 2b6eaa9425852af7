import { availableHeat } from '../../core/fire/gas/available-heat.ts';
import { airNeed } from '../../core/fire/gas/mixture.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatSi } from '../../core/quantity/format.ts';
import type { Chart } from '../card.ts';
import { capital } from '../sentence.ts';
import type { FuelParts } from './parts.ts';

/** From a fifth too little air to twice as much as needed. */
const leanest = 1;
const richest = -0.2;
const points = 25;

/** Where the heat of a kilogram goes at this flue temperature, by how much air it is given. */
export function lossChart({ balance, burnt, asked }: FuelParts, units: UnitSystem): Chart {
  const { furnace, fire } = balance;
  const flue_K = furnace.hot_K - furnace.drop_dK;
  const rows = Array.from({ length: points }, (_, at) => {
    const excess = richest + ((leanest - richest) * at) / (points - 1);
    const { share_of_lower, loss } = availableHeat({
      fuel: burnt,
      ratio: { excess_air: excess },
      air_K: furnace.air_K,
      flue_K,
    });
    return { excess, left: share_of_lower, unburned: loss.unburned_J_kg / burnt.lower_heat_J_kg };
  });
  const best = rows.reduce((a, b) => (b.left > a.left ? b : a));
  const last = rows.at(-1)!;
  const here = fire.air_kg_kg / airNeed(burnt).kg_kg - 1;
  const percent = (share: number) => `${Math.round(share * 100)} %`;
  return {
    title: `${capital(asked.fuel.name)}: what its air costs`,
    alt: `With gas leaving at ${formatSi(flue_K, 'K', units)}: ${percent(best.left)} of the heat stays near ${percent(best.excess)} excess air, ${percent(last.left)} at ${percent(last.excess)}, ${percent(rows[0]!.left)} with a fifth of the air missing; here ${percent(fire.left(flue_K))} at ${percent(here)}.`,
    x: { label: 'excess air', unit: '1', shown: 'percent' },
    panels: [
      {
        y: { label: 'of the fuel’s heat', unit: '1', shown: 'percent' },
        series: [
          { name: 'stays in the furnace', points: rows.map(({ excess, left }) => [excess, left] as const) },
          {
            name: 'leaves as warmth of the flue',
            points: rows.map(({ excess, left, unburned }) => [excess, 1 - left - unburned] as const),
          },
          { name: 'leaves unburned', points: rows.map(({ excess, unburned }) => [excess, unburned] as const) },
        ],
        lines: [{ name: 'here', at: here, axis: 'x' }],
      },
    ],
  };
}
