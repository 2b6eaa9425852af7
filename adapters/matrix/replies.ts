import { z } from 'zod';
import type { States } from './ports.ts';

/** A message of ours that answers a question. */
export interface Reply {
  readonly id: string;
  readonly root: string;
  /** Its pictures, which an edit replaces. */
  readonly files: readonly string[];
  /** The event that these words are the whole answer to; not there while they only hold its place. */
  readonly by?: string | undefined;
  /** The print of these words, while pictures are still to be sent below them or taken away. */
  readonly owes?: string | undefined;
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

const reply = z.object({
  id: z.string(),
  root: z.string(),
  files: z.array(z.string()),
  asker: z.string(),
  by: z.string().optional(),
  owes: z.string().optional(),
});
const about = z.object({ command: z.string(), options: z.record(z.string(), z.string()) });
const below = z.object({
  root: z.string(),
  lines: z.array(z.string()),
  /** The question it answers, which `again` and `last` mean in the lines below it. */
  about: about.optional(),
});
type Below = Omit<z.infer<typeof below>, 'root'>;
const chosen = z.object({ line: z.string(), about: about.optional() });
/** What a number stood for when it was first looked up. */
type Chosen = z.infer<typeof chosen>;

/** Older answers than this can't be asked below by number, nor written anew. */
const keep_s = 90 * 86_400;
/** No question waits longer for its homeserver. */
const chosenKeep_s = 7 * 86_400;

/** Which message answers which question, and what can be asked below it. */
export function repliesIn(states: States, now: () => Date) {
  const read = (key: string) => states.get(`matrix:${key}`, now());
  const write = (key: string, value: unknown, asker: string, keepFor_s = keep_s) =>
    states.put(`matrix:${key}`, value, { now: now(), keep_s: keepFor_s, asker: `matrix:${asker}` });
  const note = ({ question, asker }: Where, { id, root, files, by, owes }: Reply) =>
    write(`reply:${question}`, { id, root, files, asker, by, owes }, asker);

  async function belowOf(id: unknown) {
    return typeof id === 'string' ? below.safeParse(await read(`below:${id}`)).data : undefined;
  }

  return {
    to: async (question: string) => reply.safeParse(await read(`reply:${question}`)).data,
    below: belowOf,
    inThread: async (room: string, root: string) => belowOf(await read(`thread:${room}:${root}`)),
    lastFor: async (room: string, asker: string) => belowOf(await read(`last:${room}:${asker}`)),

    /** That this message is about that question: all there is to say of one that only holds the answer's place. */
    note,
    /**
     * The whole answer: what can be asked below it, that it is the last one in its thread and for its asker, and when all
     * of that is kept, that it stands.
     */
    async keep(where: Where, made: Reply, under: Below): Promise<void> {
      const { room, asker } = where;
      const { id, root } = made;
      await write(`below:${id}`, { root, ...under }, asker);
      await write(`thread:${room}:${root}`, id, asker);
      await write(`last:${room}:${asker}`, id, asker);
      await note(where, made);
    },

    /** By then the number may stand below another answer: this is what it meant at first. */
    chosen: async (event: string) => chosen.safeParse(await read(`chosen:${event}`)).data,
    keepChosen: (event: string, { line, about }: Chosen, asker: string) =>
      write(`chosen:${event}`, { line, about }, asker, chosenKeep_s),

    /** True once a day for each room. */
    async firstUnreadable(room: string): Promise<boolean> {
      const key = `matrix:unreadable:${room}`;
      if ((await states.get(key, now())) !== undefined) return false;
      await states.put(key, true, { now: now(), keep_s: 86_400 });
      return true;
    },
  };
}
