import type { Card } from '../../commands/card.ts';
import { stepLines as stepTexts } from '../../commands/why/step-lines.ts';
import { sourceOf } from '../../core/sources/sources.ts';
import type { Step } from '../../core/step.ts';
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
    ...stepTexts(step, units).flatMap(inner),
    ...inner(sourceOf(step.source).title).map((line) => paint('dim', line, look)),
  ];
}

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
