import { describe, expect, it } from 'vitest';
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

const plain_ms = 5;
/** 500 to 2,000 samples, each of them a wall run through two melts. */
const ranged_ms = 800;
const few = { iterations: 5, time: 0, warmupIterations: 2, warmupTime: 0 };

describe('a furnace balance', () => {
  const dry = questionOf('fuel charcoal amount=5 kg layers=1 in castable; 2 in fibre blanket');
  const damp = questionOf('fuel charcoal amount=5 kg');

  it('without a range', async ({ bench }) => {
    const { latency } = await bench('castable and blanket', () => {
      answerBalance(dry, { ranged: false });
    }).run();
    expect(latency.p50).toBeLessThan(plain_ms);
  });

  it('with its range', async ({ bench }) => {
    const { latency } = await bench('castable and blanket, range', () => {
      answerBalance(dry);
    }).run(few);
    expect(latency.p50).toBeLessThan(ranged_ms);
  });

  it('with its range, the lining holding the water of air-dry clay', async ({ bench }) => {
    const { latency } = await bench('clay-sand and vermiculite, range', () => {
      answerBalance(damp);
    }).run(few);
    expect(latency.p50).toBeLessThan(1.5 * ranged_ms);
  });
});
