import type { Memory, Price } from '../../commands/memory.ts';
import type { Db, Tables } from './schema.ts';
import { nameKey, ownerColumns, plain } from './text.ts';

/** Prices of a person and of a place. */
export const prices = (db: Db): Pick<Memory, 'prices' | 'setPrice' | 'dropPrice'> => ({
  async prices({ asker, place }) {
    const rows = await db
      .selectFrom('prices')
      .selectAll()
      .where((eb) =>
        eb.or([
          eb.and({ owner_kind: 'asker', owner: plain(asker) }),
          eb.and({ owner_kind: 'place', owner: plain(place) }),
        ]),
      )
      .orderBy('owner_kind')
      .orderBy('item_key')
      .execute();
    const own = new Set(rows.filter(({ owner_kind }) => owner_kind === 'asker').map(({ item_key }) => item_key));
    return rows
      .filter(({ owner_kind, item_key }) => owner_kind === 'asker' || !own.has(item_key))
      .map((row): Price => ({ ...priceOf(row), owner: row.owner_kind }));
  },

  async setPrice(owner, { item, amount, price, currency }, now) {
    const what = {
      item: plain(item),
      mass_kg: 'mass_kg' in amount ? amount.mass_kg : null,
      volume_m3: 'volume_m3' in amount ? amount.volume_m3 : null,
      price,
      currency: plain(currency),
      set_at: now.getTime(),
    };
    await db
      .insertInto('prices')
      .values({ ...ownerColumns(owner), item_key: nameKey(item), ...what })
      .onConflict((conflict) => conflict.columns(['owner_kind', 'owner', 'item_key']).doUpdateSet(what))
      .execute();
  },

  async dropPrice(owner, item) {
    const { numDeletedRows } = await db
      .deleteFrom('prices')
      .where((eb) => eb.and({ ...ownerColumns(owner), item_key: nameKey(item) }))
      .executeTakeFirstOrThrow();
    return numDeletedRows > 0n;
  },
});

export const priceOf = (row: Tables['prices']): Omit<Price, 'owner'> => ({
  item: row.item,
  amount: row.mass_kg === null ? { volume_m3: row.volume_m3 ?? 0 } : { mass_kg: row.mass_kg },
  price: row.price,
  currency: row.currency,
  setAt: new Date(row.set_at),
});
