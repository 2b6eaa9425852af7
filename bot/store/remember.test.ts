import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { runProgram } from '../../test/end-to-end/run-program.ts';
import { postgresMissing, startPostgres } from '../../test/peers/postgres.ts';

const folder = mkdtempSync(join(tmpdir(), 'teemer-remember-'));
afterAll(() => rmSync(folder, { recursive: true }));

const ask = (line: string, env: Readonly<Record<string, string>>) => runProgram('bot/ask.ts', [line], '', env);

// Each starts several processes, which takes seconds each on a busy machine.
describe('the program as it is started', { timeout: 120_000 }, () => {
  test('forgets at exit where no store is set', async () => {
    expect((await ask('mix 30 L', {})).code).toBe(0);
    expect((await ask('why', {})).code).toBe(2);
  });

  test('remembers in a folder, one question at a time and at the prompt', async () => {
    const env = { TEEMER_DATA: join(folder, 'data') };
    expect((await ask('mix 30 L', env)).code).toBe(0);
    expect((await ask('why', env)).out).toContain('How mix came to');
    await runProgram('bot/main.ts', [], 'mix 47 L\n', env);
    expect((await ask('why', env)).out).toMatch(/fills\s+47\s+L/);
  });

  test.skipIf(postgresMissing())('remembers in PostgreSQL', async () => {
    const postgres = await startPostgres({ durable: false });
    try {
      const env = { DATABASE_URL: await postgres.database() };
      expect((await ask('mix 30 L', env)).code).toBe(0);
      expect((await ask('why', env)).out).toContain('How mix came to');
      await postgres.stop('fast');
      const without = await ask('mix 30 L', env);
      expect(without.out).toMatch(/fills\s+30\s+L/);
      expect(without.err).toContain('the store cannot be reached');
      expect(without.code).toBe(0);
    } finally {
      await postgres.remove();
    }
  });

  test('says in a line why a store can never do', async () => {
    const { code, err } = await ask('mix 30 L', { TEEMER_DATA: '/dev/null' });
    expect(code).toBe(2);
    expect(err).toMatch(/^the store may not be opened or written: see to the permissions of its folder.*\n$/);
  });
});
