import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, describe } from 'vitest';
import { inProcessMemory } from '../../commands/memory.ts';
import { type Postgres, postgresMissing, startPostgres } from '../../test/peers/postgres.ts';
import { deliveryContract } from './delivery.contract.ts';
import { openStore, type Store } from './open.ts';
import { memoryContract } from './store.contract.ts';
import { weeksContract } from './weeks.contract.ts';

describe('in process', () => {
  memoryContract(async () => inProcessMemory());
  weeksContract(async () => inProcessMemory());
});

describe('in a folder', () => {
  const folder = mkdtempSync(join(tmpdir(), 'teemer-store-'));
  let store: Store | undefined;
  let stores = 0;
  afterEach(async () => {
    await store?.close();
    store = undefined;
  });
  afterAll(() => rmSync(folder, { recursive: true }));
  const fresh = async () => {
    store = await openStore({ data: join(folder, String(++stores)) });
    return store;
  };
  memoryContract(async () => (await fresh()).memory);
  weeksContract(async () => (await fresh()).memory);
  deliveryContract(fresh);
});

describe.skipIf(postgresMissing())('in PostgreSQL', () => {
  let postgres: Postgres;
  let store: Store;
  let client: pg.Client;
  beforeAll(async () => {
    postgres = await startPostgres({ durable: false });
    const databaseUrl = await postgres.database();
    store = await openStore({ databaseUrl });
    client = new pg.Client({ connectionString: databaseUrl });
    await client.connect();
  }, 60_000);
  afterAll(async () => {
    await client.end();
    await store.close();
    await postgres.remove();
  });
  // Emptied rather than made anew, which takes half a second.
  const fresh = async () => {
    const { rows } = await client.query(
      "select string_agg(tablename, ', ') as all from pg_tables where schemaname = 'public' and tablename <> 'schema_version'",
    );
    await client.query(`truncate ${rows[0].all}`);
    return store;
  };
  memoryContract(async () => (await fresh()).memory);
  weeksContract(async () => (await fresh()).memory);
  deliveryContract(fresh);
});
