import type { Migration } from '../migrate.ts';

/** Zones, dialogues begun, checklists with their ticks, and logs. Reminders wait in the outbox. */
export const weeks: Migration = async (db) => {
  await db.schema
    .createTable('zones')
    .addColumn('asker', 'text', (column) => column.notNull().primaryKey())
    .addColumn('zone', 'text', (column) => column.notNull())
    .execute();

  await db.schema
    .createTable('drafts')
    .addColumn('asker', 'text', (column) => column.notNull())
    .addColumn('place', 'text', (column) => column.notNull())
    .addColumn('command', 'text', (column) => column.notNull())
    .addColumn('options', 'text', (column) => column.notNull())
    .addPrimaryKeyConstraint('drafts_key', ['asker', 'place'])
    .execute();

  await db.schema
    .createTable('checklists')
    .addColumn('id', 'text', (column) => column.notNull().primaryKey())
    .addColumn('place', 'text', (column) => column.notNull())
    .addColumn('name_key', 'text', (column) => column.notNull())
    .addColumn('name', 'text', (column) => column.notNull())
    .addColumn('asker', 'text', (column) => column.notNull())
    .addColumn('command', 'text', (column) => column.notNull())
    .addColumn('options', 'text', (column) => column.notNull())
    .addColumn('started_at', 'bigint', (column) => column.notNull())
    .addUniqueConstraint('checklists_named', ['place', 'name_key'])
    .execute();
  await db.schema.createIndex('checklists_of').on('checklists').column('asker').execute();

  await db.schema
    .createTable('ticks')
    .addColumn('list', 'text', (column) => column.notNull().references('checklists.id').onDelete('cascade'))
    .addColumn('item', 'text', (column) => column.notNull())
    .addColumn('asker', 'text', (column) => column.notNull())
    .addColumn('ticked_at', 'bigint', (column) => column.notNull())
    .addPrimaryKeyConstraint('ticks_key', ['list', 'item'])
    .execute();
  await db.schema.createIndex('ticks_of').on('ticks').column('asker').execute();

  await db.schema
    .createTable('log_entries')
    .addColumn('id', 'text', (column) => column.notNull().primaryKey())
    .addColumn('asker', 'text', (column) => column.notNull())
    .addColumn('build_key', 'text', (column) => column.notNull())
    .addColumn('build', 'text', (column) => column.notNull())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('done_at', 'bigint', (column) => column.notNull())
    .addColumn('data', 'text', (column) => column.notNull())
    .execute();
  await db.schema.createIndex('log_entries_of').on('log_entries').columns(['asker', 'build_key', 'done_at']).execute();
};
