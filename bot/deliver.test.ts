import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, describe, expect, test } from 'vitest';
import type { Reminder } from '../commands/memory-weeks.ts';
import type { Due, Sender, Sent } from '../commands/remind/due.ts';
import { createDelivery, type Delivery, type DeliveryParts } from './deliver.ts';
import type { Claimed } from './store/outbox.ts';

const start = Date.UTC(2026, 0, 1);
let now_ms = start;

interface Row {
  readonly key: string;
  readonly reminder: Reminder;
  due: number;
  attempt: number;
  held?: number | undefined;
  state: 'waits' | 'sent' | 'given up';
}

/** The store's outbox in a few lines, with a hand to break it. */
function outboxOf(rows: Row[]) {
  const broken = { claim: 0, mark: 0 };
  const outbox: DeliveryParts['outbox'] = {
    async claim(_channel, { now, lease_s, limit }) {
      if (broken.claim-- > 0) throw new Error('the database is away');
      const at = now.getTime();
      const open = rows
        .filter(({ state, due, held }) => state === 'waits' && due <= at && (held === undefined || held <= at))
        .toSorted((a, b) => a.due - b.due)
        .slice(0, limit);
      return open.map((row): Claimed => {
        const before = row.held;
        row.held = at + lease_s * 1000;
        row.attempt += 1;
        const { key, attempt, due, reminder } = row;
        const more = before === undefined ? {} : { heldUntil: new Date(before) };
        return { key, channel: 'reminders:x', body: reminder, dueAt: new Date(due), attempt, ...more };
      });
    },
    async sentAll(keys) {
      if (broken.mark-- > 0) throw new Error('the database is away');
      for (const row of rows) if (keys.includes(row.key)) row.state = 'sent';
    },
    async failed({ key, attempt }, { retryAt, perhaps, now }) {
      const row = rows.find((one) => one.key === key && one.attempt === attempt);
      if (row?.state !== 'waits') return false;
      row.held = perhaps ? now.getTime() : undefined;
      if (retryAt) row.due = retryAt.getTime();
      else row.state = 'given up';
      return true;
    },
    async next() {
      const due = rows.filter(({ state, held }) => state === 'waits' && held === undefined).map((row) => row.due);
      return due.length === 0 ? undefined : new Date(Math.min(...due));
    },
  };
  return { outbox, broken };
}

const rowOf = (n: number, more: Partial<Reminder> = {}): Row => {
  const dueAt = new Date(start + n * 10);
  const reminder = {
    id: `id${n}`,
    asker: 'x:ann',
    place: `place ${n}`,
    dueAt,
    zone: 'UTC',
    what: `do ${n}`,
    holds: [],
    facts: [],
    ...more,
  };
  return { key: `reminder:id${n}`, reminder, due: dueAt.getTime(), attempt: 0, state: 'waits' };
};

let delivery: Delivery | undefined;
afterEach(async () => {
  await delivery?.stop();
  delivery = undefined;
});

function deliver(rows: Row[], send: Sender, more: Partial<DeliveryParts> = {}) {
  const { outbox, broken } = outboxOf(rows);
  const told: string[] = [];
  const log = { info: () => {}, warn: (_: object, what: string) => void told.push(what) };
  delivery = createDelivery({
    outbox,
    channel: 'reminders:x',
    send,
    now: () => new Date(now_ms),
    log,
    poll_ms: 20,
    ...more,
  });
  delivery.start();
  return { broken, told };
}

async function until(what: () => boolean, limit_ms = 5000): Promise<void> {
  for (const end = performance.now() + limit_ms; !what(); ) {
    if (performance.now() > end) throw new Error('it did not come to that');
    await sleep(2);
  }
}

const over = (rows: Row[]) => rows.every(({ state }) => state !== 'waits');

