import type { Command } from '../../commands/command.ts';
import { emergency } from '../../commands/emergency/emergency.ts';

/** The card that looks as urgent as it is. */
export const firstAid = emergency.name;

/** How the platform calls a command: `size can` is the subcommand `can` of `size`. */
export interface SlashName {
  readonly name: string;
  readonly sub?: string;
}

/**
 * Commands that share a first word become one application command. One that is only that word (`price` beside
 * `price list`) cannot stand beside subcommands, so it becomes one too: `/price new`.
 */
export function slashName(command: Command, commands: readonly Command[]): SlashName {
  const [name = '', ...rest] = command.name.split(' ');
  if (rest.length > 0) return { name, sub: rest.join('-') };
  const inFamily = commands.some((one) => one.name.startsWith(`${name} `));
  return inFamily ? { name, sub: command.subject === undefined ? 'show' : 'new' } : { name };
}

export const commandOf = ({ name, sub = '' }: SlashName, commands: readonly Command[]): Command | undefined =>
  byName(commands).get(`${name} ${sub}`);

const known = new WeakMap<readonly Command[], ReadonlyMap<string, Command>>();

/** Once for a list of commands: every interaction looks one up. */
function byName(commands: readonly Command[]): ReadonlyMap<string, Command> {
  const found = known.get(commands);
  if (found) return found;
  const made = new Map(
    commands.map((command) => {
      const { name, sub = '' } = slashName(command, commands);
      return [`${name} ${sub}`, command];
    }),
  );
  known.set(commands, made);
  return made;
}
