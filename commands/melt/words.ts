import { cupolaLoss } from '../../core/melt/data/element-loss.ts';
import { fumeLimits } from '../../core/melt/data/fume-limits.ts';
import type { MeltEstimate, MeltInput } from '../../core/melt/melt.ts';
import { pourFor } from '../../core/melt/melt-heat.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { formatBoth, formatFigure, formatSi } from '../../core/quantity/format.ts';
import type { Table } from '../card.ts';
import { lift_kg } from './figures.ts';
import type { AskedMelt } from './question.ts';

/** How much heat, how much is left, in how many pours, and how soon at best. */
export function headlineOf(estimate: MeltEstimate, { crucibleGiven }: AskedMelt, units: UnitSystem): string {
  const { question, typical, ranges, charge } = estimate;
  const { alloy, mass_kg, pour_K } = question;
  const heat = { id: '', label: '', value: typical.heat_J, unit: 'J', rangeBasis: 'sampled' } as const;
  const { lead, other, range } = formatFigure({ ...heat, ...(ranges.heat_J ? { range: ranges.heat_J } : {}) }, units);
  const left = ranges.left_kg;
  const leftText = left
    ? formatFigure({ id: '', label: '', value: typical.left_kg, unit: 'kg', range: left, rangeBasis: 'sampled' }, units)
    : undefined;
  const pours =
    charge.pours === 1 ? 'in one pour' : `in ${charge.pours} pours of ${formatSi(charge.each_kg, 'kg', units)}`;
  const tight = crucibleGiven && charge.pours === 1 && (ranges.holds_kg?.low ?? 0) < mass_kg.typical;
  return [
    `${formatBoth(mass_kg.typical, 'kg', units)} of ${alloy.name} to ${formatBoth(pour_K.typical, 'K', units)}`,
    `takes ${lead}${range ? ` (${range})` : ''}${other ? ` or ${other}` : ''} in the metal alone`,
    `and leaves about ${leftText ? `${leftText.lead}${leftText.range ? ` (${leftText.range})` : ''}` : formatSi(typical.left_kg, 'kg', units)}, ${pours}${tight ? ', only just: the crucible may be too small' : ''}`,
  ]
    .join(' ')
    .concat('.');
}

const doubts: Readonly<Record<MeltInput, string>> = {
  'handbook heat': 'what is in the metal, and how far handbooks differ on its heat of melting: name the alloy',
  'pouring temperature': 'how hot it is poured: read it with a probe, and say pour=',
  mass: 'the mass: weigh it',
  loss: 'how much burns off: weigh the dross',
  'liquid density': 'the density of the liquid',
  'working fill': 'how full the crucible may be',
  'density of the pot': 'what the crucible is made of: weigh it',
  'heat capacity of the pot': 'what the crucible is made of',
  film: 'how well the fire reaches the crucible: time a melt',
  fire: 'how hot the fire round it is',
};

export function doubtOf({ movesMost }: MeltEstimate): string {
  const mover = movesMost.heat_J;
  return mover
    ? `for the heat, ${doubts[mover.input]} (${Math.round(mover.share * 100)} % of its spread)`
    : 'nothing that was sampled';
}

/** The window of the alloy, by section. */
export function pourTable({ question: { alloy } }: MeltEstimate, units: UnitSystem): Table {
  const show = (kelvin: number) => formatBoth(kelvin, 'K', units);
  return {
    columns: ['sections', 'pour at', 'from', 'to'],
    rows: (['heavy', 'medium', 'thin'] as const).map((section) => {
      const { low, typical, high } = pourFor(alloy, section);
      return [section, show(typical), show(low), show(high)];
    }),
  };
}

const wholePercent = ({ low, high }: { low: number; high: number }) =>
  `${Math.round(low * 100)} to ${Math.round(high * 100)} %`;

/** Nothing molten hangs in a pair of tongs above this; judged. */
const hangs_kg = 10;

export function notesOf(estimate: MeltEstimate, units: UnitSystem): readonly string[] {
  const { question, charge, loss, typical } = estimate;
  const { alloy, pot, form, cover, pour_K } = question;
  const zinc = loss.elements.find(({ element }) => element === 'Zn');
  const brass = alloy.family === 'copper' && zinc !== undefined && zinc.share > 0.03 ? zinc : undefined;
  const percent = (share: number) => `${(share * 100).toFixed(1)} %`;
  return [
    `Fails when: ${alloy.failsWhen}`,
    ...fumeLimits
      .filter(({ element, from_share }) => (alloy.composition[element] ?? 0) >= from_share)
      .map(({ says }) => says),
    ...(pot.id === 'steel' && alloy.family === 'aluminium'
      ? [
          `A steel pot goes into the aluminium: iron makes it brittle, faster above ${formatSi(1023.15, 'K', units)}, stirred or scraped bright. Wash it with clay each melt, pour soon, weigh the pot, retire it at 60 % of its new wall (from memory).`,
        ]
      : []),
    ...(pot.id === 'steel' && alloy.family === 'zinc'
      ? ['Zinc eats bare steel slowly too: coat the pot, and keep it below 460 °C (860 °F).']
      : []),
    ...(charge.charges > 1
      ? [
          `About ${formatSi(charge.first_kg, 'kg', units)} of such scrap fits cold; the rest goes in ${charge.charges - 1} times more, dry and warm, loose, nothing above the rim.`,
        ]
      : []),
    ...(form.note ? [form.note] : []),
    ...(alloy.family === 'iron'
      ? [
          `A crucible keeps more than a cupola, where silicon loses ${wholePercent(cupolaLoss.Si)} and manganese ${wholePercent(cupolaLoss.Mn)}.`,
        ]
      : []),
    ...(brass
      ? [
          `Zinc goes first: ${percent(brass.share)} in the charge is about ${percent(brass.share_after)} in the casting${cover ? '' : '; a cover of dry charcoal or glass about halves that loss (from memory)'}.`,
        ]
      : []),
    ...(lift_kg(estimate) > hangs_kg
      ? [`Pot and metal come to ${formatBoth(lift_kg(estimate), 'kg', units)}: two people and a shank.`]
      : []),
    `Above ${formatBoth(typical.absorbed_W, 'W', units)} reaching the crucible, more fire heats the flue, not the metal.`,
    ...(pour_K.typical > alloy.pour_K.high
      ? [`That is above its usual window, which ends at ${formatBoth(alloy.pour_K.high, 'K', units)}.`]
      : []),
  ];
}
