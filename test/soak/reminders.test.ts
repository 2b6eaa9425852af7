import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Postgres, postgresMissing, startPostgres } from '../peers/postgres.ts';
import { type Delivered, killDelivering } from './reminders.ts';

/** `npm run soak` does it a hundred times. */
const kills = 5;

function expectOnce({ lost, doubled, unmarked, violations, reminders }: Delivered): void {
  expect({
    lost: lost.slice(0, 9),
    doubled: doubled.slice(0, 9),
    unmarked,
    violations: violations.slice(0, 9),
  }).toEqual({
    lost: [],
    doubled: [],
    unmarked: 0,
    violations: [],
  });
  expect(reminders).toBeGreaterThanOrEqual(1000);
}

test('a folder, three processes, one killed again and again: each of 2,000 reminders comes once', async () => {
  const data = mkdtempSync(join(tmpdir(), 'teemer-reminders-'));
  try {
    expectOnce(await killDelivering({ where: { data }, kills }));
  } finally {
    rmSync(data, { recursive: true });
  }
}, 240_000);

describe.skipIf(postgresMissing())('PostgreSQL', () => {
  let postgres: Postgres;
  beforeAll(async () => {
    postgres = await startPostgres();
  }, 60_000);
  afterAll(() => postgres.remove());

  test('the same', async () => {
    expectOnce(await killDelivering({ where: { databaseUrl: await postgres.database() }, kills, many: 1000 }));
  }, 240_000);

  test('its server stopped as by a power cut, and started again', async () => {
    const strike = async () => {
      await postgres.stop('immediate');
      await postgres.start();
    };
    expectOnce(
      await killDelivering({ where: { databaseUrl: await postgres.database() }, kills: 2, many: 1000, strike }),
    );
  }, 240_000);
});
