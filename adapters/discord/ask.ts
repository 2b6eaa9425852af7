import type { Ask, Command } from '../../commands/command.ts';
import { parseLine } from '../../commands/grammar.ts';
import { moreOption } from './bodies.ts';
import { asTyped } from './form.ts';
import type { Who } from './request.ts';

/**
 * Options from the platform's fields as a question. Those that had no field of their own came as they are typed.
 * @throws AskError where these cannot be read
 */
export function askOf(
  command: Command,
  { [moreOption]: more, ...options }: Readonly<Record<string, string>>,
  { asker, place }: Who,
  commands: readonly Command[],
): Ask {
  const typed = more === undefined ? {} : parseLine(`${command.name} ${more}`, commands, { asker, place }).options;
  return { command: command.name, options: asTyped(command, { ...typed, ...options }), asker, place };
}
