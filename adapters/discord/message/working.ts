import type { Card } from '../../../commands/card.ts';
import { stepLines } from '../../../commands/why/step-lines.ts';
import { sourceOf } from '../../../core/sources/sources.ts';
import type { Step } from '../../../core/step.ts';
import { escaped, escapedTo } from '../escape.ts';
import { limits } from '../limits.ts';
import { fieldsOf } from './chunks.ts';

/** The calculation as it went: the first `count` steps. */
export const workingFields = ({ working, units }: Card, count: number) =>
  fieldsOf(
    'The working',
    working.slice(0, count).map((step, at) => stepOf(step, at + 1, units)),
  );

function stepOf(step: Step, number: number, units: Card['units']): string {
  const { formula, source } = step;
  const lines = [...stepLines(step, units), sourceOf(source).title].map(escaped);
  const whole = [`**${number} ${escaped(formula)}**`, ...lines].join('\n');
  return whole.length <= limits.fieldValue ? whole : escapedTo(`${number} ${formula}`, limits.fieldValue);
}
