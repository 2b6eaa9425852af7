import { AskError } from '../core/ask-error.ts';
import { cautionsFor } from '../core/hazard/cautions.ts';
import { factsIn } from '../core/hazard/words.ts';
import type { Card, Reply } from './card.ts';
import type { AnswerContext, Ask, Command } from './command.ts';
import { parseLine } from './grammar.ts';
import type { Memory } from './memory.ts';
import { type ReadOptions, readOptions } from './read-options.ts';
import { commands } from './registry.ts';

export interface AskContext {
  readonly asker: string;
  readonly place: string;
  readonly now: Date;
  readonly memory: Memory;
}

const deepestNesting = 3;

/** A typed line in, a reply out. Throws only for faults of the program. */
export async function answerLine(line: string, context: AskContext): Promise<Reply> {
  try {
    return await answerAsk(parseLine(line, commands, context), context);
  } catch (error) {
    return errorReply(error, [...factsIn(line), ...(await hazardsOf(nameIn(line), context))]);
  }
}

/** The same for platforms that deliver names and values apart. */
export function answerAsk(ask: Ask, context: AskContext): Promise<Reply> {
  return run(ask, context, 0);
}

/** The command that an unreadable line begins with; of a family (`size can`, `size melt`) the first will do. */
function nameIn(line: string): string {
  const lower = `${line.trim().toLowerCase()} `;
  const word = lower.split(/\s/, 1)[0] ?? '';
  const family = commands.filter(({ name }) => name === word || name.startsWith(`${word} `));
  return (family.find(({ name }) => lower.startsWith(`${name} `)) ?? family[0])?.name ?? word;
}

async function run(asked: Ask, context: AskContext, depth: number): Promise<Reply> {
  let facts: readonly string[] = factsIn(Object.values(asked.options).join(' '));
  let meant = asked;
  try {
    if (depth > deepestNesting) throw nestedTooDeep();
    const parse = (line: string) => parseLine(line, commands, context);
    const first = commandOf(asked);
    facts = [...facts, ...(await hazardsOf(first.name, context))];
    const ask = first.expand ? await first.expand(asked, { memory: context.memory, parse, commands }) : asked;
    meant = ask;
    const command = commandOf(ask);
    facts = [...facts, ...command.hazards, ...factsIn(Object.values(ask.options).join(' '))];
    const inner = { ...context, parse, ask: (another: Ask) => run(another, context, depth + 1), commands };
    const filled = await fillFrom(ask, command, inner);
    const preferred = await context.memory.units(context);
    const options = readOptions(command, filled.options, preferred);
    const answer = await command.answer(options.values, { ...inner, units: options.units });
    // With what another answer filled in: `for=last` would mean this very question the next time.
    if (depth === 0 && !command.passing) await context.memory.rememberAsk({ ...ask, options: filled.options });
    return { kind: 'card', card: cardOf(command, answer, options, facts, filled.from) };
  } catch (error) {
    return errorReply(error instanceof AskError ? sendable(error, meant) : error, facts);
  }
}

/** An example that is only a value becomes the asker's own line with the wrong option mended, ready to send. */
function sendable(error: AskError, ask: Ask): AskError {
  const { option, example } = error;
  const isLine = commands.some(({ name }) => example === name || example.startsWith(`${name} `));
  if (isLine || option === undefined) return error;
  return error.with({ example: lineOf({ ...ask, options: { ...ask.options, [option]: example } }) });
}

function lineOf(ask: Ask): string {
  const { subject } = commandOf(ask);
  const named = Object.entries(ask.options).filter(([name]) => name !== subject);
  const bare = subject === undefined ? undefined : ask.options[subject];
  return [ask.command, ...(bare ? [bare] : []), ...named.map(([name, value]) => `${name}=${value}`)].join(' ');
}

/** Cautions reach errors too: `again` and `why` carry those of the question they are about. */
async function hazardsOf(name: string, context: AskContext): Promise<readonly string[]> {
  const command = commands.find((one) => one.name === name.toLowerCase());
  if (!command?.aboutLast) return command?.hazards ?? [];
  const last = await context.memory.lastAsk(context);
  return commands.find((one) => one.name === last?.command)?.hazards ?? [];
}

