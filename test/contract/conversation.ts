import { answerLine } from '../../commands/answer.ts';
import type { Card, Reply } from '../../commands/card.ts';
import { inProcessMemory, type Memory } from '../../commands/memory.ts';

/** A build somebody else has shared, so that its code can be written down. */
const shared = { code: 'K7M2P9QX', name: 'our lining', ask: { command: 'mix', options: { amount: '25 L' } } };

interface Talker {
  readonly asker?: string;
  readonly memory?: Memory;
  readonly now?: Date;
  readonly mayModerate?: boolean;
}

/** One asker in one place, at one moment unless it is moved on. */
export function talk({
  asker = 'ann',
  memory = inProcessMemory(),
  now: from = new Date('2026-02-03T12:00:00Z'),
  mayModerate = true,
}: Talker = {}) {
  let now = from;
  const context = () => ({ asker, place: 'shed', now, memory, mayModerate });
  const ask = (line: string): Promise<Reply> => answerLine(line, context());
  return {
    ask,
    card: (line: string) => cardOf(line, ask),
    refused: (line: string) => errorOf(line, ask),
    later: (days: number) => {
      now = new Date(now.getTime() + days * 86_400_000);
    },
    memory,
    context,
  };
}

/** One asker in one place, a line a second from a fixed moment on: the same lines give the same replies. */
export function conversation(): Asking {
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

type Asking = (line: string) => Promise<Reply>;

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
