import { Keyless, Later } from './later.ts';
import type { Log, Questions } from './ports.ts';

/** A question as it waits: where it stands, not what it says. */
export interface Waiting {
  readonly room: string;
  readonly event: string;
  readonly sender: string;
}

/** `urgent` is first aid: it waits for nothing, neither what its asker asked before nor room among those in hand. */
export type Concern = 'usual' | 'urgent';

export interface QueueParts {
  readonly questions: Questions;
  /** Throws `Later` for what is worth another try. */
  readonly handle: (question: Waiting, attempt: number) => Promise<void>;
  /** What held the question is let go of: it is answered, or given up. */
  readonly over: (question: Waiting) => void;
  readonly now: () => Date;
  readonly log: Log;
}

const channels: Readonly<Record<Concern, string>> = { usual: 'matrix', urgent: 'matrix:urgent' };
/** A question of a process that was killed is taken up again after this. */
const lease_s = 5;
const most = 16;
const look_ms = 1000;
/** A fault that is not the network's is tried this often. */
const faultyTries = 3;
/** One that has not come back by then is somebody else's. */
const stale_ms = 60_000;

/** Every question once, each person's in one room in the order they were asked; first aid before all of them. */
export function createQueue({ questions, handle, over, now, log }: QueueParts) {
  const inHand = new Map<string, Held>();
  const turns = new Map<string, Promise<void>>();
  /** Whose question waits to be tried again: what they asked after it comes after it. */
  const resting = new Map<string, Rest>();
  /** How often a question was taken up and had to let another go first: no try of its own. */
  const passed = new Map<string, number>();
  let looking: Promise<void> | undefined;
  let again = false;
  let open = false;
  let timer: NodeJS.Timeout | undefined;

  return {
    /** True where the question is new: it is kept when this resolves. `key` is the event's id. */
    ask: (key: string, question: Waiting, concern: Concern = 'usual'): Promise<boolean> =>
      questions.enqueue({ key: `matrix:${key}`, channel: channels[concern], body: question, dueAt: now() }),
    poke,
    start(): void {
      open = true;
      timer = setInterval(poke, look_ms);
      poke();
    },
    /** Begins nothing new, and waits for what was begun. */
    async stop(): Promise<void> {
      open = false;
      clearInterval(timer);
      await looking;
      await Promise.allSettled([...inHand.values()].map(({ work }) => work));
    },
    waiting: () => inHand.size,
  };

  function poke(): void {
    if (!open) return;
    if (looking) {
      again = true;
      return;
    }
    looking = look().finally(() => {
      looking = undefined;
      if (!again) return;
      again = false;
      poke();
    });
  }

  async function look(): Promise<void> {
    try {
      await takeFrom('urgent');
      if (inHand.size < most) await takeFrom('usual');
    } catch (err) {
      log.warn({ err }, 'the store could not say what waits');
    }
  }

  async function takeFrom(concern: Concern): Promise<void> {
    const limit = most + inHand.size;
    for (const { key, body, attempt } of await questions.claim(channels[concern], { now: now(), lease_s, limit })) {
      const held = inHand.get(key);
      if (held) held.attempt = attempt;
      else take(key, body as Waiting, attempt, concern);
    }
  }

  function take(key: string, question: Waiting, attempt: number, concern: Concern): void {
    const held: Held = { attempt };
    inHand.set(key, held);
    const work = () => settle(key, question, attempt, concern);
    held.work = (concern === 'urgent' ? work() : inTurn(question, work)).finally(() => {
      inHand.delete(key);
      poke();
    });
  }

  function inTurn(question: Waiting, work: () => Promise<void>): Promise<void> {
    const whose = whoseIs(question);
    const mine = (turns.get(whose) ?? Promise.resolve()).then(work);
    turns.set(whose, mine);
    return mine.finally(() => {
      if (turns.get(whose) === mine) turns.delete(whose);
    });
  }

  async function settle(key: string, question: Waiting, claims: number, concern: Concern): Promise<void> {
    const { event, room } = question;
    // What is urgent stands in nobody's line, not even its asker's.
    const whose = concern === 'urgent' ? key : whoseIs(question);
    const rest = resting.get(whose);
    if (rest && rest.key !== key && rest.until.getTime() + stale_ms > now().getTime()) {
      passed.set(key, (passed.get(key) ?? 0) + 1);
      return letGo(key, { fault: 'after the one before it', now: now(), retryAt: rest.until });
    }
    const attempt = claims - (passed.get(key) ?? 0);
    try {
      await handle(question, attempt);
    } catch (error) {
      const wait_s = error instanceof Later ? (error.wait_s ?? Math.min(2 ** (attempt - 1), 15)) : 2;
      const gone = !(error instanceof Later) && attempt >= faultyTries;
      const retryAt = new Date(now().getTime() + wait_s * 1000);
      if (gone || error instanceof Keyless) resting.delete(whose);
      else resting.set(whose, { key, until: retryAt });
      if (gone) {
        done(key, question);
        log.error({ err: error, event, room }, 'a question was given up');
      } else if (error instanceof Later) log.info({ event, room, wait_s, why: error.message }, 'an answer waits');
      else log.warn({ err: error, event, room, attempt }, 'an answer could not be given yet');
      return letGo(key, { fault: String(error).slice(0, 200), now: now(), ...(gone ? {} : { retryAt }) });
    }
    resting.delete(whose);
    try {
      await questions.sent(key, now());
      done(key, question);
    } catch (err) {
      log.warn({ err }, 'the store could not take down an answer; it is looked at again when its hold ends');
    }
  }

  function done(key: string, question: Waiting): void {
    passed.delete(key);
    over(question);
  }

  async function letGo(key: string, given: Parameters<Questions['failed']>[1]): Promise<void> {
    try {
      await questions.failed({ key, attempt: inHand.get(key)?.attempt ?? 1 }, given);
    } catch (err) {
      log.warn({ err }, 'the store could not take a question back; it is tried again when its hold ends');
    }
  }
}

const whoseIs = ({ room, sender }: Waiting): string => `${room} ${sender}`;

interface Rest {
  readonly key: string;
  /** Those behind it are due when it is, and stand behind it in the store too. */
  readonly until: Date;
}

interface Held {
  /** Grows when a hold ends before the answer is there, and is taken again. */
  attempt: number;
  work?: Promise<void>;
}
