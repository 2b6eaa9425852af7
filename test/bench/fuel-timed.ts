/**
 * What fuel.bench.ts holds to its limits, in a process of its own as the program runs it: the test runner makes every use
 * of an import slower. Prints as JSON the least of several in ms of the processor, compiler and collector counted: what
 * else runs on the machine only ever adds, and often for seconds, so the questions take turns.
 */
import type { FuelOptions } from '../../commands/fuel/options.ts';
import { askedFuel } from '../../commands/fuel/question.ts';
import { parseLine } from '../../commands/grammar.ts';
import { readOptions } from '../../commands/read-options.ts';
import { commands } from '../../commands/registry.ts';
import type { Draw } from '../../core/heat/wall-question.ts';
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
const timed = lines.map((line) => ({ line, plain_ms: Infinity, ranged_ms: Infinity, samples: 0 }));
for (let turn = 0; turn < 6; turn++) {
  for (const one of timed) {
    const question = questionOf(one.line);
    one.plain_ms = Math.min(
      one.plain_ms,
      least_ms(40, () => answerBalance(question, { ranged: false })),
    );
    let draws = 0;
    const moved = (draw: Draw): Draw => {
      draws++;
      return draw;
    };
    one.ranged_ms = Math.min(
      one.ranged_ms,
      least_ms(1, () => answerBalance(question, { moved })),
    );
    one.samples = 1000 * Math.round(draws / 1000);
  }
}
process.stdout.write(`${JSON.stringify(timed)}\n`);
