import type { Memory } from '../../commands/memory.ts';
import { builds } from './builds.ts';
import { checklists } from './checklists.ts';
import { type ComponentStates, componentStates } from './component-states.ts';
import { type HandledEvents, handledEvents } from './handled-events.ts';
import type { Home } from './home.ts';
import { lastAsks } from './last-asks.ts';
import { type Leases, leases } from './leases.ts';
import { logEntries } from './log-entries.ts';
import { migrate } from './migrate.ts';
import { migrations } from './migrations/all.ts';
import { type Outbox, outbox } from './outbox.ts';
import { personal } from './personal.ts';
import { prices } from './prices.ts';
import { reminders } from './reminders.ts';
import { settings } from './settings.ts';
import { reporting, storeErrorOf } from './store-error.ts';
import { unitChoices } from './unit-choices.ts';

/** Everything that outlives the process. Every failure is a StoreError; what resolves has been kept. */
export interface Store {
  readonly memory: Memory;
  readonly handled: HandledEvents;
  readonly outbox: Outbox;
  readonly states: ComponentStates;
  readonly leases: Leases;
  close(): Promise<void>;
}

/** A folder for one machine, or the URL of a PostgreSQL database for many. */
export type Where = { readonly data: string } | { readonly databaseUrl: string };

/** Opens the store and brings it to the newest schema; any number of processes may do so at once. */
export async function openStore(where: Where): Promise<Store> {
  try {
    const home = await homeAt(where);
    await migrate(home, migrations).catch(async (error) => {
      await home.db.destroy();
      throw error;
    });
    return storeIn(home);
  } catch (error) {
    throw storeErrorOf(error);
  }
}

/** The code of the other home is not even loaded. */
async function homeAt(where: Where): Promise<Home> {
  if ('databaseUrl' in where) return (await import('./postgres.ts')).postgresHome(where.databaseUrl);
  return (await import('./sqlite.ts')).sqliteHome(where.data);
}

/** The store in a home whose schema is the newest. */
export function storeIn({ db, kind }: Home): Store {
  return {
    memory: reporting({
      ...lastAsks(db),
      ...unitChoices(db),
      ...builds(db),
      ...prices(db),
      ...settings(db),
      ...reminders(db),
      ...checklists(db),
      ...logEntries(db),
      ...personal(db),
    }),
    handled: reporting(handledEvents(db)),
    outbox: reporting(outbox(db, { skipLocked: kind === 'postgres' })),
    states: reporting(componentStates(db)),
    leases: reporting(leases(db)),
    close: () => db.destroy(),
  };
}
