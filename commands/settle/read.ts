import { AskError } from '../../core/ask-error.ts';
import { readQuantity } from '../../core/quantity/parse.ts';
import type { AnswerContext, Ask, Command } from '../command.ts';
import { splitVersus } from '../grammar.ts';
import { metaOf } from '../options.ts';

/** Options of settle itself: what else stands before a `=` belongs to a side. */
export const ownOptions = ['one', 'other', 'third', 'fourth', 'by', 'at', 'flip', 'for', 'units'] as const;
export type Own = (typeof ownOptions)[number];

export const mostSides = 4;
export const settleExample = 'settle wall 2 in clay-sand; 2 in perlite vs wall 1 in castable; 3 in perlite by=shell';

/** Takes settle's own `name=` out of a typed line; `for=` only behind the last side, or in front of none. */
export function splitOwn(line: string): { readonly rest: string; readonly own: Partial<Record<Own, string>> } {
  const starts = [...line.matchAll(/(?<=^|\s)([\p{L}]+)\s*=/gu)]
    .map((match) => ({ name: (match[1] ?? '').toLowerCase(), at: match.index, valueAt: match.index + match[0].length }))
    .filter(({ at }) => depthAt(line, at) === 0);
  const own: Partial<Record<Own, string>> = {};
  let rest = line.slice(0, starts[0]?.at ?? line.length);
  for (const [index, { name, at, valueAt }] of starts.entries()) {
    const end = starts[index + 1]?.at ?? line.length;
    const value = line.slice(valueAt, end);
    const versus = splitVersus(` ${value} `).length > 1;
    const mine =
      isOwn(name) && !(name === 'for' && (versus || manyFor(starts))) && !(versus && !sideNames.includes(name));
    if (mine) own[name] = value.trim();
    else rest += line.slice(at, end);
  }
  return { rest: rest.trim(), own };
}

const sideNames: readonly string[] = ['one', 'other', 'third', 'fourth'];
const isOwn = (name: string): name is Own => (ownOptions as readonly string[]).includes(name);
const manyFor = (starts: readonly { readonly name: string }[]): boolean =>
  starts.filter(({ name }) => name === 'for').length > 1;

function depthAt(text: string, index: number): number {
  let depth = 0;
  for (const character of text.slice(0, index)) {
    if (character === '(') depth += 1;
    if (character === ')' && depth > 0) depth -= 1;
  }
  return depth;
}

/** The sides of `… vs …`, each as a question; one that names no command takes that of the first. */
export function readSides(
  texts: readonly string[],
  { parse, commands }: Pick<AnswerContext, 'parse' | 'commands'>,
): readonly { readonly name: string; readonly ask: Ask }[] {
  const lines = texts.map(bare);
  const empty = lines.indexOf('');
  if (empty >= 0 || lines.length < 2 || lines.length > mostSides) throw notSides(lines.length, empty >= 0);
  const first = parse(lines[0]!);
  return lines.map((line, index) => {
    const ask = index === 0 ? first : parse(startsCommand(line, commands) ? line : `${first.command} ${line}`);
    return { name: line.replace(new RegExp(`^${first.command}\\s+`, 'i'), '').slice(0, 80), ask };
  });
}

const bare = (text: string): string =>
  /^\s*\(([^()]*(?:\([^()]*\)[^()]*)*)\)\s*$/s.exec(text)?.[1]?.trim() ?? text.trim();

const startsCommand = (line: string, commands: readonly Command[]): boolean =>
  commands.some(({ name }) => line.toLowerCase() === name || line.toLowerCase().startsWith(`${name} `));

const notSides = (count: number, empty: boolean) =>
  new AskError({
    code: count < 2 || empty ? 'missing' : 'too-long',
    what: empty ? 'one side of the argument is empty' : `there ${count === 1 ? 'is one side' : `are ${count} sides`}`,
    expected: `two to ${mostSides} questions, as one= and other= or with " vs " between them; or one of settle list`,
    example: settleExample,
  });

