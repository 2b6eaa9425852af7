import type { Reminder } from '../commands/memory-weeks.ts';
import type { Due, Sender, Sent } from '../commands/remind/due.ts';
import type { Claimed, Outbox } from './store/outbox.ts';
import { reminderOf } from './store/reminders.ts';

export interface DeliveryParts {
  readonly outbox: Pick<Outbox, 'claim' | 'sentAll' | 'failed' | 'next'>;
  /** Of the outbox: `reminders:discord`. */
  readonly channel: string;
  readonly send: Sender;
  readonly now: () => Date;
  readonly log: {
    info(about: object, what: string): void;
    warn(about: object, what: string): void;
  };
  /** How long a reminder is ours once it is claimed: one of a process that was killed is taken up after this. */
  readonly lease_s?: number;
  readonly poll_ms?: number;
  readonly atOnce?: number;
}

export interface Delivery {
  start(): void;
  /** Begins nothing new, ends what was begun, and lets go of the rest. */
  stop(): Promise<void>;
}

interface Held {
  claimed: Claimed;
  readonly reminder: Reminder;
  readonly order: number;
  /** By a clock that nobody sets. */
  since_ms: number;
  /** Whether a try of ours may have arrived. */
  perhaps: boolean;
  tries: number;
}

/** What goes to one place, in the order it is due. */
interface Lane {
  readonly waiting: Held[];
  busy: boolean;
  /** By the clock that nobody sets. */
  until_ms: number;
}

/** In hand at once, however fast they leave; and of these to one place that is slow. */
const most = 250;
const mostSlow = 20;
/** How long those that were sent wait to be marked together. */
const gather_ms = 40;
/** A wait up to this long is sat out; a longer one goes back to the store. */
const shortWait_s = 15;
const longestWait_s = 900;
/** A reminder that nobody could be given for so long is of no use any more. */
const giveUp_ms = 3 * 86_400_000;

/**
 * Sends reminders that are due: claims them in batches, sends them in order, a few places at a time and one after the
 * other in each, and marks those that were sent together. Each is claimed with a lease, sent under a key of its own and
 * marked, so that a process that dies between any two of these loses none: the next one sends it under the same key.
 */
