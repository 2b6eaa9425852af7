import { AskError, type AskErrorParts } from '../core/ask-error.ts';
import type { Reply } from './card.ts';
import type { Ask, Command } from './command.ts';
import type { Memory } from './memory.ts';
import { isOptional } from './options.ts';
import { lineOf } from './source.ts';

export interface Trial {
  readonly parse: (line: string) => Ask;
  readonly commands: readonly Command[];
  /** Asks a line as if in earnest, and changes nothing. */
  readonly attempt: (ask: Ask) => Promise<Reply | undefined>;
}

/**
 * The line a refusal offers is asked before it is offered. Where it fails: without the option that was wrong, else
 * with what its own refusal mends, else the command's first example, else its help.
 */
export async function offered(error: AskErrorParts, asked: string | undefined, trial: Trial): Promise<string> {
  const { example, option } = error;
  const first = parsed(example, trial);
  const seen = new Set<string>();
  let mended: AskErrorParts | undefined;
  const works = async (ask: Ask | undefined): Promise<boolean> => {
    const line = ask && lineOf(ask, trial.commands);
    if (!ask || line === undefined || seen.has(line)) return false;
    seen.add(line);
    const reply = await trial.attempt(ask);
    if (reply?.kind !== 'error') return true;
    mended ??= reply.error;
    return false;
  };
  if (await works(first)) return example;
  const less = first && option !== undefined ? without(first, option, trial) : undefined;
  if (less && (await works(less))) return lineOf(less, trial.commands);
  if (mended && (await works(parsed(mended.example, trial)))) return mended.example;
  const name = first?.command ?? asked;
  const command = trial.commands.find((one) => one.name === name);
  for (const { line } of command?.examples.slice(0, 1) ?? []) if (await works(parsed(line, trial))) return line;
  return command ? `help ${command.name}` : 'help';
}

function parsed(line: string, { parse }: Trial): Ask | undefined {
  try {
    return parse(line);
  } catch (error) {
    if (error instanceof AskError) return undefined;
    throw error;
  }
}

function without(ask: Ask, option: string, { commands }: Trial): Ask | undefined {
  const field = commands.find(({ name }) => name === ask.command)?.options.shape[option];
  if (!(option in ask.options) || (field && !isOptional(field as never))) return undefined;
  const { [option]: _, ...others } = ask.options;
  return { ...ask, options: others };
}

/** What a rehearsed question meets where it would change what is remembered: then it was understood. */
export class WouldWrite extends Error {}

const readers = [
  'lastAsk',
  'units',
  'build',
  'builds',
  'revisions',
  'sharedBuild',
  'prices',
  'zone',
  'draft',
  'reminders',
  'checklist',
  'checklists',
  'entries',
  'kept',
] as const satisfies readonly (keyof Memory)[];

/** What is read for units and costs: no line fails for them. */
const harmless: readonly PropertyKey[] = ['units', 'prices'];

/**
 * The same memory to read from; what would be written stops the question with WouldWrite. `looked` is called where the
 * answer depends on what is remembered.
 */
export const rehearsal = (memory: Memory, looked: () => void): Memory =>
  new Proxy(memory, {
    get(target, name) {
      if (!(readers as readonly PropertyKey[]).includes(name))
        return async () => {
          throw new WouldWrite();
        };
      if (!harmless.includes(name)) looked();
      const method: unknown = Reflect.get(target, name);
      return typeof method === 'function' ? method.bind(target) : method;
    },
  });
