import type { Command } from '../command.ts';
import { said } from '../said.ts';
import { lineOf } from '../source.ts';
import { keeping, oneBuild } from './family.ts';
import { findWhole } from './find.ts';

export const buildDrop = {
  ...keeping,
  ...oneBuild,
  name: 'build drop',
  summary: 'Forget a build with all its revisions.',
  examples: [{ line: 'build drop club lining', says: 'and how to keep it again, should that be wrong' }],
  async answer({ name: typed }, { asker, memory, commands }) {
    const { name, ask } = await findWhole(typed, { asker, memory });
    const { length } = await memory.revisions(asker, name);
    await memory.dropBuild(asker, name);
    const many = length === 1 ? 'its one revision' : `its ${length} revisions`;
    return said(`Dropped ${name} with ${many}.`, {
      next: [{ label: 'keep the newest again', line: `build save ${name} for=(${lineOf(ask, commands)})` }],
    });
  },
} satisfies Command<(typeof oneBuild)['options']>;
