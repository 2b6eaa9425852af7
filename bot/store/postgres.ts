import { Kysely, PostgresDialect } from 'kysely';
import pg from 'pg';
import type { Home } from './home.ts';
import type { Tables } from './schema.ts';

/** Of this program's migrations; any number that no other program takes. */
const lock = 7_365_656_372;

const types: pg.CustomTypesConfig = {
  getTypeParser: (id, format) => (id === pg.types.builtins.INT8 ? Number : pg.types.getTypeParser(id, format)),
};

/** A pool of connections to one database. Gives up on a server that does not answer rather than keep an asker waiting. */
export function postgresHome(databaseUrl: string): Home {
  const pool = new pg.Pool({
    connectionString: databaseUrl,
    application_name: 'teemer',
    max: 8,
    keepAlive: true,
    connectionTimeoutMillis: 2000,
    statement_timeout: 4000,
    query_timeout: 5000,
    types,
  });
  // A connection that breaks, idle or between two statements, would end the program where nobody listens. It is replaced at
  // the next query, which reports what is wrong if that fails too.
  pool.on('error', () => {});
  pool.on('connect', (client) => client.on('error', () => {}));
  return {
    kind: 'postgres',
    db: new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) }),
    lockForMigration: ['set local statement_timeout = 0', `select pg_advisory_xact_lock(${lock})`],
  };
}
