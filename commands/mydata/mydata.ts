import { z } from 'zod';
import type { Command } from '../command.ts';
import { said } from '../said.ts';

const options = z.strictObject({});

export const mydata = {
  name: 'mydata',
  summary: 'Everything that is kept of you, as data, for you alone.',
  options,
  examples: [{ line: 'mydata', says: 'builds, prices, units and last questions as JSON' }],
  hazards: [],
  figures: {},
  passing: true,
  private: true,
  async answer(_options, { asker, memory }) {
    return said('This is all that is kept of you.', {
      attachment: { name: 'mydata.json', text: JSON.stringify(await memory.kept(asker), null, 2) },
      next: [{ label: 'delete it', line: 'forget' }],
    });
  },
} satisfies Command<typeof options>;
