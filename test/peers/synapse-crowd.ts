import type { Asker, Heard } from './synapse-asker.ts';

export interface Tally {
  readonly answered: number;
  /** Questions, as they were asked. */
  readonly doubled: readonly string[];
  readonly lost: readonly string[];
  /** Answers that were to something else, or could not be read. */
  readonly wrong: readonly string[];
}

export interface Crowd {
  /** So many more questions, in turns through the rooms, `inFlight` of each at a time. Resolves when all are answered or given up. */
  ask(count: number): Promise<void>;
  tally(): Tally;
}

interface Asked {
  readonly line: string;
  readonly shows: string;
  /** Messages that answer it in its thread: one. */
  notices: number;
  shown?: string;
  done(): void;
}

/** Many questions from several people at once, each with the answer it must get. */
export function crowd(
  bot: string,
  seats: readonly { readonly asker: Asker; readonly room: string }[],
  {
    question,
    inFlight,
    patience_ms = 60_000,
  }: {
    question: (n: number) => { readonly line: string; readonly shows: string };
    inFlight: number;
    patience_ms?: number;
  },
): Crowd {
  const asked = new Map<string, Asked>();
  /** Which question a message of the bot answers. */
  const answers = new Map<string, string>();
  /** Heard before the client knew what its question was called. */
  const early: Heard[] = [];
  let next = 0;

  for (const asker of new Set(seats.map((seat) => seat.asker))) asker.listen(take);

  function take(heard: Heard): void {
    if (heard.sender !== bot) return;
    const { id, content, relation, failed } = heard;
    const replaced = relation.rel_type === 'm.replace' ? answers.get(relation.event_id ?? '') : undefined;
    if (replaced !== undefined) {
      shown(replaced, (content['m.new_content'] as { body: string }).body);
      return;
    }
    const to = (content['m.relates_to'] as Reply | undefined)?.['m.in_reply_to']?.event_id ?? relation.event_id ?? '';
    const one = asked.get(to);
    if (!one) {
      early.push(heard);
      return;
    }
    if (content.msgtype !== 'm.notice' && !failed) return;
    one.notices += 1;
    answers.set(id, to);
    shown(to, failed ? 'unreadable' : String(content.body));
  }

  function shown(question: string, body: string): void {
    const one = asked.get(question);
    if (!one) return;
    one.shown = body;
    // Typical values may stand there until their ranges are found.
    if (body.includes(one.shows)) one.done();
  }

  async function askOne({ asker, room }: (typeof seats)[number], n: number): Promise<void> {
    const { line, shows } = question(n);
    const id = await asker.say(room, line);
    await new Promise<void>((resolve) => {
      const timer = setTimeout(resolve, patience_ms);
      const done = () => {
        clearTimeout(timer);
        resolve();
      };
      asked.set(id, { line, shows, notices: 0, done });
      for (const heard of early.splice(0)) take(heard);
    });
  }

  return {
    async ask(count) {
      const last = next + count;
      const seat = async (at: number) => {
        while (next < last) await askOne(seats[at % seats.length]!, next++);
      };
      await Promise.all(Array.from({ length: seats.length * inFlight }, (_, at) => seat(at)));
    },
    tally() {
      const all = [...asked.values()];
      const lines = (some: readonly Asked[]) => some.map(({ line }) => line);
      return {
        answered: all.filter(({ shown }) => shown !== undefined).length,
        doubled: lines(all.filter(({ notices }) => notices > 1)),
        lost: lines(all.filter(({ shown }) => shown === undefined)),
        wrong: lines(all.filter(({ shown, shows }) => shown !== undefined && !shown.includes(shows))),
      };
    },
  };
}

interface Reply {
  readonly 'm.in_reply_to'?: { readonly event_id?: string };
}

/** Short ones, and every fiftieth with a picture. */
export const questions = (n: number): { readonly line: string; readonly shows: string } =>
  n % 50 === 49
    ? { line: 'size can 20 gal crucible=6 in x 8 in', shows: 'bore' }
    : { line: `mix ${1 + (n % 400)} L`, shows: `amount ${1 + (n % 400)} L` };
