import { beforeEach, describe, expect, test } from 'vitest';
import type { Store } from './open.ts';

const at = (seconds: number) => new Date(Date.UTC(2026, 0, 1) + seconds * 1000);

/** What adapters build on: each event answered once, each message sent once. */
export function deliveryContract(fresh: () => Promise<Store>): void {
  let store: Store;
  beforeEach(async () => {
    store = await fresh();
  });

  describe('handled events', () => {
    const keep_s = 60;

    test('the first caller alone', async () => {
      const { handled } = store;
      const calls = Array.from({ length: 20 }, () => handled.first('event', { now: at(0), keep_s }));
      expect((await Promise.all(calls)).filter((first) => first)).toHaveLength(1);
      expect(await handled.first('other', { now: at(0), keep_s })).toBe(true);
    });

    test('until they expire', async () => {
      const { handled } = store;
      await handled.first('event', { now: at(0), keep_s });
      expect(await handled.first('event', { now: at(59.999), keep_s })).toBe(false);
      expect(await handled.first('event', { now: at(60), keep_s })).toBe(true);
      expect(await handled.first('event', { now: at(61), keep_s })).toBe(false);
    });

    test('a clock set back does not bring one in again', async () => {
      const { handled } = store;
      await handled.first('event', { now: at(0), keep_s });
      expect(await handled.sweep(at(-3600))).toBe(0);
      expect(await handled.first('event', { now: at(-3600), keep_s })).toBe(false);
      expect(await handled.first('event', { now: at(30), keep_s })).toBe(false);
    });

    test('the expired are swept away, the others stay', async () => {
      const { handled } = store;
      await handled.first('old', { now: at(0), keep_s });
      await handled.first('new', { now: at(30), keep_s });
      expect(await handled.sweep(at(60))).toBe(1);
      expect(await handled.first('new', { now: at(60), keep_s })).toBe(false);
    });
  });

  describe('outbox', () => {
    const message = (key: string, due_s = 0) => ({ key, channel: 'discord', body: { say: key }, dueAt: at(due_s) });
    const claim = (now_s: number, limit = 10) => store.outbox.claim('discord', { now: at(now_s), lease_s: 30, limit });
    const keys = async (claimed: ReturnType<typeof claim>) => (await claimed).map(({ key }) => key);

    test('a key is queued once, also after it was sent', async () => {
      expect(await store.outbox.enqueue(message('a'))).toBe(true);
      expect(await store.outbox.enqueue(message('a'))).toBe(false);
      await claim(0);
      expect(await store.outbox.sent('a', at(1))).toBe(true);
      expect(await store.outbox.sent('a', at(1))).toBe(false);
      expect(await store.outbox.enqueue(message('a'))).toBe(false);
      expect(await claim(1000)).toEqual([]);
    });

    test('due ones of a channel, first due first, in the order they were queued', async () => {
      for (const one of [message('later', 5), message('b', 1), message('c', 1), message('a', 0)]) {
        await store.outbox.enqueue(one);
      }
      await store.outbox.enqueue({ ...message('other'), channel: 'matrix' });
      expect(await claim(4)).toEqual(
        ['a', 'b', 'c'].map((key) => ({ ...message(key, key === 'a' ? 0 : 1), attempt: 1 })),
      );
      expect(await keys(claim(5))).toEqual(['later']);
    });

    test('held until the lease ends, then claimed again and counted', async () => {
      await store.outbox.enqueue(message('a'));
      await claim(0);
      expect(await claim(29.999)).toEqual([]);
      expect(await claim(30)).toMatchObject([{ key: 'a', attempt: 2, heldUntil: at(30) }]);
    });

    test('whether it may have been sent before is known', async () => {
      await store.outbox.enqueue(message('a'));
      const [first] = await claim(0);
      expect(first).not.toHaveProperty('heldUntil');
      await store.outbox.failed(first!, { fault: '429', now: at(1), retryAt: at(2) });
      const [second] = await claim(2);
      expect(second).not.toHaveProperty('heldUntil');
      await store.outbox.failed(second!, { fault: 'reset', now: at(3), retryAt: at(4), perhaps: true });
      const [third] = await claim(4);
      expect(third).toMatchObject({ attempt: 3, heldUntil: at(3) });
      await store.outbox.failed(third!, { fault: '429', now: at(5), retryAt: at(6) });
      expect(await claim(6)).toMatchObject([{ attempt: 4, heldUntil: at(3) }]);
    });

    test('many are sent at once', async () => {
      for (const key of ['a', 'b', 'c']) await store.outbox.enqueue(message(key));
      await claim(0);
      await store.outbox.sentAll([], at(1));
      await store.outbox.sentAll(['a', 'c', 'unknown'], at(1));
      expect(await keys(claim(1000))).toEqual(['b']);
      expect(await store.outbox.sent('a', at(2))).toBe(false);
    });

    test('when the next is due', async () => {
      expect(await store.outbox.next('discord')).toBeUndefined();
      for (const [key, due] of [
        ['late', 9],
        ['soon', 5],
      ] as const)
        await store.outbox.enqueue(message(key, due));
      await store.outbox.enqueue({ ...message('other', 1), channel: 'matrix' });
      expect(await store.outbox.next('discord')).toEqual(at(5));
      await claim(5);
      expect(await store.outbox.next('discord')).toEqual(at(9));
    });

    test('each message to one of those who claim at once, and none left over', async () => {
      for (let i = 0; i < 60; i++) await store.outbox.enqueue(message(`m${i}`));
      const found: string[] = [];
      while (found.length < 60) {
        const rounds = await Promise.all(Array.from({ length: 6 }, () => keys(claim(0, 5))));
        expect(rounds.flat()).not.toEqual([]);
        found.push(...rounds.flat());
      }
      expect(new Set(found).size).toBe(60);
      expect(found).toHaveLength(60);
    });

    test('a failed one is tried again at its time; one given up is not', async () => {
      await store.outbox.enqueue(message('a'));
      const [first] = await claim(0);
      expect(await store.outbox.failed(first!, { fault: '503', now: at(1), retryAt: at(10) })).toBe(true);
      expect(await claim(9)).toEqual([]);
      const [second] = await claim(10);
      expect(second).toMatchObject({ attempt: 2, body: { say: 'a' } });
      expect(await store.outbox.failed(second!, { fault: '404', now: at(11) })).toBe(true);
      expect(await claim(10_000)).toEqual([]);
    });

    test('who lost the lease cannot call off the other, but what was sent is sent', async () => {
      await store.outbox.enqueue(message('a'));
      const [late] = await claim(0);
      const [next] = await claim(30);
      expect(await store.outbox.failed(late!, { fault: 'slow', now: at(31), retryAt: at(31) })).toBe(false);
      expect(await store.outbox.sent('a', at(32))).toBe(true);
      expect(await store.outbox.failed(next!, { fault: 'double', now: at(33), retryAt: at(33) })).toBe(false);
      expect(await claim(1000)).toEqual([]);
    });

    test('called off while it waits', async () => {
      await store.outbox.enqueue(message('a'));
      expect(await store.outbox.cancel('a')).toBe(true);
      expect(await store.outbox.cancel('a')).toBe(false);
      expect(await claim(1)).toEqual([]);
    });

    test('keys are let go of long after', async () => {
      for (const key of ['sent', 'given up', 'waiting']) await store.outbox.enqueue(message(key));
      const claimed = await claim(0);
      await store.outbox.sent('sent', at(1));
      await store.outbox.failed(claimed.find(({ key }) => key === 'given up')!, { fault: 'no', now: at(1) });
      expect(await store.outbox.sweep(at(1))).toBe(0);
      expect(await store.outbox.sweep(at(2))).toBe(2);
      expect(await keys(claim(100))).toEqual(['waiting']);
    });

    test('a clock set back by a day neither doubles what is held nor loses it', async () => {
      const back = -86_400;
      await store.outbox.enqueue(message('a', back));
      await claim(0);
      expect(await claim(back)).toEqual([]);
      expect(await claim(back + 29)).toEqual([]);
      expect(await claim(back + 30)).toMatchObject([{ key: 'a', attempt: 2 }]);
    });

    test('goes when its person is forgotten', async () => {
      await store.outbox.enqueue({ ...message('a'), asker: 'ann' });
      await store.outbox.enqueue({ ...message('b'), asker: 'bob' });
      await store.memory.forget('ann');
      expect(await keys(claim(0))).toEqual(['b']);
    });
  });

  describe('component states', () => {
    const given = { now: at(0), keep_s: 60 };

    test('kept as they were put, the newest of an id', async () => {
      const { states } = store;
      expect(await states.get('b1', at(0))).toBeUndefined();
      await states.put('b1', { line: 'mix 30 L', page: 2 }, given);
      await states.put('b1', { line: 'mix 1½ cu ft', page: [1, null] }, given);
      expect(await states.get('b1', at(59.999))).toEqual({ line: 'mix 1½ cu ft', page: [1, null] });
      expect(await states.get('b2', at(0))).toBeUndefined();
    });

    test('until they expire, are dropped, or their person is forgotten', async () => {
      const { states, memory } = store;
      for (const id of ['a', 'b', 'c']) await states.put(id, 1, { ...given, asker: id });
      await states.put('long', 1, { ...given, keep_s: 600 });
      expect(await states.drop('a')).toBe(true);
      expect(await states.drop('a')).toBe(false);
      await memory.forget('b');
      expect(await states.get('b', at(0))).toBeUndefined();
      expect(await states.get('c', at(60))).toBeUndefined();
      expect(await states.sweep(at(60))).toBe(1);
      expect(await states.get('long', at(60))).toBe(1);
    });
  });

  describe('leases', () => {
    const take = (holder: string, now_s: number) => store.leases.take('sweep', { holder, now: at(now_s), lease_s: 30 });

    test('one holder at a time, also of those who come at once', async () => {
      const taken = await Promise.all(Array.from({ length: 20 }, (_, i) => take(`holder ${i}`, 0)));
      expect(taken.filter((mine) => mine)).toHaveLength(1);
    });

    test('renewed by its holder, taken over when it ends', async () => {
      expect(await take('a', 0)).toBe(true);
      expect(await take('b', 29)).toBe(false);
      expect(await take('a', 29)).toBe(true);
      expect(await take('b', 31)).toBe(false);
      expect(await take('b', 59)).toBe(true);
      expect(await take('a', 60)).toBe(false);
    });

    test('given back by its holder only', async () => {
      await take('a', 0);
      expect(await store.leases.release('sweep', 'b')).toBe(false);
      expect(await store.leases.release('sweep', 'a')).toBe(true);
      expect(await take('b', 1)).toBe(true);
    });

    test('a clock set back by a day gives it to no second one, and holds nobody up for a day', async () => {
      await take('a', 0);
      expect(await take('b', -86_400)).toBe(false);
      expect(await take('b', -86_400 + 29)).toBe(false);
      expect(await take('b', -86_400 + 30)).toBe(true);
    });
  });
}
