import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openStore, type Store, type Where } from '../../bot/store/open.ts';
import { answerLine } from '../../commands/answer.ts';
import type { Memory } from '../../commands/memory.ts';
import { findPostgres, type Postgres, startPostgres } from '../peers/postgres.ts';

/** A checklist half ticked, with a log of sixty entries: shown, with everything the store is asked for it. */
const most_ms = 5;

const folder = mkdtempSync(join(tmpdir(), 'teemer-bench-'));
let postgres: Postgres | undefined;
afterAll(async () => {
  await postgres?.remove();
  rmSync(folder, { recursive: true });
});

const tell = (line: string): unknown => process.stderr.write(`${line}\n`);

describe('a checklist from a folder', () => speedOf(async () => ({ data: join(folder, 'weeks') })));

describe.skipIf(findPostgres() === undefined)('a checklist from PostgreSQL on this machine', () => {
  beforeAll(async () => {
    postgres = await startPostgres();
  }, 60_000);
  speedOf(async () => ({ databaseUrl: (await postgres?.database()) ?? '' }));
});

function speedOf(where: () => Promise<Where>): void {
  let store: Store;
  beforeAll(async () => {
    store = await openStore(await where());
    await furnish(store.memory);
  }, 60_000);
  afterAll(() => store.close());

  // Of several rounds the least disturbed: other programs only ever add.
  it.each(['checklist', 'checklist tick 1.1'])('%s', { timeout: 120_000 }, async (line) => {
    const medians: number[] = [];
    const before = process.cpuUsage();
    for (let round = 0; round < 10; round++) {
      const took: number[] = [];
      for (let at = 0; at < 50; at++) {
        const began = performance.now();
        await ask(line, store.memory);
        took.push(performance.now() - began);
      }
      medians.push(took.toSorted((a, b) => a - b)[25] ?? 0);
    }
    const { user, system } = process.cpuUsage(before);
    tell(
      `${line}: ${((user + system) / 500_000).toPrecision(3)} ms of this process; medians ${medians.map((one) => one.toPrecision(3)).join(', ')} ms`,
    );
    expect(Math.min(...medians)).toBeLessThan(most_ms);
  });
}

const ask = async (line: string, memory: Memory): Promise<void> => {
  const reply = await answerLine(line, { asker: 'ann', place: 'shed', now: new Date('2026-05-02T09:00:00Z'), memory });
  if (reply.kind === 'error') throw new Error(reply.error.what);
};

async function furnish(memory: Memory): Promise<void> {
  await ask('checklist start hob for=(size can 20 gal crucible=5 in x 6 in)', memory);
  for (let stage = 1; stage <= 10; stage++) await ask(`checklist tick ${stage}`, memory);
  const data = { mass_kg: 21.4, day: 3 };
  for (let at = 0; at < 60; at++) {
    await memory.addEntry('ann', { build: 'hob', kind: 'weighing', at: new Date(at * 3_600_000), data });
  }
}