test('each once, in the order it is due, also more than are held at once', async () => {
  now_ms = start + 60_000;
  const rows = Array.from({ length: 1200 }, (_, n) => rowOf(n));
  const sent: string[] = [];
  deliver(rows, async ({ key }) => {
    sent.push(key);
    await sleep(Math.random() * 3);
    return { kind: 'sent' };
  });
  await until(() => over(rows));
  expect(sent).toEqual(rows.map(({ key }) => key));
});

test('one after the other in one place', async () => {
  now_ms = start + 60_000;
  const rows = Array.from({ length: 60 }, (_, n) => rowOf(n, { place: `place ${n % 3}` }));
  const under = new Map<string, number>();
  const order: string[] = [];
  deliver(rows, async ({ reminder: { place, what } }) => {
    const many = (under.get(place) ?? 0) + 1;
    under.set(place, many);
    expect(many).toBe(1);
    await sleep(Math.random() * 4);
    order.push(what);
    under.set(place, 0);
    return { kind: 'sent' };
  });
  await until(() => over(rows));
  for (const of of [0, 1, 2]) {
    const mine = order.map((what) => Number(what.slice(3))).filter((n) => n % 3 === of);
    expect(mine).toEqual(mine.toSorted((a, b) => a - b));
  }
});

test('not before its time, and at it without waiting for the next look', async () => {
  now_ms = start;
  const rows = [rowOf(1, {})];
  rows[0]!.due = start + 60;
  const begun = performance.now();
  const clock = () => new Date(start + (performance.now() - begun));
  let at = 0;
  deliver(
    rows,
    async () => {
      at = performance.now() - begun;
      return { kind: 'sent' };
    },
    { now: clock, poll_ms: 5000 },
  );
  await until(() => over(rows));
  expect(at).toBeGreaterThanOrEqual(59);
  expect(at).toBeLessThan(1000);
});

describe('a platform that does not take it', () => {
  /** Answers in turn, the last one for ever. */
  const answers = (...all: readonly (Sent | Error)[]) => {
    const seen: (Due & { at: number })[] = [];
    const send: Sender = async (due) => {
      seen.push({ ...due, at: performance.now() });
      const next = all[Math.min(seen.length, all.length) - 1]!;
      if (next instanceof Error) throw next;
      return next;
    };
    return { seen, send };
  };

  test('is asked again when it says, under the same key', async () => {
    now_ms = start + 60_000;
    const rows = [rowOf(1)];
    const { seen, send } = answers({ kind: 'later', fault: '429', wait_s: 0.15 }, { kind: 'sent' });
    deliver(rows, send);
    await until(() => over(rows));
    expect(seen.map(({ key, perhapsSent }) => [key, perhapsSent])).toEqual([
      ['reminder:id1', undefined],
      ['reminder:id1', undefined],
    ]);
    expect(seen[1]!.at - seen[0]!.at).toBeGreaterThanOrEqual(145);
  });

  test('holds up its place only, or all where it says so', async () => {
    now_ms = start + 60_000;
    for (const everywhere of [false, true]) {
      const rows = [rowOf(1, { place: 'slow' }), rowOf(2, { place: 'other' }), rowOf(3, { place: 'third' })];
      const at = new Map<string, number>();
      let first = true;
      const { outbox } = outboxOf(rows);
      const own = createDelivery({
        outbox,
        channel: 'x',
        now: () => new Date(now_ms),
        log: { info: () => {}, warn: () => {} },
        atOnce: 1,
        async send({ reminder }) {
          if (first) {
            first = false;
            return { kind: 'later', fault: '429', wait_s: 0.1, everywhere };
          }
          at.set(reminder.place, performance.now());
          return { kind: 'sent' };
        },
      });
      const begun = performance.now();
      own.start();
      await until(() => over(rows));
      await own.stop();
      expect(at.get('other')! - begun > 95, String(everywhere)).toBe(everywhere);
      expect(at.get('slow')! - begun).toBeGreaterThan(95);
      if (everywhere) expect([...at.keys()]).toEqual(['slow', 'other', 'third']);
    }
  });

  test('for long gives it back to the store, and it comes again', async () => {
    now_ms = start + 60_000;
    const rows = [rowOf(1)];
    const { seen, send } = answers({ kind: 'later', fault: '503', wait_s: 600 }, { kind: 'sent' });
    deliver(rows, send);
    await until(() => rows[0]!.due === now_ms + 600_000);
    expect(rows[0]).toMatchObject({ held: undefined, state: 'waits' });
    now_ms += 600_000;
    await until(() => over(rows), 2000).catch(() => {});
    // The lane itself waits by the machine's clock, which nobody sets: another process is not bound by it.
    await delivery?.stop();
    deliver(rows, send);
    await until(() => over(rows));
    expect(seen).toHaveLength(2);
  });

  test('for good is given up and told', async () => {
    now_ms = start + 60_000;
    const rows = [rowOf(1), rowOf(2)];
    const { told } = deliver(rows, async ({ key }) =>
      key.endsWith('1') ? { kind: 'gone', fault: '50007' } : { kind: 'sent' },
    );
    await until(() => over(rows));
    expect(rows.map(({ state }) => state)).toEqual(['given up', 'sent']);
    expect(told).toEqual(['a reminder was given up']);
  });

  test('or breaks on the way: it may have been sent', async () => {
    now_ms = start + 60_000;
    const rows = [rowOf(1)];
    const { seen, send } = answers(new Error('socket hang up'), { kind: 'sent' });
    deliver(rows, send);
    await until(() => over(rows));
    expect(seen[0]!.perhapsSent).toBeUndefined();
    expect(seen[1]!.perhapsSent).toMatchObject({ tries: 2 });
  });
});

