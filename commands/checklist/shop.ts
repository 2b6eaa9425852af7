import { z } from 'zod';
import { type ShopRow, totals } from '../../core/build/shop.ts';
import { factsOf } from '../../core/build/stage.ts';
import { stageOf } from '../../core/build/stages.ts';
import type { Spread } from '../../core/materials/spread.ts';
import type { Currency } from '../../core/quantity/currency.ts';
import type { Figure, UnitSystem } from '../../core/quantity/figure.ts';
import { formatFigure } from '../../core/quantity/format.ts';
import type { Command } from '../command.ts';
import { whosePrices } from '../prices.ts';
import { family, listOption } from './family.ts';
import { needList } from './opened.ts';
import { shopList } from './shop-rows.ts';
import { assumedOf, givenOf } from './show.ts';

const options = z.strictObject({ list: listOption() });

export const shopFigures = {
  'checklist.cost': 'lining, shell, fire and metal',
  'checklist.cost_own': 'of it, at your prices',
  'checklist.gear_cost': 'gear and tools, if you have none',
} as const;

export const checklistShop = {
  ...family,
  name: 'checklist shop',
  summary: 'One shopping list for the build: how much, at what kind of shop, what it costs.',
  options,
  subject: 'list',
  examples: [{ line: 'checklist shop', says: 'for the newest checklist of this place' }],
  figures: shopFigures,
  slow: true,
  async answer({ list: name }, context) {
    const { units, now } = context;
    const buying = stageOf('source');
    const open = await needList(name, context);
    const { build, gear, used, says } = await shopList(open, context);
    const figures = costFigures(build, gear);
    const silent = build.filter(({ quantity }) => !quantity).map((row) => row.name);
    const costs = figures.map((figure) => `${costText(figure, units)} for ${figure.label}`);
    return {
      headline: `${open.list.name}: ${build.length} things to buy and ${gear.length} of gear and tools; ${costs.join(', ')}.`,
      figures,
      table: shopTable(build, units),
      notes: [
        ...(says === undefined ? [] : [says]),
        ...gear.map(
          (row) =>
            `${row.name}: ${[row.note, `${gearAmount(row, units)}${costOf(row, units)}`].filter(Boolean).join('; ')}`,
        ),
        'Prices are common ones in US dollars, from memory, their range wide; what you have costs nothing. Ends are added to ends.',
        ...(silent.length > 0 ? [`How much of these, this question does not say: ${silent.join('; ')}.`] : []),
      ],
      given: [...givenOf(open, context), ...whosePrices(used, now, units)],
      assumed: [
        ...assumedOf(open),
        ...(used.length === 0 ? [{ text: 'no price of yours', override: 'price sand 50 lb $5' }] : []),
      ],
      sources: ['derived', 'common-practice', 'from-memory', 'osha-eye-face', 'hse-molten-metal-clothing'],
      hazards: { facts: buying ? factsOf(buying, open.kind) : [] },
      next: [
        { label: 'where the build stands', line: `checklist list=${open.list.name}` },
        { label: 'to print', line: `checklist sheet list=${open.list.name}` },
      ],
    };
  },
} satisfies Command<typeof options>;

export function costFigures(build: readonly ShopRow[], gear: readonly ShopRow[]): readonly Figure[] {
  const [dollars, ...own] = [...totals(build)].toSorted(([a], [b]) => Number(b === 'USD') - Number(a === 'USD'));
  const [tools] = totals(gear);
  const figure = (
    id: keyof typeof shopFigures,
    [currency, { low, typical, high }]: readonly [string, Spread],
  ): Figure => ({
    id,
    label: shopFigures[id],
    value: typical,
    unit: currency as Currency,
    ...(high > low ? { range: { low, high }, rangeBasis: 'judged' } : { rangeBasis: 'none' }),
  });
  return [
    ...(dollars ? [figure('checklist.cost', dollars)] : []),
    // Nothing is converted: what is paid in another money is told in it.
    ...own.slice(0, 1).map((one) => figure('checklist.cost_own', one)),
    ...(tools ? [figure('checklist.gear_cost', tools)] : []),
  ];
}

export function costText(figure: Figure, units: UnitSystem): string {
  const { lead, range } = formatFigure(figure, units);
  return range === undefined ? lead : `${lead} (${range})`;
}

export const shopTable = (rows: readonly ShopRow[], units: UnitSystem) => ({
  columns: ['what', 'how much', 'cost', 'where'],
  rows: rows.map((row) => [row.name, amountOf(row, units), costOf(row, units), row.shops[0] ?? '']),
});

const gearAmount = (row: ShopRow, units: UnitSystem): string =>
  row.quantity?.typical === 1 && row.counted === 'count' ? '' : `${amountOf(row, units)}, `;

export function amountOf({ quantity, counted, bags }: ShopRow, units: UnitSystem): string {
  if (!quantity) return 'not known';
  if (counted === 'count') return pieces(quantity);
  const { lead, range } = formatFigure(
    {
      id: 'amount',
      label: '',
      value: quantity.typical,
      unit: counted,
      ...(counted === 'm3' ? { shown: 'bulk' } : {}),
      ...(quantity.high > quantity.low
        ? { range: { low: quantity.low, high: quantity.high }, rangeBasis: 'judged' }
        : { rangeBasis: 'none' }),
    },
    units,
  );
  if (bags) return `${lead}; ${pieces(bags)} ${bags.high === 1 ? 'bag' : 'bags'}`;
  return range === undefined ? lead : `${lead} (${range})`;
}

const pieces = ({ low, typical, high }: Spread): string =>
  low === high ? `${typical}` : `${typical} (${low} to ${high})`;

export const costOf = ({ cost, currency }: ShopRow, units: UnitSystem): string =>
  cost
    ? costText(
        {
          id: 'cost',
          label: '',
          value: cost.typical,
          unit: currency as Currency,
          ...(cost.high > cost.low
            ? { range: { low: cost.low, high: cost.high }, rangeBasis: 'judged' }
            : { rangeBasis: 'none' }),
        },
        units,
      )
    : '';
