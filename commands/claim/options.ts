import { AskError } from '../../core/ask-error.ts';
import type { SiUnit } from '../../core/quantity/figure.ts';
import { type Dimension, readQuantity } from '../../core/quantity/parse.ts';
import type { Card } from '../card.ts';
import { figureFor } from '../settle/measures.ts';
import type { Claimed, Comparison } from './claimed.ts';

const dimensionOf: Partial<Record<SiUnit, Dimension>> = {
  m: 'length',
  kg: 'mass',
  s: 'time',
  K: 'temperature',
  Pa: 'pressure',
  W: 'power',
  J: 'energy',
  'm/s': 'speed',
  'm3/s': 'flow',
  'kg/s': 'mass-flow',
  m3: 'volume',
  '1': 'fraction',
  count: 'number',
  USD: 'money',
};

const words: readonly (readonly [RegExp, Comparison])[] = [
  [/^(?:at most|below|under|less than|no more than|<=?|≤)\s*/i, 'at most'],
  [/^(?:at least|above|over|more than|no less than|>=?|≥)\s*/i, 'at least'],
  [/^(?:about|around|roughly|=|~)\s*/i, 'about'],
];

/** `shell` and `below 60 °C` of a question that has been answered. */
export function claimedBy(figure: string, is: string, { card, line }: { card: Card; line: string }): Claimed {
  const found = figureFor(figure, card.figures);
  if (!found)
    throw new AskError({
      code: 'unknown-name',
      what: `${card.command} has no figure called "${figure.slice(0, 40)}"`,
      expected: card.figures.map(({ id }) => id).join(', '),
      example: card.figures[0]?.id ?? 'wall.shell_peak',
      option: 'figure',
    });
  const [begin, compare] = words.find(([pattern]) => pattern.test(is.trim())) ?? [/^/, 'about' as const];
  const dimension = dimensionOf[found.unit];
  if (!dimension)
    throw new AskError({
      code: 'unfit',
      what: `${found.label} is no figure to hold a number against`,
      expected: 'a temperature, a mass, a time, a heat, a flow or a price',
      example: 'wall.shell_peak',
      option: 'figure',
    });
  const { si, system } = readQuantity(is.trim().replace(begin, ''), { dimensions: [dimension], label: 'the claim' });
  return {
    lines: [line],
    figure: found.id,
    of: `${found.label}, of ${line}`,
    compare,
    kind: 'value',
    value: si,
    unit: found.unit,
    system,
    ...(['wall.shell_peak', 'wall.touch43'].includes(found.id) && compare === 'at most' ? { careful: true } : {}),
    assumed: [],
  };
}
