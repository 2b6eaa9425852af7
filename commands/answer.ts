import { AskError } from '../core/ask-error.ts';
import type { Caution } from '../core/hazard/caution.ts';
import { cautionsFor, mergeCautions } from '../core/hazard/cautions.ts';
import { factsIn } from '../core/hazard/words.ts';
import { slipOf } from '../core/materials/nearest.ts';
import type { UnitSystem } from '../core/quantity/figure.ts';
import { readQuantity } from '../core/quantity/parse.ts';
import type { Card, Reply } from './card.ts';
import type { AnswerContext, Ask, Command, How, Meant, Versions } from './command.ts';
import { optionsOf, parseLine } from './grammar.ts';
import { measuredOf } from './log/measured.ts';
import type { Manner } from './manner.ts';
import type { Build, Key, Memory } from './memory.ts';
import { offered, rehearsal, WouldWrite } from './offered.ts';
import { metaOf } from './options.ts';
import type { Reach } from './reach.ts';
import { type ReadOptions, readOptions } from './read-options.ts';
import { commands } from './registry.ts';
import { lineOf, nestedLine, readSource } from './source.ts';

export interface AskContext {
  readonly asker: string;
  readonly place: string;
  readonly now: Date;
  readonly memory: Memory;
  /** Whether the asker may change what the place has set; on one's own machine, yes. */
  readonly mayModerate?: boolean;
  readonly versions?: Versions;
  readonly manner?: Manner;
  /**
   * Called at most once, and before the answer: typical values with all the cautions, to be shown until the ranges are
   * there. The answer is the same with it as without.
   */
  readonly early?: (card: Card) => void;
  readonly reach?: () => Promise<Reach>;
}

const deepestNesting = 3;

/** A typed line in, a reply out. Throws only for faults of the program. */
export async function answerLine(line: string, context: AskContext): Promise<Reply> {
  let ask: Ask;
  try {
    ask = parseLine(line, commands, context);
  } catch (error) {
    const name = nameIn(line);
    const facts = [...factsIn(line), ...(commandNamed(name)?.warns?.(line) ?? [])];
    return withOffer(errorReply(error, [...facts, ...(await hazardsOf(name, context))]), { command: name }, context);
  }
  return answerAsk(ask, context);
}

/** The same for platforms that deliver names and values apart. */
export async function answerAsk(ask: Ask, context: AskContext): Promise<Reply> {
  return withOffer(await run(ask, context, 0), ask, context);
}

/** A refusal's line, once it is known to work. */
async function withOffer(reply: Reply, { command }: Pick<Ask, 'command'>, context: AskContext): Promise<Reply> {
  if (reply.kind === 'card') return reply;
  const { error } = reply;
  // They stand on nothing.
  if (['help', 'emergency'].includes(error.example) || known.has(error.example)) return reply;
  const slow = commandNamed(command)?.slow ?? false;
  const example = await offered(error, command, {
    commands,
    parse: (line) => parseLine(line, commands, context),
    attempt: (ask) => attempt(ask, slow, context),
  });
  return { ...reply, error: { ...error, example } };
}

/** Lines that were found to work whatever is remembered, so that the usual ones are tried once. */
const known = new Set<string>();
const mostKnown = 500;

/** Nothing that was written about is changed. What computes long is computed only where such a question waited anyway. */
async function attempt(
  ask: Ask,
  slow: boolean,
  { early: _, memory, ...context }: AskContext,
): Promise<Reply | undefined> {
  const command = commandNamed(ask.command);
  const line = lineOf(ask, commands);
  if (known.has(line)) return undefined;
  let free = true;
  const works = (): undefined => {
    if (free && known.size < mostKnown) known.add(line);
  };
  const trial = rehearsal(memory, () => {
    free = false;
  });
  try {
    if (!slow && command && (await computesLong(ask, command, trial, context))) {
      if (!command.expand && ask.options.for === undefined) readOptions(command, ask.options, undefined);
      return undefined;
    }
    const here = async (): Promise<Reach> => ({ kind: 'here', place: context.place });
    const reply = await run(ask, { ...context, memory: trial, reach: here }, 0, { plain: true });
    return reply.kind === 'error' ? reply : works();
  } catch (error) {
    if (error instanceof WouldWrite) return works();
    if (error instanceof AskError) return errorReply(error, []);
    throw error;
  }
}

