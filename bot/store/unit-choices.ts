import type { Memory } from '../../commands/memory.ts';
import type { Db } from './schema.ts';
import { ownerColumns, plain } from './text.ts';

/** The units a person or a place has chosen. */
export const unitChoices = (db: Db): Pick<Memory, 'units' | 'setUnits'> => ({
  async units({ asker, place }) {
    const row = await db
      .selectFrom('unit_choices')
      .select('units')
      .where((eb) =>
        eb.or([
          eb.and({ owner_kind: 'asker', owner: plain(asker) }),
          eb.and({ owner_kind: 'place', owner: plain(place) }),
        ]),
      )
      // 'asker' before 'place'.
      .orderBy('owner_kind')
      .limit(1)
      .executeTakeFirst();
    return row?.units;
  },
  async setUnits(owner, units) {
    const whose = ownerColumns(owner);
    if (units === undefined) {
      await db
        .deleteFrom('unit_choices')
        .where((eb) => eb.and(whose))
        .execute();
      return;
    }
    await db
      .insertInto('unit_choices')
      .values({ ...whose, units })
      .onConflict((conflict) => conflict.columns(['owner_kind', 'owner']).doUpdateSet({ units }))
      .execute();
  },
});
