import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe } from 'vitest';
import { inProcessMemory } from '../../commands/memory.ts';
import { type Postgres, postgresMissing, startPostgres } from '../../test/peers/postgres.ts';
import { deliveryContract } from './delivery.contract.ts';
import { openStore, type Store, type Where } from './open.ts';
import { memoryContract } from './store.contract.ts';

describe('in process', () => memoryContract(async () => inProcessMemory()));

describe('in a folder', () => {
  const folder = mkdtempSync(join(tmpdir(), 'teemer-store-'));
  afterAll(() => rmSync(folder, { recursive: true }));
  let stores = 0;
  const fresh = storesClosed(() => ({ data: join(folder, String(++stores)) }));
  memoryContract(async () => (await fresh()).memory);
  deliveryContract(fresh);
});

describe.skipIf(postgresMissing())('in PostgreSQL', () => {
  let postgres: Postgres;
  beforeAll(async () => {
    postgres = await startPostgres({ durable: false });
  });
  afterAll(() => postgres.remove());
  const fresh = storesClosed(async () => ({ databaseUrl: await postgres.database() }));
  memoryContract(async () => (await fresh()).memory);
  deliveryContract(fresh);
});

function storesClosed(where: () => Where | Promise<Where>): () => Promise<Store> {
  let open: Store | undefined;
  afterEach(async () => {
    await open?.close();
    open = undefined;
  });
  return async () => {
    open = await openStore(await where());
    return open;
  };
}
