import type { AskError } from '../../core/ask-error.ts';
import type { Caution } from '../../core/hazard/caution.ts';
import { cautionsFor, mergeCautions } from '../../core/hazard/cautions.ts';
import { factsIn } from '../../core/hazard/words.ts';
import type { Answer, AnswerContext, Ask } from '../command.ts';
import { lineOf } from '../source.ts';
import type { Told } from './plan.ts';
import { type Question, questions, SKIP } from './questions.ts';

/** Of the place, and of what the words say themselves: a gas cylinder for a shell. */
const factsOf = (told: Told): readonly string[] => [
  ...factsIn(Object.values(told).join(' ')),
  ...(told.where === 'indoors' ? ['indoors', 'charcoal'] : []),
  ...(told.where === 'paving' ? ['wet-ground'] : []),
];

/** Of hot work where it is to stand. */
export const cautionsOf = (told: Told): readonly Caution[] => cautionsFor({ facts: ['hot-work', ...factsOf(told)] });

/** One question, its choices as lines ready to send. `wrong` says what the answer before it ran into. */
export function questionCard(
  question: Question,
  told: Told,
  {
    commands,
    wrong,
    cautions,
  }: Pick<AnswerContext, 'commands'> & {
    readonly wrong?: AskError;
    readonly cautions?: readonly Caution[];
  },
): Answer {
  const at = questions.indexOf(question) + 1;
  const line = (value: string): string => {
    const options: Ask['options'] = { ...told, [question.id]: value };
    return lineOf({ command: 'start', options }, commands);
  };
  const earlier = questions[at - 2];
  return {
    headline: `${wrong ? `That won’t do: ${wrong.what}. ` : ''}${at} of ${questions.length}: ${question.ask}`,
    figures: [],
    assumed: [],
    sources: [],
    notes: [...(wrong ? [`What would do: ${wrong.expected}.`] : []), question.why],
    next: [
      ...question.choices.map(({ label, value }) => ({ label, line: line(value) })),
      { label: 'I don’t know yet', line: line(SKIP) },
      ...(earlier && told[earlier.id] !== undefined
        ? [
            {
              label: `back to: ${earlier.ask}`,
              line: lineOf({ command: 'start', options: backTo(told, earlier) }, commands),
            },
          ]
        : []),
    ],
    cautions: mergeCautions([cautionsOf(told), cautions ?? []]),
  };
}

/** Asked again from there on. `anew` keeps what is told now from being filled up with what was told before. */
function backTo(told: Told, { id }: Question): Ask['options'] {
  const { [id]: _, ...rest } = told;
  return { ...rest, anew: 'yes' };
}
