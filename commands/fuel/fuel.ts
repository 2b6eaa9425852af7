import type { Command } from '../command.ts';
import { fuelAnswer } from './answer.ts';
import { fuelDoubt } from './doubt.ts';
import { fuelFigures } from './figures.ts';
import { fuelOptions } from './options.ts';
import { askedFuel } from './question.ts';

export const fuel = {
  name: 'fuel',
  summary: 'How much fuel a melt burns, how long it takes, what it costs, and where the heat goes.',
  options: fuelOptions,
  subject: 'fuel',
  alternatives: [
    [['rate'], ['ramp'], ['blast']],
    [['excess'], ['co']],
    [['price'], ['prices']],
  ],
  examples: [
    { line: 'fuel lump charcoal amount=5 kg metal=aluminium', says: 'charcoal for five kilograms of aluminium' },
    {
      line: 'fuel for=(melt 5 kg aluminium for=(size can 20 gal crucible=6 in x 8 in))',
      says: 'a melt in a furnace that was sized',
    },
    {
      line: 'fuel propane amount=3 kg metal=bronze layers=2 in fibre blanket rate=25 kW',
      says: 'propane, a light lining',
    },
    {
      line: 'fuel briquettes then lump amount=10 lb prices=briquettes 16 lb $12; lump 20 lb $22',
      says: 'two fuels: which when, and whether it pays',
    },
    { line: 'fuel charcoal amount=5 kg melts=3 co=20%', says: 'three melts in a row, with less CO' },
  ],
  hazards: ['hot-work'],
  figures: fuelFigures,
  slow: true,
  async answer(options, context) {
    return fuelAnswer(options, context);
  },
  async doubt(options, context) {
    return fuelDoubt(askedFuel(options, context), options);
  },
} satisfies Command<typeof fuelOptions>;
