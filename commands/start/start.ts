import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import { factsIn } from '../../core/hazard/words.ts';
import type { Answer, AnswerContext, Command } from '../command.ts';
import { choice, text } from '../options.ts';
import { questionCard } from './ask-next.ts';
import { finished, startFigures } from './finished.ts';
import { planned, sizeAsk, type Told, taken } from './plan.ts';
import { type Question, type QuestionId, questions, SKIP } from './questions.ts';

const answer = (label: string) => text({ label, most: 80 }).optional();

const options = z.strictObject({
  metal: answer('what to melt first'),
  have: answer('can or drum for the shell, or nothing'),
  where: answer('where it will stand'),
  burn: answer('charcoal or propane'),
  spend: answer('what it may cost'),
  name: text({ label: 'name to keep it under', most: 80 }).optional(),
  anew: choice({ label: 'begin again', choices: ['no', 'yes'] }).optional(),
});

export const start = {
  name: 'start',
  summary: 'New here? Five short questions, then your furnace, its mix, its cost and a checklist.',
  options,
  subject: 'metal',
  examples: [
    { line: 'start', says: 'the first question' },
    { line: 'start aluminium have=20 gal', says: 'two answers at once, in any order' },
    {
      line: 'start aluminium have=20 gal where=outdoors burn=charcoal spend=$250',
      says: 'everything in one line',
    },
  ],
  hazards: ['hot-work'],
  figures: startFigures,
  passing: true,
  slow: true,
  /** What was answered before is part of the question, as if it were typed now. */
  async expand(ask, { memory }) {
    const draft = ask.options.anew === 'yes' ? undefined : await memory.draft(ask);
    if (!draft) return { ask };
    const goesOn = Object.keys(ask.options).length === 0;
    return {
      ask: { ...ask, options: { ...draft.options, ...ask.options } },
      ...(goesOn ? { given: ['where you were before (start anew=yes begins again)'] } : {}),
    };
  },
  async answer({ name, anew: _, ...typed }, context) {
    const { memory, asker, place, commands } = context;
    const told = checked(answersIn(typed));
    await refuseMetal(told, context);
    const { where, ...elsewhere } = told;
    const kept = where === 'indoors' ? elsewhere : told;
    const begun = Object.keys(kept).length > 0;
    await memory.keepDraft(context, begun ? { command: 'start', options: { ...kept }, asker, place } : undefined);
    const said = { commands };

    if (where === 'indoors') return questionCard(questionOf('where'), told, { ...said, wrong: indoors });
    const vessel = await vesselFault(told, context);
    if (vessel) return questionCard(questionOf('have'), told, { ...said, ...vessel });
    const open = questions.find(({ id }) => told[id] === undefined);
    if (open) return questionCard(open, told, said);

    const plan = await planned(told, context);
    const answered: Answer = await finished(told, plan, name, context);
    await memory.keepDraft(context, undefined);
    return answered;
  },
} satisfies Command<typeof options>;

const questionOf = (wanted: QuestionId): Question => questions.find(({ id }) => id === wanted)!;

const answersIn = (typed: { readonly [Id in QuestionId]?: string | undefined }): Told =>
  Object.fromEntries(Object.entries(typed).filter(([, value]) => value !== undefined && value !== ''));

/** Answers that are one of a few are read as such; a mistake in one names the few. */
function checked(told: Told): Told {
  const { where, burn } = told;
  return {
    ...told,
    ...(where === undefined ? {} : { where: factsIn(where).includes('indoors') ? 'indoors' : oneOf('where', where) }),
    ...(burn === undefined ? {} : { burn: oneOf('burn', burn) }),
  };
}

/** Other words for an answer. */
const otherWords: Readonly<Record<'where' | 'burn', Readonly<Record<string, string>>>> = {
  where: {
    yard: 'outdoors',
    garden: 'outdoors',
    sand: 'outdoors',
    soil: 'outdoors',
    concrete: 'paving',
    patio: 'paving',
  },
  burn: { propane: 'gas', lpg: 'gas', lump: 'charcoal', briquettes: 'charcoal' },
};

function oneOf(id: 'where' | 'burn', said: string): string {
  const wanted = said.trim().toLowerCase();
  const values = [...questionOf(id).choices.map(({ value }) => value), SKIP];
  const words = [...values.map((value) => [value, value] as const), ...Object.entries(otherWords[id])];
  const found = words.find(([word]) => wanted !== '' && word.startsWith(wanted));
  if (found) return found[1];
  throw new AskError({
    code: 'unknown-name',
    what: `"${said.slice(0, 40)}" is no answer to: ${questionOf(id).ask}`,
    expected: values.join(', '),
    example: values[0] ?? SKIP,
    option: id,
  });
}

const indoors = new AskError({
  code: 'refused',
  what: 'nothing is melted under a roof or behind a wall: the gases of the fire kill before they are noticed, and a spill has nowhere to go',
  expected: 'a place in the open, two sides free; a later answer will do if there is none yet',
  example: 'outdoors',
  option: 'where',
});

/** A metal that is refused is refused at once, not at the end. */
async function refuseMetal(told: Told, { asker, place, ask }: Pick<AnswerContext, 'asker' | 'place' | 'ask'>) {
  if (told.metal === undefined) return;
  const reply = await ask({ command: 'melt', options: { melt: `1 kg ${taken(told, 'metal')}` }, asker, place });
  if (reply.kind === 'error') throw new AskError({ ...reply.error, example: 'aluminium', option: 'metal' });
}

/** What is wrong with the shell, asked about again with the number that says so. */
async function vesselFault(told: Told, context: Pick<AnswerContext, 'asker' | 'place' | 'ask'>) {
  if (told.have === undefined) return undefined;
  const reply = await context.ask(sizeAsk(told, context));
  return reply.kind === 'card' ? undefined : { wrong: new AskError(reply.error), cautions: reply.cautions };
}