export function createDelivery(parts: DeliveryParts): Delivery {
  const { outbox, channel, send, now, log, lease_s = 60, poll_ms = 5000, atOnce = 32 } = parts;
  const lanes = new Map<string, Lane>();
  const running = new Set<Promise<void>>();
  const inHand = new Map<string, Held>();
  let taken = 0;
  let waking: NodeJS.Timeout | undefined;
  let open = false;
  let looking = false;
  /** Whether the last look found all there was. */
  let drained = false;
  let timer: NodeJS.Timeout | undefined;
  let pausedUntil_ms = 0;
  let away = false;
  /** As many as leave well within their hold: more where they leave fast, fewer where some waited too long. */
  let room = Math.min(most, 2 * atOnce);
  let filled_ms = 0;
  const unmarked = new Set<string>();
  let marking: Promise<void> | undefined;

  return {
    start() {
      open = true;
      void look();
    },
    async stop() {
      open = false;
      clearTimeout(timer);
      clearTimeout(waking);
      await Promise.allSettled([...running]);
      const left = [...lanes.values()].flatMap(({ waiting }) => waiting.splice(0));
      await Promise.allSettled(left.map((one) => giveBack(one, { fault: 'the program was ended' })));
      await marking;
      await markOnce().catch((err) => log.warn({ err }, 'reminders that were sent could not be marked'));
    },
  };

  /** What is due now, and when to look again. */
  async function look(): Promise<void> {
    if (looking || !open) return;
    looking = true;
    clearTimeout(timer);
    let wait_ms = poll_ms;
    try {
      const limit = room - inHand.size;
      if (limit > 0) {
        const found = await outbox.claim(channel, { now: now(), lease_s, limit });
        for (const claimed of found) take(claimed);
        filled_ms = performance.now();
        drained = found.length < limit;
        if (drained) {
          const next = await outbox.next(channel);
          if (next) wait_ms = Math.min(poll_ms, Math.max(10, next.getTime() - now().getTime()));
        }
        if (away) log.info({}, 'the store is back: reminders go out again');
        away = false;
      }
    } catch (err) {
      drained = true;
      if (!away) log.warn({ err }, 'the store could not say which reminders are due');
      away = true;
      wait_ms = Math.min(poll_ms, 1000);
    } finally {
      looking = false;
    }
    pump();
    if (open) {
      clearTimeout(timer);
      timer = setTimeout(() => void look(), wait_ms);
    }
  }

  function take(claimed: Claimed): void {
    const mine = inHand.get(claimed.key);
    if (mine) {
      // Its hold ended while it was being sent, and is ours again.
      Object.assign(mine, { claimed, since_ms: performance.now(), perhaps: true });
      return;
    }
    const reminder = reminderOf(claimed.body);
    const lane = lanes.get(reminder.place) ?? { waiting: [], busy: false, until_ms: 0 };
    lanes.set(reminder.place, lane);
    const one: Held = { claimed, reminder, order: ++taken, since_ms: performance.now(), perhaps: false, tries: 0 };
    inHand.set(claimed.key, one);
    lane.waiting.push(one);
  }

  /** As many places as may be served at once; what is due first goes first. */
  function pump(): void {
    clearTimeout(waking);
    const at_ms = performance.now();
    if (pausedUntil_ms > at_ms) wakeIn(pausedUntil_ms - at_ms);
    else {
      while (open && running.size < atOnce) {
        const lane = firstOf(at_ms);
        if (!lane) break;
        serve(lane);
      }
      const waits = [...lanes.values()].filter(({ busy, until_ms }) => !busy && until_ms > at_ms);
      if (waits.length > 0) wakeIn(Math.min(...waits.map(({ until_ms }) => until_ms)) - at_ms);
    }
    if (open && !drained && inHand.size < room / 2) {
      if (performance.now() - filled_ms < lease_s * 125) room = Math.min(most, room * 2);
      void look();
    }
  }

  function wakeIn(ms: number): void {
    waking = setTimeout(pump, Math.max(1, ms));
  }

  /** The free place whose first has waited longest: they were claimed in the order they are due. */
  function firstOf(at_ms: number): Lane | undefined {
    let first: Lane | undefined;
    for (const lane of lanes.values()) {
      if (lane.busy || lane.until_ms > at_ms) continue;
      if (!first || lane.waiting[0]!.order < first.waiting[0]!.order) first = lane;
    }
    return first;
  }

  function serve(lane: Lane): void {
    lane.busy = true;
    const one = lane.waiting[0]!;
    const work = deliver(one, lane)
      .catch((err) => log.warn({ err, key: one.claimed.key }, 'a reminder could not be delivered'))
      .finally(() => {
        running.delete(work);
        lane.busy = false;
        if (lane.waiting.length === 0) lanes.delete(one.reminder.place);
        pump();
      });
    running.add(work);
  }

  async function deliver(one: Held, lane: Lane): Promise<void> {
    // A hold that is nearly over may be another's by the time it is sent.
    if (performance.now() - one.since_ms > lease_s * 500) {
      lane.waiting.shift();
      room = Math.max(atOnce, room >> 1);
      return giveBack(one, { fault: 'it waited too long behind others', retryAt: one.claimed.dueAt });
    }
    const sent = await send(dueOf(one)).catch((err): Sent => {
      log.warn({ err, key: one.claimed.key }, 'sending a reminder failed');
      return { kind: 'later', fault: String(err).slice(0, 200), perhaps: true };
    });
    if (sent.kind === 'later') return later(one, lane, sent);
    lane.waiting.shift();
    if (sent.kind === 'sent') {
      inHand.delete(one.claimed.key);
      unmarked.add(one.claimed.key);
      mark();
      return;
    }
    log.warn({ key: one.claimed.key, place: one.reminder.place, fault: sent.fault }, 'a reminder was given up');
    await giveBack(one, { fault: sent.fault, forGood: true });
  }

  function dueOf({ claimed: { key, attempt, heldUntil }, reminder, perhaps, tries }: Held): Due {
    if (heldUntil === undefined && !perhaps) return { reminder, key };
    const ago_s = heldUntil === undefined ? 0 : Math.max(0, (now().getTime() - heldUntil.getTime()) / 1000) + lease_s;
    return { reminder, key, perhapsSent: { ago_s, tries: attempt + tries } };
  }

  /** A short wait is sat out, so that what is due first still goes first. */
  async function later(
    one: Held,
    lane: Lane,
    { fault, wait_s, everywhere, perhaps = false }: Extract<Sent, { kind: 'later' }>,
  ) {
    one.perhaps ||= perhaps;
    one.tries += 1;
    const backOff_s = Math.min(2 ** (one.claimed.attempt + one.tries - 2), longestWait_s);
    const pause_s = Math.min(wait_s ?? backOff_s, longestWait_s);
    const until_ms = performance.now() + pause_s * 1000;
    if (everywhere) pausedUntil_ms = Math.max(pausedUntil_ms, until_ms);
    else lane.until_ms = until_ms;
    log.info({ key: one.claimed.key, wait_s: pause_s, why: fault }, 'a reminder waits');
    // What the place can't take soon makes room for others.
    const surplus = everywhere ? [] : lane.waiting.splice(mostSlow);
    for (const [at, other] of surplus.entries()) {
      const retryAt = new Date(now().getTime() + (pause_s + at * 0.2) * 1000);
      await giveBack(other, { fault: 'its place takes no more just now', retryAt });
    }
    const isShort = pause_s <= shortWait_s && (performance.now() - one.since_ms) / 1000 + pause_s < lease_s / 2;
    if (isShort) return;
    const left = everywhere ? [one] : lane.waiting.splice(0);
    if (everywhere) lane.waiting.shift();
    const over = now().getTime() - one.reminder.dueAt.getTime() > giveUp_ms;
    if (over) log.warn({ key: one.claimed.key, fault }, 'a reminder was given up after days');
    const retryAt = new Date(now().getTime() + pause_s * 1000);
    for (const each of left) {
      await giveBack(each, { fault, retryAt, ...(over && each === one ? { forGood: true } : {}) });
    }
  }

  async function giveBack(
    { claimed, perhaps }: Held,
    { fault, retryAt = now(), forGood = false }: { fault: string; retryAt?: Date; forGood?: boolean },
  ): Promise<void> {
    inHand.delete(claimed.key);
    try {
      await outbox.failed(claimed, { fault, now: now(), perhaps, ...(forGood ? {} : { retryAt }) });
    } catch (err) {
      log.warn(
        { err, key: claimed.key },
        'a reminder could not be given back; it is taken up again when its hold ends',
      );
    }
  }

  /** Those of a moment together: a file is written to the disk for each statement, not for each reminder. */
  function mark(): void {
    marking ??= new Promise<void>((resolve) => setTimeout(resolve, gather_ms)).then(markAll).finally(() => {
      marking = undefined;
      if (unmarked.size > 0 && open) mark();
    });
  }

  async function markAll(): Promise<void> {
    for (let tries = 0; unmarked.size > 0; tries++) {
      try {
        await markOnce();
        tries = 0;
      } catch (err) {
        if (tries === 0) log.warn({ err }, 'reminders that were sent could not be marked yet');
        if (!open) return;
        await new Promise((resolve) => setTimeout(resolve, 500));
      }
    }
  }

  async function markOnce(): Promise<void> {
    const keys = [...unmarked];
    await outbox.sentAll(keys, now());
    for (const key of keys) unmarked.delete(key);
  }
}
