import {
  type APIApplicationCommandBasicOption,
  type APIApplicationCommandStringOption,
  ApplicationCommandOptionType,
  ApplicationCommandType,
  ApplicationIntegrationType,
  InteractionContextType,
  type RESTPostAPIApplicationCommandsJSONBody,
  type RESTPostAPIChatInputApplicationCommandsJSONBody,
  type RESTPostAPIContextMenuApplicationCommandsJSONBody,
} from 'discord.js';
import type { Command } from '../../commands/command.ts';
import { commonOptions } from '../../commands/grammar.ts';
import { isOptional, metaOf, type OptionMeta } from '../../commands/options.ts';
import { clipped } from './escape.ts';
import { fieldsOf, formOf, isOneLine } from './form.ts';
import { limits } from './limits.ts';
import { slashName } from './names.ts';

/** The one list of commands as the platform wants it registered. Pure. */
export const commandBodies = (commands: readonly Command[]): readonly RESTPostAPIApplicationCommandsJSONBody[] => [
  ...slashBodies(commands),
  ...messageBodies(commands),
];

const everywhere = {
  integration_types: [ApplicationIntegrationType.GuildInstall, ApplicationIntegrationType.UserInstall],
  contexts: [InteractionContextType.Guild, InteractionContextType.BotDM, InteractionContextType.PrivateChannel],
};

/** What stands in the menu of a message. */
const messageBodies = (commands: readonly Command[]): readonly RESTPostAPIContextMenuApplicationCommandsJSONBody[] =>
  commands.flatMap(({ onMessage }) =>
    onMessage ? [{ type: ApplicationCommandType.Message, name: onMessage.label, ...everywhere }] : [],
  );

/** Those that are typed. */
export function slashBodies(commands: readonly Command[]): readonly RESTPostAPIChatInputApplicationCommandsJSONBody[] {
  const families = Map.groupBy(commands, (command) => slashName(command, commands).name);
  return [...families].map(([name, members]) => {
    const [first] = members;
    const subs = members.filter((command) => slashName(command, commands).sub !== undefined);
    return {
      type: ApplicationCommandType.ChatInput,
      name,
      description: subs.length === 0 ? summaryOf(first!) : familySummary(name, subs),
      options: subs.length === 0 ? optionsOf(first!) : subs.map((command) => subcommand(command, commands)),
      ...everywhere,
    };
  });
}

const subcommand = (command: Command, commands: readonly Command[]) => ({
  type: ApplicationCommandOptionType.Subcommand as const,
  name: slashName(command, commands).sub ?? command.name,
  description: summaryOf(command),
  options: [...optionsOf(command)],
});

const summaryOf = ({ summary }: Command): string => clipped(summary, limits.commandDescription);

const familySummary = (name: string, members: readonly Command[]): string =>
  clipped(
    `${name}: ${members.map((command) => command.name.split(' ').slice(1).join(' ') || command.subject).join(', ')}`,
    limits.commandDescription,
  );

/** Names of a command's options that have a field of their own. */
export const fieldNames = (command: Command): readonly string[] => optionsOf(command).map(({ name }) => name);

/** What must be given stands first, as the platform demands; an option that a form can ask for need not be given. */
function optionsOf(command: Command): APIApplicationCommandBasicOption[] {
  const byForm = formOf(command) !== undefined;
  const own = fieldsOf(command).map((name) => {
    const field = command.options.shape[name];
    const required = !isOptional(field as never) && !byForm;
    return optionOf(name, metaOf(field as never), required);
  });
  const sorted = [...own.filter(({ required }) => required), ...own.filter(({ required }) => !required)];
  const shared = commonOf(command);
  const room = limits.options - shared.length;
  if (sorted.length <= room) return [...sorted, ...shared];
  return [...sorted.slice(0, room - 1), optionOf(moreOption, more, false), ...shared];
}

/** Where a command has more options than the platform allows, the last of them are typed as they are in a line. */
export const moreOption = 'more';
const more: OptionMeta = { label: 'further options, as name=value name=value', kind: 'text' };

function optionOf(name: string, meta: OptionMeta, required: boolean): APIApplicationCommandStringOption {
  const { label, choices = [] } = meta;
  const closed = choices.length > 0 && choices.length <= limits.choices;
  const base = {
    type: ApplicationCommandOptionType.String as const,
    name,
    description: clipped(label, limits.commandDescription),
    ...(required ? { required } : {}),
  };
  if (closed) return { ...base, choices: choices.map((choice) => ({ name: choice, value: choice })) };
  return { ...base, autocomplete: true };
}

/** `again` and the like read the whole line themselves; what is only said (help, first aid) rests on no other answer. */
function commonOf(command: Command): readonly APIApplicationCommandStringOption[] {
  if (isOneLine(command)) return [];
  const { passing, options } = command;
  const wanted = commonOptions.filter((name) => !(name in options.shape) && !(passing && name === 'for'));
  return wanted.map((name) => optionOf(name, common[name], false));
}

const common: Readonly<Record<(typeof commonOptions)[number], OptionMeta>> = {
  for: { label: 'another answer this one rests on: last, a build of yours, or a (line)', kind: 'text' },
  units: { label: 'units that lead the answer', kind: 'choice', choices: ['metric', 'us'] },
};

/** What counts towards the platform's limit a command: names, descriptions and choices. */
export function charactersOf(body: RESTPostAPIApplicationCommandsJSONBody): number {
  const count = (value: unknown): number => {
    if (Array.isArray(value)) return value.reduce((sum: number, one) => sum + count(one), 0);
    if (typeof value !== 'object' || value === null) return 0;
    const { name = '', description = '', value: choice = '', options, choices } = value as Record<string, string>;
    return `${name}${description}${choice}`.length + count(options) + count(choices);
  };
  return count(body);
}
