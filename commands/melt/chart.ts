import type { MeltEstimate } from '../../core/melt/melt.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatBoth } from '../../core/quantity/format.ts';
import type { Chart } from '../card.ts';

/** A pure metal melts at one temperature: drawn a tenth of a kelvin wide, so that points rise. */
const STEP_dK = 0.1;

/** Heat in the metal against its temperature, from cold to the pour. */
export function meltChart({ question, curve, typical }: MeltEstimate, units: UnitSystem): Chart {
  const { alloy, mass_kg, pour_K } = question;
  const mass = mass_kg.typical;
  const points: (readonly [number, number])[] = [];
  for (const { T_K, heat_J_kg } of curve) {
    const last_K = points.at(-1)?.[0] ?? 0;
    points.push([Math.max(T_K, last_K + STEP_dK), mass * heat_J_kg]);
  }
  const correction = alloy.melting_correction_J_kg;
  const liquid = points.slice(-2);
  const show = (value: number, unit: 'K' | 'J') => formatBoth(value, unit, units);
  const solid_J = points.at(-3)?.[1] ?? 0;
  const melted_J = points.at(-2)?.[1] ?? 0;
  const pure = alloy.liquidus_K.typical - alloy.solidus_K.typical < 1;
  return {
    title: `Heat in ${alloy.name}, from cold to the pour`,
    alt: [
      `${show(solid_J, 'J')} to where it starts to melt at ${show(alloy.solidus_K.typical, 'K')},`,
      `${show(melted_J - solid_J, 'J')} more until it is liquid at ${show(alloy.liquidus_K.typical, 'K')},`,
      `${show(typical.heat_J, 'J')} in all to the pour at ${show(pour_K.typical, 'K')}.`,
    ].join(' '),
    x: { label: 'metal', unit: 'K' },
    panels: [
      {
        y: { label: 'heat in the metal', unit: 'J' },
        series: [{ name: alloy.name, points }],
        bands: [
          {
            name: alloy.name,
            points: liquid.map(([T_K, heat_J]) => [
              T_K,
              heat_J + mass * (correction.low - correction.typical),
              heat_J + mass * (correction.high - correction.typical),
            ]),
          },
        ],
        lines: [
          ...(pure ? [] : [{ name: 'starts to melt', at: alloy.solidus_K.typical, axis: 'x' } as const]),
          { name: pure ? 'melts' : 'all liquid', at: alloy.liquidus_K.typical, axis: 'x' },
          { name: 'pour', at: pour_K.typical, axis: 'x' },
        ],
      },
    ],
  };
}
