import type { Command } from '../../commands/command.ts';
import { parseLine } from '../../commands/grammar.ts';
import { metaOf, type OptionMeta } from '../../commands/options.ts';
import { AskError } from '../../core/ask-error.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { UNITS } from '../../core/quantity/units.ts';
import { fieldNames, moreOption } from './bodies.ts';
import type { Choice } from './door.ts';
import { clipped, plain } from './escape.ts';
import { limits } from './limits.ts';
import { namesFor } from './names-known.ts';

export interface Typing {
  readonly command: Command;
  readonly option: string;
  readonly typed: string;
  /** What stands in the other fields. */
  readonly beside?: Readonly<Record<string, string>>;
  readonly commands: readonly Command[];
  readonly units: UnitSystem;
  /** Names of the asker's own builds. */
  readonly builds: readonly string[];
}

/** What could be meant by what is typed so far, itself first. Everything that is offered can be sent. */
export function suggestions(typing: Typing): readonly Choice[] {
  const typed = typing.typed.trim();
  const found = [...(typed === '' ? [] : [{ name: typed, value: typed }]), ...offers({ ...typing, typed })];
  return found
    .filter(({ value }, at) => found.findIndex((one) => one.value === value) === at)
    .filter(({ value }) => value !== '' && value.length <= limits.choice)
    .slice(0, limits.choices)
    .map(({ name, value }) => ({ name: clipped(plain(name), limits.choice), value }));
}

function offers(typing: Typing): readonly Choice[] {
  const { command, option, typed, commands, builds } = typing;
  if (option === 'for' || buildOptions.includes(option)) {
    const names = option === 'for' ? ['last', ...builds] : builds;
    return names.filter(has(typed)).map((name) => ({ name, value: name }));
  }
  if (option === moreOption) return remaining(command, typed);
  const field = command.options.shape[option];
  if (!field) return [];
  const meta = metaOf(field as never);
  const examples = examplesOf(command, option, commands).filter(has(typed));
  const fitting = meta.kind === 'quantity' ? withUnits(meta, typing) : named(typing);
  return [...fitting, ...examples.map((value) => ({ name: value, value }))];
}

/** Options that hold the name of a build. */
const buildOptions = ['name', 'build'];

const has = (typed: string) => (name: string) => name.toLowerCase().includes(typed.toLowerCase());

/** A bare number with every unit it can have, the asker's own system first. */
function withUnits({ dimensions = [] }: OptionMeta, { typed, units: reader }: Typing): readonly Choice[] {
  const [, number, begun = ''] = /^([\d.,]+(?: \d+\/\d+)?)\s*([^\d\s]*)$/.exec(typed) ?? [];
  if (number === undefined) return [];
  const units = [...UNITS].flatMap(([key, meanings]) =>
    meanings.filter(({ name }) => {
      const lower = name.toLowerCase();
      return lower === key && lower.startsWith(begun.toLowerCase()) && name !== 'K';
    }),
  );
  const fitting = dimensions.flatMap((one) => units.filter(({ dimension }) => dimension === one));
  const own = fitting.filter(({ system }) => system === undefined || system === reader);
  return [...own, ...fitting.filter((unit) => !own.includes(unit))].map(({ name }) => {
    const text = name === '%' ? `${number}%` : `${number} ${name}`;
    return { name: text, value: text };
  });
}

/** Names that begin or hold the last word; what stands before it (an amount, earlier layers) stays. */
function named({ option, typed, commands, beside }: Typing): readonly Choice[] {
  const head = /^(?:.*[;,]\s*)?(?:[\d.,/ ]+\s*(?:[^\s\d;]+\s+)?)?/s.exec(typed)?.[0] ?? '';
  const known = namesFor(option, commands, beside);
  const wholly = known.filter(({ words }) => words.includes(typed.toLowerCase()));
  if (wholly.length > 0) return wholly.map(({ shown, value }) => ({ name: shown, value }));
  const tail = typed.slice(head.length).toLowerCase();
  return known
    .filter(({ words }) => words.includes(tail))
    .map(({ shown, value }) => ({ name: `${head}${shown}`, value: `${head}${value}` }));
}

/** Options that have no field of their own, behind what is typed of them already. */
function remaining(command: Command, typed: string): readonly Choice[] {
  const [, before = '', word = ''] = /^(.*?)(\S*)$/s.exec(typed) ?? [];
  const shown = fieldNames(command);
  return Object.entries(command.options.shape)
    .filter(([name]) => !shown.includes(name) && name.startsWith(word) && !before.includes(`${name}=`))
    .map(([name, field]) => ({
      name: `${before}${name}=   ${metaOf(field as never).label}`,
      value: `${before}${name}=`,
    }));
}

/** Values of this option in the command's own examples. */
function examplesOf(command: Command, option: string, commands: readonly Command[]): readonly string[] {
  return command.examples.flatMap(({ line }) => {
    try {
      return parseLine(line, commands, { asker: '', place: '' }).options[option] ?? [];
    } catch (error) {
      if (error instanceof AskError) return [];
      throw error;
    }
  });
}
