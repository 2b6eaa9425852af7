import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openStore } from '../../bot/store/open.ts';
import { type Postgres, postgresMissing, startPostgres } from '../peers/postgres.ts';
import { killAgain, type Outcome } from './kill.ts';
import { audit, record } from './ledger.ts';

/** `npm run soak` does it thirty times. */
const times = 5;

function expectWhole({ lost, halves, acknowledged, kills }: Outcome): void {
  expect({ lost, halves }).toEqual({ lost: [], halves: [] });
  // Otherwise nothing was put to the test.
  expect(acknowledged).toBeGreaterThan(kills * 10);
}

test('what was said and is not there is found missing', async () => {
  const data = mkdtempSync(join(tmpdir(), 'teemer-kill-'));
  const store = await openStore({ data });
  try {
    const ledger = new Map();
    record(ledger, '1 asked\n1 units\n1 saved\n1 shared\n1 priced\n1 queued\n2 asked\n2 handled\n4 forgotten\n');
    await store.memory.setUnits({ asker: 'person 1' }, 'metric');
    await store.memory.setUnits({ asker: 'person 4' }, 'US');
    const { lost, halves } = await audit(store, ledger);
    expect(lost).toEqual([
      '1: asked,saved,shared,priced',
      '4: forgotten, yet units are there',
      'key 1: queued',
      'event 2: handled',
    ]);
    expect(halves).toEqual(['1: units are not what was written']);
  } finally {
    await store.close();
    rmSync(data, { recursive: true });
  }
});

test('a folder, its writer killed: nothing acknowledged is lost, nothing is there in part', async () => {
  const data = mkdtempSync(join(tmpdir(), 'teemer-kill-'));
  try {
    expectWhole(await killAgain({ where: { data }, times }));
  } finally {
    rmSync(data, { recursive: true });
  }
}, 120_000);

describe.skipIf(postgresMissing())('PostgreSQL', () => {
  let postgres: Postgres;
  beforeAll(async () => {
    postgres = await startPostgres();
  }, 60_000);
  afterAll(() => postgres.remove());

  test('its client killed', async () => {
    expectWhole(await killAgain({ where: { databaseUrl: await postgres.database() }, times }));
  }, 120_000);

  test('its server stopped as by a power cut, and started again', async () => {
    const databaseUrl = await postgres.database();
    const kill = async () => {
      await postgres.stop('immediate');
      await postgres.start();
    };
    expectWhole(await killAgain({ where: { databaseUrl }, times: 2, kill }));
  }, 120_000);
});