/** To which option a bare condition goes, by what it measures: `at=1 h` holds a wall for an hour. */
const bareTo: Readonly<Record<string, readonly string[]>> = {
  time: ['hold', 'ramp'],
  temperature: ['hot', 'flue', 'pour'],
  mass: ['amount', 'melt'],
  volume: ['amount'],
  power: ['rate', 'power'],
  pressure: ['pressure'],
  length: ['altitude', 'height'],
  fraction: ['excess', 'damp'],
};

/** `1 h`, `1000 °C, hold 2 h`: conditions for every side, by the name of an option or by what they measure. */
export function readConditions(text: string | undefined, { options }: Command): Readonly<Record<string, string>> {
  const found: Record<string, string> = {};
  for (const part of (text ?? '').split(/[;,]\s+|\s+and\s+/).map((one) => one.trim())) {
    if (part === '') continue;
    const names = Object.keys(options.shape);
    const named = names.find((name) => part.toLowerCase().startsWith(`${name} `));
    if (named) {
      found[named] = part.slice(named.length).trim();
      continue;
    }
    const dimension = dimensionOf(part);
    const to = dimension && bareTo[dimension]?.find((name) => names.includes(name));
    if (!to) throw noCondition(part, names);
    found[to] = part;
  }
  return found;
}

function dimensionOf(text: string): string | undefined {
  const dimensions = ['time', 'temperature', 'mass', 'volume', 'power', 'pressure', 'length', 'fraction'] as const;
  try {
    return readQuantity(text, { dimensions, label: 'condition' }).dimension;
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}

const noCondition = (part: string, names: readonly string[]) =>
  new AskError({
    code: 'unreadable',
    what: `"${part.slice(0, 40)}" is no condition that every side can take`,
    expected: `a quantity, or an option and its value: ${names.join(', ')}`,
    example: 'settle wall 2 in perlite vs wall 2 in vermiculite by=shell at=hold 2 h, hot 1000 °C',
    option: 'at',
  });

export interface FlipOption {
  readonly option: string;
  readonly low: number;
  readonly high: number;
  readonly dimension: string;
  /** As it would be typed. */
  readonly text: (si: number) => string;
}

/** `hold 10 min to 6 h`: the option that is moved, and how far. */
export function readFlip(text: string, { name, options }: Command): FlipOption {
  const [, option = '', from = '', to = ''] =
    /^([a-z]+)\s+(?:from\s+)?(\S.*?)\s+(?:to|\.\.)\s+(\S.*)$/i.exec(text.trim()) ?? [];
  const field = options.shape[option.toLowerCase()];
  const meta = field && metaOf(field as never);
  const example = `settle wall 2 in perlite vs wall 2 in vermiculite by=shell flip=hold 10 min to 6 h`;
  if (meta?.kind !== 'quantity')
    throw new AskError({
      code: 'unreadable',
      what: `"${text.slice(0, 60)}" is no option of ${name} that could be moved`,
      expected: 'an option with a number, and how far to move it',
      example,
      option: 'flip',
    });
  const read = (typed: string) => readQuantity(typed, { dimensions: meta.dimensions ?? [], label: meta.label });
  const [low, high] = [read(from), read(to)];
  if (low.si >= high.si)
    throw new AskError({
      code: 'impossible',
      what: `from ${from} to ${to} is no way up`,
      expected: 'the smaller value first',
      example,
      option: 'flip',
    });
  return {
    option: option.toLowerCase(),
    low: low.si,
    high: high.si,
    dimension: low.dimension,
    text: (si) => typedText(si, low.dimension),
  };
}

const unitOf: Readonly<Record<string, string>> = {
  length: 'm',
  time: 's',
  mass: 'kg',
  volume: 'm3',
  power: 'W',
  energy: 'J',
  pressure: 'Pa',
  flow: 'm3/s',
  'mass-flow': 'kg/s',
};

const typedText = (si: number, dimension: string): string =>
  dimension === 'temperature'
    ? `${(si - 273.15).toFixed(6)} °C`
    : dimension === 'fraction'
      ? `${(100 * si).toFixed(8)}%`
      : `${Number(si.toPrecision(12)).toFixed(12)} ${unitOf[dimension] ?? ''}`.trim();
