import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import { mergeCautions } from '../../core/hazard/cautions.ts';
import type { Figure, UnitSystem } from '../../core/quantity/figure.ts';
import { formatFigure, formatSi } from '../../core/quantity/format.ts';
import type { Answer, AnswerContext, Ask, Command } from '../command.ts';
import { shortOf, tellEarly } from '../early.ts';
import { modelErrorNote } from '../model-error.ts';
import { text } from '../options.ts';
import { askPlainly, askSide, withOptions } from '../settle/ask-side.ts';
import { readConditions } from '../settle/read.ts';
import { supportOf } from '../settle/support.ts';
import { toldLine } from '../settle/told-line.ts';
import { oddsText, percent, settledNote, turnsAt } from '../settle/words.ts';
import { lineOf, readSource } from '../source.ts';
import type { Claimed } from './claimed.ts';
import { enough, type Judged, judge } from './judge.ts';
import { claimedBy } from './options.ts';
import { readClaim } from './read.ts';

const options = z.strictObject({
  line: toldLine({ label: 'statement with a number', most: 300 }).optional(),
  statement: toldLine({ label: 'statement', most: 300 }).optional(),
  figure: text({ label: 'figure', most: 60 }).optional(),
  is: text({ label: 'is said to be', most: 60 }).optional(),
  at: text({ label: 'at', most: 120 }).optional(),
  for: text({ label: 'for', most: 300 }).optional(),
});
type Options = z.infer<typeof options>;
const names = ['statement', 'figure', 'is', 'at', 'for', 'units'] as const;
type Named = Partial<Record<(typeof names)[number], string>>;

const example = 'claim 3 kg of charcoal melts 6 kg of aluminium';

export const claim = {
  name: 'claim',
  summary: 'Holds a statement with a number in it against the calculation: fits, fits only if, does not fit.',
  options,
  subject: 'line',
  takesLine: true,
  slow: true,
  hazards: ['hot-work'],
  figures: {
    'claim.value': 'what it comes to',
    'claim.claimed': 'what was claimed',
    'claim.odds': 'share of the samples in which the claim holds',
  },
  examples: [
    { line: example, says: 'is so much fuel enough' },
    { line: 'claim lump burns 300 °F hotter', says: 'a difference between two' },
    { line: 'claim my 60 L drum stays cool to touch for two hours at 1000 °C', says: 'of a furnace, under conditions' },
    { line: 'claim figure=shell is=below 150 °C for=(wall 2 in clay-sand; 2 in vermiculite)', says: 'of any question' },
  ],
  async expand(ask) {
    const { line, ...before } = ask.options;
    return line === undefined ? { ask } : { ask: { ...ask, options: { ...before, ...split(line) } } };
  },
  async answer(asked, context) {
    const said = merged(asked);
    const claimed = await understood(said, context);
    const asks = claimed.lines.map((line) => {
      const ask = context.parse(line);
      const command = context.commands.find((one) => one.name === ask.command)!;
      const more = readConditions(said.at, command);
      const own = said.for === undefined || said.figure !== undefined ? {} : { for: said.for };
      return { line, ask: withOptions(ask, { ...more, ...own }, context.commands) };
    });
    // What a hand depends on is judged by the adverse end alone.
    if (!claimed.careful)
      await tellEarly(context.early, async () => {
        const plain = [];
        for (const { line, ask } of asks) plain.push(await askPlainly(line, ask, context));
        const { headline, ...answer } = claimAnswer(claimed, plain, judge(claimed, plain), context);
        return shortOf({ ...answer, headline: `At typical values: ${headline}` });
      });
    const sides = [];
    for (const { line, ask } of asks) sides.push(await askSide(line, ask, context));
    return claimAnswer(claimed, sides, judge(claimed, sides), context);
  },
} satisfies Command<typeof options>;

/** `name=` of claim's own; parentheses hide those of a nested line. */
function split(line: string): Named {
  const starts = [...line.matchAll(/(?<=^|\s)(statement|figure|is|at|for|units)\s*=/giu)].filter(
    ({ index }) => (line.slice(0, index).match(/\(/g)?.length ?? 0) <= (line.slice(0, index).match(/\)/g)?.length ?? 0),
  );
  const bare = line.slice(0, starts[0]?.index ?? line.length).trim();
  const named = starts.map((match, at) => [
    match[1]!.toLowerCase(),
    line.slice(match.index + match[0].length, starts[at + 1]?.index ?? line.length).trim(),
  ]);
  return { ...(bare === '' ? {} : { statement: bare }), ...Object.fromEntries(named) };
}

function merged({ line, statement, ...named }: Options): Named {
  const plain = Object.fromEntries(Object.entries(named).filter(([, value]) => value !== undefined));
  return { ...(statement ? { statement: statement.text } : {}), ...plain, ...split(line?.text ?? '') };
}

async function understood({ statement, figure, is, ...said }: Named, context: AnswerContext): Promise<Claimed> {
  if (figure === undefined && is === undefined && statement !== undefined) return readClaim(statement);
  if (figure === undefined || is === undefined || said.for === undefined || statement !== undefined) throw halfSaid();
  const here: Ask = { command: 'claim', options: {}, asker: context.asker, place: context.place };
  const { ask } = await readSource(said.for, here, context);
  const filled = await context.fill(ask);
  // Its figures are only looked up here.
  const reply = await context.ask(filled, { plain: true });
  if (reply.kind === 'error') throw new AskError(reply.error);
  return claimedBy(figure, is, { card: reply.card, line: lineOf(filled, context.commands) });
}

