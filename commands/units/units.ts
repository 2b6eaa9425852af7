import { z } from 'zod';
import type { Command } from '../command.ts';
import { choice } from '../options.ts';
import { isPlace, ownerOf, whoOption } from '../owner.ts';
import { said } from '../said.ts';

const options = z.strictObject({
  system: choice({ label: 'the units that lead', choices: ['metric', 'us', 'as typed'] }).optional(),
  who: whoOption(),
});

export const units = {
  name: 'units',
  summary: 'Which units lead in your answers, or here: metric, US, or as you type.',
  options,
  subject: 'system',
  examples: [
    { line: 'units metric', says: 'for you, everywhere' },
    { line: 'units US who=place', says: 'for everybody here who chose none' },
    { line: 'units', says: 'what is set' },
  ],
  hazards: [],
  figures: {},
  passing: true,
  async answer({ system, who }, context) {
    const { memory, asker, place } = context;
    if (system !== undefined) {
      const owner = ownerOf(who, context);
      await memory.setUnits(owner, system === 'as typed' ? undefined : system === 'us' ? 'US' : 'metric');
      return said(`${isPlace(owner) ? 'In this place' : 'For you'} ${leads[system]}.`);
    }
    const { units: own } = await memory.kept(asker);
    if (own) return said(`For you ${leads[own === 'US' ? 'us' : 'metric']}.`);
    const here = await memory.units({ asker, place });
    if (here) return said(`You have chosen none; in this place ${leads[here === 'US' ? 'us' : 'metric']}.`);
    return said(`Nothing is set: ${leads['as typed']}.`);
  },
} satisfies Command<typeof options>;

const leads = {
  metric: 'metric units lead, with US units beside them',
  us: 'US units lead, with metric units beside them',
  'as typed': 'the units that a question is typed in lead its answer',
};
