import type { Db } from './schema.ts';
import { plain } from './text.ts';

/** Which events of a platform were dealt with, so that one that is delivered twice is answered once. */
export interface HandledEvents {
  /** True for the first caller, of whatever process; false for `keep_s` seconds from then. */
  first(id: string, given: { readonly now: Date; readonly keep_s: number }): Promise<boolean>;
  /** Lets go of what has expired; says how many. */
  sweep(now: Date): Promise<number>;
}

export const handledEvents = (db: Db): HandledEvents => ({
  async first(id, { now, keep_s }) {
    const expires_at = Math.round(now.getTime() + keep_s * 1000);
    const row = await db
      .insertInto('handled_events')
      .values({ id: plain(id), expires_at })
      .onConflict((conflict) =>
        conflict.column('id').doUpdateSet({ expires_at }).where('handled_events.expires_at', '<=', now.getTime()),
      )
      .returning('id')
      .executeTakeFirst();
    return row !== undefined;
  },
  async sweep(now) {
    const { numDeletedRows } = await db
      .deleteFrom('handled_events')
      .where('expires_at', '<=', now.getTime())
      .executeTakeFirstOrThrow();
    return Number(numDeletedRows);
  },
});