/** By itself, or by the answer that it is about or takes from: a typing mistake after a long question holds nobody up. */
async function computesLong(ask: Ask, command: Command, memory: Memory, { asker, place }: Key): Promise<boolean> {
  const { for: from } = ask.options;
  const nested = nestedLine(from ?? '');
  const last = command.aboutLast || from === 'last' ? await memory.lastAsk({ asker, place }) : undefined;
  return [ask.command, last?.command, nested && nameIn(nested)].some((name) => name && commandNamed(name)?.slow);
}

/** The command that an unreadable line begins with; of a family (`size can`, `size melt`) the first will do. */
function nameIn(line: string): string {
  const lower = `${line.trim().toLowerCase()} `;
  const word = lower.split(/\s/, 1)[0] ?? '';
  const family = commands.filter(({ name }) => name === word || name.startsWith(`${word} `));
  return (family.find(({ name }) => lower.startsWith(`${name} `)) ?? family[0])?.name ?? word;
}

async function run(asked: Ask, context: AskContext, depth: number, how: How = {}): Promise<Reply> {
  let facts: readonly string[] = factsIn(Object.values(asked.options).join(' '));
  let meant: Meant = { ask: asked };
  /** What a question on the way warned of before it failed. */
  let below: readonly Caution[] = [];
  try {
    if (depth > deepestNesting) throw nestedTooDeep();
    const parse = (line: string) => parseLine(line, commands, context);
    const first = commandOf(asked);
    facts = [...facts, ...(await hazardsOf(first.name, context))];
    if (first.expand) meant = await first.expand(asked, { memory: context.memory, parse, commands });
    const { ask } = meant;
    const command = commandOf(ask);
    const typed = Object.values(ask.options).join(' ');
    facts = [...facts, ...command.hazards, ...factsIn(typed), ...(command.warns?.(typed) ?? [])];
    refuseUnknown(ask, command);
    const { early, ...outer } = context;
    const inner: Inner = {
      ...outer,
      ...how,
      mayModerate: context.mayModerate ?? true,
      parse,
      commands,
      ask: async (another, as = how) => {
        const reply = await run(another, context, depth + 1, as);
        if (reply.kind === 'error') below = reply.cautions;
        return reply;
      },
      fill: async (another) => ({ ...another, options: (await fillFrom(another, commandOf(another), inner)).options }),
    };
    const filled = await fillFrom(ask, command, inner, meant.yields);
    const log = filled.log ?? meant.build?.name;
    const measured = log === undefined ? undefined : await measuredOf(log, context);
    const preferred = await context.memory.units(context);
    const options = readTaken(command, filled, preferred);
    const given = [...(meant.given ?? []), ...filled.from];
    const card = (answer: Awaited<ReturnType<Command['answer']>>) => cardOf(command, answer, options, facts, given);
    const answer = await command.answer(options.values, {
      ...inner,
      ...(measured ? { measured } : {}),
      units: options.units,
      ...(early && depth === 0 ? { early: once((first) => early(card(first))) } : {}),
    });
    // With what another answer filled in: `for=last` would mean this very question the next time.
    if (depth === 0 && !command.passing) {
      const kept = measured ? { log: measured.build } : {};
      await context.memory.rememberAsk({ ...ask, options: { ...filled.options, ...kept } });
    }
    return { kind: 'card', card: card(answer) };
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
    const nested = nestedLine(meant.ask.options.for ?? '');
    const more = nested === undefined ? [] : await hazardsOf(nameIn(nested), context);
    const sent = sendable(error, meant.ask);
    return errorReply(meant.build ? ofBuild(sent, meant.build) : sent, [...facts, ...more], below);
  }
}

