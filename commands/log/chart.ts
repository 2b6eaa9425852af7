import type { Burned } from '../../core/build/log-burn.ts';
import { efficiencies } from '../../core/melt/fuel-efficiency.ts';
import type { Chart } from '../card.ts';
import { percent } from './words.ts';

/** Efficiency and fuel for each of metal, over the burns of a build that melted something. */
export function burnChart(
  name: string,
  burns: readonly { readonly number: number; readonly found: Burned }[],
): Chart | undefined {
  const melts = burns.flatMap(({ number, found: { efficiency, fuel_per_metal } }) =>
    efficiency && fuel_per_metal !== undefined ? [{ number, efficiency, fuel_per_metal }] : [],
  );
  const [first, last] = [melts[0], melts.at(-1)];
  if (!first || !last || first === last) return undefined;
  const { low, high } = efficiencies.gas_crucible;
  return {
    title: `${name}: what its burns made of their fuel`,
    alt: `From burn ${first.number} to burn ${last.number} the metal got ${percent(first.efficiency.value)} to ${percent(last.efficiency.value)} of the fuel’s heat, at ${Number(first.fuel_per_metal.toPrecision(2))} to ${Number(last.fuel_per_metal.toPrecision(2))} of fuel for each of metal; told of gas-fired crucible furnaces: ${percent(low)} to ${percent(high)}.`,
    x: { label: 'burn', unit: 'count' },
    panels: [
      {
        y: { label: 'of the fuel’s heat in the metal', unit: '1', shown: 'percent' },
        series: [
          { name: 'efficiency', points: melts.map(({ number, efficiency }) => [number, efficiency.value] as const) },
        ],
        bands: [
          {
            name: 'efficiency',
            points: melts.map(({ number, efficiency: { range } }) => [number, range.low, range.high] as const),
          },
        ],
        lines: [
          { name: 'told, low', at: low, axis: 'y' },
          { name: 'told, high', at: high, axis: 'y' },
        ],
      },
      {
        y: { label: 'fuel for each of metal, by weight', unit: 'count' },
        series: [
          { name: 'fuel', points: melts.map(({ number, fuel_per_metal }) => [number, fuel_per_metal] as const) },
        ],
      },
    ],
  };
}
