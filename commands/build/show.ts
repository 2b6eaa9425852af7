import type { Command } from '../command.ts';
import { before, changesBetween, dayOf, keeping, oneBuild } from './family.ts';
import { findBuild } from './find.ts';

export const buildShow = {
  ...keeping,
  ...oneBuild,
  name: 'build show',
  summary: 'The answer of a build as it is now: the newest revision, or one by its number.',
  slow: true,
  examples: [
    { line: 'build show club lining', says: 'answered anew, with what changed in it' },
    { line: 'build show club lining 1', says: 'its first revision' },
  ],
  async expand(asked, { memory, commands }) {
    const { asker, place, options } = asked;
    const build = await findBuild(options.name ?? '', { asker, memory, option: 'name' });
    const revisions = await memory.revisions(asker, build.name);
    const earlier = before(build, revisions);
    const changed = earlier ? changesBetween(earlier.ask, build.ask, commands) : [];
    return {
      ask: { ...build.ask, asker, place },
      build,
      given: [
        `build ${build.name}, revision ${build.revision} of ${revisions[0]?.revision ?? build.revision}, kept ${dayOf(build.savedAt)}`,
        ...(earlier ? [`since revision ${earlier.revision}: ${changed.join('; ')}`] : []),
      ],
    };
  },
  answer: () => Promise.reject(new Error('build show is expanded before it is answered')),
} satisfies Command<(typeof oneBuild)['options']>;
