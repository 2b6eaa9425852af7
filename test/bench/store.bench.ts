import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Home } from '../../bot/store/home.ts';
import { migrate } from '../../bot/store/migrate.ts';
import { migrations } from '../../bot/store/migrations/all.ts';
import { openStore, type Store, storeIn } from '../../bot/store/open.ts';
import { postgresHome } from '../../bot/store/postgres.ts';
import { sqliteHome } from '../../bot/store/sqlite.ts';
import { answerLine } from '../../commands/answer.ts';
import { inProcessMemory, type Memory } from '../../commands/memory.ts';
import { findPostgres, type Postgres, startPostgres } from '../peers/postgres.ts';

/** Medians: what remembering adds to an answer, and opening the file. */
const most_ms = { sqlite: 3, postgres: 5, open: 20 };
/** A look-up among 100,000 builds, over one among few. */
const most_ratio = 1.5;

const ann = { asker: 'ann', place: 'shed' };
const ask = { command: 'mix', options: { amount: '30 L' } };

/** Everything that an answer remembers and looks up. */
async function remembered(memory: Memory): Promise<void> {
  await memory.units(ann);
  await memory.prices(ann);
  await memory.lastAsk(ann);
  await memory.rememberAsk({ ...ann, ...ask });
}

async function furnish(memory: Memory): Promise<void> {
  await memory.setUnits({ place: 'shed' }, 'US');
  for (let i = 0; i < 10; i++) {
    const price = { item: `item ${i}`, amount: { mass_kg: 20 }, price: i, currency: 'USD' };
    await memory.setPrice({ asker: 'ann' }, price, new Date(0));
    await memory.saveBuild('ann', { name: `build ${i}`, ask }, new Date(0));
  }
}

/** 1,000 people with 100 builds each. */
const manyBuilds = `
  with recursive n(i) as (select 0 union all select i + 1 from n where i < 99999)
  insert into builds (id, asker, name_key, name, revision, command, options, saved_at)
  select 'id' || i, 'person ' || (i / 100), 'build ' || (i % 100), 'build ' || (i % 100), 1, 'mix', '{"amount":"30 L"}', i from n`;

const folder = mkdtempSync(join(tmpdir(), 'teemer-bench-'));
let postgres: Postgres | undefined;
afterAll(async () => {
  await postgres?.remove();
  rmSync(folder, { recursive: true });
});

describe('a store in a folder', () => {
  speedOf(async () => sqliteHome(join(folder, String(Math.random()))), most_ms.sqlite);

  it('opened', async ({ bench }) => {
    const data = join(folder, 'opened');
    await (await openStore({ data })).close();
    const { latency } = await bench('opened and closed', async () => {
      await (await openStore({ data })).close();
    }).run();
    expect(latency.p50).toBeLessThan(most_ms.open);
  });
});

describe.skipIf(findPostgres() === undefined)('a store in PostgreSQL on this machine', () => {
  beforeAll(async () => {
    postgres = await startPostgres();
  }, 60_000);
  speedOf(async () => postgresHome((await postgres?.database()) ?? ''), most_ms.postgres);
});

function speedOf(homeOf: () => Promise<Home>, most: number): void {
  let home: Home;
  let store: Store;
  beforeAll(async () => {
    home = await homeOf();
    await migrate(home, migrations);
    store = storeIn(home);
    await furnish(store.memory);
  }, 60_000);
  afterAll(() => store.close());

  it('remembers and looks up', async ({ bench }) => {
    const { latency } = await bench('units, prices, last question, remembered', () => remembered(store.memory)).run();
    expect(latency.p50).toBeLessThan(most);
  });

  it('answers nearly as soon as without', { timeout: 60_000 }, async () => {
    const without = inProcessMemory();
    await furnish(without);
    const answer = (memory: Memory) => async () => {
      await answerLine('mix 30 L', { ...ann, now: new Date(0), memory });
      await memory.prices(ann);
      await memory.lastAsk(ann);
    };
    // Of several rounds the least disturbed: other programs only ever add.
    const more: number[] = [];
    for (let round = 0; round < 5; round++) {
      const [plain, kept] = await byTurns(60, answer(without), answer(store.memory));
      tell(`an answer: ${plain.toPrecision(3)} ms in process, ${kept.toPrecision(3)} ms from the store`);
      more.push(kept - plain);
    }
    expect(Math.min(...more)).toBeLessThan(most);
  });

  it('finds one build among 100,000 nearly as soon as among ten', { timeout: 120_000 }, async () => {
    const large = await homeOf();
    await migrate(large, migrations);
    const { memory, close } = storeIn(large);
    await furnish(memory);
    await sql.raw(manyBuilds).execute(large.db);
    const looks = { find: (one: Memory) => one.build('ann', 'build 5'), list: (one: Memory) => one.builds('ann') };
    for (const [what, look] of Object.entries(looks)) {
      const [few, many] = await byTurns(
        1000,
        () => look(store.memory),
        () => look(memory),
      );
      tell(`${what}: ${few.toPrecision(3)} ms among ten, ${many.toPrecision(3)} ms among 100,000`);
      expect(many / few, what).toBeLessThan(most_ratio);
    }
    await close();
  });
}

/** Medians in ms of two things done in turns, so that a busy machine slows both. */
async function byTurns(times: number, ...both: (() => Promise<unknown>)[]): Promise<readonly [number, number]> {
  const took = both.map((): number[] => []);
  for (let i = 0; i < times; i++) {
    for (const [which, one] of both.entries()) {
      const began = performance.now();
      await one();
      took[which]?.push(performance.now() - began);
    }
  }
  const [a, b] = took.map((all) => all.toSorted((x, y) => x - y)[times >> 1] ?? 0);
  return [a ?? 0, b ?? 0];
}

const tell = (text: string) => process.stdout.write(`${text}\n`);
