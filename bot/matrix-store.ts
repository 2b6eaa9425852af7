import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Config } from './config.ts';
import { forgiving } from './store/forgiving.ts';
import { openStore, type Store } from './store/open.ts';

/**
 * The store that the settings ask for. Where they ask for none it is one for this run alone, gone at its end: questions
 * wait in it all the same while the homeserver is away.
 */
export async function openMatrixStore(
  { data, databaseUrl }: Pick<Config, 'data' | 'databaseUrl'>,
  warn: (error: unknown) => void,
): Promise<Pick<Store, 'memory' | 'outbox' | 'states' | 'leases' | 'close'>> {
  const passing = data === undefined && databaseUrl === undefined ? mkdtempSync(join(tmpdir(), 'teemer-')) : undefined;
  const where = databaseUrl === undefined ? { data: passing ?? data ?? '' } : { databaseUrl };
  const { memory, outbox, states, leases, close } = await openStore(where);
  return {
    memory: forgiving(async () => memory, warn),
    outbox,
    states,
    leases,
    async close() {
      await close();
      if (passing !== undefined) rmSync(passing, { recursive: true, force: true });
    },
  };
}
