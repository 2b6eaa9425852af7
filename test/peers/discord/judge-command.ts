import type { APIApplicationCommandOption, RESTPostAPIApplicationCommandsJSONBody } from 'discord.js';
import { Locale } from 'discord.js';
import { schemaFaults } from './strict.ts';

/** The rules of application commands that the schemas lack (interactions/application-commands). */
export type CommandBody = RESTPostAPIApplicationCommandsJSONBody;

export const commandLimits = { chat: 100, user: 15, message: 15, characters: 8000, createsADay: 200 } as const;

const nameOfChatInput = /^[-_'\p{Ll}\p{Lm}\p{Lo}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u;
const locales = new Set<string>(Object.values(Locale));

/** What is wrong with one command, in words. */
export function commandFaults(body: CommandBody, how: 'create' | 'overwrite' | 'patch'): readonly string[] {
  const schema = {
    create: 'ApplicationCommandCreateRequest',
    overwrite: 'ApplicationCommandUpdateRequest',
    patch: 'ApplicationCommandPatchRequestPartial',
  } as const;
  const shape = schemaFaults(schema[how], body);
  if (shape.length > 0 || how === 'patch') return shape;
  return [...ownFaults(body), ...localisationFaults(body, 'body')];
}

/** What is wrong with the whole set that a scope would have. */
export function commandSetFaults(bodies: readonly CommandBody[]): readonly string[] {
  const faults: string[] = [];
  for (const [type, kind] of [
    [1, 'chat'],
    [2, 'user'],
    [3, 'message'],
  ] as const) {
    const names = bodies.filter((body) => (body.type ?? 1) === type).map((body) => body.name);
    if (names.length > commandLimits[kind]) {
      faults.push(`${names.length} ${kind} commands: at most ${commandLimits[kind]}`);
    }
    faults.push(...repeated(names).map((name) => `two ${kind} commands are called ${name}`));
  }
  return faults;
}

/** Characters of names, descriptions and values, each with its longest localisation. */
export function commandCharacters(body: CommandBody): number {
  const longest = (text: string | undefined, others: Partial<Record<string, string | null>> | null | undefined) =>
    Math.max(text?.length ?? 0, ...Object.values(others ?? {}).map((other) => other?.length ?? 0));
  const named = (part: Described): number =>
    longest(part.name, part.name_localizations) +
    longest(part.description, part.description_localizations) +
    (part.choices ?? []).reduce(
      (sum, choice) => sum + longest(choice.name, choice.name_localizations) + String(choice.value).length,
      0,
    ) +
    (part.options ?? []).reduce((sum, option) => sum + named(option), 0);
  return named(body as Described);
}

interface Described {
  readonly name: string;
  readonly description?: string;
  readonly name_localizations?: Partial<Record<string, string | null>> | null;
  readonly description_localizations?: Partial<Record<string, string | null>> | null;
  readonly options?: readonly Described[];
  readonly choices?: readonly (Described & { readonly value: string | number })[];
}

function ownFaults(body: CommandBody): readonly string[] {
  const faults: string[] = [];
  const characters = commandCharacters(body);
  if (characters > commandLimits.characters) {
    faults.push(`${body.name}: ${characters} characters, at most ${commandLimits.characters}`);
  }
  const description = 'description' in body ? body.description : '';
  if ((body.type ?? 1) !== 1) {
    if (description) faults.push(`${body.name}: only chat commands have a description`);
    return faults;
  }
  if (!isChatName(body.name)) faults.push(`${body.name}: not a name of a chat command`);
  if (!description) faults.push(`${body.name}: a chat command needs a description`);
  return [...faults, ...optionFaults(('options' in body && body.options) || [], body.name, 0)];
}

function optionFaults(options: readonly APIApplicationCommandOption[], path: string, depth: number): readonly string[] {
  const faults = repeated(options.map((option) => option.name)).map((name) => `${path}: two options called ${name}`);
  const nested = options.filter((option) => option.type === 1 || option.type === 2);
  if (nested.length > 0 && nested.length < options.length) {
    faults.push(`${path}: subcommands stand beside other options`);
  }
  const firstOptional = options.findIndex((option) => !option.required);
  if (
    nested.length === 0 &&
    options.some((option, at) => option.required && firstOptional >= 0 && at > firstOptional)
  ) {
    faults.push(`${path}: a required option stands after an optional one`);
  }
  for (const option of options) {
    const here = `${path} ${option.name}`;
    if (!isChatName(option.name)) faults.push(`${here}: not a name of an option`);
    if (option.type === 2 && depth > 0) faults.push(`${here}: a group inside a group`);
    if (option.type === 1 || option.type === 2) {
      faults.push(...optionFaults(option.options ?? [], here, depth + 1));
    } else {
      faults.push(...choiceFaults(option, here));
    }
  }
  return faults;
}

function choiceFaults(option: APIApplicationCommandOption, path: string): readonly string[] {
  const choices = ('choices' in option && option.choices) || [];
  const both = choices.length > 0 && 'autocomplete' in option && option.autocomplete;
  return [
    ...choiceListFaults(choices).map((fault) => `${path}: ${fault}`),
    ...(both ? [`${path}: choices and autocomplete exclude each other`] : []),
  ];
}

/** Of the choices of an option, and of those that complete what is typed: the documentation says 100 where the schema says 6000. */
export function choiceListFaults(
  choices: readonly { readonly name: string; readonly value: string | number }[],
): readonly string[] {
  return [
    ...repeated(choices.map((choice) => choice.name)).map((name) => `two choices called ${name}`),
    ...choices
      .filter((choice) => String(choice.value).length > 100)
      .map((choice) => `the value of ${choice.name} has more than 100 characters`),
  ];
}

/** Without `en-US` of its own, a localised text is shown in `en-GB` to an American. */
function localisationFaults(part: unknown, path: string): readonly string[] {
  if (Array.isArray(part)) return part.flatMap((each, index) => localisationFaults(each, `${path}.${index}`));
  if (typeof part !== 'object' || part === null) return [];
  return Object.entries(part).flatMap(([key, value]) => {
    const here = `${path}.${key}`;
    if (!key.endsWith('_localizations') || !value) return localisationFaults(value, here);
    const given = Object.keys(value);
    if (given.length === 0) return [];
    return [
      ...given.filter((locale) => !locales.has(locale)).map((locale) => `${here}: ${locale} is no locale`),
      ...(given.includes('en-US') ? [] : [`${here}: localised without en-US`]),
    ];
  });
}

const isChatName = (name: string) => nameOfChatInput.test(name) && name === name.toLowerCase();

export function repeated(names: readonly string[]): string[] {
  return [...new Set(names.filter((name, index) => names.indexOf(name) !== index))];
}
