import { z } from 'zod';
import { cautionsFor, mergeCautions } from '../../core/hazard/cautions.ts';
import { factsIn } from '../../core/hazard/words.ts';
import type { Card } from '../card.ts';
import { understoodText } from '../claim/claim.ts';
import type { Answer, AnswerContext, Command } from '../command.ts';
import { text } from '../options.ts';
import { type Found, type Reading, readMessage } from './find.ts';

const options = z.strictObject({ text: text({ label: 'what somebody wrote', most: 6000 }).optional() });

/** Of whatever is stated with a number that is understood. */
const hot = ['hot-work'];

const figures = {
  'weigh.value': 'what the statement comes to',
  'weigh.claimed': 'what was claimed',
  'weigh.odds': 'share of the samples in which the statement holds',
};

export const weigh = {
  name: 'weigh',
  summary: 'The statements with a number in what somebody wrote, held against the calculation.',
  options,
  subject: 'text',
  takesLine: true,
  passing: true,
  slow: true,
  onMessage: { label: 'Weigh the numbers' },
  hazards: [],
  figures,
  examples: [
    {
      line: 'weigh Nice build. In my experience 3 kg of charcoal melts 6 kg of aluminium.',
      says: 'one statement is judged at once',
    },
    {
      line: 'weigh lump burns 300 °F hotter. And 2 kg of propane melts 10 kg of bronze.',
      says: 'of several, each is offered',
    },
  ],
  async answer({ text: said = '' }, context) {
    const reading = readMessage(said);
    const [only, ...others] = reading.found;
    if (!only) return nothingRead(reading);
    if (others.length > 0) return offered(reading, context);
    const reply = await context.ask(context.parse(claimLine(only)));
    if (reply.kind === 'error') return refused(only, reply.error, reading);
    return judged(reply.card, only, said, reading);
  },
} satisfies Command<typeof options>;

const claimLine = ({ statement }: Found): string => `claim ${statement}`;

const blank = { figures: [], assumed: [], sources: [] };

const quoted = (statement: string): string =>
  `“${statement.length > 120 ? `${statement.slice(0, 119).trimEnd()}…` : statement}”`;

const notRead = ({ unread }: Reading): readonly string[] =>
  unread.map((sentence) => `Not read, for it could be meant in more than one way: ${quoted(sentence)}.`);

/** One statement: the judgement on it, as claim tells it. */
function judged(card: Card, { statement }: Found, said: string, reading: Reading): Answer {
  const { headline, table, doubt, assumed, given, sources, working } = card;
  const own = cautionsFor({ facts: [...new Set([...hot, ...factsIn(said)])] });
  return {
    headline: `${quoted(statement)} ${headline}`,
    figures: card.figures.map((figure) => ({ ...figure, id: figure.id.replace(/^claim\./, 'weigh.') })),
    ...(table ? { table } : {}),
    ...(doubt === undefined ? {} : { doubt }),
    notes: [...card.notes, ...notRead(reading)],
    given: given.filter((one) => one.startsWith('asked as: ')),
    assumed,
    sources,
    working,
    cautions: mergeCautions([card.cautions, own]),
    next: [
      { label: 'for all to see', line: claimLine({ statement } as Found), forAll: true },
      // What was weighed is nobody's last question, so there is no working of it to ask for.
      ...card.next.filter(({ line }) => line !== 'why'),
    ],
  };
}

function offered(reading: Reading, { units }: AnswerContext): Answer {
  const { found } = reading;
  return {
    ...blank,
    hazards: { facts: hot },
    headline: `${found.length} statements with a number in that: which one is it about?`,
    notes: [
      ...found.map(({ statement, claimed }, at) => {
        const how = { unit: claimed.unit, ...(claimed.kind === 'share' ? { shown: 'percent' as const } : {}) };
        return `${at + 1}. ${quoted(statement)}, understood as: ${understoodText(claimed, how, units)}.`;
      }),
      ...notRead(reading),
    ],
    next: found.map((one) => ({ label: one.statement.slice(0, 60), line: claimLine(one) })),
  };
}

function refused(one: Found, { what, expected }: { what: string; expected: string }, reading: Reading): Answer {
  return {
    ...blank,
    hazards: { facts: hot },
    headline: `${quoted(one.statement)} was understood, but can’t be worked out: ${what}.`,
    notes: [`Expected: ${expected}.`, ...notRead(reading)],
    next: [{ label: 'say it in other words', line: claimLine(one) }],
  };
}

const readable = [
  '3 kg of charcoal melts 6 kg of aluminium',
  'lump burns 300 °F hotter',
  'my 60 L drum stays cool to touch for two hours at 1000 °C',
];

function nothingRead(reading: Reading): Answer {
  return {
    ...blank,
    headline: 'There is no statement with a number in that which I can hold against the calculation.',
    notes: [
      ...notRead(reading),
      `I read plain statements with a quantity and its unit, one thing each, such as: ${readable.map((one) => quoted(one)).join(', ')}.`,
      'Fuel and time of a melt, how hot a shell gets, how hot a fuel burns, what a blower moves, what a mix weighs or costs: those I know.',
    ],
    next: readable.map((one) => ({ label: one, line: `claim ${one}` })),
  };
}
