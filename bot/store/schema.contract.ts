import { spawn } from 'node:child_process';
import { type Kysely, sql } from 'kysely';
import { expect, test } from 'vitest';
import type { Home } from './home.ts';
import { migrate } from './migrate.ts';
import { migrations } from './migrations/all.ts';
import { openStore, type Where } from './open.ts';

const ann = { asker: 'ann', place: 'shed' };

/** What each home does with schemas of other versions, and with several processes at once. */
export function schemaContract({
  where,
  home,
  run,
}: {
  where: () => Promise<Where>;
  home: () => Promise<Home>;
  run: (statement: string) => Promise<void>;
}): void {
  test('a newer schema is refused with what to do, and not touched', async () => {
    const store = await openStore(await where());
    await store.memory.setUnits({ asker: 'ann' }, 'US');
    await store.close();
    await run('update schema_version set version = 99');
    const error = await openStore(await where()).catch((fault) => fault);
    expect(error).toMatchObject({
      code: 'newer',
      message: expect.stringMatching(/schema 99.*start the newer program/),
    });
    await run(`update schema_version set version = ${migrations.length}`);
    const again = await openStore(await where());
    expect(await again.memory.units(ann)).toBe('US');
    await again.close();
  });

  test('an older schema is brought up, what it holds kept', async () => {
    const old = await home();
    await migrate(old, migrations.slice(0, 1));
    await sql.raw("insert into unit_choices values ('asker', 'ann', 'US')").execute(old.db);
    await old.db.destroy();
    const store = await openStore(await where());
    expect(await store.memory.units(ann)).toBe('US');
    expect(await store.handled.first('x', { now: new Date(), keep_s: 1 })).toBe(true);
    await store.close();
  });

  test('a step that fails leaves nothing of itself', async () => {
    const place = await home();
    const failing = async (db: Kysely<unknown>) => {
      await db.schema.createTable('half').addColumn('a', 'integer').execute();
      await sql.raw('select * from nowhere').execute(db);
    };
    await expect(migrate(place, [...migrations, failing])).rejects.toThrow(/nowhere/);
    await expect(sql.raw('select * from half').execute(place.db)).rejects.toThrow(/half/);
    await place.db.destroy();
    const store = await openStore(await where());
    await store.memory.setUnits({ asker: 'ann' }, 'US');
    await store.close();
  });

  test('processes that start at once bring it up once, and write beside one another', async () => {
    const at = await where();
    const program = `
      const { openStore } = await import(${JSON.stringify(new URL('./open.ts', import.meta.url).href)});
      const store = await openStore(${JSON.stringify(at)});
      for (let i = 0; i < 10; i++) {
        await store.memory.saveBuild('ann', { name: 'can', ask: { command: 'mix', options: {} } }, new Date(0));
      }
      await store.close();
    `;
    const ran = await Promise.all(Array.from({ length: 5 }, () => runProgram(['--input-type=module', '-e', program])));
    expect(ran).toEqual(Array.from({ length: 5 }, () => ({ code: 0, said: '' })));
    const store = await openStore(at);
    const revisions = (await store.memory.revisions('ann', 'can')).map(({ revision }) => revision);
    expect(revisions).toEqual(Array.from({ length: 50 }, (_, i) => 50 - i));
    await store.close();
  });
}

function runProgram(args: readonly string[]): Promise<{ code: number | null; said: string }> {
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'ignore', 'pipe'] });
  let said = '';
  child.stderr.setEncoding('utf8').on('data', (text) => {
    said += text;
  });
  return new Promise((resolve) => child.on('close', (code) => resolve({ code, said })));
}
