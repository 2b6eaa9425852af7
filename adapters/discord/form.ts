import type { Command } from '../../commands/command.ts';
import { isOptional } from '../../commands/options.ts';
import { limits } from './limits.ts';

/** A line that its command takes apart: with a field for each part, the line itself needs none. */
const takesApart = ({ takesLine, options }: Command): boolean =>
  takesLine === true && Object.keys(options.shape).length > 1;

/** Whether all there is to say is one line. */
export const isOneLine = (command: Command): boolean => command.takesLine === true && !takesApart(command);

/** Options that a field can be had for, in order. */
export function fieldsOf(command: Command): readonly string[] {
  const all = Object.keys(command.options.shape);
  return takesApart(command) ? all.filter((name) => name !== command.subject) : all;
}

type Options = Readonly<Record<string, string>>;

/** What is said in one field alone may be the whole line, parts and all, as it is typed elsewhere. */
export function asTyped(command: Command, options: Options): Options {
  const [first = ''] = fieldsOf(command);
  const { [first]: line, units, ...others } = options;
  if (!takesApart(command) || !command.subject || line === undefined || Object.keys(others).length > 0) return options;
  return { [command.subject]: line, ...(units === undefined ? {} : { units }) };
}

/** The same backwards: a line stands in the first field. */
export function inFields(command: Command, options: Options): Options {
  const [first = ''] = fieldsOf(command);
  const { [command.subject ?? '']: line, ...others } = options;
  return takesApart(command) && line !== undefined ? { [first]: line, ...others } : options;
}

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
  const all = fieldsOf(command);
  const known = all.filter((name) => name in given);
  return [...known, ...all.filter((name) => !(name in given))].slice(0, limits.modalInputs);
}
