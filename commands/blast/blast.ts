import type { Command } from '../command.ts';
import { blastAnswer } from './answer.ts';
import { blastDoubt } from './doubt.ts';
import { blastOptions } from './options.ts';
import { blastQuestion } from './question.ts';

export const blast = {
  name: 'blast',
  summary: 'Air for a charcoal, wood, coke or oil fire: need, blower, pipe, and what would help.',
  options: blastOptions,
  subject: 'fuel',
  alternatives: [
    [['rate'], ['flow']],
    [['co'], ['excess']],
  ],
  examples: [
    { line: 'blast charcoal rate=20 kW blower=hair dryer pipe=1.5 in x 5 ft bends=2', says: 'is a hair dryer enough' },
    { line: 'blast 2 kg/h briquettes blower=35 cfm 2 inWC pipe=1 in x 3 ft', says: 'a blower by its plate' },
    {
      line: 'blast coke blower=leaf blower pipe=50 mm x 1 m hose altitude=1500 m',
      says: 'what a blower gives up high',
    },
    { line: 'blast waste oil rate=100000 Btu/h tuyere=1 in', says: 'an oil fire, without a bed' },
  ],
  hazards: ['hot-work', 'mains-blower', 'blower-off'],
  figures: {
    'blast.flow': 'air that gets through',
    'blast.need': 'air that the fire needs',
    'blast.cover': 'what gets through, of the need',
    'blast.fuel': 'fuel it burns',
    'blast.power': 'heat set free in the furnace',
    'blast.pressure': 'pressure at the blower, by a clear tube of water',
    'blast.pipe_loss': 'lost in the pipe',
    'blast.tuyere_loss': 'lost at the tuyere',
    'blast.bed_loss': 'lost in the bed',
    'blast.velocity': 'speed in the tuyere',
    'blast.valve': 'what a valve has to take at the need',
    'blast.bag': 'time to fill a 30 gal bag',
    'blast.handbook': "need by the handbook's rule",
    'blast.vent': 'vent for it, across',
  },
  slow: true,
  async answer(options, context) {
    return blastAnswer(blastQuestion(options, context), options, context);
  },
  async doubt(options, context) {
    return blastDoubt(blastQuestion(options, context));
  },
} satisfies Command<typeof blastOptions>;
