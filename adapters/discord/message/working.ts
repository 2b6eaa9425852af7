import type { Card } from '../../../commands/card.ts';
import { formatBoth } from '../../../core/quantity/format.ts';
import { readKey } from '../../../core/quantity/key.ts';
import { sourceOf } from '../../../core/sources/sources.ts';
import type { Numbers, Step } from '../../../core/step.ts';
import { escaped, escapedTo } from '../escape.ts';
import { limits } from '../limits.ts';
import { fieldsOf } from './chunks.ts';

/** The calculation as it went: the first `count` steps. */
export const workingFields = ({ working, units }: Card, count: number) =>
  fieldsOf(
    'The working',
    working.slice(0, count).map((step, at) => stepOf(step, at + 1, units)),
  );

function stepOf({ formula, inputs, gives, source }: Step, number: number, units: Card['units']): string {
  const from = Object.keys(inputs).length === 0 ? [] : [`from ${listOf(inputs, units)}`];
  const lines = [...from, `gives ${listOf(gives, units)}`, sourceOf(source).title].map(escaped);
  const whole = [`**${number} ${escaped(formula)}**`, ...lines].join('\n');
  return whole.length <= limits.fieldValue ? whole : escapedTo(`${number} ${formula}`, limits.fieldValue);
}

const listOf = (numbers: Numbers, units: Card['units']): string =>
  Object.entries(numbers)
    .map(([key, value]) => {
      const { label, unit } = readKey(key);
      return `${label} ${formatBoth(value, unit, units)}`;
    })
    .join(' · ');
