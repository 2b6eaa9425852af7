import type { Command } from '../../commands/command.ts';
import { isOptional } from '../../commands/options.ts';
import { limits } from './limits.ts';

/**
 * Options that are easier to write in a form than on one line: a command whose subject is a stack of layers opens one
 * when it is asked without them, with its first options.
 */
export function formOf(command: Command): readonly string[] | undefined {
  const { subject, options } = command;
  const field = subject === undefined ? undefined : options.shape[subject];
  if (subject !== 'layers' || field === undefined || isOptional(field as never)) return undefined;
  const others = Object.keys(options.shape).filter((name) => name !== subject);
  return [subject, ...others].slice(0, limits.modalInputs);
}

/** What a form to change an answer holds: what was given, then what else there is. */
export function changeable(command: Command, given: Readonly<Record<string, string>>): readonly string[] {
  const all = Object.keys(command.options.shape);
  const known = all.filter((name) => name in given);
  return [...known, ...all.filter((name) => !(name in given))].slice(0, limits.modalInputs);
}
