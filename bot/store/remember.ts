import { inProcessMemory, type Memory } from '../../commands/memory.ts';
import { type Config, ConfigError } from '../config.ts';
import { openLog } from '../log.ts';
import { forgiving } from './forgiving.ts';
import type { Store, Where } from './open.ts';
import { StoreError } from './store-error.ts';

export interface Remembering {
  readonly memory: Memory;
  close(): Promise<void>;
}

/**
 * The memory that the settings ask for; in process where they ask for none. A store that is out of reach now is opened
 * later; one that will never do ends the program.
 * @throws ConfigError
 */
export async function openMemory(config: Pick<Config, 'log' | 'data' | 'databaseUrl'>): Promise<Remembering> {
  const where = whereIn(config);
  if (!where) return { memory: inProcessMemory(), close: async () => {} };
  const warn = async (error: unknown) => {
    const log = await openLog(config);
    const known = error instanceof StoreError && error.code !== 'fault';
    if (known) log.warn({ trouble: error.code, cause: messageOf(error.cause) }, error.message);
    else log.error({ err: error }, 'the store failed');
  };
  let opening: Promise<Store> | undefined;
  const store = () => {
    opening ??= import('./open.ts')
      .then(({ openStore }) => openStore(where))
      .catch((error) => {
        opening = undefined;
        throw error;
      });
    return opening;
  };
  await store().catch(async (error) => {
    if (!(error instanceof StoreError)) throw error;
    if (!passing.includes(error.code)) throw new ConfigError(error.message);
    await warn(error);
  });
  return {
    memory: forgiving(
      async () => (await store()).memory,
      (error) => void warn(error),
    ),
    close: async () => (await opening?.catch(() => undefined))?.close(),
  };
}

const passing: readonly StoreError['code'][] = ['gone', 'locked', 'full'];

function whereIn({ data, databaseUrl }: Pick<Config, 'data' | 'databaseUrl'>): Where | undefined {
  if (databaseUrl !== undefined) return { databaseUrl };
  return data === undefined ? undefined : { data };
}

const messageOf = (error: unknown): string | undefined => (error instanceof Error ? error.message : undefined);
