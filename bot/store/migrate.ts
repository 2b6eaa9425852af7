import { type Kysely, sql } from 'kysely';
import type { Home } from './home.ts';
import { StoreError } from './store-error.ts';

/** One step forward. The schema as it is in between has no type. */
export type Migration = (db: Kysely<unknown>, kind: Home['kind']) => Promise<void>;

interface Versioned {
  readonly schema_version: { readonly version: number };
}

/**
 * Brings the tables to the newest schema, in one transaction that keeps other processes waiting: all of it or nothing.
 * @throws StoreError `newer` where a later program has been here
 */
export async function migrate(home: Home, migrations: readonly Migration[]): Promise<void> {
  const db = home.db as unknown as Kysely<Versioned>;
  await db.transaction().execute(async (all) => {
    for (const statement of home.lockForMigration) await sql.raw(statement).execute(all);
    await all.schema
      .createTable('schema_version')
      .ifNotExists()
      .addColumn('version', 'integer', (column) => column.notNull())
      .execute();
    const found = (await all.selectFrom('schema_version').select('version').executeTakeFirst())?.version;
    const version = found ?? 0;
    if (version > migrations.length) throw newer(version, migrations.length);
    if (version === migrations.length) return;
    for (const step of migrations.slice(version)) await step(all as unknown as Kysely<unknown>, home.kind);
    if (found === undefined) await all.insertInto('schema_version').values({ version: migrations.length }).execute();
    else await all.updateTable('schema_version').set({ version: migrations.length }).execute();
  });
}

const newer = (version: number, known: number) =>
  new StoreError({
    code: 'newer',
    what: `the store has schema ${version}, and this program knows up to ${known}`,
    remedy: 'start the newer program that wrote it, or give this one another store; nothing was changed',
  });
