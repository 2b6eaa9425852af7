import type { Command } from '../command.ts';
import { burnerAnswer } from './answer.ts';
import { burnerDoubt } from './doubt.ts';
import { burnerOptions } from './options.ts';
import { burnerQuestion } from './question.ts';

export const burner = {
  name: 'burner',
  summary: 'A propane burner: jet, pressure, mixing tube, and how long the bottle keeps up.',
  options: burnerOptions,
  subject: 'rate',
  alternatives: [[['propane'], ['rate']]],
  examples: [
    { line: 'burner 20 kW', says: 'the jet and the tube for a heat' },
    { line: 'burner jet=0.8 mm pressure=15 psi tube=1 in', says: 'what a burner gives, and its air' },
    {
      line: 'burner 60000 Btu/h jet=no. 65 bottle=20 lb fill=50% air=40 °F',
      says: 'which pressure, on a half empty bottle',
    },
    { line: 'burner propane=1.2 kg/h bottles=2 air=0 °C each=0.6 kg', says: 'melts from two bottles on a frosty day' },
  ],
  hazards: ['hot-work', 'propane', 'cylinder'],
  figures: {
    'burner.rate': 'heat, of the lower heating value',
    'burner.rate_higher': 'heat, of the higher heating value',
    'burner.propane': 'propane burned',
    'burner.jet': 'bore of the jet',
    'burner.pressure': 'pressure at the jet, gauge',
    'burner.tube': 'mixing tube, inside',
    'burner.air': 'air drawn, of the balanced',
    'burner.velocity': 'speed of the mixture in the tube',
    'burner.stall': 'furnace pressure that stops the air',
    'burner.lasts': 'time until cold or an empty bottle ends it',
    'burner.level': 'time that the fill alone would last',
    'burner.steady': 'what the bottle can give without getting colder',
    'burner.bottle_pressure': 'pressure in the bottle at rest, gauge',
    'burner.needed': 'pressure the regulator needs before it, gauge',
    'burner.melts': 'melts from the bottles',
    'burner.handbook': "air by the handbook's rule",
    'burner.vent': "vent by the handbook's rule",
  },
  slow: true,
  async answer(options, context) {
    return burnerAnswer(burnerQuestion(options, context), options, context);
  },
  async doubt(options, context) {
    return burnerDoubt(burnerQuestion(options, context));
  },
} satisfies Command<typeof burnerOptions>;
