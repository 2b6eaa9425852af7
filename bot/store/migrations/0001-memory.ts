import type { Migration } from '../migrate.ts';

/** Last questions, units, builds with their revisions, shares and prices. */
export const memory: Migration = async (db) => {
  await db.schema
    .createTable('last_asks')
    .addColumn('asker', 'text', (column) => column.notNull())
    .addColumn('place', 'text', (column) => column.notNull())
    .addColumn('command', 'text', (column) => column.notNull())
    .addColumn('options', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('last_asks_key', ['asker', 'place'])
    .execute();

  await db.schema
    .createTable('unit_choices')
    .addColumn('owner_kind', 'text', (column) => column.notNull())
    .addColumn('owner', 'text', (column) => column.notNull())
    .addColumn('units', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('unit_choices_key', ['owner_kind', 'owner'])
    .execute();

  await db.schema
    .createTable('builds')
    .addColumn('id', 'text', (column) => column.notNull().unique())
    .addColumn('asker', 'text', (column) => column.notNull())
    .addColumn('name_key', 'text', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('revision', 'integer', (column) => column.notNull())
    .addColumn('command', 'text', (column) => column.notNull())
    .addColumn('options', 'text', (column) => column.notNull())
    .addColumn('saved_at', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('builds_key', ['asker', 'name_key', 'revision'])
    .execute();

  // A copy, since what was shared stays when its build is dropped.
  await db.schema
    .createTable('shares')
    .addColumn('code', 'text', (column) => column.notNull().primaryKey())
    .addColumn('build_id', 'text', (column) => column.notNull().unique())
    .addColumn('asker', 'text', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('revision', 'integer', (column) => column.notNull())
    .addColumn('command', 'text', (column) => column.notNull())
    .addColumn('options', 'text', (column) => column.notNull())
    .addColumn('saved_at', 'bigint', (column) => column.notNull())
    .execute();
  await db.schema.createIndex('shares_of').on('shares').column('asker').execute();

  await db.schema
    .createTable('prices')
    .addColumn('owner_kind', 'text', (column) => column.notNull())
    .addColumn('owner', 'text', (column) => column.notNull())
    .addColumn('item_key', 'text', (column) => column.notNull())
    .addColumn('item', 'text', (column) => column.notNull())
    .addColumn('mass_kg', 'double precision')
    .addColumn('volume_m3', 'double precision')
    .addColumn('price', 'double precision', (column) => column.notNull())
    .addColumn('currency', 'text', (column) => column.notNull())
    .addColumn('set_at', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('prices_key', ['owner_kind', 'owner', 'item_key'])
    .execute();
};
