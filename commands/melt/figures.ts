import type { MeltEstimate, MeltOutput } from '../../core/melt/melt.ts';
import type { Figure } from '../../core/quantity/figure.ts';
import type { AskedMelt } from './question.ts';

/** Id and label of every figure, in the order of the card. */
export const meltFigures = {
  'melt.heat': 'heat in the metal',
  'melt.pot_heat': 'heat in the crucible',
  'melt.mass': 'metal',
  'melt.volume': 'as a liquid',
  'melt.solidus': 'starts to melt',
  'melt.liquidus': 'all liquid',
  'melt.pour': 'pour',
  'melt.holds': 'crucible pours',
  'melt.pours': 'pours',
  'melt.first': 'cold scrap that fits first',
  'melt.charges': 'times to charge, a pour',
  'melt.lost': 'lost to dross and fume',
  'melt.left': 'left to pour',
  'melt.time': 'least time to melt',
  'melt.absorbs': 'crucible takes, melting',
  'melt.crucible': 'crucible across',
  'melt.crucible_height': 'crucible height',
  'melt.pot_mass': 'crucible weighs',
  'melt.lift': 'pot and metal lifted',
  'melt.shrink': 'casting shrinks',
} as const;

type Id = keyof typeof meltFigures;
type More = Partial<Pick<Figure, 'note' | 'shown' | 'range' | 'rangeBasis'>>;

const figure = (id: Id, value: number, unit: Figure['unit'], more: More = {}): Figure => ({
  id,
  label: meltFigures[id],
  value,
  unit,
  rangeBasis: 'none',
  ...more,
});

const judged = ({ low, high }: { low: number; high: number }): More =>
  high > low ? { range: { low, high }, rangeBasis: 'judged' } : {};

/** Pot at the heavy end of its density with one pour in it: what hangs in the tongs. */
export function lift_kg({ pot_kg, charge, question: { pot } }: MeltEstimate): number {
  return (pot_kg * pot.density_kg_m3.high) / pot.density_kg_m3.typical + charge.each_kg;
}

export function figuresOf(estimate: MeltEstimate, { crucibleGiven }: AskedMelt): readonly Figure[] {
  const { question, typical, ranges, charge, charges, loss } = estimate;
  const { alloy, mass_kg, pour_K, crucible } = question;
  const sampled = (output: MeltOutput): More => {
    const range = ranges[output];
    return range && range.high > range.low ? { range, rangeBasis: 'sampled' } : {};
  };
  const percent = (share: number) => `${(share * 100).toPrecision(2)} %`;
  const kWh = (heat_J: number) => `${(heat_J / 3.6e6).toPrecision(2)} kWh`;
  return [
    figure('melt.heat', typical.heat_J, 'J', { ...sampled('heat_J'), note: kWh(typical.heat_J) }),
    figure('melt.pot_heat', typical.pot_J, 'J', { ...sampled('pot_J'), note: kWh(typical.pot_J) }),
    figure('melt.mass', mass_kg.typical, 'kg', judged(mass_kg)),
    figure('melt.volume', mass_kg.typical / alloy.liquid_density_kg_m3.typical, 'm3', { shown: 'liquid' }),
    figure('melt.solidus', alloy.solidus_K.typical, 'K', judged(alloy.solidus_K)),
    figure('melt.liquidus', alloy.liquidus_K.typical, 'K', judged(alloy.liquidus_K)),
    figure('melt.pour', pour_K.typical, 'K', judged(pour_K)),
    figure('melt.holds', typical.holds_kg, 'kg', {
      ...sampled('holds_kg'),
      note: crucibleGiven ? 'four fifths full' : 'sized for it, four fifths full',
    }),
    figure('melt.pours', charge.pours, 'count'),
    figure('melt.first', charge.first_kg, 'kg'),
    figure('melt.charges', charge.charges, 'count', {
      ...(charges.high > charges.low ? { note: `${charges.low} to ${charges.high}, by how loose it lies` } : {}),
    }),
    figure('melt.lost', typical.lost_kg, 'kg', {
      ...sampled('lost_kg'),
      note: `${percent(loss.lost.low)} to ${percent(loss.lost.high)} of the metal; dirt on top`,
    }),
    figure('melt.left', typical.left_kg, 'kg', sampled('left_kg')),
    figure('melt.time', typical.time_s, 's', {
      ...sampled('time_s'),
      shown: 'minutes',
      note: 'pot already in a hot furnace; a cold lining takes far longer',
    }),
    figure('melt.absorbs', typical.absorbed_W, 'W', sampled('absorbed_W')),
    figure('melt.crucible', 2 * crucible.shape.outside_radius_m, 'm'),
    figure('melt.crucible_height', crucible.shape.height_m, 'm'),
    figure('melt.pot_mass', estimate.pot_kg, 'kg'),
    figure('melt.lift', lift_kg(estimate), 'kg', { note: 'heavy end' }),
    figure('melt.shrink', alloy.shrink.typical, '1', { ...judged(alloy.shrink), shown: 'percent' }),
  ];
}
