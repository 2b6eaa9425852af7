import { formatBoth } from '../../core/quantity/format.ts';
import { readKey } from '../../core/quantity/key.ts';
import type { Numbers, Step } from '../../core/step.ts';
import { putIn } from '../../core/working/put-in.ts';
import type { Card } from '../card.ts';

/** What stands below a formula: its numbers put in, or else what went in, and what came out in the reader's units. */
export function stepLines(step: Step, units: Card['units']): readonly string[] {
  const reckoned = putIn(step).map(({ text }) => text);
  const from = Object.keys(step.inputs).length === 0 ? [] : [`from ${numbersOf(step.inputs, units)}`];
  return [...(reckoned.length > 0 ? reckoned : from), `gives ${numbersOf(step.gives, units)}`];
}

export const numbersOf = (numbers: Numbers, units: Card['units']): string =>
  Object.entries(numbers)
    .map(([key, value]) => {
      const { label, unit } = readKey(key);
      return `${label} ${formatBoth(value, unit, units)}`;
    })
    .join(' · ');
