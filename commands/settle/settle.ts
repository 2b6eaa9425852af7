import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import type { SiUnit } from '../../core/quantity/figure.ts';
import type { Answer, AnswerContext, Ask, Command } from '../command.ts';
import { shortOf, tellEarly } from '../early.ts';
import { splitVersus } from '../grammar.ts';
import { about, text } from '../options.ts';
import { settleAnswer, settleFigures } from './answer.ts';
import { type AskedSide, askPlainly, askSide, withOptions } from './ask-side.ts';
import { argumentFor, listAnswer } from './find.ts';
import { readMeasures } from './measures.ts';
import { type Own, readConditions, readFlip, readSides, settleExample, splitOwn } from './read.ts';
import type { Argument } from './shelf.ts';
import { toldLine } from './told-line.ts';
import { flipsOfOption, weighAll } from './verdict.ts';

const longest = 900;

const options = z.strictObject({
  line: toldLine({ label: 'the argument', most: longest }).optional(),
  one: toldLine({ label: 'one side', most: longest }).optional(),
  other: toldLine({ label: 'other side', most: longest }).optional(),
  third: toldLine({ label: 'third side', most: longest }).optional(),
  fourth: toldLine({ label: 'fourth side', most: longest }).optional(),
  by: text({ label: 'weighed by', most: 120 }).optional(),
  at: text({ label: 'every side at', most: 120 }).optional(),
  flip: text({ label: 'until the verdict turns, moving', most: 80 }).optional(),
  for: text({ label: 'every side for', most: 200 }).optional(),
});
type Options = z.infer<typeof options>;

export const settle = {
  name: 'settle',
  summary: 'Two to four sides of an argument under the same doubt: who is right, how sure, what turns it.',
  options,
  subject: 'line',
  takesLine: true,
  slow: true,
  hazards: ['hot-work'],
  figures: settleFigures,
  examples: [
    {
      line: 'settle wall 2" clay-sand; 2" perlite vs wall 1" castable; 3" perlite by=shell at=1 h',
      says: 'two linings, by how hot the shell gets',
    },
    {
      line: 'settle flame lump charcoal vs propane vs waste oil by=flame, left',
      says: 'three fuels by two figures',
    },
    {
      line: 'settle wall 6 in dense castable vs wall 2 in fibre blanket by=shell flip=hold 10 min to 12 h',
      says: 'and how long a firing turns it',
    },
    { line: 'settle list', says: 'the standing arguments' },
    { line: 'settle perlite or vermiculite', says: 'one of them, computed now' },
  ],
  async expand(ask) {
    const { line, ...named } = ask.options;
    return line === undefined ? { ask } : { ask: { ...ask, options: { ...named, ...partsOf(line) } } };
  },
  async answer(asked, context) {
    const said = merged(asked);
    const sides = [said.one, said.other, said.third, said.fourth];
    const texts = sides.flatMap((side) => (side === undefined ? [] : splitVersus(side)));
    const [only = ''] = texts;
    if (texts.length === 1 && only.toLowerCase() === 'list') return listAnswer();
    return about(texts.length === 1 ? 'one' : 'other', () =>
      texts.length === 1 ? settleArgument(only, said, context) : settleLines(texts, said, context),
    );
  },
} satisfies Command<typeof options>;

type Said = Partial<Record<Exclude<Own, 'units'>, string>>;

/** A line's own options and its sides: the first, and all others as one. */
function partsOf(line: string): Said {
  const { rest, own } = splitOwn(line);
  const [first = '', ...others] = splitVersus(`${rest} `);
  return {
    ...own,
    ...(first === '' ? {} : { one: first }),
    ...(others.length === 0 ? {} : { other: others.join(' vs ') }),
  };
}

/** `again by=stored` hands over a line of its own beside the question of before. */
function merged({ line, one, other, third, fourth, ...asked }: Options): Said {
  const typed = partsOf(line?.text ?? '');
  const sides = typed.other === undefined ? { one, other, third, fourth } : { one };
  const plain = Object.entries(asked).filter(([, value]) => value !== undefined);
  return {
    ...Object.fromEntries(Object.entries(sides).flatMap(([name, side]) => (side ? [[name, side.text]] : []))),
    ...Object.fromEntries(plain),
    ...typed,
  };
}

async function settleLines(texts: readonly string[], said: Said, context: AnswerContext): Promise<Answer> {
  if (texts.length === 0) throw nothingAsked();
  const read = readSides(texts, context);
  return weighed(read, {}, said, undefined, context);
}

async function settleArgument(typed: string, said: Said, context: AnswerContext): Promise<Answer> {
  const { argument, more } = argumentFor(typed);
  const read = argument.sides.map(({ name, line }) => ({ name, ask: context.parse(line) }));
  return weighed(read, more, { by: argument.by, ...said }, argument, context);
}

async function weighed(
  read: readonly { readonly name: string; readonly ask: Ask }[],
  more: Readonly<Record<string, string>>,
  said: Said,
  argument: Argument | undefined,
  context: AnswerContext,
): Promise<Answer> {
  const asks = read.map(({ name, ask }) => {
    const command = context.commands.find((one) => one.name === ask.command)!;
    if (command.name === 'settle' || command.name === 'claim' || command.passing) throw notWeighable(command.name);
    const conditions = readConditions(said.at, command);
    const source = said.for === undefined ? {} : { for: said.for };
    return { name, ask: withOptions(ask, { ...more, ...conditions, ...source }, context.commands) };
  });
  await tellEarly(context.early, async () => {
    const plain: AskedSide[] = [];
    for (const { name, ask } of asks) plain.push(await askPlainly(name, ask, context));
    const verdicts = weighAll(plain, readMeasures(said.by, plain));
    return shortOf(settleAnswer({ sides: plain, verdicts, argument, units: context.units, context, flip: undefined }));
  });
  const sides: AskedSide[] = [];
  for (const { name, ask } of asks) sides.push(await askSide(name, ask, context));
  const measures = readMeasures(said.by, sides);
  const verdicts = weighAll(sides, measures);
  const [first] = verdicts.all;
  const moved = said.flip === undefined ? undefined : readFlip(said.flip, sides[0]!.command);
  if (moved && first?.odds === undefined) throw notMovable();
  return settleAnswer({
    sides,
    verdicts,
    argument,
    units: context.units,
    context,
    flip: moved && {
      option: moved.option,
      at: await flipsOfOption(first!, sides, moved, context),
      unit: unitOf[moved.dimension] ?? '1',
    },
  });
}

const unitOf: Readonly<Record<string, SiUnit>> = {
  length: 'm',
  time: 's',
  mass: 'kg',
  volume: 'm3',
  temperature: 'K',
  power: 'W',
  energy: 'J',
  pressure: 'Pa',
  flow: 'm3/s',
  'mass-flow': 'kg/s',
};

const nothingAsked = () =>
  new AskError({
    code: 'missing',
    what: 'there is no argument to settle',
    expected: 'two questions, as one= and other= or with " vs " between them; or one of settle list',
    example: settleExample,
    option: 'one',
  });

const notWeighable = (name: string) =>
  new AskError({
    code: 'unfit',
    what: `${name} gives no figures to weigh`,
    expected: 'questions such as wall, fuel, mix, blast, flame, size, melt or burner',
    example: settleExample,
    option: 'one',
  });

const notMovable = () =>
  new AskError({
    code: 'unfit',
    what: 'these sides are compared by typical values only, so no option can be moved',
    expected: 'sides of wall, fuel, mix, blast, flame, size, melt or burner',
    example: settleExample,
    option: 'flip',
  });
