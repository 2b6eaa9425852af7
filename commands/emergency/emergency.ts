import { z } from 'zod';
import type { Answer, Command } from '../command.ts';
import { text } from '../options.ts';
import { anyEmergency, type FirstAid, firstAid } from './first-aid.ts';

const words = (said: string): string =>
  ` ${said
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}-]+/gu, ' ')
    .trim()} `;

/** Never an error: in an emergency a word that is not known gets everything, not a question back. */
export function topicOf(what: string): FirstAid | undefined {
  const typed = words(what);
  const found = firstAid.flatMap((aid) => [aid.name, ...aid.said].map((said) => ({ aid, said })));
  return found.filter(({ said }) => typed.includes(words(said))).toSorted((a, b) => b.said.length - a.said.length)[0]
    ?.aid;
}

const numbered = (steps: readonly string[]) => steps.map((step, index) => `${index + 1}. ${step}`);

const blank = { figures: [], assumed: [] };

function everything(): Answer {
  const { first, steps, sources } = anyEmergency;
  return {
    ...blank,
    headline: first,
    notes: numbered(steps),
    table: { columns: ['what happened', 'do this first'], rows: firstAid.map((aid) => [aid.name, aid.first]) },
    sources: [...new Set([...sources, ...firstAid.flatMap((aid) => aid.sources)])],
    next: ['burns', 'gas leak', 'carbon monoxide'].map((name) => ({ label: name, line: `emergency ${name}` })),
  };
}

export const emergency = {
  name: 'emergency',
  summary: 'What to do in the first minute, and whom to call.',
  options: z.strictObject({ what: text({ label: 'what happened', most: 1000 }).optional() }),
  subject: 'what',
  takesLine: true,
  urgent: true,
  passing: true,
  forAll: true,
  examples: [
    { line: 'emergency', says: 'everything in brief, at once' },
    { line: 'emergency burns', says: 'cooling, covering, whom to call' },
    { line: 'emergency metal in eye', says: 'rinse or leave alone' },
    { line: 'emergency gas leak', says: 'valve, wind, call' },
  ],
  hazards: [],
  figures: {},
  async answer({ what }) {
    const topic = what === undefined ? undefined : topicOf(String(what));
    if (!topic) return everything();
    return {
      ...blank,
      headline: topic.first,
      notes: numbered(topic.steps),
      sources: topic.sources,
      next: [{ label: 'everything else', line: 'emergency' }],
    };
  },
} satisfies Command<z.ZodObject>;
