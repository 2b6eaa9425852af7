import type { Reply } from '../../commands/card.ts';
import type { Command } from '../../commands/command.ts';
import { optionsOf, parseLine } from '../../commands/grammar.ts';
import type { Manner } from '../../commands/manner.ts';
import { AskError } from '../../core/ask-error.ts';
import { fieldNames } from './bodies.ts';
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

/** Options that are written as they are typed elsewhere, `damp=10%`, as they stand here: `damp:10%`. */
function fieldWords(text: string, known: readonly string[]): string {
  let said = '';
  let from = 0;
  // Back from each sign to the begin of its word: an expression that looks ahead from every letter was a twelfth of a card's time.
  for (let sign = text.indexOf('='); sign >= 0; sign = text.indexOf('=', sign + 1)) {
    let begin = sign;
    while (begin > from && isOfName(text.charCodeAt(begin - 1))) begin--;
    if (!known.includes(text.slice(begin, sign))) continue;
    said += `${text.slice(from, sign)}:`;
    from = sign + 1;
  }
  return from === 0 ? text : said + text.slice(from);
}

const [a, z, A, Z, hyphen] = [...'azAZ-'].map((letter) => letter.charCodeAt(0)) as [
  number,
  number,
  number,
  number,
  number,
];
const isOfName = (code: number): boolean => (code >= a && code <= z) || (code >= A && code <= Z) || code === hyphen;

/** A reply whose hints say what to do here. What is a line to be sent stays one: buttons read it. */
export function spokenHere<Of extends Reply>(
  reply: Of,
  command: Command | undefined,
  commands: readonly Command[],
): Of {
  if (!command) return reply;
  const known = optionsOf(command);
  const words = (text: string) => fieldWords(text, known);
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
  const assumed = card.assumed.map(({ text, override }) => ({
    text,
    ...(override === undefined ? {} : { override: words(override) }),
  }));
  const table = card.table && { ...card.table, rows: card.table.rows.map((row) => row.map(words)) };
  const doubt = card.doubt === undefined ? {} : { doubt: words(card.doubt) };
  return { ...reply, card: { ...card, ...doubt, assumed, notes: card.notes.map(words), ...(table ? { table } : {}) } };
}
