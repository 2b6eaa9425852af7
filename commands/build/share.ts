import type { Command } from '../command.ts';
import { said } from '../said.ts';
import { keeping, oneBuild } from './family.ts';
import { findWhole } from './find.ts';

export const buildShare = {
  ...keeping,
  ...oneBuild,
  name: 'build share',
  summary: 'A short code by which anyone can copy a build as it is now.',
  examples: [{ line: 'build share club lining', says: 'a code to pass on' }],
  async answer({ name }, { asker, memory }) {
    const build = await findWhole(name, { asker, memory });
    const code = await memory.shareBuild(asker, build.name);
    if (code === undefined) throw new Error(`${build.name} went between two looks`);
    return said(`${code} copies ${build.name}, revision ${build.revision}, as it is now.`, {
      notes: ['A later revision has a code of its own.'],
      next: [{ label: 'what others send', line: `build copy ${code}` }],
    });
  },
} satisfies Command<(typeof oneBuild)['options']>;
