import { estimateMelt } from '../../core/melt/melt.ts';
import type { Command } from '../command.ts';
import { meltCard } from './answer.ts';
import { meltDoubt } from './doubt.ts';
import { meltFigures } from './figures.ts';
import { meltOptions } from './options.ts';
import { askedMelt } from './question.ts';

export const melt = {
  name: 'melt',
  summary: 'A melt from cold to pour: heat, temperatures, what fits the crucible, what is lost, what fumes.',
  options: meltOptions,
  subject: 'melt',
  examples: [
    { line: 'melt 5 kg aluminium', says: 'how much heat, how hot, how much is left' },
    { line: 'melt 10 lb brass turnings cover=yes', says: 'what burns off, and the zinc' },
    { line: 'melt 2 L silicon bronze crucible=6 in x 8 in section=thin', says: 'by the volume of the casting' },
    { line: 'melt 8 kg aluminium cans crucible=6 in x 8 in material=steel', says: 'how often to charge, and the pot' },
    {
      line: 'melt 5 kg aluminium for=(size can 20 gal crucible=6 in x 8 in)',
      says: 'in that furnace, for fuel and blast to go on from',
    },
  ],
  hazards: ['hot-work', 'molten-metal'],
  figures: meltFigures,
  slow: true,
  async answer(options, context) {
    const asked = askedMelt(options, context);
    return meltCard({ asked, estimate: estimateMelt(asked.question), options, context });
  },
  async doubt(options, context) {
    return meltDoubt(askedMelt(options, context).question);
  },
} satisfies Command<typeof meltOptions>;
