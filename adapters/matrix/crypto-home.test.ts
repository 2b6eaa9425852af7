import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { snapshotHome } from './crypto-home.ts';
import { type Database, type DbRequest, done } from './indexed-db.ts';

interface Browser {
  open(name: string, version: number): DbRequest<Database>;
  deleteDatabase(name: string): DbRequest<unknown>;
}
const browser = () => (globalThis as unknown as { indexedDB: Browser }).indexedDB;

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'keys-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

async function filled(): Promise<Database> {
  const opening = browser().open('keys', 3);
  opening.onupgradeneeded = () => {
    const sessions = opening.result.createObjectStore('sessions', { keyPath: 'id', autoIncrement: false });
    sessions.createIndex('by room', ['room', 'at'], { unique: false, multiEntry: false });
    const loose = opening.result.createObjectStore('loose', { keyPath: null, autoIncrement: false });
    sessions.put({ id: 'a', room: '!r', at: 1, bytes: new Uint8Array([1, 2, 3]) });
    loose.put(new Date(5), 'when');
  };
  return done(opening);
}

test('what was there is there again after a restart, and no one else may read it', async () => {
  const file = join(folder, 'deep', 'keys');
  const home = await snapshotHome(file);
  expect(await home.restore()).toBe(false);
  const database = await filled();
  await home.save();
  expect(statSync(file).mode & 0o777).toBe(0o600);
  database.close();
  await done(browser().deleteDatabase('keys'));
  expect(await (await snapshotHome(file)).restore()).toBe(true);
  const again = await done(browser().open('keys', 3));
  const read = again.transaction(['sessions', 'loose'], 'readonly');
  const session = [{ id: 'a', room: '!r', at: 1, bytes: new Uint8Array([1, 2, 3]) }];
  expect(await done(read.objectStore('sessions').getAll())).toEqual(session);
  expect(await done(read.objectStore('loose').getAllKeys())).toEqual(['when']);
  expect(await done(read.objectStore('loose').getAll())).toEqual([new Date(5)]);
  expect(read.objectStore('sessions').index('by room')).toMatchObject({ keyPath: ['room', 'at'], unique: false });
  again.close();
  await done(browser().deleteDatabase('keys'));
});

test('written only after something was written', async () => {
  const file = join(folder, 'keys');
  const home = await snapshotHome(file);
  const database = await filled();
  await home.save();
  rmSync(file);
  await home.save();
  expect(existsSync(file)).toBe(false);
  database.transaction(['loose'], 'readwrite').objectStore('loose').put(1, 'one');
  await home.save();
  expect(existsSync(file)).toBe(true);
  database.close();
  await done(browser().deleteDatabase('keys'));
});

test('what was left beside it by a crash is no hindrance', async () => {
  const file = join(folder, 'keys');
  writeFileSync(`${file}.new`, 'half');
  await (await snapshotHome(file)).save();
  expect(existsSync(file)).toBe(true);
  expect(existsSync(`${file}.new`)).toBe(false);
});
