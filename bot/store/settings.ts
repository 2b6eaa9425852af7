import type { Memory } from '../../commands/memory.ts';
import type { Db } from './schema.ts';
import { plain } from './text.ts';

/** A person's zone, and the dialogue they have begun in a place. */
export const settings = (db: Db): Pick<Memory, 'zone' | 'setZone' | 'draft' | 'keepDraft'> => ({
  async zone(asker) {
    const row = await db.selectFrom('zones').select('zone').where('asker', '=', plain(asker)).executeTakeFirst();
    return row?.zone;
  },
  async setZone(asker, zone) {
    if (zone === undefined) {
      await db.deleteFrom('zones').where('asker', '=', plain(asker)).execute();
      return;
    }
    await db
      .insertInto('zones')
      .values({ asker: plain(asker), zone: plain(zone) })
      .onConflict((conflict) => conflict.column('asker').doUpdateSet({ zone: plain(zone) }))
      .execute();
  },

  async draft({ asker, place }) {
    const row = await db
      .selectFrom('drafts')
      .select(['command', 'options'])
      .where('asker', '=', plain(asker))
      .where('place', '=', plain(place))
      .executeTakeFirst();
    return row && { command: row.command, options: JSON.parse(row.options), asker, place };
  },
  async keepDraft({ asker, place }, ask) {
    const whose = { asker: plain(asker), place: plain(place) };
    if (ask === undefined) {
      await db
        .deleteFrom('drafts')
        .where((eb) => eb.and(whose))
        .execute();
      return;
    }
    const what = { command: plain(ask.command), options: JSON.stringify(ask.options) };
    await db
      .insertInto('drafts')
      .values({ ...whose, ...what })
      .onConflict((conflict) => conflict.columns(['asker', 'place']).doUpdateSet(what))
      .execute();
  },
});
