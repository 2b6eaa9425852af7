import type { ZodType } from 'zod';
import { AskError } from '../core/ask-error.ts';
import { slipOf } from '../core/materials/nearest.ts';
import type { Ask, Command } from './command.ts';

/**
 * The one parser of a typed line, for terminal, Matrix and buttons:
 *
 *     line  = command [subject] {name=value}
 *     value = everything up to the next known "name=" or the end of the line
 *
 * Quotes are never syntax (`"` is the inch mark); parentheses hold a nested line and hide their own `name=`.
 */
export const longestLine = 1000;

/** Options every command takes beside its own. */
export const commonOptions = ['for', 'units'] as const;

/** The build whose log calibrates an answer: `for=` sets it, and a question that is asked again keeps it. */
const logOption = 'log';

/** Every name that may stand before a `=`. */
export const optionsOf = ({ options }: Command): readonly string[] => [
  ...new Set([...Object.keys(options.shape), ...commonOptions, logOption]),
];

const tidy = (line: string): string =>
  line
    .normalize('NFC')
    .replace(/[\u00a0\u2007\u202f]/g, ' ')
    .replace(/[\p{Cc}\p{Cf}]/gu, ' ')
    .trim()
    .replace(/[?!]+$/, '')
    .trim();

export function parseLine(
  line: string,
  commands: readonly Command[],
  { asker, place }: { asker: string; place: string },
): Ask {
  if (line.length > longestLine) {
    throw new AskError({
      code: 'too-long',
      what: `the line has ${line.length} characters`,
      expected: `at most ${longestLine}`,
      example: 'mix 1.1 cu ft',
    });
  }
  const clean = tidy(line);
  const command = commandOf(clean, commands);
  const rest = clean.slice(command.name.length).trim();
  if (command.takesLine && command.subject) {
    return { command: command.name, options: rest === '' ? {} : { [command.subject]: rest }, asker, place };
  }
  const known = optionsOf(command);
  const { subject, named } = splitOptions(rest, known, command, commands);
  const options: Record<string, string> = {};
  if (subject !== '') {
    if (!command.subject) {
      throw new AskError({
        code: 'unknown-option',
        what: `${command.name} takes nothing bare, but "${subject}" stands there`,
        expected: known.map((name) => `${name}=`).join(' '),
        example: command.examples[0]?.line ?? command.name,
      });
    }
    options[command.subject] = subject;
  }
  for (const [name, value] of named) options[name] = value;
  return { command: command.name, options, asker, place };
}

function commandOf(line: string, commands: readonly Command[]): Command {
  const lower = line.toLowerCase();
  const found = commands
    .filter(({ name }) => lower === name || lower.startsWith(`${name} `))
    .toSorted((a, b) => b.name.length - a.name.length)[0];
  if (found) return found;
  const word = lower.split(/\s+/, 1)[0] ?? '';
  const names = commands.map(({ name }) => name);
  if (soundsHurt.test(lower)) throw perhapsEmergency(word);
  const family = commands.filter(({ name }) => name.startsWith(`${word} `));
  if (family.length > 0) throw whichOf(word, line.slice(word.length).trim(), family);
  // By ear too (`miks`): there is the rest of the line to tell, before it is offered, whether that was meant.
  const near = slipOf(
    word,
    names.map((name) => name.split(' ', 1)[0]!),
    2,
  );
  throw new AskError({
    code: 'unknown-command',
    what: word === '' ? 'the line is empty' : `there is no command "${word.slice(0, 40)}"`,
    expected: `one of ${names.join(', ')}`,
    example: near === undefined ? 'help' : `${near}${line.slice(word.length)}`.slice(0, 200),
  });
}

/** A first word that begins several names: `size` of `size can`, `size crucible`. */
function whichOf(word: string, rest: string, family: readonly Command[]): AskError {
  const [first] = family;
  return new AskError({
    code: 'unknown-command',
    what: `"${word}" alone says too little`,
    expected: `one of ${family.map(({ name }) => name).join(', ')}`,
    example: (rest === '' ? first?.examples[0]?.line : `${first?.name} ${rest}`)?.slice(0, 200) ?? 'help',
  });
}

/** Someone who is hurt does not look up commands. */
const soundsHurt = /\b(?:burn(?:ed|t|s)?|hurt|injur\w*|on fire|gas leak|monoxide|ambulance|bleed\w*)\b/;

const perhapsEmergency = (word: string) =>
  new AskError({
    code: 'unknown-command',
    what: `there is no command "${word.slice(0, 40)}"`,
    expected: 'emergency, if someone is hurt: call 112, 911 or 999 first',
    example: 'emergency',
  });

interface Split {
  readonly subject: string;
  readonly named: readonly (readonly [string, string])[];
}

