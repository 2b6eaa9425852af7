import { AskError } from '../../core/ask-error.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import type { Card } from '../card.ts';
import type { AnswerContext, Ask, Command, Doubted } from '../command.ts';
import { optionsOf } from '../grammar.ts';
import { readOptions } from '../read-options.ts';

/** One version of a question, answered, and as a model of its doubts where its command has one. */
export interface AskedSide {
  /** As it stands on the card. */
  readonly name: string;
  /** With all that `for=` handed over. */
  readonly ask: Ask;
  readonly command: Command;
  readonly card: Card;
  readonly doubted: Doubted | undefined;
}

export type Reading = Pick<
  AnswerContext,
  'asker' | 'place' | 'now' | 'memory' | 'ask' | 'fill' | 'parse' | 'commands' | 'mayModerate' | 'units'
>;

/** What is asked: `name` for the card, the question, and the options that all sides are given. */
export async function askSide(name: string, asked: Ask, context: Reading): Promise<AskedSide> {
  const command = context.commands.find((one) => one.name === asked.command)!;
  const ask = await context.fill(asked);
  const reply = await context.ask(ask);
  if (reply.kind === 'error') throw new AskError({ ...reply.error, what: `${name}: ${reply.error.what}` });
  return { name, ask, command, card: reply.card, doubted: await doubtOf(ask, context) };
}

/** The same by typical values, to be told while the doubts are weighed. */
export async function askPlainly(name: string, asked: Ask, context: Reading): Promise<AskedSide> {
  const ask = await context.fill(asked);
  const reply = await context.ask(ask, { plain: true });
  if (reply.kind === 'error') throw new AskError(reply.error);
  return {
    name,
    ask,
    command: context.commands.find((one) => one.name === ask.command)!,
    card: reply.card,
    doubted: undefined,
  };
}

/** A question as a model of its doubts; nothing where its command has none, or this one is outside it. */
export async function doubtOf(ask: Ask, context: Reading): Promise<Doubted | undefined> {
  const command = context.commands.find((one) => one.name === ask.command);
  if (!command?.doubt) return undefined;
  const options = readOptions(command, ask.options, await preferred(context));
  return command.doubt(options.values, { ...context, units: options.units });
}

const preferred = ({ memory, asker, place }: Reading): Promise<UnitSystem | undefined> =>
  memory.units({ asker, place });

/** Options given to a question beside its own, which go before them; refused where it has none of that name. */
export function withOptions(ask: Ask, more: Readonly<Record<string, string>>, commands: readonly Command[]): Ask {
  const command = commands.find(({ name }) => name === ask.command);
  const known = command ? optionsOf(command) : [];
  const odd = Object.keys(more).find((name) => !known.includes(name));
  if (odd === undefined) return { ...ask, options: { ...ask.options, ...more } };
  throw new AskError({
    code: 'unknown-option',
    what: `${ask.command} has no option "${odd.slice(0, 40)}"`,
    expected: known.map((one) => `${one}=`).join(' '),
    example: `settle ${command?.examples[0]?.line ?? 'list'}`,
    option: odd,
  });
}