/** What is still missing after `for=`: the answer it names does not have it, an earlier one may. */
function readTaken(
  command: Command,
  { options, handed }: Awaited<ReturnType<typeof fillFrom>>,
  preferred: UnitSystem | undefined,
): ReadOptions {
  try {
    return readOptions(command, options, preferred, handed);
  } catch (error) {
    if (!(error instanceof AskError) || error.code !== 'missing' || handed.length === 0) throw error;
    const { what, option = command.subject } = error;
    throw error.with({
      what: `${what}: of that answer it takes only ${handed.join(', ')}`,
      expected: `${option}=…, or for= the answer before that one, its line in parentheses`,
    });
  }
}

type Inner = Omit<AnswerContext, 'units' | 'early'>;

function once<T>(take: (value: T) => void): (value: T) => void {
  let taken = false;
  return (value) => {
    if (!taken) take(value);
    taken = true;
  };
}

/** Forms and builds of an older version may name what is no option any more. */
function refuseUnknown(ask: Ask, command: Command): void {
  const known = optionsOf(command);
  const unknown = Object.keys(ask.options).find((name) => !known.includes(name));
  if (unknown === undefined) return;
  const { [unknown]: _, ...others } = ask.options;
  throw new AskError({
    code: 'unknown-option',
    what: `${command.name} has no option "${unknown.slice(0, 40)}"`,
    expected: known.map((one) => `${one}=`).join(' '),
    example: lineOf({ ...ask, options: others }, commands),
  });
}

/** A mistake in what was kept: says which build, and how it is mended; the build stays as it is. */
function ofBuild({ code, what, expected, example }: AskError, { name, revision }: Build): AskError {
  return new AskError({
    code,
    what: `your build ${name}, revision ${revision}, can't be answered as it was kept: ${what}`,
    expected,
    example: isLine(example) ? `build save ${name} for=(${example})` : `build show ${name}`,
  });
}

const isLine = (text: string): boolean => commands.some(({ name }) => text === name || text.startsWith(`${name} `));

/** An example that is only a value becomes the asker's own line with the wrong option mended, ready to send. */
function sendable(error: AskError, ask: Ask): AskError {
  const { option, example } = error;
  if (isLine(example) || option === undefined) return error;
  return error.with({ example: lineOf({ ...ask, options: { ...ask.options, [option]: example } }, commands) });
}

const commandNamed = (name: string): Command | undefined => commands.find((one) => one.name === name.toLowerCase());

/** Cautions reach errors too: `again` and `why` carry those of the question they are about. */
async function hazardsOf(name: string, context: AskContext): Promise<readonly string[]> {
  const command = commandNamed(name);
  if (!command?.aboutLast) return command?.hazards ?? [];
  const last = await context.memory.lastAsk(context);
  return commands.find((one) => one.name === last?.command)?.hazards ?? [];
}

