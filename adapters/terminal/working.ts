import type { Card } from '../../commands/card.ts';
import { formatBoth } from '../../core/quantity/format.ts';
import { readKey } from '../../core/quantity/key.ts';
import { sourceOf } from '../../core/sources/sources.ts';
import type { Numbers, Step } from '../../core/step.ts';
import { type Look, paint, section, wrap } from './text.ts';

/** The calculation as it went: formula, what went in, what came out, where it is from. */
export const workingLines = ({ working, units }: Card, look: Look): readonly string[] =>
  working.flatMap((step, at) => [...(at === 0 ? [] : ['']), ...stepLines(step, at + 1, units, look)]);

function stepLines(step: Step, number: number, units: Card['units'], look: Look): readonly string[] {
  const indent = '   ';
  const inner = (text: string) => wrap(text, look.width - indent.length).map((line) => indent + line);
  const [first = '', ...more] = wrap(step.formula, look.width - indent.length);
  return [
    paint('bold', `${String(number).padEnd(indent.length)}${first}`, look),
    ...more.map((line) => paint('bold', indent + line, look)),
    ...(Object.keys(step.inputs).length === 0 ? [] : inner(`from ${listOf(step.inputs, units)}`)),
    ...inner(`gives ${listOf(step.gives, units)}`),
    ...inner(sourceOf(step.source).title).map((line) => paint('dim', line, look)),
  ];
}

const listOf = (numbers: Numbers, units: Card['units']): string =>
  Object.entries(numbers)
    .map(([key, value]) => {
      const { label, unit } = readKey(key);
      return `${label} ${formatBoth(value, unit, units)}`;
    })
    .join(' · ');

/** Sources in full, for the one answer that is asked for them. */
export const sourceLines = ({ sources }: Card, look: Look): readonly string[] =>
  sources.length === 0
    ? []
    : section(
        'Sources',
        sources.map((id) => {
          const { title, opened } = sourceOf(id);
          return opened in openedWords ? `${title} (${openedWords[opened as keyof typeof openedWords]})` : title;
        }),
        look,
      );

/** How far it was read, where its title does not say. */
const openedWords = {
  whole: 'read whole',
  table: 'its table read',
  excerpt: 'an excerpt read',
  abstract: 'its abstract read',
  library: 'as a published library has it',
} as const;
