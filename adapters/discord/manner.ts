import type { Reply } from '../../commands/card.ts';
import type { Command } from '../../commands/command.ts';
import { optionsOf, parseLine } from '../../commands/grammar.ts';
import type { Manner } from '../../commands/manner.ts';
import { AskError } from '../../core/ask-error.ts';
import { fieldNames, moreOption } from './bodies.ts';
import { fieldsOf, inFields } from './form.ts';
import { slashName } from './names.ts';

/** A question as it is put here: a slash, then fields by their names. */
export const slashManner = (commands: readonly Command[]): Manner => ({
  opening:
    'Ask in your own units: a slash, a command, then its options. What you leave out is assumed, and the answer says so.',
  command: (name) => slashOf(name, commands),
  family: (word) => `/${word}`,
  option(command, name) {
    if (!fieldsOf(command).includes(name)) return undefined;
    return fieldNames(command).includes(name) ? name : `more: ${name}=`;
  },
  line: (line) => slashLine(line, commands),
  // Where they are wanted they are offered.
  ids: false,
});

function slashOf(name: string, commands: readonly Command[]): string {
  const command = commands.find((one) => one.name === name);
  if (!command) return `/${name}`;
  const slash = slashName(command, commands);
  return `/${[slash.name, ...(slash.sub === undefined ? [] : [slash.sub])].join(' ')}`;
}

/** `/mix amount:30 L damp:10%`. What can't be read stays as it is. */
export function slashLine(line: string, commands: readonly Command[]): string {
  try {
    const ask = parseLine(line, commands, { asker: '', place: '' });
    const command = commands.find(({ name }) => name === ask.command)!;
    const fields = fieldNames(command);
    const given = Object.entries(inFields(command, ask.options));
    const more = given.filter(([name]) => !fields.includes(name)).map(([name, value]) => `${name}=${value}`);
    const shown = given.filter(([name]) => fields.includes(name)).map(([name, value]) => `${name}:${value}`);
    return [slashOf(command.name, commands), ...shown, ...(more.length === 0 ? [] : [`more:${more.join(' ')}`])].join(
      ' ',
    );
  } catch (error) {
    if (error instanceof AskError) return line;
    throw error;
  }
}

/** How an option of a command can be said here: in a field of its own, or in the one that takes all the others. */
type Place = 'field' | 'more';
const known = new WeakMap<Command, ReadonlyMap<string, Place>>();

/** Once for a command: every text of every card is looked through. */
function placesIn(command: Command): ReadonlyMap<string, Place> {
  const found = known.get(command);
  if (found) return found;
  const fields = fieldNames(command);
  const made = new Map([
    ...fieldsOf(command).map((name) => [name, fields.includes(name) ? 'field' : 'more'] as const),
    ...optionsOf(command)
      .filter((name) => fields.includes(name))
      .map((name) => [name, 'field'] as const),
  ]);
  known.set(command, made);
  return made;
}

/**
 * Options that are written as they are typed elsewhere, `damp=10%`, as they stand here: `damp:10%`, and one without a value
 * by its name alone. Of the commands it may belong to the first that has it says where.
 */
function fieldWords(text: string, owners: readonly Command[]): string {
  let said = '';
  let from = 0;
  // Back from each sign to the begin of its word: an expression that looks ahead from every letter was a twelfth of a card's time.
  for (let sign = text.indexOf('='); sign >= 0; sign = text.indexOf('=', sign + 1)) {
    let begin = sign;
    while (begin > from && isOfName(text.charCodeAt(begin - 1))) begin--;
    const name = text.slice(begin, sign);
    const place = name === '' ? undefined : placeOf(name, owners);
    if (place === undefined) continue;
    const next = text.charAt(sign + 1);
    const isBare = bareBefore.includes(next);
    const before = text.slice(from, begin);
    if (place === 'field') said += `${before}${name}${isBare ? '' : ':'}`;
    else said += isBare ? `${before}${moreOption}: ${name}=` : `${before}${moreOption}:${name}=`;
    // `metal=…` stands for any metal.
    from = sign + (next === '…' ? 2 : 1);
  }
  return from === 0 ? text : said + text.slice(from);
}

/** What follows a name that is given no value; the empty text is the end. */
const bareBefore = ['', ' ', '.', ',', ';', ')', '…'];

function placeOf(name: string, owners: readonly Command[]): Place | undefined {
  for (const owner of owners) {
    const place = placesIn(owner).get(name);
    if (place) return place;
  }
  return undefined;
}

const [a, z, A, Z, hyphen] = [...'azAZ-'].map((letter) => letter.charCodeAt(0)) as [
  number,
  number,
  number,
  number,
  number,
];
const isOfName = (code: number): boolean => (code >= a && code <= z) || (code >= A && code <= Z) || code === hyphen;

/** The commands of the questions that a statement was held against: what is assumed in it is theirs. */
function askedIn(given: readonly string[], commands: readonly Command[]): readonly Command[] {
  const lines = given.filter((one) => one.startsWith(askedAs)).map((one) => one.slice(askedAs.length));
  const named = lines.map((line) => commands.filter(({ name }) => line === name || line.startsWith(`${name} `)));
  // Of `size` and `size can` the longer.
  return named.flatMap((all) => all.toSorted((one, other) => other.name.length - one.name.length).slice(0, 1));
}

const askedAs = 'asked as: ';
const optionFirst = /^[a-z-]+=/;

/**
 * A reply whose hints say what to do here. What is a line to be sent stays one: buttons read it. `about` is the command of
 * another question that it speaks of.
 */
export function spokenHere<Of extends Reply>(
  reply: Of,
  command: Command | undefined,
  commands: readonly Command[],
  about?: Command,
): Of {
  if (!command) return reply;
  const asked = reply.kind === 'card' ? askedIn(reply.card.given, commands) : [];
  const owners = [command, ...(about ? [about] : []), ...asked];
  const words = (text: string) => fieldWords(text, owners);
  if (reply.kind === 'error') {
    const { error } = reply;
    const tryLine = reply.tryLine ?? error.example;
    return {
      ...reply,
      error: { ...error, what: words(error.what), expected: words(error.expected) },
      tryLine: slashLine(tryLine, commands),
    };
  }
  const { card } = reply;
  // What can only be said by asking anew is a whole line. To read every `damp=10%` as one cost more than all the rest here.
  const hint = (override: string) => {
    if (optionFirst.test(override)) return words(override);
    const line = slashLine(override, commands);
    return line === override ? words(override) : line;
  };
  const assumed = card.assumed.map(({ text, override }) => ({
    text,
    ...(override === undefined ? {} : { override: hint(override) }),
  }));
  const table = card.table && { ...card.table, rows: card.table.rows.map((row) => row.map(words)) };
  const doubt = card.doubt === undefined ? {} : { doubt: words(card.doubt) };
  return { ...reply, card: { ...card, ...doubt, assumed, notes: card.notes.map(words), ...(table ? { table } : {}) } };
}
