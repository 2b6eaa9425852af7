import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openStore, type Where } from '../../bot/store/open.ts';
import { answerLine } from '../../commands/answer.ts';
import type { Card } from '../../commands/card.ts';
import { inProcessMemory, type Memory } from '../../commands/memory.ts';
import { allStages } from '../../core/build/stages.ts';
import { type Postgres, postgresMissing, startPostgres } from '../peers/postgres.ts';

/** The weeks of one furnace, ticked by two of the club, the program started anew for every line. Invented data. */
const withoutPostgres = postgresMissing();
let postgres: Postgres | undefined;
const folders: string[] = [];

beforeAll(async () => {
  if (!withoutPostgres) postgres = await startPostgres({ durable: false });
}, 120_000);
afterAll(async () => {
  await postgres?.remove();
  for (const folder of folders) rmSync(folder, { recursive: true });
});

type Within = <T>(use: (memory: Memory) => Promise<T>) => Promise<T>;

/** A store that is opened for each use and closed again. */
const restarted =
  (where: Where): Within =>
  async (use) => {
    const store = await openStore(where);
    try {
      return await use(store.memory);
    } finally {
      await store.close();
    }
  };

const folder = (): Where => {
  const data = mkdtempSync(join(tmpdir(), 'teemer-weeks-'));
  folders.push(data);
  return { data };
};

const wet = allStages
  .slice(
    0,
    allStages.findIndex(({ id }) => id === 'dry'),
  )
  .map(({ id }) => id);

async function weeks(within: Within): Promise<readonly string[]> {
  let now = Date.parse('2026-05-02T09:00:00Z');
  const replyTo = (line: string, asker: string) => {
    now += 6 * 3_600_000;
    return within((memory) => answerLine(line, { asker, place: 'millpond', now: new Date(now), memory }));
  };
  const ask = async (line: string, asker = 'ann'): Promise<Card> => {
    const reply = await replyTo(line, asker);
    if (reply.kind === 'error') throw new Error(`${line}: ${reply.error.what}`);
    return reply.card;
  };
  const held = async (line: string, asker = 'ann') => {
    const reply = await replyTo(line, asker);
    if (reply.kind === 'card') throw new Error(`${line}: ${reply.card.headline}`);
    expect(reply.error.code).toBe('refused');
    return reply;
  };

  await ask('build save Little Hob for=(size can 20 gal crucible=5 in x 6 in fuel=charcoal)');
  await ask('checklist start Little Hob');
  for (const [at, id] of wet.entries()) await ask(`checklist tick ${id}`, at % 2 === 0 ? 'ann' : 'ben');
  const refused = await held('checklist tick small-fires', 'ben');
  expect(refused.error.what).toContain('Slow dry');
  expect(refused.cautions.map(({ id }) => id)).toContain('damp-lining');
  await held('checklist tick first melt');
  await ask('log drying 47.003 kg 2025-10-01; 47.002 kg 2025-11-05; 47.002 kg 2025-12-20 rammed=2025-09-01');
  await ask('checklist tick small-fires', 'ben');
  await ask('checklist untick glass-clear', 'ben');
  await held('checklist tick pot-set');
  await ask('checklist tick glass-clear');
  const shown = await ask('checklist', 'ben');
  expect(shown.headline).toContain('Assemble');
  const rows = shown.table!.rows.map(([mark, , name, ticked, last]) => [mark, name, ticked, last].join(' | '));
  expect(rows).toContain('✓ | Slow dry | 0 of 3 | in the log, yesterday');
  expect(rows.find((row) => row.includes('Small fires'))).toMatch(/^✓ .* 2 of 2 \| another, today$/);
  const [button] = shown.next;
  expect((await ask(button!.line, 'ben')).headline).toMatch(/^Ticked 13\.1/);
  return [shown.headline, ...rows, ...shown.notes];
}

describe('a build over its weeks, through restarts', () => {
  const plain = () => {
    const memory = inProcessMemory();
    return weeks((use) => use(memory));
  };

  test('in a folder as in process', { timeout: 120_000 }, async () => {
    expect(await weeks(restarted(folder()))).toEqual(await plain());
  });

  test.skipIf(withoutPostgres)('in PostgreSQL as in process', { timeout: 120_000 }, async () => {
    const databaseUrl = await postgres!.database();
    expect(await weeks(restarted({ databaseUrl }))).toEqual(await plain());
  });
});
