import { randomUUID } from 'node:crypto';
import type { Build, Memory } from '../../commands/memory.ts';
import { shareCode } from '../../commands/share-code.ts';
import type { Db, Tables } from './schema.ts';
import { nameKey, plain } from './text.ts';

const columns = ['name', 'revision', 'command', 'options', 'saved_at'] as const;

export const buildOf = (row: Pick<Tables['builds'], (typeof columns)[number]>): Build => ({
  name: row.name,
  revision: row.revision,
  ask: { command: row.command, options: JSON.parse(row.options) },
  savedAt: new Date(row.saved_at),
});

type Part = Pick<Memory, 'saveBuild' | 'build' | 'builds' | 'revisions' | 'dropBuild' | 'shareBuild' | 'sharedBuild'>;

/** Questions kept under names, with all their revisions, and the codes they are shared by. */
export function builds(db: Db): Part {
  const named = (asker: string, name: string) =>
    db
      .selectFrom('builds')
      .select(columns)
      .where('asker', '=', plain(asker))
      .where('name_key', '=', nameKey(name))
      .orderBy('revision', 'desc');
  const ofId = (asker: string, id: string) =>
    db.selectFrom('builds').select(columns).where('asker', '=', plain(asker)).where('id', '=', id);

  return {
    async saveBuild(asker, { id, name, ask: { command, options } }, now) {
      const name_key = nameKey(name);
      const known = id === undefined ? undefined : await ofId(asker, id).executeTakeFirst();
      if (known) return buildOf(known);
      for (;;) {
        const row = await db
          .insertInto('builds')
          .values((eb) => ({
            id: id ?? randomUUID(),
            asker: plain(asker),
            name: plain(name),
            name_key,
            revision: eb
              .selectFrom('builds')
              .where('asker', '=', plain(asker))
              .where('name_key', '=', name_key)
              .select(({ fn, lit }) => eb(fn.coalesce(fn.max('revision'), lit(0)), '+', lit(1)).as('next')),
            command: plain(command),
            options: JSON.stringify(options),
            saved_at: now.getTime(),
          }))
          .onConflict((conflict) => conflict.columns(['asker', 'name_key', 'revision']).doNothing())
          .returning(columns)
          .executeTakeFirst();
        if (row) return buildOf(row);
        // Another process took this revision in the same moment: the next one is ours.
      }
    },

    async build(asker, name, revision) {
      const all = named(asker, name);
      const one = revision === undefined ? all.limit(1) : all.where('revision', '=', revision);
      const row = await one.executeTakeFirst();
      return row && buildOf(row);
    },

    async builds(asker) {
      const rows = await db
        .selectFrom('builds as one')
        .select(columns)
        .where('asker', '=', plain(asker))
        .where(({ not, exists, selectFrom }) =>
          not(
            exists(
              selectFrom('builds as newer')
                .select('newer.id')
                .whereRef('newer.asker', '=', 'one.asker')
                .whereRef('newer.name_key', '=', 'one.name_key')
                .whereRef('newer.revision', '>', 'one.revision'),
            ),
          ),
        )
        .orderBy('saved_at', 'desc')
        .orderBy('name_key')
        .execute();
      return rows.map(buildOf);
    },

    async revisions(asker, name) {
      return (await named(asker, name).execute()).map(buildOf);
    },

    async dropBuild(asker, name) {
      const { numDeletedRows } = await db
        .deleteFrom('builds')
        .where('asker', '=', plain(asker))
        .where('name_key', '=', nameKey(name))
        .executeTakeFirstOrThrow();
      return numDeletedRows > 0n;
    },

    async shareBuild(asker, name) {
      for (;;) {
        const newest = await named(asker, name).select('id').limit(1).executeTakeFirst();
        if (!newest) return undefined;
        // Copied from the row in one statement, so that nothing is shared that is dropped in this moment.
        await db
          .insertInto('shares')
          .columns(['code', 'build_id', 'asker', ...columns])
          .expression((eb) =>
            eb
              .selectFrom('builds')
              .where('id', '=', newest.id)
              .select([eb.val(shareCode()).as('code'), 'id', 'asker', ...columns]),
          )
          .onConflict((conflict) => conflict.doNothing())
          .execute();
        const share = await db.selectFrom('shares').select('code').where('build_id', '=', newest.id).executeTakeFirst();
        if (share) return share.code;
        // The code was taken, or the build is gone: look again.
      }
    },

    async sharedBuild(code) {
      const row = await db
        .selectFrom('shares')
        .select(columns)
        .where('code', '=', plain(code.trim().toUpperCase()))
        .executeTakeFirst();
      return row && buildOf(row);
    },
  };
}
