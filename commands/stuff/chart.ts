import type { Curve, Material } from '../../core/materials/material.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatFigure, formatSi } from '../../core/quantity/format.ts';
import type { Chart } from '../card.ts';

interface Drawn extends Material {
  readonly conductivity_W_mK: Curve;
}

/** One row is no line. */
const isDrawn = (material: Material): material is Drawn => (material.conductivity_W_mK?.T_K.length ?? 0) > 1;

/** Conductivity over temperature, each material with its range and the limit it is judged by. Empty where none is tabulated. */
export function conductivityChart(materials: readonly Material[], units: UnitSystem): { readonly chart?: Chart } {
  const drawn = materials.filter(isDrawn);
  if (drawn.length === 0) return {};
  const names = drawn.map(({ name }) => name).join(' and ');
  return {
    chart: {
      title: `How well ${names} ${drawn.length > 1 ? 'conduct' : 'conducts'} heat`,
      alt: drawn.map((one) => inWords(one, units)).join(' '),
      x: { label: 'temperature', unit: 'K' },
      panels: [
        {
          y: { label: 'conductivity', unit: 'W/(m K)' },
          series: drawn.map(({ name, conductivity_W_mK: { T_K, typical } }) => ({
            name,
            points: T_K.map((T, row) => [T, typical[row]!] as const),
          })),
          bands: drawn.map(({ name, conductivity_W_mK: { T_K, low, high } }) => ({
            name,
            points: T_K.map((T, row) => [T, low[row]!, high[row]!] as const),
          })),
          lines: drawn.flatMap((one) => limitOf(one, drawn, units)),
        },
      ],
    },
  };
}

/** Only where it falls on the curves: a limit far beyond them would squeeze them. */
function limitOf({ name, properties }: Drawn, drawn: readonly Drawn[], units: UnitSystem) {
  const limit_K = properties.service_limit_K?.low;
  const hottest_K = Math.max(...drawn.map(({ conductivity_W_mK: { T_K } }) => T_K.at(-1)!));
  if (limit_K === undefined || limit_K > hottest_K) return [];
  const whose = drawn.length > 1 ? `${name}: ` : '';
  return [{ name: `${whose}limit ${formatSi(limit_K, 'K', units)}`, at: limit_K, axis: 'x' as const }];
}

function inWords({ name, conductivity_W_mK: { T_K, low, typical, high } }: Drawn, units: UnitSystem): string {
  const at = (row: number) => {
    const range = { low: low[row]!, high: high[row]! };
    const figure = { id: 'k', label: 'k', value: typical[row]!, unit: 'W/(m K)', range, rangeBasis: 'judged' } as const;
    const shown = formatFigure(figure, units);
    return `${shown.lead}${shown.range ? ` (${shown.range})` : ''} at ${formatSi(T_K[row]!, 'K', units)}`;
  };
  return `${name} conducts ${at(0)} and ${at(T_K.length - 1)}.`;
}
