import { fieldNames, moreOption } from '../../../adapters/discord/bodies.ts';
import { inFields } from '../../../adapters/discord/form.ts';
import { slashName } from '../../../adapters/discord/names.ts';
import type { Command } from '../../../commands/command.ts';
import { parseLine } from '../../../commands/grammar.ts';
import { metaOf } from '../../../commands/options.ts';
import { commands } from '../../../commands/registry.ts';
import type { SlashLine } from './member.ts';

/** A typed line as somebody would fill it into the platform's fields. */
export function slashOf(line: string): SlashLine {
  const ask = parseLine(line, commands, { asker: '', place: '' });
  const command = commands.find(({ name }) => name === ask.command) as Command;
  const fields = fieldNames(command);
  const given = Object.entries(inFields(command, ask.options)).map(
    ([name, value]) => [name, choiceOf(command, name, value)] as const,
  );
  const more = given.filter(([name]) => !fields.includes(name)).map(([name, value]) => `${name}=${value}`);
  return {
    ...slashName(command, commands),
    options: {
      ...Object.fromEntries(given.filter(([name]) => fields.includes(name))),
      ...(more.length === 0 ? {} : { [moreOption]: more.join(' ') }),
    },
  };
}

/** Where there is a list to choose from, it is chosen as it is written there. */
function choiceOf(command: Command, name: string, value: string): string {
  const field = command.options.shape[name];
  const { choices = [] } = field ? metaOf(field as never) : {};
  return choices.find((choice) => choice.toLowerCase() === value.toLowerCase()) ?? value;
}
