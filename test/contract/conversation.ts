import { answerLine } from '../../commands/answer.ts';
import type { Reply } from '../../commands/card.ts';
import { inProcessMemory, type Memory } from '../../commands/memory.ts';

/** A build somebody else has shared, so that its code can be written down. */
const shared = { code: 'K7M2P9QX', name: 'our lining', ask: { command: 'mix', options: { amount: '25 L' } } };

/** One asker in one place, at a fixed moment: the same lines give the same replies. */
export function conversation(): (line: string) => Promise<Reply> {
  const now = new Date('2026-01-01T12:00:00Z');
  const kept = inProcessMemory();
  const memory: Memory = {
    ...kept,
    sharedBuild: async (code) =>
      code === shared.code ? { ...shared, revision: 1, savedAt: now } : kept.sharedBuild(code),
  };
  const context = { asker: 'tester', place: 'test', now, memory };
  return (line) => answerLine(line, context);
}
