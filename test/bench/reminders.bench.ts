import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { reminderRest, reminderSender } from '../../adapters/discord/reminder.ts';
import { createDelivery } from '../../bot/deliver.ts';
import { openStore, type Store } from '../../bot/store/open.ts';
import type { NewReminder } from '../../commands/memory-weeks.ts';
import { findPostgres, type Postgres, startPostgres } from '../peers/postgres.ts';

/** Of reminders that are due in the same minute, how long the last waits for its turn at most. */
const most_s = 5;
const many = 10_000;
const minute_ms = 60_000;
const channels = 500;
const asker = 'discord:100000000000000001';
const tell = (text: string) => process.stdout.write(`${text}\n`);

/**
 * A platform that takes everything, in a thread of its own, and tells when and in what order; or as many a second as the
 * real one does, and says by its headers how long to wait with more.
 */
const platform = (perSecond: number) => `
const { createServer } = require('node:http');
const { parentPort } = require('node:worker_threads');
const seen = [];
let from = 0, used = 0, refused = 0;
const server = createServer((request, response) => {
  let body = '';
  request.on('data', (text) => { body += text; });
  request.on('end', () => {
    const now = Date.now();
    if (now - from >= 1000) { from = now; used = 0; }
    response.setHeader('content-type', 'application/json');
    if (++used > ${perSecond}) {
      refused++;
      const wait = (from + 1000 - now) / 1000;
      response.writeHead(429, { 'Retry-After': wait.toFixed(3), 'X-RateLimit-Global': 'true', 'X-RateLimit-Scope': 'global' });
      return response.end(JSON.stringify({ message: 'slow down', retry_after: wait, global: true }));
    }
    const number = /lining (\\d+)\\./.exec(body);
    seen.push(Number(number && number[1]), now);
    response.end('{"id":"1"}');
  });
});
server.keepAliveTimeout = 60000;
server.listen(0, '127.0.0.1', () => parentPort.postMessage(server.address().port));
parentPort.on('message', () => parentPort.postMessage({ seen, refused }));
`;

async function startPlatform(perSecond = Number.MAX_SAFE_INTEGER) {
  const worker = new Worker(platform(perSecond), { eval: true });
  const [port] = (await once(worker, 'message')) as [number];
  return {
    api: `http://127.0.0.1:${port}/api`,
    async seen() {
      worker.postMessage('tell');
      const [told] = (await once(worker, 'message')) as [{ seen: number[]; refused: number }];
      const all = Array.from({ length: told.seen.length / 2 }, (_, i) => ({
        n: told.seen[2 * i]!,
        at: told.seen[2 * i + 1]!,
      }));
      return { all, refused: told.refused };
    },
    close: () => worker.terminate(),
  };
}

/**
 * Sets them, delivers them, and says how long each waited after it was due. Due times count from the moment at which
 * delivering begins: setting ten thousand takes a while, so they are set ahead and the clock is moved on.
 */
async function delivered(
  store: Store,
  dueOf: (n: number) => number,
  count: number,
  given: { perSecond?: number; limit?: number } = {},
) {
  const { api, seen, close } = await startPlatform(given.limit);
  const begin_ms = Date.now() + 3_600_000;
  const wanted = Array.from(
    { length: count },
    (_, n): NewReminder => ({
      place: `discord:1:${1000 + (n % channels)}`,
      dueAt: new Date(begin_ms + dueOf(n)),
      zone: 'Europe/Berlin',
      what: `light the fire in lining ${n}.`,
      holds: ['no rain into it', 'steam holes open'],
      facts: ['hot-work', 'damp-lining'],
    }),
  );
  await store.memory.setReminders(asker, wanted);
  const rest = reminderRest({ token: 'x', api, perSecond: given.perSecond ?? 1e6 });
  const shift_ms = begin_ms - Date.now();
  const now = () => new Date(Date.now() + shift_ms);
  const log = { info() {}, warn: (about: object, what: string) => tell(`${what} ${JSON.stringify(about)}`) };
  const delivery = createDelivery({
    outbox: store.outbox,
    channel: 'reminders:discord',
    send: reminderSender({ rest, now, log }),
    now,
    log,
  });
  const cpu = process.cpuUsage();
  delivery.start();
  let arrived = await seen();
  for (const end = Date.now() + 240_000; arrived.all.length < count && Date.now() < end; arrived = await seen())
    await sleep(200);
  const { user, system } = process.cpuUsage(cpu);
  await delivery.stop();
  rest.clearHashSweeper();
  rest.clearHandlerSweeper();
  await close();
  const waits_s = arrived.all
    .map(({ n, at }) => Math.max(0, at + shift_ms - begin_ms - dueOf(n)) / 1000)
    .toSorted((a, b) => a - b);
  return {
    ...arrived,
    waits_s,
    waiting: (await store.memory.reminders(asker)).length,
    cpu_ms: (user + system) / 1000 / count,
  };
}

