import type { Memory } from '../../commands/memory.ts';
import type { Db } from './schema.ts';
import { plain } from './text.ts';

/** The last question of a person in a place. */
export const lastAsks = (db: Db): Pick<Memory, 'lastAsk' | 'rememberAsk'> => ({
  async lastAsk({ asker, place }) {
    const row = await db
      .selectFrom('last_asks')
      .select(['command', 'options'])
      .where('asker', '=', plain(asker))
      .where('place', '=', plain(place))
      .executeTakeFirst();
    return row && { command: row.command, options: JSON.parse(row.options), asker, place };
  },
  async rememberAsk(ask) {
    const what = { command: plain(ask.command), options: JSON.stringify(ask.options) };
    await db
      .insertInto('last_asks')
      .values({ asker: plain(ask.asker), place: plain(ask.place), ...what })
      .onConflict((conflict) => conflict.columns(['asker', 'place']).doUpdateSet(what))
      .execute();
  },
});
