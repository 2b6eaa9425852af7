import { afterEach, describe, expect, test, vi } from 'vitest';
import { inProcessMemory } from '../../commands/memory.ts';
import type { Store } from './open.ts';
import { type PatientStore, patientStore } from './patient.ts';
import { StoreError, type StoreTrouble } from './store-error.ts';

const failure = (code: StoreTrouble) => new StoreError({ code, what: code, remedy: 'wait' });
const where = { databaseUrl: 'postgres://nowhere/teemer' };

/** A store that can be taken away and brought back. */
function server() {
  const seen = { opened: 0, closed: 0, asked: 0, trouble: undefined as StoreTrouble | undefined, hangs: false };
  const there = async () => {
    if (seen.trouble) throw failure(seen.trouble);
  };
  const store = {
    memory: inProcessMemory(),
    handled: { first: async () => there().then(() => true), sweep: async () => 0 },
    states: {
      async get() {
        seen.asked += 1;
        await there();
        return undefined;
      },
      put: there,
    },
    outbox: { next: async () => there().then(() => undefined) },
    close: async () => void seen.closed++,
  } as unknown as Store;
  const open = async () => {
    seen.opened += 1;
    if (seen.hangs) await new Promise(() => {});
    await there();
    return store;
  };
  return { seen, open };
}

let patient: PatientStore | undefined;
afterEach(() => patient?.close());
const fast = { first_ms: 50, wait_ms: 5, most_ms: 20 };
const given = { now: new Date(0), keep_s: 1 };

describe('a store that is away', () => {
  test('at the start: the start goes on, what is asked is refused at once, and it is found once it is there', async () => {
    const { seen, open } = server();
    seen.trouble = 'gone';
    const warn = vi.fn();
    patient = await patientStore(where, { warn, open, ...fast });
    expect(patient.missing()).toEqual(['the store']);
    await expect(patient.handled.first('e', given)).rejects.toMatchObject({ code: 'gone' });
    await expect(patient.memory()).rejects.toMatchObject({ code: 'gone' });
    await expect.poll(() => seen.opened).toBeGreaterThan(2);
    expect(warn).toHaveBeenCalledWith(expect.objectContaining({ code: 'gone' }));
    seen.trouble = undefined;
    await expect.poll(patient.missing).toEqual([]);
    expect(await patient.handled.first('e', given)).toBe(true);
    expect(await (await patient.memory()).builds('ann')).toEqual([]);
  });

  test('and hangs: the start waits a little for it, then goes on', async () => {
    const { seen, open } = server();
    seen.hangs = true;
    patient = await patientStore(where, { warn: () => {}, open, ...fast });
    expect(patient.missing()).toEqual(['the store']);
    await expect(patient.states.put('s', 1, given)).rejects.toMatchObject({ code: 'gone' });
  });

  test('later: it is looked for, whether or not anybody asks, and is well once it answers', async () => {
    const { seen, open } = server();
    patient = await patientStore(where, { warn: () => {}, open, ...fast });
    expect(patient.missing()).toEqual([]);
    seen.trouble = 'gone';
    await expect(patient.handled.first('e', given)).rejects.toMatchObject({ code: 'gone' });
    expect(patient.missing()).toEqual(['the store']);
    await expect.poll(() => seen.asked).toBeGreaterThan(1);
    seen.trouble = undefined;
    await expect.poll(patient.missing).toEqual([]);
    expect(seen.opened).toBe(1);
    const { asked } = seen;
    await new Promise((resolve) => setTimeout(resolve, 60));
    expect(seen.asked).toBe(asked);
  });
});

test.each(['damaged', 'denied', 'newer'] as const)('one that is %s is no store: the start is refused', async (code) => {
  const { seen, open } = server();
  seen.trouble = code;
  await expect(patientStore(where, { warn: () => {}, open, ...fast })).rejects.toMatchObject({ code });
  await new Promise((resolve) => setTimeout(resolve, 40));
  expect(seen.opened).toBe(1);
});

test('closed while it is still being looked for: nothing is left open', async () => {
  const { seen, open } = server();
  seen.trouble = 'gone';
  const store = await patientStore(where, { warn: () => {}, open, ...fast });
  await store.close();
  const { opened } = seen;
  seen.trouble = undefined;
  await new Promise((resolve) => setTimeout(resolve, 60));
  expect(seen.opened - opened).toBe(seen.closed);
});
