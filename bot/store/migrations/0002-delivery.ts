import { sql } from 'kysely';
import type { Migration } from '../migrate.ts';

/** What adapters need to answer each event once and to send each message once. */
export const delivery: Migration = async (db, home) => {
  await db.schema
    .createTable('handled_events')
    .addColumn('id', 'text', (column) => column.notNull().primaryKey())
    .addColumn('expires_at', 'bigint', (column) => column.notNull())
    .execute();
  await db.schema.createIndex('handled_events_expiring').on('handled_events').column('expires_at').execute();

  const outbox = db.schema.createTable('outbox');
  await (home === 'postgres'
    ? outbox.addColumn('id', 'bigint', (column) => column.generatedByDefaultAsIdentity().primaryKey())
    : outbox.addColumn('id', 'integer', (column) => column.autoIncrement().primaryKey())
  )
    .addColumn('key', 'text', (column) => column.notNull().unique())
    .addColumn('channel', 'text', (column) => column.notNull())
    .addColumn('asker', 'text')
    .addColumn('body', 'text', (column) => column.notNull())
    .addColumn('due_at', 'bigint', (column) => column.notNull())
    .addColumn('attempts', 'integer', (column) => column.notNull())
    .addColumn('leased_until', 'bigint')
    .addColumn('sent_at', 'bigint')
    .addColumn('given_up_at', 'bigint')
    .addColumn('fault', 'text')
    .execute();
  // Only what still waits, so that what was sent slows no claim.
  await db.schema
    .createIndex('outbox_waiting')
    .on('outbox')
    .columns(['channel', 'due_at', 'id'])
    .where(sql.ref('sent_at'), 'is', null)
    .where(sql.ref('given_up_at'), 'is', null)
    .execute();
  await db.schema.createIndex('outbox_of').on('outbox').column('asker').execute();

  await db.schema
    .createTable('component_states')
    .addColumn('id', 'text', (column) => column.notNull().primaryKey())
    .addColumn('asker', 'text')
    .addColumn('value', 'text', (column) => column.notNull())
    .addColumn('expires_at', 'bigint', (column) => column.notNull())
    .execute();
  await db.schema.createIndex('component_states_expiring').on('component_states').column('expires_at').execute();
  await db.schema.createIndex('component_states_of').on('component_states').column('asker').execute();

  await db.schema
    .createTable('leases')
    .addColumn('name', 'text', (column) => column.notNull().primaryKey())
    .addColumn('holder', 'text', (column) => column.notNull())
    .addColumn('until', 'bigint', (column) => column.notNull())
    .execute();
};
