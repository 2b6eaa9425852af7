import type { Command } from '../../commands/command.ts';
import { commonOptions } from '../../commands/grammar.ts';
import { metaOf } from '../../commands/options.ts';

/** Tab completion from the one list of commands: names, then `option=`, then the choices of an option. */
export function completer(commands: readonly Command[]) {
  return (line: string): [string[], string] => {
    const word = /\S*$/.exec(line)?.[0] ?? '';
    const found = candidates(line.slice(0, line.length - word.length).trim(), word, commands);
    return [found.filter((one) => one.startsWith(word.toLowerCase())), word];
  };
}

function candidates(before: string, word: string, commands: readonly Command[]): string[] {
  const names = commands.map(({ name }) => `${name} `);
  if (before === '') return [...names, 'exit'];
  if (before === 'help') return names;
  const asked = commands.filter(({ name }) => before === name || before.startsWith(`${name} `));
  const shapes = (asked.some(({ takesLine }) => takesLine) ? commands : asked).map(({ options }) => options.shape);
  const [option, value] = word.split('=');
  if (option !== undefined && value !== undefined) {
    return shapes.flatMap((shape) => {
      const field = shape[option];
      return field ? (metaOf(field as never).choices ?? []).map((choice) => `${option}=${choice}`) : [];
    });
  }
  return [...new Set([...shapes.flatMap((shape) => Object.keys(shape)), ...commonOptions])].map((name) => `${name}=`);
}
