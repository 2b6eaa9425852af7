import { type AskContext, answerAsk } from '../commands/answer.ts';
import type { Reply } from '../commands/card.ts';
import type { Ask, Command } from '../commands/command.ts';
import type { Memory } from '../commands/memory.ts';
import { commands } from '../commands/registry.ts';
import { versions } from './versions.ts';
import type { Work } from './work/work.ts';

/**
 * A question to the thread that has time for it: what computes long goes to the worker, `again` and `why` of such a
 * question too. What changes something a moderator may change stays here, where it is known who asks.
 */
export async function answerWith(
  ask: Ask,
  context: AskContext & { readonly memory: Memory },
  { answer }: Pick<Work, 'answer'>,
): Promise<Reply> {
  const command = commandOf(ask);
  const meant = command?.aboutLast ? commandOf(await context.memory.lastAsk(context)) : command;
  const { asker, place, now, early, memory } = context;
  return meant?.slow
    ? answer(ask, { asker, place, now, memory, ...(early ? { early } : {}) })
    : answerAsk(ask, { ...context, versions });
}

const commandOf = (ask: Ask | undefined): Command | undefined => commands.find(({ name }) => name === ask?.command);
