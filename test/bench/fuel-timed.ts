/**
 * What fuel.bench.ts holds to its limits, in a process of its own as the program runs it: the test runner makes every use
 * of an import slower. Prints the least of several in ms of the processor as JSON, compiler and collector counted: what
 * else runs on the machine only ever adds.
 */
import type { FuelOptions } from '../../commands/fuel/options.ts';
import { askedFuel } from '../../commands/fuel/question.ts';
import { parseLine } from '../../commands/grammar.ts';
import { readOptions } from '../../commands/read-options.ts';
import { commands } from '../../commands/registry.ts';
import { answerBalance } from '../../core/melt/balance.ts';

/** The question of a line, ready for the core: what is timed is two melts, their wall and their fire. */
function questionOf(line: string) {
  const ask = parseLine(line, commands, { asker: 'ann', place: 'shed' });
  const command = commands.find(({ name }) => name === ask.command)!;
  const { values, units } = readOptions(command, ask.options, 'metric');
  return askedFuel(values as FuelOptions, { units, commands }).question;
}

function least_ms(runs: number, run: () => void): number {
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < runs; at++) {
    const begin = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(begin);
    least = Math.min(least, (user + system) / 1000);
  }
  return least;
}

const lines = [
  'fuel charcoal amount=5 kg layers=1 in castable; 2 in fibre blanket',
  'fuel charcoal amount=5 kg',
  'fuel propane amount=5 kg metal=bronze',
];
const answer = lines.map((line) => {
  const question = questionOf(line);
  return {
    line,
    plain_ms: least_ms(100, () => answerBalance(question, { ranged: false })),
    ranged_ms: least_ms(6, () => answerBalance(question)),
  };
});
process.stdout.write(`${JSON.stringify(answer)}\n`);
