import { describe, expect, it } from 'vitest';
import { answerLine } from '../answer.ts';
import { inProcessMemory } from '../memory.ts';
import { commands } from '../registry.ts';
import { askSide, type Reading } from './ask-side.ts';
import { typicalOf } from './verdict.ts';

const key = { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() };

/** The context that a command gets: what is nested is answered by the whole program. */
const context: Reading = {
  ...key,
  commands,
  units: 'metric',
  mayModerate: true,
  parse: () => expect.fail('not here'),
  fill: async (ask) => ask,
  ask: async ({ command, options }) => {
    const { [commands.find((one) => one.name === command)?.subject ?? '']: bare, ...named } = options;
    const line = [command, bare, ...Object.entries(named).map(([name, value]) => `${name}=${value}`)];
    return answerLine(line.filter(Boolean).join(' '), key);
  },
};

const question = (command: string, options: Record<string, string>) =>
  askSide('it', { command, options, asker: 'ann', place: 'shed' }, context);

describe('the model that a command shows of its doubts', () => {
  it.each([
    // How far the coarse walls of the samples may be from the one on the card: 1 K, 0.7 % of heat, and times of a few minutes.
    ['wall', { layers: '2 in clay-sand; 2 in vermiculite' }, 0.02],
    ['fuel', { fuel: 'lump charcoal' }, 0.03],
    ['fuel', { fuel: 'propane', melts: '3', amount: '2 kg' }, 0.03],
    ['fuel', { fuel: 'briquettes then lump', amount: '10 lb', prices: 'briquettes 16 lb $12; lump 20 lb $22' }, 0.03],
    // The same functions, hence only rounding.
    ['mix', { amount: '30 L' }, 1e-9],
    ['mix', { amount: '50 kg', ratio: '3 sand 1 fireclay', damp: '12%' }, 1e-9],
    ['flame', { fuel: 'charcoal' }, 1e-9],
    ['blast', { fuel: 'charcoal', rate: '20 kW' }, 1e-9],
    ['melt', { melt: '5 kg aluminium' }, 1e-9],
    ['melt', { melt: '10 lb brass turnings', cover: 'yes' }, 1e-9],
    ['size can', { vessel: '20 gal', crucible: '6 in x 8 in' }, 1e-9],
    ['size crucible', { crucible: '2 L', fuel: 'charcoal' }, 1e-9],
    ['size melt', { melt: '5 kg aluminium' }, 1e-9],
    ['burner', { rate: '20 kW' }, 1e-9],
    ['burner', { jet: '0.8 mm', pressure: '15 psi', tube: '1 in' }, 1e-9],
  ])(
    'of %s comes, at its typical values, to what the card says',
    async (command, options, tolerance) => {
      const { doubted, card } = await question(command, options as unknown as Record<string, string>);
      const typical = doubted!.model(typicalOf(doubted!));
      const shared = card.figures.filter(({ id }) => Number.isFinite(typical[id]));
      expect(shared.length).toBeGreaterThan(3);
      for (const { id, value } of shared) {
        const off = Math.abs(typical[id]! - value);
        expect(off, `${id}: ${typical[id]} and ${value}`).toBeLessThanOrEqual(
          id.endsWith('_after') ? 600 : tolerance * Math.abs(value) + 1e-12,
        );
      }
      for (const name of Object.keys(doubted!.units)) expect(doubted!.inputs).toHaveProperty([name]);
    },
    30_000,
  );

  it('is none where a layer leaves what is known of it', async () => {
    expect((await question('wall', { layers: '1 in castable; 3 in perlite' })).doubted).toBeUndefined();
  });
});
