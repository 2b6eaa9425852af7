import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { answerLine } from '../../commands/answer.ts';
import { inProcessMemory } from '../../commands/memory.ts';
import { modelErrors } from '../../core/doubt/model-errors.ts';
import { findFuel } from '../../core/fire/fuel/fuel.ts';
import { flame } from '../../core/fire/gas/flame.ts';
import { flames } from './coverage-set.ts';
import { outside } from './outside.ts';

/** Rows of the table of results as it stands: ours and theirs, in the unit they are printed in. */
const printed = readFileSync(join(import.meta.dirname, 'RESULTS.md'), 'utf8')
  .split('\n')
  .filter((line) => line.startsWith('| '))
  .map((line) => line.split(' | ').map((cell) => cell.replace(/^\| /, '').trim()))
  .map(([subject = '', property = '', ours = '', theirs = '']) => ({
    subject,
    property,
    ours: Number.parseFloat(ours),
    theirs: Number.parseFloat(theirs),
  }));

/** What theirs is more than ours, of the rows that a pattern names. */
function offs(subject: RegExp, property: RegExp, by: 'share' | 'dK', whole?: number): readonly number[] {
  return printed
    .filter((row) => subject.test(row.subject) && property.test(row.property))
    .map(({ ours, theirs }) => (by === 'dK' ? theirs - ours : (theirs - ours) / (whole ?? ours)));
}

async function figuresOf(line: string) {
  const reply = await answerLine(line, { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() });
  if (reply.kind === 'error') throw new Error(reply.error.what);
  return (id: string) => reply.card.figures.find((one) => one.id === id)!.value;
}

/** 3 kg of charcoal at 29.5 MJ/kg in 93 min. */
const thesis = { line: 'fuel charcoal amount=10 kg metal=aluminium rate=15.9 kW', mass_kg: 3, time_s: 93 * 60 };

const hottest_K = (id: string): number =>
  Math.max(
    ...[0.9, 0.95, 1, 1.05, 1.1].map(
      (equivalence_ratio) => flame({ fuel: findFuel(id), equivalence_ratio }).temperature_K,
    ),
  );

/** Of every model error, all that it is judged from. */
const seen: Readonly<Record<string, () => Promise<readonly number[]>>> = {
  shell: async () => offs(/^(?:first burn|vessel after a melt)/, /shell|bore/, 'dK'),
  'wall-heat': async () => [],
  fuel: async () => {
    const figure = await figuresOf(thesis.line);
    return [thesis.mass_kg / figure('fuel.mass') - 1, thesis.time_s / figure('fuel.time') - 1];
  },
  flame: async () => flames.map(({ fuel, hottest_C }) => hottest_C + 273.15 - hottest_K(fuel)),
  // Of its greatest pressure, 20.6 kPa.
  blast: async () => offs(/^dust extractor/, /^pressure/, 'share', 20.6),
  bottle: async () => offs(/^100 lb cylinder/, /^heat in the vapour/, 'share'),
  jet: async () => [],
  'melt-heat': async () => [
    ...offs(/^fusion of/, /^heat of fusion/, 'share'),
    ...offs(/^die-cast aluminium/, /^latent heat/, 'share'),
    ...offs(/^grey cast iron/, /^heat from/, 'share'),
  ],
  'melt-time': async () => [],
  size: async () => offs(/^(?:galvanised (?:can|pail)|drum-55)/, /^volume/, 'share'),
  mix: async () => [],
};

describe('what is said of a model’s own error', () => {
  it('is said of every model that settle weighs', () => {
    expect(Object.keys(seen).sort()).toEqual(modelErrors.map(({ id }) => id).sort());
    const models = new Set(modelErrors.flatMap(({ figures }) => figures.map((id) => id.split('.')[0])));
    expect([...models].sort()).toEqual(['blast', 'burner', 'flame', 'fuel', 'melt', 'mix', 'size', 'wall']);
  });

  it.each(modelErrors.map((error) => [error.id, error] as const))(
    '%s: is judged from as many comparisons as it says, and none of them lies beyond it',
    async (id, { comparisons, low, high, against }) => {
      const found = await seen[id]!();
      expect(found).toHaveLength(comparisons);
      expect(against === '').toBe(comparisons === 0);
      for (const off of found) {
        expect(off).toBeGreaterThanOrEqual(low);
        expect(off).toBeLessThanOrEqual(high);
      }
    },
    60_000,
  );

  it.each(flames)('a small flame of $fuel stays below the adiabatic one', ({ fuel, hottest_C }) => {
    outside({
      subject: fuel,
      quantity: 'hottest flame in air, adiabatic beside measured',
      ours: hottest_K(fuel),
      theirs: hottest_C + 273.15,
      unit: 'K',
      source: 'sodium-line reversal (Lewis and von Elbe), from memory',
      tolerance: 120,
      reason: 'ours is an upper bound: small still flames lose some 80 to 110 K by radiation and to their burner',
    });
  });
});