const halfSaid = () =>
  new AskError({
    code: 'missing',
    what: 'it is not said what is claimed',
    expected: 'a sentence with a number, or figure= and is= and the question in for=(…)',
    example,
    option: 'statement',
  });

type Sides = Awaited<ReturnType<typeof askSide>>[];

/** As the figures of the claim are told: the value, or the difference or share of two. */
function figureOf({ kind, unit }: Claimed, sides: Sides, id: string): Pick<Figure, 'unit' | 'shown'> {
  const shown = sides[0]?.card.figures.find((one) => one.id === id)?.shown;
  if (kind === 'share') return { unit: '1', shown: 'percent' };
  return { unit, ...(shown ? { shown } : {}) };
}

function claimAnswer(claimed: Claimed, sides: Sides, judged: Judged, context: AnswerContext): Answer {
  const { units } = context;
  const how = figureOf(claimed, sides, claimed.figure);
  const { range } = judged;
  const value: Figure = {
    id: 'claim.value',
    label: 'it comes to',
    value: judged.value,
    ...how,
    ...(range && range.high > range.low ? { range, rangeBasis: 'sampled' as const } : { rangeBasis: 'none' as const }),
  };
  const meaning = understoodText(claimed, how, units);
  const { lead, range: likely } = formatFigure(value, units);
  const holds = judged.holds === undefined ? '' : `, and the claim holds in ${oddsText(judged.holds, judged.samples)}`;
  const found =
    judged.finding === 'fits only if'
      ? onlyIf(judged, claimed, units)
      : judged.finding === 'fits'
        ? 'Fits'
        : 'Does not fit';
  const known = sides.flatMap(({ command }) => supportOf(command.name) ?? []).slice(0, 1);
  return {
    headline: `${found}. Understood as: ${meaning}. It comes to ${likely === undefined ? lead : `${lead} (${likely})`}${holds}.`,
    figures: [
      value,
      { id: 'claim.claimed', label: `claimed, ${claimed.compare}`, value: claimed.value, ...how, rangeBasis: 'none' },
      ...(judged.holds === undefined
        ? []
        : [
            {
              id: 'claim.odds',
              label: 'samples in which it holds',
              value: judged.holds,
              unit: '1' as const,
              shown: 'percent' as const,
              rangeBasis: 'none' as const,
            },
          ]),
    ],
    ...(judged.turnings.length === 0
      ? {}
      : {
          table: {
            columns: ['what moves it', 'share', 'the claim turns at'],
            rows: judged.turnings.map((one) => [one.input, percent(one.share), turnsAt(one, units)]),
          },
        }),
    notes: [
      ...(judged.samples === 0 ? ['Typical values only: nothing of this could be sampled.'] : []),
      ...(claimed.compare === 'about'
        ? ['“About” fits where the number lies in the likely range, or within a tenth of the typical value.']
        : [
            `Fits: holds in ${claimed.careful ? `${enough.careful * 100} % of the samples or more, as a hand depends on it` : `${enough.usual * 100} % of the samples or more`}. Does not: in ${Math.round((1 - enough.usual) * 100)} % or less.`,
          ]),
      ...[settledNote(judged), modelErrorNote([claimed.figure], units)].filter((note) => note !== undefined),
      ...known.map(
        ({ leavesOut, checks }) =>
          `Left out: ${leavesOut}. Held against the world outside in ${checks.join(', ')} (test/published).`,
      ),
    ],
    given: claimed.lines.map((line) => `asked as: ${line}`),
    assumed: [...claimed.assumed, ...(sides[0]?.card.assumed ?? [])],
    doubt: judged.turnings[0]
      ? `${judged.turnings[0].input} (${percent(judged.turnings[0].share)} of the spread)`
      : 'nothing that was sampled',
    sources: [...new Set(['derived', ...sides.flatMap(({ card }) => card.sources)])],
    working: sides.flatMap(({ card }) => card.working),
    cautions: mergeCautions(sides.map(({ card }) => card.cautions)),
    next: [
      ...sides.map(({ ask }) => ({ label: 'the whole of that answer', line: lineOf(ask, context.commands) })),
      { label: 'how that was worked out', line: 'why' },
    ].filter(({ line }) => line.length <= 900),
  };
}

/** A statement told back: the figure, how it is compared, and the number. */
export function understoodText(
  { of, compare, kind, value, lines }: Claimed,
  how: Pick<Figure, 'unit' | 'shown'>,
  units: UnitSystem,
): string {
  const number = formatSi(value, how.unit, units, how.shown);
  const against = kind === 'difference' ? ` (${lines[0]} less ${lines[1]})` : '';
  return `${of}${against} is ${compare} ${number}`;
}

/** The value of one input on which it hangs, all else as likely as not. */
function onlyIf({ turnings, value }: Judged, claimed: Claimed, units: UnitSystem): string {
  const turn = turnings.find(({ flips }) => flips !== undefined);
  if (!turn) return 'Fits only if several things come together';
  // The typical case is on this side of the claim; on the other side of the turn it is the other way round.
  const holdsNow = claimed.compare === 'at most' ? value <= claimed.value : value >= claimed.value;
  const at = turnsAt(turn, units);
  return holdsNow ? `Fits unless ${turn.input} is ${beyond(at)}` : `Fits only if ${turn.input} is ${beyond(at)}`;
}

const beyond = (at: string): string => (/^(?:below|above)/.test(at) ? at : `more than ${at}`);
