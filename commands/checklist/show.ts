import type { Answer, AnswerContext } from '../command.ts';
import { lineOf } from '../source.ts';
import type { Opened } from './opened.ts';
import { factsAhead, figuresOf, stageNotes, stageTable, tickLines, unsoundNotes } from './words.ts';

type Reader = Pick<AnswerContext, 'asker' | 'now' | 'commands'>;

/** Where a build stands, its stage at hand in full. `first` leads the headline. */
export function listAnswer(open: Opened, reader: Reader, first?: string): Answer {
  const { list, progress } = open;
  const { current, done_count, item_count, stages } = progress;
  const state = current
    ? `${list.name}: ${done_count} of ${item_count} done, now stage ${current.number} of ${stages.length}: ${current.stage.name}.`
    : `${list.name}: all ${item_count} done.`;
  return {
    headline: first === undefined ? state : `${first} ${state}`,
    figures: figuresOf(progress),
    table: stageTable(open, reader),
    notes: [...(current ? stageNotes(current, open, reader) : []), ...unsoundNotes(progress)],
    given: givenOf(open, reader),
    assumed: assumedOf(open),
    sources: current ? [current.stage.source] : [],
    hazards: { facts: factsAhead(open) },
    next: [
      ...tickLines(open),
      { label: 'what to buy', line: `checklist shop list=${list.name}` },
      { label: 'to print', line: `checklist sheet list=${list.name}` },
    ],
  };
}

export const givenOf = ({ list, question }: Opened, { commands }: Pick<Reader, 'commands'>): readonly string[] => [
  `${list.name}, of ${lineOf(question, commands)}`,
];

/** What the build’s question does not say. */
export function assumedOf({ list, question, chosen, kind }: Opened): Answer['assumed'] {
  const sized = question.command.startsWith('size');
  const again = `checklist start ${list.name}`;
  return [
    ...(chosen.recipe === undefined && sized
      ? [{ text: 'a rammed clay lining', override: `${again} recipe=castable` }]
      : []),
    ...(chosen.fuel === undefined && question.options.fuel === undefined
      ? [{ text: `fired with ${kind.traits.fuel}`, override: `${again} fuel=charcoal` }]
      : []),
  ];
}
