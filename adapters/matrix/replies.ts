import { z } from 'zod';
import type { States } from './ports.ts';

/** A message of ours that answers a question. */
export interface Reply {
  readonly id: string;
  readonly root: string;
  /** Its pictures, which an edit replaces. */
  readonly files: readonly string[];
}

/** Which question a reply is to. */
interface Where {
  readonly room: string;
  readonly question: string;
  readonly asker: string;
}

/** What the room says of who asks. */
export interface Place {
  /** Nobody but the two. */
  readonly direct: boolean;
  readonly mayModerate: boolean;
  /** What the bot is called there. */
  readonly names: readonly string[];
}

const reply = z.object({ id: z.string(), root: z.string(), files: z.array(z.string()), asker: z.string() });
const below = z.object({
  root: z.string(),
  lines: z.array(z.string()),
  /** The question it answers, which `again` and `last` mean in the lines below it. */
  about: z.object({ command: z.string(), options: z.record(z.string(), z.string()) }).optional(),
});
type Below = Omit<z.infer<typeof below>, 'root'>;

/** Older answers than this can't be asked below by number, nor written anew. */
const keep_s = 90 * 86_400;

/** Which message answers which question, and what can be asked below it. */
export function repliesIn(states: States, now: () => Date) {
  const read = (key: string) => states.get(`matrix:${key}`, now());
  const write = (key: string, value: unknown, asker: string) =>
    states.put(`matrix:${key}`, value, { now: now(), keep_s, asker: `matrix:${asker}` });

  async function belowOf(id: unknown) {
    return typeof id === 'string' ? below.safeParse(await read(`below:${id}`)).data : undefined;
  }

  return {
    to: async (question: string) => reply.safeParse(await read(`reply:${question}`)).data,
    below: belowOf,
    inThread: async (room: string, root: string) => belowOf(await read(`thread:${room}:${root}`)),
    lastFor: async (room: string, asker: string) => belowOf(await read(`last:${room}:${asker}`)),

    /** What can be asked below it, and that it is the last one in its thread and for its asker. */
    async keep({ room, question, asker }: Where, { id, root, files }: Reply, under: Below): Promise<void> {
      await write(`reply:${question}`, { id, root, files, asker }, asker);
      await write(`below:${id}`, { root, ...under }, asker);
      await write(`thread:${room}:${root}`, id, asker);
      await write(`last:${room}:${asker}`, id, asker);
    },
    /** Its pictures, which come after it. */
    keepFiles: ({ question, asker }: Where, { id, root, files }: Reply) =>
      write(`reply:${question}`, { id, root, files, asker }, asker),

    /** True once a day for each room. */
    async firstUnreadable(room: string): Promise<boolean> {
      const key = `matrix:unreadable:${room}`;
      if ((await states.get(key, now())) !== undefined) return false;
      await states.put(key, true, { now: now(), keep_s: 86_400 });
      return true;
    },
  };
}
