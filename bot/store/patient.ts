import type { Memory } from '../../commands/memory.ts';
import type { ComponentStates } from './component-states.ts';
import type { HandledEvents } from './handled-events.ts';
import { openStore, type Store, type Where } from './open.ts';
import type { Outbox } from './outbox.ts';
import { StoreError, type StoreTrouble } from './store-error.ts';

/** A store that may be away, at the start too. What is asked of it meanwhile is refused at once, never held up. */
export interface PatientStore {
  readonly handled: HandledEvents;
  readonly states: ComponentStates;
  readonly outbox: Outbox;
  memory(): Promise<Memory>;
  /** `the store` while it is away. */
  missing(): readonly string[];
  close(): Promise<void>;
}

/** What mends itself, or is mended without the program. */
const passing: readonly StoreTrouble[] = ['gone', 'locked', 'full'];
const passes = (error: unknown): boolean => error instanceof StoreError && passing.includes(error.code);

interface Patience {
  readonly warn: (error: unknown) => void;
  readonly open?: (where: Where) => Promise<Store>;
  /** How long the start waits for the store. */
  readonly first_ms?: number;
  /** Until it is tried again; twice as long each time, up to `most_ms`. */
  readonly wait_ms?: number;
  readonly most_ms?: number;
}

/**
 * Opens the store, again and again where it is away; one that goes away later is looked for in the same way.
 * @throws StoreError where it is there and can't be used: damaged, denied, of a newer version
 */
export async function patientStore(
  where: Where,
  { warn, open = openStore, first_ms = 3000, wait_ms = 1000, most_ms = 60_000 }: Patience,
): Promise<PatientStore> {
  let store: Store | undefined;
  let trouble: unknown = new StoreError({ code: 'gone', what: 'the store is not open yet', remedy: 'wait a moment' });
  let wait = wait_ms;
  let timer: NodeJS.Timeout | undefined;
  let closed = false;

  const well = () => {
    trouble = undefined;
    wait = wait_ms;
  };
  const look = async () => {
    if (store) await store.states.get('', new Date(0));
    else {
      const opened = await open(where);
      if (closed) return opened.close();
      store = opened;
    }
    well();
  };
  const ill = (error: unknown) => {
    trouble = error;
    if (closed || timer) return;
    timer = setTimeout(async () => {
      timer = undefined;
      await look().catch((again) => {
        warn(again);
        ill(again);
      });
    }, wait);
    timer.unref();
    wait = Math.min(2 * wait, most_ms);
  };

  const opened = async (): Promise<Store> => {
    if (store) return store;
    throw trouble;
  };
  const use = async <Value>(of: (store: Store) => Promise<Value>): Promise<Value> => {
    const there = await opened();
    try {
      const value = await of(there);
      if (trouble !== undefined) well();
      return value;
    } catch (error) {
      if (passes(error)) ill(error);
      throw error;
    }
  };

  const first = look();
  // One that takes long to refuse is looked for like one that refused at once.
  first.catch((error) => {
    warn(error);
    ill(error);
  });
  const late = Promise.withResolvers<void>();
  const patience = setTimeout(late.resolve, first_ms);
  try {
    await Promise.race([first, late.promise]);
  } catch (error) {
    if (!passes(error)) {
      closed = true;
      clearTimeout(timer);
      throw error;
    }
  } finally {
    clearTimeout(patience);
  }

  return {
    handled: {
      first: (...given) => use(({ handled }) => handled.first(...given)),
      sweep: (...given) => use(({ handled }) => handled.sweep(...given)),
    },
    states: {
      put: (...given) => use(({ states }) => states.put(...given)),
      get: (...given) => use(({ states }) => states.get(...given)),
      drop: (...given) => use(({ states }) => states.drop(...given)),
      sweep: (...given) => use(({ states }) => states.sweep(...given)),
    },
    outbox: {
      enqueue: (...given) => use(({ outbox }) => outbox.enqueue(...given)),
      claim: (...given) => use(({ outbox }) => outbox.claim(...given)),
      sent: (...given) => use(({ outbox }) => outbox.sent(...given)),
      sentAll: (...given) => use(({ outbox }) => outbox.sentAll(...given)),
      failed: (...given) => use(({ outbox }) => outbox.failed(...given)),
      next: (...given) => use(({ outbox }) => outbox.next(...given)),
      cancel: (...given) => use(({ outbox }) => outbox.cancel(...given)),
      sweep: (...given) => use(({ outbox }) => outbox.sweep(...given)),
    },
    memory: async () => (await opened()).memory,
    missing: () => (trouble === undefined ? [] : ['the store']),
    async close() {
      closed = true;
      clearTimeout(timer);
      await store?.close();
    },
  };
}
