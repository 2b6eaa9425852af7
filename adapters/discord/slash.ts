import type { Ask } from '../../commands/command.ts';
import { AskError } from '../../core/ask-error.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { askOf } from './ask.ts';
import { suggestions } from './complete.ts';
import { componentId } from './component-id.ts';
import { planFor } from './compose.ts';
import type { DeskParts } from './desk.ts';
import type { Choice } from './door.ts';
import { formOf } from './form.ts';
import { saying } from './message/error.ts';
import { modalOf } from './message/modal.ts';
import { commandOf, type SlashName } from './names.ts';
import type { Plan } from './plan.ts';
import type { Request, Who } from './request.ts';

type CommandRequest = Extract<Request, { kind: 'command' }>;

/** A slash command: answered, or asked back by a form where it was asked without what the form is for. */
export function answerCommand({ name, options, who }: CommandRequest, parts: DeskParts): Plan {
  const command = commandOf(name, parts.commands);
  if (!command) return unknown(name);
  const names = formOf(command);
  if (names && !(names[0]! in options) && !('for' in options) && !('more' in options)) {
    const given = Object.fromEntries(names.flatMap((one) => (one in options ? [[one, options[one]!]] : [])));
    return {
      kind: 'modal',
      command: command.name,
      modal: modalOf({ id: componentId('filled', command.name), command, names, given }),
    };
  }
  return planReading(
    () => askOf(command, options, who, parts.commands),
    { command: command.name, options },
    who,
    parts,
  );
}

/** What was picked in the menu of a message, about what is written there. */
export function answerMessage({ label, text, who }: Extract<Request, { kind: 'message' }>, parts: DeskParts): Plan {
  const command = parts.commands.find(({ onMessage }) => onMessage?.label === label);
  if (!command?.subject) return unknown({ name: label });
  const { asker, place } = who;
  const options = text.trim() === '' ? {} : { [command.subject]: text };
  return planFor({ command: command.name, options, asker, place }, who, parts);
}

/** What cannot even be read is answered with what is wrong with it. */
export function planReading(
  read: () => Ask,
  meant: Pick<Ask, 'command' | 'options'>,
  who: Who,
  parts: DeskParts,
  given: { readonly ephemeral?: boolean; readonly before?: () => Promise<void> } = {},
): Plan {
  try {
    return planFor(read(), who, parts, given);
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
    const { asker, place } = who;
    return planFor({ ...meant, asker, place }, who, parts, { ...given, mistake: error });
  }
}

/** Registered by an older version, and gone since. */
const unknown = ({ name, sub = '' }: SlashName): Plan => ({
  kind: 'answer',
  command: 'unknown',
  ephemeral: true,
  into: 'new',
  cautions: () => [],
  work: async () => ({
    message: saying(`There is no command ${`${name} ${sub}`.trim()} any more. /help lists what there is.`),
    ephemeral: true,
    refused: true,
  }),
});

/** What could be meant by what somebody is typing. */
export async function complete(
  { name, options, focused, who }: Extract<Request, { kind: 'autocomplete' }>,
  { commands, memory }: DeskParts,
): Promise<readonly Choice[]> {
  const command = commandOf(name, commands);
  if (!command) return [];
  const [units, builds] = await Promise.all([
    memory.units(who).catch(() => undefined),
    memory.builds(who.asker).catch(() => []),
  ]);
  return suggestions({
    command,
    option: focused,
    typed: options[focused] ?? '',
    beside: options,
    commands,
    units: units ?? usualUnits(who),
    builds: builds.map((build) => build.name),
  });
}

/** Only the order of suggestions follows it; never an answer. */
const usualUnits = ({ locale }: Who): UnitSystem => (locale === 'en-US' ? 'US' : 'metric');
