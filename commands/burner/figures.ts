import type { Range } from '../../core/doubt/sample.ts';
import { asFired } from '../../core/fire/fuel/fuel-as-fired.ts';
import { lastingTime_s } from '../../core/fire/propane/cylinder.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import { handbook_W_m2 } from '../../core/shape/vent.ts';
import type { BurnerParts } from './parts.ts';
import { LOWER_J_kg, propane } from './question.ts';

export const HIGHER_J_kg = asFired({ fuel: propane }).higher_heat_J_kg;
/** Handbook, from memory: 1 ft³ of air for 100 Btu, of the higher heating value. */
const HANDBOOK_m3_J = 0.028316846592 / 105_505.585;

const sampled = (range: Range | undefined) =>
  range && range.high - range.low > 1e-3 * Math.abs(range.high)
    ? ({ range, rangeBasis: 'sampled' } as const)
    : ({ rangeBasis: 'none' } as const);

const times = (range: Range | undefined, factor: number): Range | undefined =>
  range && { low: range.low * factor, high: range.high * factor };

function figure(id: string, label: string, value: number, unit: Figure['unit'], range?: Range, note?: string): Figure {
  return { id: `burner.${id}`, label, value, unit, ...sampled(range), ...(note === undefined ? {} : { note }) };
}

export function burnerFigures(parts: BurnerParts): readonly Figure[] {
  const { point, doubt } = parts;
  const { ranges } = doubt;
  return [
    figure('rate', 'heat, lower value', point.flow_kg_s * LOWER_J_kg, 'W', times(ranges.flow, LOWER_J_kg)),
    figure(
      'rate_higher',
      'heat, higher value',
      point.flow_kg_s * HIGHER_J_kg,
      'W',
      times(ranges.flow, HIGHER_J_kg),
      'as gas burners are sold',
    ),
    figure('propane', 'propane', point.flow_kg_s, 'kg/s', ranges.flow),
    { ...figure('jet', 'jet', point.jet_m, 'm', ranges.jet), shown: 'sheet' },
    figure(
      'pressure',
      'pressure at the jet',
      point.pressure_Pa,
      'Pa',
      ranges.pressure,
      point.jet.choked ? 'gauge; the jet is choked' : 'gauge',
    ),
    ...tubeFigures(parts),
    ...bottleFigures(parts),
    figure(
      'handbook',
      'air, handbook',
      point.flow_kg_s * HIGHER_J_kg * HANDBOOK_m3_J,
      'm3/s',
      undefined,
      '1 ft³ for 100 Btu, from memory',
    ),
    figure(
      'vent',
      'vent, handbook',
      Math.sqrt((4 * point.flow_kg_s * HIGHER_J_kg) / (Math.PI * handbook_W_m2.typical)),
      'm',
      undefined,
      'across; 1 in² for 22,500 Btu/h, from memory; gas at some 15 m/s',
    ),
  ];
}

function tubeFigures({ tube, doubt }: BurnerParts): readonly Figure[] {
  if (!tube) return [];
  return [
    figure(
      'tube',
      'mixing tube, inside',
      tube.bore_m,
      'm',
      undefined,
      tube.chosen ? 'for the balanced air' : undefined,
    ),
    { ...figure('air', 'air drawn, of the balanced', tube.air, '1', doubt.ranges.air), shown: 'percent' },
    figure('velocity', 'mixture in the tube', tube.mixing.tube_velocity_m_s, 'm/s'),
    figure('stall', 'stopped by a back-pressure of', Math.max(0, tube.mixing.stall_Pa), 'Pa'),
  ];
}

function bottleFigures({ question, point, draw, doubt, options }: BurnerParts): readonly Figure[] {
  const { bottles, bottle, pressure_Pa, spreads } = question;
  const { ranges } = doubt;
  const level_s =
    bottles *
    lastingTime_s({
      fill_kg: bottle.liquid_kg,
      usable_share: spreads.usable_share.typical,
      draw_kg_s: point.flow_kg_s,
    });
  const each_kg = options.each?.si;
  return [
    {
      ...figure('lasts', bottles > 1 ? 'the bottles last' : 'the bottle lasts', draw.lasts_s, 's', ranges.lasts),
      shown: 'hours',
    },
    { ...figure('level', 'its fill alone would last', level_s, 's'), shown: 'hours' },
    figure('steady', 'gives steadily', draw.steady.draw_kg_s * bottles, 'kg/s', ranges.steady),
    figure('bottle_pressure', 'in the bottle at rest', draw.bottle_Pa - pressure_Pa, 'Pa', undefined, 'gauge'),
    figure('needed', 'the regulator needs', draw.needed_Pa - pressure_Pa, 'Pa', undefined, 'gauge'),
    ...(each_kg === undefined
      ? []
      : [figure('melts', 'melts from it', draw.drawn_kg / each_kg, 'count', times(ranges.drawn, 1 / each_kg))]),
  ];
}
