import type { Memory } from '../../commands/memory.ts';
import { buildOf } from './builds.ts';
import { withTicks } from './checklists.ts';
import { entryOf } from './log-entries.ts';
import { priceOf } from './prices.ts';
import { reminders } from './reminders.ts';
import type { Db } from './schema.ts';
import { settings } from './settings.ts';
import { ownerColumns, plain } from './text.ts';

const personalTables = [
  'last_asks',
  'builds',
  'shares',
  'outbox',
  'component_states',
  'zones',
  'drafts',
  'checklists',
  'log_entries',
] as const;

/** What is kept of one person, to be read or forgotten as a whole. */
export const personal = (db: Db): Pick<Memory, 'kept' | 'forget'> => ({
  async kept(asker) {
    const id = plain(asker);
    const whose = ownerColumns({ asker });
    const asks = await db.selectFrom('last_asks').selectAll().where('asker', '=', id).orderBy('place').execute();
    const chosen = await db
      .selectFrom('unit_choices')
      .select('units')
      .where((eb) => eb.and(whose))
      .executeTakeFirst();
    const builds = await db
      .selectFrom('builds')
      .selectAll()
      .where('asker', '=', id)
      .orderBy('name_key')
      .orderBy('revision')
      .execute();
    const shared = await db
      .selectFrom('shares')
      .select(['code', 'name'])
      .where('asker', '=', id)
      .orderBy('code')
      .execute();
    const prices = await db
      .selectFrom('prices')
      .selectAll()
      .where((eb) => eb.and(whose))
      .orderBy('item_key')
      .execute();
    const zone = await settings(db).zone(asker);
    const drafts = await db.selectFrom('drafts').selectAll().where('asker', '=', id).orderBy('place').execute();
    const lists = await db
      .selectFrom('checklists')
      .selectAll()
      .where('asker', '=', id)
      .orderBy('started_at')
      .orderBy('name_key')
      .execute();
    const entries = await db
      .selectFrom('log_entries')
      .selectAll()
      .where('asker', '=', id)
      .orderBy('done_at')
      .orderBy('id')
      .execute();
    return {
      asker,
      ...(chosen ? { units: chosen.units } : {}),
      lastAsks: asks.map(({ command, options, place }) => ({ command, options: JSON.parse(options), place })),
      builds: builds.map(buildOf),
      shared: shared.map(({ code, name }) => ({ code, name })),
      prices: prices.map(priceOf),
      ...(zone === undefined ? {} : { zone }),
      drafts: drafts.map(({ command, options, place }) => ({ command, options: JSON.parse(options), place })),
      reminders: await reminders(db).reminders(asker),
      checklists: await Promise.all(lists.map((row) => withTicks(db, row))),
      entries: entries.map(entryOf),
    };
  },

  async forget(asker) {
    const id = plain(asker);
    const whose = ownerColumns({ asker });
    await db.transaction().execute(async (all) => {
      for (const table of personalTables) await all.deleteFrom(table).where('asker', '=', id).execute();
      // A list of somebody else's stays ticked.
      await all.updateTable('ticks').set({ asker: '' }).where('asker', '=', id).execute();
      for (const table of ['unit_choices', 'prices'] as const) {
        await all
          .deleteFrom(table)
          .where('owner_kind', '=', whose.owner_kind)
          .where('owner', '=', whose.owner)
          .execute();
      }
    });
  },
});
