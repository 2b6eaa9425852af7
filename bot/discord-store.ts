import { inProcessMemory, type Memory } from '../commands/memory.ts';
import type { Config } from './config.ts';
import type { ComponentStates } from './store/component-states.ts';
import { forgiving } from './store/forgiving.ts';
import type { HandledEvents } from './store/handled-events.ts';

/** What a chat bot keeps: what people told it, which events it handled, what its buttons mean. */
export interface Kept {
  readonly memory: Memory;
  readonly handled: HandledEvents;
  readonly states: ComponentStates;
  close(): Promise<void>;
}

/** The store that the settings ask for; in process, forgotten at exit, where they ask for none. */
export async function openKept(
  { data, databaseUrl }: Pick<Config, 'data' | 'databaseUrl'>,
  warn: (error: unknown) => void,
): Promise<Kept> {
  const where = databaseUrl === undefined ? (data === undefined ? undefined : { data }) : { databaseUrl };
  if (!where) return inProcess();
  const { openStore } = await import('./store/open.ts');
  const { memory, handled, states, close } = await openStore(where);
  return { memory: forgiving(async () => memory, warn), handled, states, close };
}

/** Holds a value until it expires. */
function expiring() {
  const held = new Map<string, { readonly value: unknown; readonly until_ms: number }>();
  const live = (id: string, now: Date) => {
    const found = held.get(id);
    return found && found.until_ms > now.getTime() ? found : undefined;
  };
  return {
    held,
    live,
    async sweep(now: Date): Promise<number> {
      const gone = [...held.keys()].filter((id) => !live(id, now));
      for (const id of gone) held.delete(id);
      return gone.length;
    },
  };
}

function inProcess(): Kept {
  const [events, states] = [expiring(), expiring()];
  return {
    memory: inProcessMemory(),
    handled: {
      async first(id, { now, keep_s }) {
        if (events.live(id, now)) return false;
        events.held.set(id, { value: true, until_ms: now.getTime() + keep_s * 1000 });
        return true;
      },
      sweep: events.sweep,
    },
    states: {
      async put(id, value, { now, keep_s }) {
        states.held.set(id, { value: structuredClone(value), until_ms: now.getTime() + keep_s * 1000 });
      },
      get: async (id, now) => states.live(id, now)?.value,
      drop: async (id) => states.held.delete(id),
      sweep: states.sweep,
    },
    close: async () => {},
  };
}
