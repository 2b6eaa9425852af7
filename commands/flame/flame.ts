import type { Command } from '../command.ts';
import { checkReading, flameAnswer } from './answer.ts';
import { flameDoubt } from './doubt.ts';
import { refuseMetal } from './fuel.ts';
import { flameOptions } from './options.ts';
import { flameQuestion } from './question.ts';

export const flame = {
  name: 'flame',
  summary: 'How hot a fuel burns at most, what its flue holds, how much heat stays in the furnace.',
  options: flameOptions,
  subject: 'fuel',
  alternatives: [
    [['excess'], ['reads']],
    [['flue'], ['hot']],
  ],
  examples: [
    { line: 'flame propane', says: 'propane with a usual excess of air' },
    { line: 'flame charcoal excess=30% air=400 °C', says: 'charcoal blown with warmed air' },
    { line: 'flame propane oxygen=23%', says: 'a blast enriched with oxygen' },
    { line: 'flame propane reads=4% flue=1100 °C', says: 'from what a meter reads in the flue' },
  ],
  hazards: ['hot-work'],
  figures: {
    'flame.temperature': 'adiabatic flame temperature, an upper bound',
    'flame.real': 'what a real flame has of it',
    'flame.left': 'heat that stays in the furnace, of the lower heating value',
    'flame.left_higher': 'the same of the higher heating value',
    'flame.excess': 'excess air',
    'flame.oxygen': 'oxygen in the dry flue',
    'flame.carbon_monoxide': 'CO in the dry flue',
    'flame.air': 'air for a kilogram of fuel',
    'flame.lower_heat': 'lower heating value as fired',
    'flame.higher_heat': 'higher heating value as fired',
  },
  slow: true,
  async answer(options, context) {
    refuseMetal(options.fuel, 'flame', context.commands);
    checkReading(options);
    return flameAnswer(flameQuestion(options), options, context);
  },
  async doubt(options, { commands }) {
    refuseMetal(options.fuel, 'flame', commands);
    checkReading(options);
    return flameDoubt(flameQuestion(options));
  },
} satisfies Command<typeof flameOptions>;
