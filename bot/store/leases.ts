import type { Db } from './schema.ts';
import { plain } from './text.ts';

/** Work that one process at a time may do, and another takes over when that one dies. */
export interface Leases {
  /**
   * Takes the lease, or renews one's own, for `lease_s` seconds. False while another holds it. One that reaches further
   * than `lease_s` from now was taken before the clock was set back, and holds for `lease_s` from now.
   */
  take(
    name: string,
    given: { readonly holder: string; readonly now: Date; readonly lease_s: number },
  ): Promise<boolean>;
  /** Only one's own; false where it was another's by now. */
  release(name: string, holder: string): Promise<boolean>;
}

export const leases = (db: Db): Leases => ({
  async take(name, { holder, now, lease_s }) {
    const until = Math.round(now.getTime() + lease_s * 1000);
    const mine = { name: plain(name), holder: plain(holder), until };
    await db.updateTable('leases').set({ until }).where('name', '=', mine.name).where('until', '>', until).execute();
    const row = await db
      .insertInto('leases')
      .values(mine)
      .onConflict((conflict) =>
        conflict
          .column('name')
          .doUpdateSet({ holder: mine.holder, until })
          .where((eb) => eb.or([eb('leases.holder', '=', mine.holder), eb('leases.until', '<=', now.getTime())])),
      )
      .returning('name')
      .executeTakeFirst();
    return row !== undefined;
  },
  async release(name, holder) {
    const { numDeletedRows } = await db
      .deleteFrom('leases')
      .where('name', '=', plain(name))
      .where('holder', '=', plain(holder))
      .executeTakeFirstOrThrow();
    return numDeletedRows > 0n;
  },
});
