import type { Db } from './schema.ts';
import { plain } from './text.ts';

/** What a button or a menu in a chat stands for, where its own id is too short to say so. */
export interface ComponentStates {
  /** Takes the place of what had this id. `value` is plain JSON data. What has an asker is forgotten with them. */
  put(
    id: string,
    value: unknown,
    given: { readonly now: Date; readonly keep_s: number; readonly asker?: string },
  ): Promise<void>;
  /** Undefined where there is none, or none any more. */
  get(id: string, now: Date): Promise<unknown>;
  drop(id: string): Promise<boolean>;
  /** Lets go of what has expired; says how many. */
  sweep(now: Date): Promise<number>;
}

export const componentStates = (db: Db): ComponentStates => ({
  async put(id, value, { now, keep_s, asker }) {
    const what = {
      value: JSON.stringify(value),
      asker: asker === undefined ? null : plain(asker),
      expires_at: Math.round(now.getTime() + keep_s * 1000),
    };
    await db
      .insertInto('component_states')
      .values({ id: plain(id), ...what })
      .onConflict((conflict) => conflict.column('id').doUpdateSet(what))
      .execute();
  },
  async get(id, now) {
    const row = await db
      .selectFrom('component_states')
      .select('value')
      .where('id', '=', plain(id))
      .where('expires_at', '>', now.getTime())
      .executeTakeFirst();
    return row && JSON.parse(row.value);
  },
  async drop(id) {
    const { numDeletedRows } = await db
      .deleteFrom('component_states')
      .where('id', '=', plain(id))
      .executeTakeFirstOrThrow();
    return numDeletedRows > 0n;
  },
  async sweep(now) {
    const { numDeletedRows } = await db
      .deleteFrom('component_states')
      .where('expires_at', '<=', now.getTime())
      .executeTakeFirstOrThrow();
    return Number(numDeletedRows);
  },
});