/** A `word=` outside parentheses starts an option; an unknown word there is a near miss, never part of a value. */
function splitOptions(rest: string, known: readonly string[], command: Command, commands: readonly Command[]): Split {
  const starts: { name: string; at: number; valueAt: number }[] = [];
  for (const match of rest.matchAll(/(?<=^|\s)([\p{L}][\p{L}-]*)\s*=/gu)) {
    if (depthAt(rest, match.index) > 0) continue;
    const name = (match[1] ?? '').toLowerCase();
    if (!known.includes(name)) {
      const valueAt = match.index + match[0].length;
      const value = rest
        .slice(valueAt)
        .split(/\s[\p{L}][\p{L}-]*\s*=/u, 1)[0]!
        .trim();
      throw unknownOption({ name, value, at: match.index, to: valueAt }, known, command, rest, commands);
    }
    starts.push({ name, at: match.index, valueAt: match.index + match[0].length });
  }
  const named = starts.map(({ name, valueAt }, index) => {
    const value = rest.slice(valueAt, starts[index + 1]?.at ?? rest.length).trim();
    return [name, value] as const;
  });
  const twice = starts.find(({ name }, index) => starts.findIndex((other) => other.name === name) !== index);
  if (twice) {
    throw new AskError({
      code: 'unreadable',
      what: `${twice.name}= stands there twice`,
      expected: 'each option once',
      example: command.examples[0]?.line ?? command.name,
      option: twice.name,
    });
  }
  return { subject: rest.slice(0, starts[0]?.at ?? rest.length).trim(), named };
}

/** Other words for options, where a command has them and their value reads there. */
const otherWords: Readonly<Record<string, readonly string[]>> = {
  temperature: ['air', 'pour', 'hot'],
  temp: ['air', 'pour', 'hot'],
  ambient: ['air'],
  blast: ['air'],
  preheat: ['air'],
  elevation: ['altitude'],
  height: ['high'],
  pot: ['crucible'],
  can: ['vessel'],
  drum: ['vessel'],
  alloy: ['metal'],
  gas: ['fuel'],
  lining: ['wall'],
  mass: ['amount'],
  weight: ['amount'],
  quantity: ['amount'],
  nozzle: ['jet'],
  orifice: ['jet'],
  hole: ['vent'],
  power: ['rate'],
  heat: ['rate'],
  moisture: ['damp', 'moisture'],
  wet: ['damp'],
  cost: ['price'],
  diameter: ['bore'],
  cylinder: ['bottle'],
  tank: ['bottle'],
};

interface Mistyped {
  readonly name: string;
  readonly value: string;
  readonly at: number;
  readonly to: number;
}

function unknownOption(
  { name, value, at, to }: Mistyped,
  known: readonly string[],
  command: Command,
  rest: string,
  commands: readonly Command[],
): AskError {
  const reads = (option: string) => known.includes(option) && valueReads(command, option, value);
  const meant = otherWords[name]?.find(reads) ?? slipOf(name, known.filter(reads));
  const head = rest.slice(0, at);
  const without =
    `${command.name} ${`${head} ${rest.slice(to + rest.slice(to).indexOf(value) + value.length)}`.trim()}`.trim();
  const other =
    meant === undefined ? commands.find((one) => one.name === name && one.subject !== undefined) : undefined;
  return new AskError({
    code: 'unknown-option',
    what: `${command.name} has no option "${name.slice(0, 40)}"${other ? `: ${other.name} is a question of its own` : ''}`,
    expected: known.map((one) => `${one}=`).join(' '),
    example: (meant !== undefined
      ? `${command.name} ${head}${/\s$|^$/.test(head) ? '' : ' '}${meant}=${rest.slice(to)}`
      : other
        ? `${other.name} ${value} for=(${without})`
        : without
    ).slice(0, 200),
    option: name,
  });
}

function valueReads({ options: { shape } }: Command, option: string, value: string): boolean {
  const field = shape[option];
  return field === undefined || (field as ZodType).safeParse({ text: value, system: undefined }).success;
}

function depthAt(text: string, index: number): number {
  let depth = 0;
  for (const character of text.slice(0, index)) {
    if (character === '(') depth += 1;
    if (character === ')' && depth > 0) depth -= 1;
  }
  return depth;
}

/** ` vs ` between whole lines or subjects, outside parentheses. */
export function splitVersus(text: string): readonly string[] {
  const parts: string[] = [];
  let from = 0;
  for (const match of text.matchAll(/\s+vs\.?\s+/giu)) {
    if (depthAt(text, match.index) > 0) continue;
    parts.push(text.slice(from, match.index).trim());
    from = match.index + match[0].length;
  }
  return [...parts, text.slice(from).trim()];
}
