import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Keyless, Later } from './later.ts';
import type { Questions } from './ports.ts';
import { createQueue, type Waiting } from './queue.ts';

interface Row {
  readonly channel: string;
  readonly body: unknown;
  due: number;
  until: number;
  attempt: number;
  over: boolean;
}

/** The store's promises, in memory. */
function inMemory(): Questions & {
  readonly rows: Map<string, Row>;
} {
  const rows = new Map<string, Row>();
  return {
    rows,
    async enqueue({ key, channel, body, dueAt }) {
      if (rows.has(key)) return false;
      rows.set(key, { channel, body, due: dueAt.getTime(), until: 0, attempt: 0, over: false });
      return true;
    },
    async claim(channel, { now, lease_s, limit }) {
      const open = [...rows].filter(
        ([, row]) => row.channel === channel && !row.over && row.due <= +now && row.until <= +now,
      );
      return open
        .toSorted(([, a], [, b]) => a.due - b.due)
        .slice(0, limit)
        .map(([key, row]) => {
          row.until = +now + lease_s * 1000;
          row.attempt += 1;
          return { key, body: row.body, attempt: row.attempt };
        });
    },
    async sent(key) {
      rows.get(key)!.over = true;
      return true;
    },
    async failed({ key, attempt }, { retryAt }) {
      const row = rows.get(key)!;
      if (row.attempt !== attempt) return false;
      row.until = 0;
      if (retryAt) row.due = +retryAt;
      else row.over = true;
      return true;
    },
  };
}

const log = { debug: vi.fn(), info: vi.fn(), warn: vi.fn(), error: vi.fn() };
const question = (event: string, sender = '@ann:t'): Waiting => ({ room: '!r', event, sender });

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

function opened(handle: (one: Waiting, attempt: number) => Promise<void>, questions = inMemory()) {
  const over: string[] = [];
  const queue = createQueue({
    questions,
    handle,
    over: ({ event }) => void over.push(event),
    now: () => new Date(Date.now()),
    log,
  });
  queue.start();
  return { queue, questions, over };
}

