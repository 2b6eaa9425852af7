import type { Memory } from '../../commands/memory.ts';
import type { LogEntry } from '../../commands/memory-weeks.ts';
import { shareCode } from '../../commands/share-code.ts';
import type { Db, Tables } from './schema.ts';
import { nameKey, plain } from './text.ts';

export const entryOf = ({ id, build, kind, done_at, data }: Tables['log_entries']): LogEntry => ({
  id,
  build,
  kind,
  at: new Date(done_at),
  data: JSON.parse(data),
});

/** What was done and measured on builds. */
export const logEntries = (db: Db): Pick<Memory, 'addEntry' | 'entries' | 'dropEntry'> => ({
  async addEntry(asker, { id = shareCode(), build, kind, at, data }) {
    const row = await db
      .insertInto('log_entries')
      .values({
        id,
        asker: plain(asker),
        build_key: nameKey(build),
        build: plain(build),
        kind: plain(kind),
        done_at: at.getTime(),
        data: JSON.stringify(data),
      })
      .onConflict((conflict) => conflict.column('id').doNothing())
      .returningAll()
      .executeTakeFirst();
    if (row) return entryOf(row);
    const before = db.selectFrom('log_entries').selectAll().where('asker', '=', plain(asker)).where('id', '=', id);
    return entryOf(await before.executeTakeFirstOrThrow());
  },
  async entries(asker, build) {
    const all = db
      .selectFrom('log_entries')
      .selectAll()
      .where('asker', '=', plain(asker))
      .orderBy('done_at')
      .orderBy('id');
    const rows = await (build === undefined ? all : all.where('build_key', '=', nameKey(build))).execute();
    return rows.map(entryOf);
  },
  async dropEntry(asker, id) {
    const { numDeletedRows } = await db
      .deleteFrom('log_entries')
      .where('asker', '=', plain(asker))
      .where('id', '=', plain(id))
      .executeTakeFirstOrThrow();
    return numDeletedRows > 0n;
  },
});
