import { AskError } from '../core/ask-error.ts';
import { findBuild } from './build/find.ts';
import type { AnswerContext, Ask, Command } from './command.ts';
import type { Build } from './memory.ts';

/** What `for=` names: the question meant, and the build it was kept as, if it was. */
export interface Source {
  readonly ask: Ask;
  readonly build?: Build;
}

type Reading = Pick<AnswerContext, 'memory' | 'parse'>;

/** `last`, `(a line)` or the name of a build, as the question it stands for. */
export async function readSource(typed: string, ask: Ask, { memory, parse }: Reading): Promise<Source> {
  const source = typed.trim();
  const nested = nestedLine(source);
  if (nested !== undefined) return { ask: parse(nested) };
  const { asker, place } = ask;
  if (source.toLowerCase() !== 'last') {
    const build = await findBuild(source, { asker, memory });
    return { build, ask: { ...build.ask, asker, place } };
  }
  const last = await memory.lastAsk(ask);
  if (last) return { ask: last };
  throw new AskError({
    code: 'nothing-before',
    what: 'there is no earlier answer here',
    expected: 'a question first, a nested one in parentheses, or the name of a build',
    example: `${ask.command} for=(mix 30 L)`,
    option: 'for',
  });
}

export const nestedLine = (source: string): string | undefined => /^\((.*)\)$/s.exec(source.trim())?.[1];

/** A question as it would be typed. */
export function lineOf({ command: name, options }: Pick<Ask, 'command' | 'options'>, commands: readonly Command[]) {
  const subject = commands.find((one) => one.name === name)?.subject;
  const named = Object.entries(options).filter(([option]) => option !== subject);
  const bare = subject === undefined ? undefined : options[subject];
  return [name, ...(bare ? [bare] : []), ...named.map(([option, value]) => `${option}=${value}`)].join(' ');
}