function cardOf(
  command: Command,
  { hazards, cautions, ...answer }: Awaited<ReturnType<Command['answer']>>,
  options: ReadOptions,
  facts: readonly string[],
  from: readonly string[],
): Card {
  return {
    command: command.name,
    notes: [],
    handsOver: {},
    working: [],
    next: [],
    ...answer,
    given: [...from, ...(command.onMessage ? [] : options.given), ...(answer.given ?? [])],
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

interface Filled {
  readonly options: Ask['options'];
  readonly handed: readonly string[];
  readonly from: readonly string[];
  /** The build whose log calibrates the answer. */
  readonly log: string | undefined;
}

/** What the answer that `for=` names hands over fills the options that were not typed, and those that yield to it. */
async function fillFrom(ask: Ask, command: Command, context: Inner, yields: readonly string[] = []): Promise<Filled> {
  // A command with a for= of its own makes of it what it will.
  const { log, ...own } = ask.options;
  if (own.for === undefined || 'for' in command.options.shape) return { options: own, handed: [], from: [], log };
  const { for: source, ...typed } = own;
  const { ask: other, build } = await readSource(source, ask, context);
  // Typical values are all that is handed over.
  const reply = await context.ask(other, { plain: true });
  if (reply.kind === 'error') throw build ? ofBuild(new AskError(reply.error), build) : new AskError(reply.error);
  const firm = Object.entries(typed).filter(([name]) => !yields.includes(name));
  const offered = Object.entries(reply.card.handsOver).filter(
    ([name, value]) => !firm.some(([one]) => one === name) && isOfKind(command, name, value),
  );
  const loose = Object.entries(typed).filter(([name]) => yields.includes(name));
  const beaten = beatenBy(
    [...firm, ...offered, ...loose].map(([name]) => name),
    command,
  );
  const stays = ([name]: readonly [string, string]) => !beaten.includes(name);
  const taken = offered.filter(stays);
  if (taken.length === 0) {
    throw new AskError({
      code: 'impossible',
      what: `${other.command} has nothing that ${command.name} can take`,
      expected: `an answer that hands over ${Object.keys(command.options.shape).join(', ')}`,
      example: command.examples[0]?.line ?? command.name,
      option: 'for',
    });
  }
  const origin = build ? `${build.name}, revision ${build.revision} (${other.command})` : other.command;
  const handed = taken.map(([name]) => name);
  return {
    options: Object.fromEntries([...loose.filter(stays), ...taken, ...firm]),
    handed,
    from: [`from ${origin}: ${handed.join(', ')}`],
    log: build?.name ?? other.options.log ?? log,
  };
}

/** Whether an option of that name takes such a value: `amount` may be a lining's volume, or a metal's mass. */
function isOfKind(command: Command, name: string, value: string): boolean {
  const field = command.options.shape[name];
  if (!field) return false;
  const { dimensions, label } = metaOf(field as never);
  if (!dimensions) return true;
  try {
    readQuantity(value, { dimensions, label });
    return true;
  } catch (error) {
    // A floor may be a thickness, or layers.
    return !(error instanceof AskError && ['wrong-dimension', 'unreadable'].includes(error.code));
  }
}

/** Of groups that exclude each other, the group of the first name stays: what was typed, else what stands first. */
function beatenBy(names: readonly string[], { alternatives = [] }: Command): readonly string[] {
  return alternatives.flatMap((groups) => {
    const winner = names.map((name) => groups.find((group) => group.includes(name))).find((group) => group);
    return winner === undefined ? [] : groups.filter((group) => group !== winner).flat();
  });
}

function commandOf(ask: Ask): Command {
  const command = commands.find(({ name }) => name === ask.command);
  if (command) return command;
  const names = commands.map(({ name }) => name);
  const near = slipOf(ask.command, names) ?? 'help';
  throw new AskError({
    code: 'unknown-command',
    what: `there is no command "${ask.command.slice(0, 40)}"`,
    expected: `one of ${names.join(', ')}`,
    example: lineOf({ ...ask, command: near }, commands),
  });
}

const nestedTooDeep = () =>
  new AskError({
    code: 'impossible',
    what: `the question is nested more than ${deepestNesting} deep`,
    expected: 'at most two or three answers, each for the next; beyond them the values themselves',
    example: 'mix for=(mix 30 L)',
  });

function errorReply(error: unknown, facts: readonly string[], below: readonly Caution[] = []): Reply {
  if (!(error instanceof AskError)) throw error;
  const own = cautionsFor({ facts: [...new Set([...facts, ...(error.facts ?? [])])] });
  return { kind: 'error', error: error.parts(), cautions: mergeCautions([own, below]) };
}
