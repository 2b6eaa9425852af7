import { ComponentType, TextInputStyle } from 'discord.js';
import type { Command } from '../../../commands/command.ts';
import { isOptional, metaOf } from '../../../commands/options.ts';
import type { Modal } from '../door.ts';
import { clipped, plain } from '../escape.ts';
import { limits } from '../limits.ts';

interface Form {
  readonly id: string;
  readonly command: Command;
  readonly names: readonly string[];
  readonly given?: Readonly<Record<string, string>>;
}

/** A form of a command's options; a stack of layers has a line a layer. */
export function modalOf({ id, command, names, given = {} }: Form): Modal {
  return {
    custom_id: id,
    title: clipped(plain(command.name), limits.modalTitle),
    components: names.slice(0, limits.modalInputs).map((name) => {
      const field = command.options.shape[name] as never;
      const { label, choices } = metaOf(field);
      const value = given[name];
      const stacked = isStack(label);
      const hint = choices?.join(', ') ?? exampleOf(command, name);
      return {
        type: ComponentType.Label,
        label: clipped(name, limits.inputLabel),
        description: clipped(label, limits.inputDescription),
        component: {
          type: ComponentType.TextInput,
          custom_id: name,
          style: stacked ? TextInputStyle.Paragraph : TextInputStyle.Short,
          required: !isOptional(field),
          max_length: longest,
          ...(value === undefined ? {} : { value: clipped(stacked ? unstacked(value) : value, longest) }),
          ...(hint === undefined ? {} : { placeholder: clipped(stacked ? unstacked(hint) : hint, limits.placeholder) }),
        },
      };
    }),
  };
}

const longest = 900;

const isStack = (label: string): boolean => /\blayers\b/.test(label);
const unstacked = (value: string): string => value.replace(/\s*;\s*/g, '\n');

/** What was filled in, as options; what was left empty is none. */
export function filled(values: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  const tidy = Object.entries(values).map(([name, value]) => {
    const lines = value.split('\n').map((line) => line.trim().replace(/;$/, ''));
    return [name, lines.filter((line) => line !== '').join('; ')] as const;
  });
  return Object.fromEntries(tidy.filter(([, value]) => value !== ''));
}

function exampleOf({ examples, subject, name: command }: Command, name: string): string | undefined {
  if (name !== subject) return undefined;
  const typed = examples[0]?.line
    .slice(command.length)
    .trim()
    .split(/\s\p{L}+=/u, 1)[0];
  return typed === '' ? undefined : typed;
}
