import { answerLine } from '../../commands/answer.ts';
import type { Reply } from '../../commands/card.ts';
import { inProcessMemory } from '../../commands/memory.ts';

/** One asker in one place, at a fixed moment: the same lines give the same replies. */
export function conversation(): (line: string) => Promise<Reply> {
  const context = { asker: 'tester', place: 'test', now: new Date('2026-01-01T12:00:00Z'), memory: inProcessMemory() };
  return (line) => answerLine(line, context);
}