function cardOf(
  command: Command,
  { hazards, cautions, ...answer }: Awaited<ReturnType<Command['answer']>>,
  options: ReadOptions,
  facts: readonly string[],
  from: string | undefined,
): Card {
  return {
    command: command.name,
    notes: [],
    handsOver: {},
    working: [],
    next: [],
    ...answer,
    given: [...(from === undefined ? [] : [from]), ...options.given, ...(answer.given ?? [])],
    assumed: [...options.assumed, ...answer.assumed],
    cautions:
      cautions ??
      cautionsFor({
        facts: [...new Set([...facts, ...(hazards?.facts ?? [])])],
        ...(hazards?.numbers ? { numbers: hazards.numbers } : {}),
      }),
    units: options.units,
  };
}

/** `for=last`, `for=(line)`: what the other answer hands over fills the options that were not typed. */
async function fillFrom(
  ask: Ask,
  command: Command,
  context: Pick<AnswerContext, 'memory' | 'parse' | 'ask'>,
): Promise<{ options: Ask['options']; from?: string }> {
  const { for: source, ...typed } = ask.options;
  if (source === undefined) return { options: typed };
  const other = await sourceAsk(source.trim(), ask, context);
  const reply = await context.ask(other);
  if (reply.kind === 'error') throw new AskError(reply.error);
  const offered = Object.entries(reply.card.handsOver).filter(
    ([name]) => name in command.options.shape && !(name in typed),
  );
  const beaten = beatenBy([...Object.keys(typed), ...offered.map(([name]) => name)], command);
  const taken = offered.filter(([name]) => !beaten.includes(name));
  if (taken.length === 0) {
    throw new AskError({
      code: 'impossible',
      what: `${other.command} has nothing that ${command.name} can take`,
      expected: `an answer that hands over ${Object.keys(command.options.shape).join(', ')}`,
      example: command.examples[0]?.line ?? command.name,
      option: 'for',
    });
  }
  return { options: { ...Object.fromEntries(taken), ...typed }, from: `from ${other.command}: ${reply.card.headline}` };
}

/** Of groups that exclude each other, the group of the first name stays: what was typed, else what stands first. */
function beatenBy(names: readonly string[], { alternatives = [] }: Command): readonly string[] {
  return alternatives.flatMap((groups) => {
    const winner = names.map((name) => groups.find((group) => group.includes(name))).find((group) => group);
    return winner === undefined ? [] : groups.filter((group) => group !== winner).flat();
  });
}

async function sourceAsk(
  source: string,
  ask: Ask,
  { memory, parse }: Pick<AnswerContext, 'memory' | 'parse'>,
): Promise<Ask> {
  const nested = /^\((.*)\)$/s.exec(source)?.[1];
  if (nested !== undefined) return parse(nested);
  if (source.toLowerCase() === 'last') {
    const last = await memory.lastAsk(ask);
    if (last) return last;
    throw new AskError({
      code: 'nothing-before',
      what: 'there is no earlier answer here',
      expected: 'a question first, or a nested one in parentheses',
      example: `${ask.command} for=(mix 30 L)`,
      option: 'for',
    });
  }
  throw new AskError({
    code: 'unknown-name',
    what: `for= can't be "${source.slice(0, 40)}"`,
    expected: 'last, or a nested line in parentheses',
    example: `${ask.command} for=last`,
    option: 'for',
  });
}

function commandOf(ask: Ask): Command {
  const command = commands.find(({ name }) => name === ask.command);
  if (command) return command;
  throw new AskError({
    code: 'unknown-command',
    what: `there is no command "${ask.command.slice(0, 40)}"`,
    expected: `one of ${commands.map(({ name }) => name).join(', ')}`,
    example: 'help',
  });
}

const nestedTooDeep = () =>
  new AskError({
    code: 'impossible',
    what: `the question is nested more than ${deepestNesting} deep`,
    expected: 'one or two nested lines',
    example: 'mix for=(mix 30 L)',
  });

function errorReply(error: unknown, facts: readonly string[]): Reply {
  if (!(error instanceof AskError)) throw error;
  return { kind: 'error', error: error.parts(), cautions: cautionsFor({ facts: [...new Set(facts)] }) };
}
