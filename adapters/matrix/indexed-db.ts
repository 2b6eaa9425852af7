/** As much of IndexedDB as a snapshot touches; the types of browsers are not loaded for it. */
export interface Database {
  readonly version: number;
  readonly objectStoreNames: Iterable<string>;
  transaction(stores: readonly string[], mode: 'readonly' | 'readwrite'): { objectStore(name: string): ObjectStore };
  createObjectStore(name: string, how: Pick<ObjectStore, 'keyPath' | 'autoIncrement'>): ObjectStore;
  close(): void;
}

export type KeyPath = string | readonly string[];

export interface Index {
  readonly name: string;
  readonly keyPath: KeyPath;
  readonly unique: boolean;
  readonly multiEntry: boolean;
}

export interface ObjectStore {
  readonly keyPath: KeyPath | null;
  readonly autoIncrement: boolean;
  readonly indexNames: Iterable<string>;
  index(name: string): Index;
  createIndex(name: string, path: KeyPath, how: Pick<Index, 'unique' | 'multiEntry'>): void;
  getAll(): DbRequest<readonly unknown[]>;
  getAllKeys(): DbRequest<readonly unknown[]>;
  put(value: unknown, key?: unknown): void;
}

export interface DbRequest<Value> {
  readonly result: Value;
  readonly error: unknown;
  onsuccess: (() => void) | null;
  onerror: (() => void) | null;
  onupgradeneeded?: (() => void) | null;
}

interface Factory {
  databases(): Promise<readonly { readonly name?: string; readonly version?: number }[]>;
  open(name: string, version?: number): DbRequest<Database>;
}

export interface IndexedDb {
  readonly factory: Factory;
  /** Of every database, this module's and the crypto library's. */
  readonly prototype: { transaction: (this: Database, ...given: Parameters<Database['transaction']>) => unknown };
}

/** IndexedDB in memory, set up where the crypto library looks for the browser's. */
export async function memoryIndexedDb(): Promise<IndexedDb> {
  const { default: _, ...globals } = await import('fake-indexeddb');
  Object.assign(globalThis, globals);
  const { indexedDB, IDBDatabase } = globals as unknown as {
    indexedDB: Factory;
    IDBDatabase: { prototype: IndexedDb['prototype'] };
  };
  return { factory: indexedDB, prototype: IDBDatabase.prototype };
}

export const done = <Value>(request: DbRequest<Value>): Promise<Value> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
