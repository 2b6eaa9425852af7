import { answerLine } from '../../commands/answer.ts';
import type { Card, Reply } from '../../commands/card.ts';
import { inProcessMemory, type Memory } from '../../commands/memory.ts';

/** A build somebody else has shared, so that its code can be written down. */
const shared = { code: 'K7M2P9QX', name: 'our lining', ask: { command: 'mix', options: { amount: '25 L' } } };

/** One asker in one place, a line a second from a fixed moment on: the same lines give the same replies. */
export function conversation(): (line: string) => Promise<Reply> {
  let now = new Date('2026-01-01T12:00:00Z');
  const kept = inProcessMemory();
  const memory: Memory = {
    ...kept,
    sharedBuild: async (code) =>
      code === shared.code ? { ...shared, revision: 1, savedAt: now } : kept.sharedBuild(code),
  };
  return (line) => {
    now = new Date(now.getTime() + 1000);
    return answerLine(line, { asker: 'tester', place: 'test', now, memory });
  };
}

type Asking = ReturnType<typeof conversation>;

/** The card that answers a line; an error fails the test with its words. */
export async function cardOf(line: string, ask: Asking = conversation()): Promise<Card> {
  const reply = await ask(line);
  if (reply.kind === 'error') throw new Error(`${line}: ${reply.error.what}`);
  return reply.card;
}

/** The refusal of a line, with its cautions. */
export async function errorOf(line: string, ask: Asking = conversation()) {
  const reply = await ask(line);
  if (reply.kind === 'card') throw new Error(`${line} was answered: ${reply.card.headline}`);
  return reply;
}
