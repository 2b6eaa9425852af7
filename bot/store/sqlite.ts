import { chmodSync, closeSync, mkdirSync, openSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { Kysely, SqliteDialect } from 'kysely';
import type { Home } from './home.ts';
import type { Tables } from './schema.ts';
import { StoreError } from './store-error.ts';

/** How long a write waits for another process's; the thread waits with it. */
const busy_ms = 2000;

/** One file in a folder, both readable by nobody else. A write is on the disk when its promise resolves. */
export function sqliteHome(folder: string): Home {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const file = join(folder, 'teemer.sqlite');
  closeSync(openSync(file, 'a', 0o600));
  chmodSync(file, 0o600);
  const database = new DatabaseSync(file, { timeout: busy_ms });
  try {
    // What is forgotten is overwritten, not only let go of.
    database.exec('pragma journal_mode = wal; pragma synchronous = full; pragma secure_delete = on');
  } catch (error) {
    database.close();
    throw error;
  }
  const still = stillThere(file);
  const dialect = new SqliteDialect({
    database: {
      close: () => database.close(),
      prepare(sql) {
        still();
        // After some faults, a full disk for one, SQLite has rolled back by itself.
        if (sql === 'rollback' && !database.isTransaction) return nothing;
        const statement = database.prepare(sql === 'begin' ? 'begin immediate' : sql);
        return {
          reader: statement.columns().length > 0,
          all: (parameters) => statement.all(...(parameters as Bindable[])),
          run: (parameters) => statement.run(...(parameters as Bindable[])),
          iterate: (parameters) => statement.iterate(...(parameters as Bindable[])),
        };
      },
    },
  });
  // A transaction that begins `immediate` is the lock.
  return { kind: 'sqlite', db: new Kysely<Tables>({ dialect }), lockForMigration: [] };
}

type Bindable = string | number | bigint | null;

const nothing = {
  reader: false,
  all: () => [],
  run: () => ({ changes: 0, lastInsertRowid: 0 }),
  iterate: () => [].values(),
};

/** A file that was deleted or moved away would take writes without complaint, and lose them. */
function stillThere(file: string): () => void {
  const { ino } = statSync(file);
  return () => {
    if (statSync(file, { throwIfNoEntry: false })?.ino === ino) return;
    throw new StoreError({
      code: 'gone',
      what: `the file of the store is no longer where it was (${file})`,
      remedy: 'put it back, or start the program again for a new one',
    });
  };
}