const quantile = (all: readonly number[], share: number) =>
  all[Math.min(all.length - 1, Math.floor(share * all.length))] ?? Number.NaN;

const homes: [string, () => Promise<Store>][] = [];
const folder = mkdtempSync(join(tmpdir(), 'teemer-bench-'));
homes.push(['a store in a folder', () => openStore({ data: folder })]);
let postgres: Postgres | undefined;
const hasPostgres = findPostgres() !== undefined;
if (hasPostgres)
  homes.push(['a store in PostgreSQL', async () => openStore({ databaseUrl: (await postgres?.database()) ?? '' })]);
beforeAll(async () => {
  if (hasPostgres) postgres = await startPostgres();
}, 60_000);
afterAll(async () => {
  await postgres?.remove();
  rmSync(folder, { recursive: true, force: true });
});

describe.each(homes)('%s', (name, open) => {
  it(`sends ${many} reminders of one minute with little delay, each once`, { timeout: 400_000 }, async () => {
    const store = await open();
    const { all, waits_s, waiting, cpu_ms } = await delivered(store, (n) => Math.floor((n * minute_ms) / many), many);
    await store.close();
    tell(
      `${name}: ${many} due over one minute waited ${quantile(waits_s, 0.5).toFixed(2)} s (median), ${quantile(waits_s, 0.99).toFixed(2)} s (99 %), ${waits_s.at(-1)?.toFixed(2)} s (last); ${cpu_ms.toFixed(2)} ms of CPU each`,
    );
    expect(new Set(all.map(({ n }) => n)).size).toBe(many);
    expect({ sent: all.length, waiting }).toEqual({ sent: many, waiting: 0 });
    expect(waits_s.at(-1)).toBeLessThan(most_s);
  });

  it(`sends ${many} of one and the same moment`, { timeout: 400_000 }, async () => {
    const store = await open();
    const { all, waits_s, waiting, cpu_ms } = await delivered(store, () => 0, many);
    await store.close();
    tell(
      `${name}: ${many} due at once took ${waits_s.at(-1)?.toFixed(1)} s, ${Math.round(many / (waits_s.at(-1) ?? 1))} a second; ${cpu_ms.toFixed(2)} ms of CPU each`,
    );
    expect({ sent: all.length, waiting }).toEqual({ sent: many, waiting: 0 });
  });
});

it('keeps within the limits of a platform, in the order due', { timeout: 400_000 }, async () => {
  const store = await openStore({ data: mkdtempSync(join(folder, 'limited')) });
  const count = 600;
  // Told to go faster than it may, so that the platform refuses.
  const { all, refused, waiting } = await delivered(store, (n) => n - 1000, count, { perSecond: 80, limit: 50 });
  await store.close();
  const late = all.map(({ n }, at) => Math.abs(n - at)).toSorted((a, b) => b - a);
  tell(
    `with limits: ${count} at 50 a second took ${((all.at(-1)!.at - all[0]!.at) / 1000).toFixed(1)} s, ${refused} refused; out of order by at most ${late[0]} places`,
  );
  expect({ sent: all.length, waiting }).toEqual({ sent: count, waiting: 0 });
  // As many as are under way at once.
  expect(late[0]).toBeLessThanOrEqual(32);
});