describe('questions that wait', () => {
  test('each is handled once, however often it is heard', async () => {
    const handled: string[] = [];
    const { queue, over } = opened(async ({ event }) => void handled.push(event));
    expect(await queue.ask('$1', question('$1'))).toBe(true);
    expect(await queue.ask('$1', question('$1'))).toBe(false);
    await vi.advanceTimersByTimeAsync(20_000);
    expect(await queue.ask('$1', question('$1'))).toBe(false);
    await vi.advanceTimersByTimeAsync(20_000);
    expect(handled).toEqual(['$1']);
    expect(over).toEqual(['$1']);
  });

  test('one person’s in their order, another’s beside them', async () => {
    const begun: string[] = [];
    const { queue } = opened(async ({ event }) => {
      begun.push(event);
      await new Promise((resolve) => setTimeout(resolve, 100));
    });
    for (const event of ['$1', '$2', '$3']) await queue.ask(event, question(event));
    await queue.ask('$4', question('$4', '@bob:t'));
    queue.poke();
    await vi.advanceTimersByTimeAsync(50);
    expect(begun).toEqual(['$1', '$4']);
    await vi.advanceTimersByTimeAsync(300);
    expect(begun).toEqual(['$1', '$4', '$2', '$3']);
  });

  test('what passes is tried until it is through, longer and longer apart', async () => {
    const at: number[] = [];
    const { queue } = opened(async () => {
      at.push(Date.now());
      if (at.length < 8) throw new Later('away');
    });
    await queue.ask('$1', question('$1'));
    await vi.advanceTimersByTimeAsync(120_000);
    const gaps = at.slice(1).map((time, index) => (time - at[index]!) / 1000);
    expect(at).toHaveLength(8);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(16);
    expect(gaps).toEqual(gaps.toSorted((a, b) => a - b));
  });

  test('behind one that waits stand those asked after it, in their order, also what comes meanwhile', async () => {
    const done: string[] = [];
    let busy = 3;
    const { queue } = opened(async ({ event, sender }) => {
      if (sender === '@ann:t' && busy-- > 0) throw new Later('asked too fast', 3);
      done.push(event);
    });
    for (const event of ['$1', '$2', '$3']) await queue.ask(event, question(event));
    await queue.ask('$other', question('$other', '@bob:t'));
    for (let at = 4; at <= 12; at++) {
      await vi.advanceTimersByTimeAsync(991);
      await queue.ask(`$${at}`, question(`$${at}`));
      if (at % 2 === 0) queue.poke();
    }
    await vi.advanceTimersByTimeAsync(60_000);
    expect(done).toEqual(['$other', ...Array.from({ length: 12 }, (_, at) => `$${at + 1}`)]);
  });

  test('nothing stands behind a message whose key is not here', async () => {
    const done: string[] = [];
    const { queue } = opened(async ({ event }, attempt) => {
      if (event === '$1' && attempt < 4) throw new Keyless('its key is not here', 3);
      done.push(event);
    });
    for (const event of ['$1', '$2', '$3']) await queue.ask(event, question(event));
    await vi.advanceTimersByTimeAsync(30_000);
    expect(done).toEqual(['$2', '$3', '$1']);
  });

  test('having let others go first is no try of its own', async () => {
    const tries: number[] = [];
    let busy = 6;
    const { queue } = opened(async ({ event }, attempt) => {
      if (event === '$1' && busy-- > 0) throw new Later('asked too fast', 2);
      if (event === '$2') tries.push(attempt);
    });
    for (const event of ['$1', '$2']) await queue.ask(event, question(event));
    await vi.advanceTimersByTimeAsync(30_000);
    expect(tries).toEqual([1]);
  });

  test('a fault is tried three times and then given up, with a word in the log', async () => {
    let tries = 0;
    const { queue, questions, over } = opened(async () => {
      tries += 1;
      throw new RangeError('no such room');
    });
    await queue.ask('$1', question('$1'));
    await vi.advanceTimersByTimeAsync(60_000);
    expect(tries).toBe(3);
    expect(over).toEqual(['$1']);
    expect(questions.rows.get('matrix:$1')?.over).toBe(true);
    expect(log.error).toHaveBeenCalledTimes(1);
  });

  test('a store that can’t take down an answer is told again, and nothing is let go of before', async () => {
    const questions = inMemory();
    const { sent } = questions;
    let away = 2;
    questions.sent = async (...given) => {
      if (away-- > 0) throw new Error('away');
      return sent(...given);
    };
    const attempts: number[] = [];
    const { queue, over } = opened(async (_one, attempt) => void attempts.push(attempt), questions);
    await queue.ask('$1', question('$1'));
    log.error.mockClear();
    await vi.advanceTimersByTimeAsync(3000);
    expect(over).toEqual([]);
    await vi.advanceTimersByTimeAsync(20_000);
    expect(attempts).toEqual([1, 2, 3]);
    expect(over).toEqual(['$1']);
    expect(questions.rows.get('matrix:$1')?.over).toBe(true);
    expect(log.error).not.toHaveBeenCalled();
  });

  test('what takes longer than its hold is not begun twice', async () => {
    let begun = 0;
    const { queue, questions } = opened(async () => {
      begun += 1;
      await new Promise((resolve) => setTimeout(resolve, 30_000));
    });
    await queue.ask('$1', question('$1'));
    await vi.advanceTimersByTimeAsync(40_000);
    expect(begun).toBe(1);
    expect(questions.rows.get('matrix:$1')?.over).toBe(true);
  });

  test('what a killed process held is taken up by the next', async () => {
    const questions = inMemory();
    const hangs = opened(() => new Promise(() => {}), questions);
    await hangs.queue.ask('$1', question('$1'));
    await vi.advanceTimersByTimeAsync(1500);
    void hangs.queue.stop();
    const handled: string[] = [];
    opened(async ({ event }) => void handled.push(event), questions);
    await vi.advanceTimersByTimeAsync(7000);
    expect(handled).toEqual(['$1']);
  });

  test('a stop waits for what was begun and begins nothing more', async () => {
    const handled: string[] = [];
    const { queue } = opened(async ({ event }) => {
      await new Promise((resolve) => setTimeout(resolve, 500));
      handled.push(event);
    });
    await queue.ask('$1', question('$1'));
    queue.poke();
    await vi.advanceTimersByTimeAsync(10);
    const stopped = queue.stop();
    await queue.ask('$2', question('$2'));
    await vi.advanceTimersByTimeAsync(20_000);
    await stopped;
    expect(handled).toEqual(['$1']);
  });

  describe('first aid', () => {
    const hangs = () => new Promise<void>(() => {});

    test('waits neither for what its asker asked before, nor for room among those in hand', async () => {
      const begun: string[] = [];
      const { queue } = opened(({ event }) => {
        begun.push(event);
        return hangs();
      });
      for (let at = 1; at <= 40; at++) await queue.ask(`$${at}`, question(`$${at}`, at % 2 ? '@ann:t' : '@bob:t'));
      await vi.advanceTimersByTimeAsync(1500);
      await queue.ask('$aid', question('$aid'), 'urgent');
      queue.poke();
      await vi.advanceTimersByTimeAsync(10);
      expect(begun).toEqual(['$1', '$2', '$aid']);
    });

    test('waits for no rest of its asker, and ends none', async () => {
      const tried: string[] = [];
      const { queue } = opened(async ({ event }) => {
        tried.push(event);
        if (event === '$1' && tried.length < 5) throw new Later('asked too fast', 10);
      });
      await queue.ask('$1', question('$1'));
      await vi.advanceTimersByTimeAsync(100);
      await queue.ask('$aid', question('$aid'), 'urgent');
      await queue.ask('$2', question('$2'));
      await vi.advanceTimersByTimeAsync(2000);
      expect(tried).toEqual(['$1', '$aid']);
      await vi.advanceTimersByTimeAsync(60_000);
      expect(tried).toEqual(['$1', '$aid', '$1', '$1', '$1', '$2']);
    });

    test('that can’t be delivered yet is tried again, and holds up nobody', async () => {
      const done: string[] = [];
      let away = 3;
      const { queue } = opened(async ({ event }) => {
        if (event === '$aid' && away-- > 0) throw new Later('away');
        done.push(event);
      });
      await queue.ask('$aid', question('$aid'), 'urgent');
      await vi.advanceTimersByTimeAsync(100);
      await queue.ask('$1', question('$1'));
      await vi.advanceTimersByTimeAsync(30_000);
      expect(done).toEqual(['$1', '$aid']);
    });
  });
});