test('what a process that died had in hand is known as perhaps sent, and since when', async () => {
  now_ms = start + 3_600_000;
  const row = rowOf(1);
  Object.assign(row, { held: start + 60_000, attempt: 1 });
  const seen: Due[] = [];
  deliver([row], async (due) => {
    seen.push(due);
    return { kind: 'sent' };
  });
  await until(() => over([row]));
  expect(seen[0]!.perhapsSent).toEqual({ ago_s: 3540 + 60, tries: 2 });
});

test('a store that is away is asked again, and what was sent is marked when it is back', async () => {
  now_ms = start + 60_000;
  const rows = [rowOf(1), rowOf(2)];
  const sent: string[] = [];
  const { broken, told } = deliver(rows, async ({ key }) => {
    if (sent.length === 0) broken.mark = 2;
    sent.push(key);
    return { kind: 'sent' };
  });
  broken.claim = 3;
  await until(() => over(rows), 8000);
  expect(sent).toEqual(['reminder:id1', 'reminder:id2']);
  expect(new Set(told)).toEqual(
    new Set(['the store could not say which reminders are due', 'reminders that were sent could not be marked yet']),
  );
});

test('a clock that is set forward or back neither loses nor doubles', async () => {
  now_ms = start;
  const rows = [rowOf(1), rowOf(100_000)];
  const sent: string[] = [];
  deliver(rows, async ({ key }) => {
    sent.push(key);
    return { kind: 'sent' };
  });
  now_ms = start + 100;
  await until(() => sent.length === 1);
  now_ms = start - 86_400_000;
  await sleep(80);
  now_ms = start + 100_000_000;
  await until(() => over(rows));
  now_ms = start - 86_400_000;
  await sleep(80);
  expect(sent).toEqual(['reminder:id1', 'reminder:id100000']);
});

test('stopping ends what was begun and lets go of the rest', async () => {
  now_ms = start + 60_000;
  const rows = Array.from({ length: 40 }, (_, n) => rowOf(n));
  let begun = 0;
  deliver(
    rows,
    async () => {
      begun += 1;
      await sleep(30);
      return { kind: 'sent' };
    },
    { atOnce: 4 },
  );
  await until(() => begun === 4);
  await delivery?.stop();
  expect(rows.filter(({ state }) => state === 'sent')).toHaveLength(4);
  expect(rows.filter(({ held, state }) => state === 'waits' && held === undefined)).toHaveLength(36);
  expect(begun).toBe(4);
});
