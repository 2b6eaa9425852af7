import { z } from 'zod';
import type { Command } from '../command.ts';
import { said } from '../said.ts';
import { lineOf } from '../source.ts';
import { dayOf, keeping } from './family.ts';

const options = z.strictObject({});

export const buildList = {
  ...keeping,
  name: 'build list',
  summary: 'Your builds, the last kept first.',
  options,
  examples: [{ line: 'build list', says: 'every name with its newest question' }],
  async answer(_options, { asker, memory, commands }) {
    const builds = await memory.builds(asker);
    const [first, second] = builds;
    if (!first) {
      return said('You have kept no build yet.', {
        next: [{ label: 'keep a question', line: 'build save club furnace for=(mix 30 L)' }],
      });
    }
    return said(`${builds.length === 1 ? 'One build' : `${builds.length} builds`}, the last kept first.`, {
      table: {
        columns: ['name', 'revision', 'kept', 'question'],
        rows: builds.map(({ name, revision, savedAt, ask }) => [
          name,
          String(revision),
          dayOf(savedAt),
          lineOf(ask, commands),
        ]),
      },
      next: [
        { label: 'its answer', line: `build show ${first.name}` },
        ...(second ? [{ label: 'side by side', line: `build compare ${first.name} vs ${second.name}` }] : []),
      ],
    });
  },
} satisfies Command<typeof options>;
