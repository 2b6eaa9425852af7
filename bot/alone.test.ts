import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { alone } from './alone.ts';
import { openStore, type Store } from './store/open.ts';

let folder: string;
let store: Store;
const log = { info: vi.fn(), warn: vi.fn(), error: vi.fn() };
let ahead_ms = 0;
const now = () => new Date(Date.now() + ahead_ms);
const given = { now, log, lost: () => {} };

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'teemer-alone-'));
  store = await openStore({ data: folder });
  ahead_ms = 0;
  vi.clearAllMocks();
});
afterEach(async () => {
  await store.close();
  rmSync(folder, { recursive: true });
});

const heldBy = (holder: object) => store.leases.take('it', { holder: JSON.stringify(holder), now: now(), lease_s: 15 });

test('a second one waits, says so once, and comes in when the first has ended', async () => {
  const first = await alone(store.leases, 'it', given);
  let inside = false;
  const second = alone(store.leases, 'it', given).then((turn) => {
    inside = true;
    return turn;
  });
  await new Promise((resolve) => setTimeout(resolve, 1200));
  expect(inside).toBe(false);
  expect(log.warn).toHaveBeenCalledTimes(1);
  await first.end();
  await (await second).end();
});

test('one that died without a word is waited for no longer than its lease', async () => {
  await heldBy({ host: 'elsewhere', pid: 1 });
  const waiting = alone(store.leases, 'it', given);
  await new Promise((resolve) => setTimeout(resolve, 700));
  ahead_ms = 15_000;
  await (await waiting).end();
});

/** As a process here says that it has its turn. */
async function holderHere(): Promise<{ host: string; pid: number; pids?: string; id: string }> {
  const file = join(folder, 'here');
  await (await alone(store.leases, 'another', { ...given, file })).end();
  return JSON.parse(readFileSync(file, 'utf8'));
}
const gone = () => spawnSync(process.execPath, ['-e', '']).pid;

test.each([
  ['is dead', gone],
  ['had the number that is ours by now', () => process.pid],
])('nor that long where its file says that it %s', async (_, pid) => {
  const holder = { ...(await holderHere()), pid: pid(), id: 'another' };
  const file = join(folder, 'holder');
  writeFileSync(file, JSON.stringify(holder));
  await heldBy(holder);
  const turn = await alone(store.leases, 'it', { ...given, file });
  expect(log.warn).not.toHaveBeenCalled();
  await turn.end();
});

test.each([
  ['about a process that lives', { pid: process.ppid }],
  ['of another machine', { host: 'elsewhere', pid: 2 ** 22 }],
  ['of a container whose processes are numbered as ours', { pids: 'another', pid: process.pid }],
  ['of a container with a number we do not have', { pids: 'another', pid: gone() }],
])('a file %s hurries nobody', async (_, more) => {
  const holder = { ...(await holderHere()), ...more };
  const file = join(folder, 'holder');
  await heldBy(holder);
  writeFileSync(file, JSON.stringify(holder));
  const waiting = alone(store.leases, 'it', { ...given, file });
  await new Promise((resolve) => setTimeout(resolve, 700));
  expect(log.warn).toHaveBeenCalledTimes(1);
  await store.leases.release('it', JSON.stringify(holder));
  await (await waiting).end();
});

test('two that begin in one moment under one name and number are two', async () => {
  const still = { ...given, now: () => new Date(0) };
  const first = await alone(store.leases, 'it', still);
  let inside = false;
  const second = alone(store.leases, 'it', still).then((turn) => {
    inside = true;
    return turn;
  });
  await vi.waitFor(() => expect(log.warn).toHaveBeenCalled(), { timeout: 10_000 });
  expect(inside).toBe(false);
  await first.end();
  await (await second).end();
});

test('one that was away for longer than its lease is told that it has lost it', async () => {
  const lost = vi.fn();
  const turn = await alone(store.leases, 'it', { ...given, lost });
  ahead_ms = 16_000;
  await heldBy({ host: 'elsewhere', pid: 1 });
  await vi.waitFor(() => expect(lost).toHaveBeenCalledTimes(1), { timeout: 10_000 });
  await turn.end();
});
