import type { UnitSystem } from '../core/quantity/figure.ts';
import type { Ask } from './command.ts';

export interface Key {
  readonly asker: string;
  readonly place: string;
}

/** What is remembered between questions: a port, implemented in bot/store; in process where there is no store. */
export interface Memory {
  lastAsk(key: Key): Promise<Ask | undefined>;
  rememberAsk(ask: Ask): Promise<void>;
  units(key: Key): Promise<UnitSystem | undefined>;
}

/** Forgets at exit. One last question a person and place, as the store keeps it too. */
export function inProcessMemory(): Memory {
  const last = new Map<string, Ask>();
  const keyOf = ({ asker, place }: Key) => JSON.stringify([asker, place]);
  return {
    lastAsk: async (key) => last.get(keyOf(key)),
    rememberAsk: async (ask) => void last.set(keyOf(ask), ask),
    units: async () => undefined,
  };
}
