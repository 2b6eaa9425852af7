import type { Range } from '../../core/doubt/sample.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import { handbook_W_m2 } from '../../core/shape/vent.ts';
import type { BlastParts } from './parts.ts';

const GALLON_m3 = 3.785411784e-3;
const BAG_m3 = 30 * GALLON_m3;
/** Handbook, from memory: 1 ft³ of air for 100 Btu, of the higher heating value. */
const HANDBOOK_m3_J = 0.028316846592 / 105_505.585;

const sampled = (range: Range | undefined) =>
  range && range.high - range.low > 1e-3 * range.high
    ? ({ range, rangeBasis: 'sampled' } as const)
    : ({ rangeBasis: 'none' } as const);

export function blastFigures(parts: BlastParts): readonly Figure[] {
  const { point, doubt, needed_m3_s: need, fuel_kg_s, power_W, question } = parts;
  const { ranges } = doubt;
  const plain = (id: string, label: string, value: number, unit: Figure['unit'], note?: string): Figure => ({
    id: `blast.${id}`,
    label,
    value,
    unit,
    rangeBasis: 'none',
    ...(note === undefined ? {} : { note }),
  });
  return [
    { ...plain('flow', 'air that gets through', point.flow_m3_s, 'm3/s'), ...sampled(ranges.flow) },
    ...(need === undefined
      ? []
      : [
          { ...plain('need', 'air the fire needs', need, 'm3/s'), ...sampled(ranges.need) },
          {
            ...plain('cover', 'gets through, of the need', point.flow_m3_s / need, '1'),
            shown: 'percent' as const,
            ...sampled(ranges.cover),
          },
        ]),
    { ...plain('fuel', `burns ${question.fuel.name}`, fuel_kg_s, 'kg/s'), ...sampled(ranges.fuel) },
    { ...plain('power', 'heat set free', power_W, 'W'), ...sampled(ranges.power) },
    {
      ...plain('pressure', 'pressure at the blower', point.fan_Pa, 'Pa', 'a tube of water shows it'),
      ...sampled(ranges.pressure),
    },
    plain('pipe_loss', 'lost in the pipe', point.pipe_Pa, 'Pa'),
    plain('tuyere_loss', 'lost at the tuyere', point.tuyere_Pa, 'Pa'),
    ...(question.bed ? [plain('bed_loss', 'lost in the bed', point.bed_Pa, 'Pa')] : []),
    plain('velocity', 'speed in the tuyere', point.tuyere_velocity_m_s, 'm/s'),
    plain('bag', 'fills a bag in', BAG_m3 / point.flow_m3_s, 's', 'of 30 gal (114 L), at the tuyere'),
    ...(parts.valve_Pa === undefined ? [] : [plain('valve', 'a valve has to take', parts.valve_Pa, 'Pa')]),
    ...comparisons(parts, plain),
  ];
}

function comparisons(
  { fuel_kg_s, burning }: BlastParts,
  plain: (id: string, label: string, value: number, unit: Figure['unit'], note?: string) => Figure,
): readonly Figure[] {
  const { higher_heat_J_kg } = burning.fuel;
  const heat_W = fuel_kg_s * higher_heat_J_kg;
  return [
    plain('handbook', 'air, handbook', heat_W * HANDBOOK_m3_J, 'm3/s', '1 ft³ for 100 Btu, from memory'),
    plain(
      'vent',
      'vent, handbook',
      Math.sqrt((4 * heat_W) / (Math.PI * handbook_W_m2.typical)),
      'm',
      'across; 1 in² for 22,500 Btu/h, from memory; gas at some 15 m/s',
    ),
  ];
}
