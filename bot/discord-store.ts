import { inProcessMemory, type Memory } from '../commands/memory.ts';
import type { Config } from './config.ts';
import type { ComponentStates } from './store/component-states.ts';
import { forgiving } from './store/forgiving.ts';
import type { HandledEvents } from './store/handled-events.ts';
import type { Outbox } from './store/outbox.ts';

/** What a chat bot keeps: what people told it, which events it handled, what its buttons mean. */
export interface Kept {
  readonly memory: Memory;
  readonly handled: HandledEvents;
  readonly states: ComponentStates;
  /** Where reminders wait; none where they would be gone at exit. */
  readonly outbox?: Outbox;
  /** `the store` while it is away. */
  missing(): readonly string[];
  close(): Promise<void>;
}

/**
 * The store that the settings ask for; in process, forgotten at exit, where they ask for none. One that is away keeps
 * nobody from being answered: it is looked for until it is back.
 */
export async function openKept(
  { data, databaseUrl }: Pick<Config, 'data' | 'databaseUrl'>,
  warn: (error: unknown) => void,
): Promise<Kept> {
  const where = databaseUrl === undefined ? (data === undefined ? undefined : { data }) : { databaseUrl };
  if (!where) return inProcess();
  const { patientStore } = await import('./store/patient.ts');
  const { memory, ...store } = await patientStore(where, { warn });
  return { memory: forgiving(memory, warn), ...store };
}

/** More than a club asks in a week; a store has no such bound. */
const mostHeld = 50_000;

/** Holds a value until it expires, or until too many came after it. */
function expiring() {
  const held = new Map<string, { readonly value: unknown; readonly until_ms: number; readonly asker: string }>();
  const live = (id: string, now: Date) => {
    const found = held.get(id);
    return found && found.until_ms > now.getTime() ? found : undefined;
  };
  return {
    live,
    hold(id: string, value: unknown, until_ms: number, asker = ''): void {
      held.delete(id);
      held.set(id, { value, until_ms, asker });
      if (held.size <= mostHeld) return;
      const [oldest] = held.keys();
      if (oldest !== undefined) held.delete(oldest);
    },
    drop: async (id: string) => held.delete(id),
    forget(asker: string): void {
      for (const [id, one] of held) if (one.asker === asker) held.delete(id);
    },
    async sweep(now: Date): Promise<number> {
      const gone = [...held.keys()].filter((id) => !live(id, now));
      for (const id of gone) held.delete(id);
      return gone.length;
    },
  };
}

function inProcess(): Kept {
  const memory = inProcessMemory();
  const [events, states] = [expiring(), expiring()];
  return {
    memory: {
      ...memory,
      async forget(asker) {
        await memory.forget(asker);
        states.forget(asker);
      },
    },
    handled: {
      async first(id, { now, keep_s }) {
        if (events.live(id, now)) return false;
        events.hold(id, true, now.getTime() + keep_s * 1000);
        return true;
      },
      sweep: events.sweep,
    },
    states: {
      async put(id, value, { now, keep_s, asker }) {
        states.hold(id, value, now.getTime() + keep_s * 1000, asker);
      },
      get: async (id, now) => states.live(id, now)?.value,
      drop: states.drop,
      sweep: states.sweep,
    },
    missing: () => [],
    close: async () => {},
  };
}
