import type { Memory } from '../../commands/memory.ts';
import { buildOf } from './builds.ts';
import { priceOf } from './prices.ts';
import type { Db } from './schema.ts';
import { ownerColumns, plain } from './text.ts';

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
    return {
      asker,
      ...(chosen ? { units: chosen.units } : {}),
      lastAsks: asks.map(({ command, options, place }) => ({ command, options: JSON.parse(options), place })),
      builds: builds.map(buildOf),
      shared: shared.map(({ code, name }) => ({ code, name })),
      prices: prices.map(priceOf),
    };
  },

  async forget(asker) {
    const id = plain(asker);
    const whose = ownerColumns({ asker });
    await db.transaction().execute(async (all) => {
      for (const table of ['last_asks', 'builds', 'shares', 'outbox', 'component_states'] as const) {
        await all.deleteFrom(table).where('asker', '=', id).execute();
      }
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
