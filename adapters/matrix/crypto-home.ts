import { deserialize, serialize } from 'node:v8';
import { readSecret, writeSecret } from './files.ts';
import { done, type Index, type IndexedDb, type KeyPath, memoryIndexedDb } from './indexed-db.ts';

/** Where the keys of a device live. */
export interface CryptoHome {
  /** Before the client opens its databases. False where nothing was kept. */
  restore(): Promise<boolean>;
  /** What changed since is on the disk when this resolves. */
  save(): Promise<void>;
}

interface KeptStore {
  readonly name: string;
  readonly keyPath: KeyPath | null;
  readonly autoIncrement: boolean;
  readonly indexes: readonly Index[];
  readonly keys: readonly unknown[];
  readonly values: readonly unknown[];
}

interface KeptDatabase {
  readonly name: string;
  readonly version: number;
  readonly stores: readonly KeptStore[];
}

/**
 * The crypto library knows one kind of store, IndexedDB; here it is in memory, and this file a snapshot of it. A
 * snapshot is taken only when something was written since the last one.
 */
export async function snapshotHome(file: string): Promise<CryptoHome> {
  const db = await memoryIndexedDb();
  const written = watchWrites(db);
  return {
    async restore() {
      const bytes = readSecret(file);
      if (!bytes) return false;
      for (const kept of deserialize(bytes) as readonly KeptDatabase[]) await rebuild(db, kept);
      return true;
    },
    async save() {
      if (!written.some) return;
      written.some = false;
      try {
        const all: KeptDatabase[] = [];
        for (const { name } of await db.factory.databases()) if (name !== undefined) all.push(await dump(db, name));
        writeSecret(file, serialize(all));
      } catch (error) {
        written.some = true;
        throw error;
      }
    },
  };
}

/** Notes whether a transaction that may write was begun: a read never asks for one. */
function watchWrites({ prototype }: IndexedDb): { some: boolean } {
  const written = { some: true };
  const own = prototype.transaction;
  prototype.transaction = function (...given) {
    if (given[1] === 'readwrite') written.some = true;
    return own.apply(this, given);
  };
  return written;
}

/** All stores in one read transaction, so that they belong together. */
async function dump({ factory }: IndexedDb, name: string): Promise<KeptDatabase> {
  const database = await done(factory.open(name));
  try {
    const { version } = database;
    const names = [...database.objectStoreNames];
    if (names.length === 0) return { name, version, stores: [] };
    const transaction = database.transaction(names, 'readonly');
    const stores = names.map(async (one): Promise<KeptStore> => {
      const store = transaction.objectStore(one);
      const [keys, values] = await Promise.all([done(store.getAllKeys()), done(store.getAll())]);
      const indexes = [...store.indexNames].map((each) => {
        const { name: index, keyPath, unique, multiEntry } = store.index(each);
        return { name: index, keyPath, unique, multiEntry };
      });
      const { keyPath, autoIncrement } = store;
      return { name: one, keyPath, autoIncrement, indexes, keys, values };
    });
    return { name, version, stores: await Promise.all(stores) };
  } finally {
    database.close();
  }
}

async function rebuild({ factory }: IndexedDb, { name, version, stores }: KeptDatabase): Promise<void> {
  const opening = factory.open(name, version);
  opening.onupgradeneeded = () => {
    for (const { name: one, keyPath, autoIncrement, indexes, keys, values } of stores) {
      const store = opening.result.createObjectStore(one, { keyPath, autoIncrement });
      for (const { name: index, keyPath: path, unique, multiEntry } of indexes) {
        store.createIndex(index, path, { unique, multiEntry });
      }
      for (const [at, value] of values.entries()) {
        if (keyPath === null) store.put(value, keys[at]);
        else store.put(value);
      }
    }
  };
  (await done(opening)).close();
}
