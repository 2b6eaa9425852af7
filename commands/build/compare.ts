import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import { mergeCautions } from '../../core/hazard/cautions.ts';
import type { Figure, UnitSystem } from '../../core/quantity/figure.ts';
import { formatFigure, formatSi } from '../../core/quantity/format.ts';
import type { Card } from '../card.ts';
import type { AnswerContext, Ask, Command } from '../command.ts';
import { splitVersus } from '../grammar.ts';
import type { Build } from '../memory.ts';
import { text } from '../options.ts';
import { said } from '../said.ts';
import { readSource } from '../source.ts';
import { before, changesBetween, keeping } from './family.ts';
import { findBuild } from './find.ts';

const options = z.strictObject({ builds: text({ label: 'two builds with vs between them', most: 1000 }) });

export const buildCompare = {
  ...keeping,
  name: 'build compare',
  summary: 'Two builds, or two revisions of one, figure by figure.',
  options,
  subject: 'builds',
  takesLine: true,
  slow: true,
  examples: [
    { line: 'build compare club lining vs small one', says: 'two builds' },
    { line: 'build compare club lining 1 vs club lining 2', says: 'two revisions' },
    { line: 'build compare club lining', says: 'its newest revision with the one before' },
    { line: 'build compare club lining vs last', says: 'a build with your last question' },
  ],
  async answer({ builds }, context) {
    const [one, other] = await sidesOf(builds, context);
    const pairs = pairsOf(one.card, other.card);
    if (pairs.length === 0) throw nothingInCommon(one, other);
    const { units } = other.card;
    const differing = pairs.filter(({ from, to }) => shown(from, units) !== shown(to, units));
    const [most] = differing.toSorted((a, b) => share(b) - share(a));
    return said(
      most
        ? `${other.name} against ${one.name}: ${differing.length} of ${pairs.length} figures differ, most of all ${most.to.label}: ${shown(most.to, units)} against ${shown(most.from, units)}.`
        : `${other.name} and ${one.name} come to the same in all ${pairs.length} figures.`,
      {
        table: {
          columns: ['figure', one.name, other.name, 'difference'],
          rows: pairs.map(({ from, to }) => [
            to.label,
            shown(from, units),
            shown(to, units),
            difference(from, to, units),
          ]),
        },
        notes: changesBetween(one.ask, other.ask, context.commands),
        cautions: mergeCautions([one.card.cautions, other.card.cautions]),
        sources: [...new Set([...one.card.sources, ...other.card.sources])],
      },
    );
  },
} satisfies Command<typeof options>;

interface Side {
  readonly name: string;
  readonly ask: Ask;
  readonly card: Card;
}

async function sidesOf(typed: string, context: AnswerContext): Promise<readonly [Side, Side]> {
  const { asker, place, memory } = context;
  const parts = splitVersus(typed);
  const [first = '', second] = parts;
  if (parts.length > 2 || second === '') throw notTwo(first);
  if (second === undefined) {
    const newest = await findBuild(first, { asker, memory, option: 'builds' });
    const earlier = before(newest, await memory.revisions(asker, newest.name));
    if (!earlier) throw notTwo(newest.name);
    return [await answered(ofBuild(earlier)), await answered(ofBuild(newest))];
  }
  return [await answered(await read(first)), await answered(await read(second))];

  function ofBuild(build: Build): Omit<Side, 'card'> {
    return { name: `${build.name} ${build.revision}`, ask: { ...build.ask, asker, place } };
  }

  async function read(part: string): Promise<Omit<Side, 'card'>> {
    const here = { command: 'build compare', options: {}, asker, place };
    try {
      const { ask, build } = await readSource(part, here, context);
      return build ? ofBuild(build) : { name: part, ask };
    } catch (error) {
      if (!(error instanceof AskError) || error.option !== 'for') throw error;
      const example = error.code === 'unknown-name' ? typed.replace(part, error.example) : 'mix 30 L';
      throw error.with({ option: 'builds', example });
    }
  }

  async function answered({ name, ask }: Omit<Side, 'card'>): Promise<Side> {
    const reply = await context.ask(ask);
    if (reply.kind === 'error') throw new AskError({ ...reply.error, what: `${name}: ${reply.error.what}` });
    return { name, ask, card: reply.card };
  }
}

interface Pair {
  readonly from: Figure;
  readonly to: Figure;
}

/** Figures that both have, in the order of the second; moneys that differ are no pair. */
const pairsOf = (one: Card, other: Card): readonly Pair[] =>
  other.figures.flatMap((to) => {
    const from = one.figures.find(({ id, unit }) => id === to.id && unit === to.unit);
    return from ? [{ from, to }] : [];
  });

/** Of the larger; temperatures count from 0 °C, as readers do. */
function share({ from, to }: Pair): number {
  const zero = to.unit === 'K' ? 273.15 : 0;
  const size = Math.max(Math.abs(from.value - zero), Math.abs(to.value - zero));
  return size === 0 ? 0 : Math.abs(to.value - from.value) / size;
}

function shown(figure: Figure, units: UnitSystem): string {
  const { lead, range } = formatFigure(figure, units);
  return range === undefined ? lead : `${lead} (${range})`;
}

/** The difference of two temperatures is no temperature. */
function difference(from: Figure, to: Figure, units: UnitSystem): string {
  const by = to.value - from.value;
  if (shown(from, units) === shown(to, units)) return 'the same';
  const size = formatSi(Math.abs(by), to.unit === 'K' ? 'dK' : to.unit, units, to.shown);
  return `${by < 0 ? '−' : '+'}${size}`;
}

const notTwo = (name: string) =>
  new AskError({
    code: 'missing',
    what: `${name === '' ? 'nothing' : name} alone has nothing to stand beside`,
    expected: 'two builds, or two revisions of one, with vs between them',
    example: `build compare ${name === '' ? 'club lining' : name} vs last`,
  });

const nothingInCommon = (one: Side, other: Side) =>
  new AskError({
    code: 'impossible',
    what: `${one.name} (${one.ask.command}) and ${other.name} (${other.ask.command}) have no figure in common`,
    expected: 'two builds of one command',
    example: 'build list',
  });
