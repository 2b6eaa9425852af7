import type { Range } from '../../core/doubt/sample.ts';
import { dryingEfficiency, dryingHeat_J } from '../../core/dry/water.ts';
import { findFuel } from '../../core/fire/fuel/fuel.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import { type DryWork, firstHold_s } from './work.ts';

export const dryFigures = {
  'dry.ready': 'from ramming until a drying fire may be lit',
  'dry.water': 'water that must leave, free',
  'dry.held': 'water the air-dry body holds, which leaves in the fire',
  'dry.wet_mass': 'as rammed or cast',
  'dry.dry_mass': 'once dried',
  'dry.loss': 'loss a day by your weighings, of the dry mass',
  'dry.left': 'free water left by your weighings',
  'dry.apart': 'days between two weighings that this scale needs',
  'dry.limit': 'hottest while any pore is wet, adverse end',
  'dry.first_hold': 'until the first hold is over',
  'dry.fire': 'first fire, ramps and holds',
  'dry.cool': 'cooling after it, closed',
  'dry.heat': 'heat to boil all the water off',
  'dry.charcoal': 'charcoal for that, at the share a small fire puts into it',
} as const;

const ranged = (range: Range | undefined, basis: 'sampled' | 'judged') =>
  range && range.high - range.low > 1e-9
    ? ({ range: { low: range.low, high: range.high }, rangeBasis: basis } as const)
    : ({ rangeBasis: 'none' } as const);

const DAY_s = 86_400;

export function figuresOf(work: DryWork): readonly Figure[] {
  const { question, water, doubt, limit, firing, weighed, ready_days } = work;
  const { ranges } = doubt;
  const firstHold = (end: 'low' | 'typical' | 'high') => firstHold_s(firing, end);
  const { low, typical, high } = ready_days;
  const charcoal_J_kg = findFuel('lump-charcoal').lower_heat_J_kg.typical;
  const heat_J = dryingHeat_J({ water_kg: water.free_kg + water.held_kg, start_K: question.air_K });
  const measured = weighed !== undefined || question.happened !== undefined;
  return [
    {
      id: 'dry.ready',
      label: measured ? 'ready, from ramming' : question.kind.before === 'air-dry' ? 'dries in air' : 'hardens, sets',
      value: typical * DAY_s,
      unit: 's',
      shown: 'days',
      ...ranged(
        { low: low * DAY_s, high: high * DAY_s },
        question.kind.before === 'air-dry' && !measured ? 'sampled' : 'judged',
      ),
      note: 'plan by the late end',
    },
    ...weighedFigures(work),
    { id: 'dry.water', label: 'water to go', value: water.free_kg, unit: 'kg', ...ranged(ranges.free, 'sampled') },
    {
      id: 'dry.held',
      label: 'held until the fire',
      value: water.held_kg,
      unit: 'kg',
      ...ranged(ranges.held, 'sampled'),
      note: 'leaves by about 350 °C (660 °F)',
    },
    { id: 'dry.wet_mass', label: 'wet', value: water.wet_kg, unit: 'kg', rangeBasis: 'none' },
    { id: 'dry.dry_mass', label: 'dried', value: water.dry_kg, unit: 'kg', ...ranged(ranges.dry, 'sampled') },
    {
      id: 'dry.limit',
      label: 'no hotter while wet than',
      value: limit.limit_K,
      unit: 'K',
      rangeBasis: 'none',
      note: 'shut-in steam is as strong as the weakest such body',
    },
    {
      id: 'dry.first_hold',
      label: 'drying fire, to the end of the first hold',
      value: firstHold('typical'),
      unit: 's',
      shown: 'hours',
      ...ranged({ low: firstHold('low'), high: firstHold('high') }, 'judged'),
    },
    {
      id: 'dry.fire',
      label: 'first fire in all',
      value: firing.total_s.typical,
      unit: 's',
      shown: 'hours',
      ...ranged(firing.total_s, 'judged'),
    },
    { id: 'dry.cool', label: 'cools, closed', value: firing.cool_s, unit: 's', shown: 'hours', rangeBasis: 'none' },
    { id: 'dry.heat', label: 'heat to boil it off', value: heat_J, unit: 'J', ...ranged(ranges.heat, 'sampled') },
    {
      id: 'dry.charcoal',
      label: 'charcoal for that',
      value: heat_J / charcoal_J_kg / dryingEfficiency.typical,
      unit: 'kg',
      ...ranged(
        {
          low: (ranges.heat?.low ?? heat_J) / charcoal_J_kg / dryingEfficiency.high,
          high: (ranges.heat?.high ?? heat_J) / charcoal_J_kg / dryingEfficiency.low,
        },
        'judged',
      ),
      note: 'if none of it went into the air; 10 to 30 % of a small fire reaches the water',
    },
  ];
}

function weighedFigures({ weighed }: DryWork): readonly Figure[] {
  if (!weighed) return [];
  const { loss_per_day, left_kg, apart_days } = weighed;
  return [
    {
      id: 'dry.loss',
      label: 'loses a day',
      value: loss_per_day.typical,
      unit: '1',
      shown: 'percent',
      ...ranged(loss_per_day, 'judged'),
      note: 'of the dry mass; dry below 0.1 to 0.5 %',
    },
    { id: 'dry.left', label: 'may be left in it', value: left_kg.typical, unit: 'kg', ...ranged(left_kg, 'judged') },
    {
      id: 'dry.apart',
      label: 'weighings this far apart tell',
      value: apart_days * DAY_s,
      unit: 's',
      shown: 'days',
      rangeBasis: 'none',
      note: 'a household scale, 50 g',
    },
  ];
}
