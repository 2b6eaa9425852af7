import type { Db } from './schema.ts';
import { plain } from './text.ts';

export interface Message {
  /** Sent along to the platform too; a second message of the same key is not queued. */
  readonly key: string;
  /** Which sender it is for, such as `discord`. */
  readonly channel: string;
  /** Plain JSON data; gone once it is sent. */
  readonly body: unknown;
  readonly dueAt: Date;
  /** Forgotten with this person. */
  readonly asker?: string;
}

/** A message that is ours to send until the lease ends. */
export interface Claimed extends Omit<Message, 'asker'> {
  /** 1 for the first. */
  readonly attempt: number;
  /** Where an earlier hold ended and nobody said what came of it: the message may have been sent then. */
  readonly heldUntil?: Date;
}

/** Messages to be sent once each, by whichever process is there. */
export interface Outbox {
  /** False where the key is known, sent or not. */
  enqueue(message: Message): Promise<boolean>;
  /**
   * Messages of a channel that are due and held by nobody, first due first; held for `lease_s` seconds. A hold that
   * reaches further than that was taken before the clock was set back, and ends `lease_s` from now.
   */
  claim(
    channel: string,
    given: { readonly now: Date; readonly lease_s: number; readonly limit: number },
  ): Promise<readonly Claimed[]>;
  /** True for the first to say so, also after the lease has ended: it is sent. */
  sent(key: string, now: Date): Promise<boolean>;
  /** The same of many at once. */
  sentAll(keys: readonly string[], now: Date): Promise<void>;
  /**
   * To be claimed again at `retryAt`, or never. `perhaps`: it may have been sent all the same. False where another has
   * claimed it since, or it is sent.
   */
  failed(
    claimed: Pick<Claimed, 'key' | 'attempt' | 'heldUntil'>,
    given: { readonly fault: string; readonly now: Date; readonly retryAt?: Date; readonly perhaps?: boolean },
  ): Promise<boolean>;
  /** When the next of a channel is due that nobody holds; it may be past. */
  next(channel: string): Promise<Date | undefined>;
  /** False where there is none that waits. */
  cancel(key: string): Promise<boolean>;
  /** Lets go of keys whose messages were sent or given up before `before`; says how many. */
  sweep(before: Date): Promise<number>;
}

/** `skipLocked`: several processes claim at once without waiting for one another. */
export function outbox(db: Db, { skipLocked }: { readonly skipLocked: boolean }): Outbox {
  return {
    async enqueue({ key, channel, body, dueAt, asker }) {
      const row = await db
        .insertInto('outbox')
        .values({
          key: plain(key),
          channel: plain(channel),
          asker: asker === undefined ? null : plain(asker),
          body: JSON.stringify(body),
          due_at: dueAt.getTime(),
          attempts: 0,
        })
        .onConflict((conflict) => conflict.column('key').doNothing())
        .returning('id')
        .executeTakeFirst();
      return row !== undefined;
    },

    async claim(channel, { now, lease_s, limit }) {
      const until = Math.round(now.getTime() + lease_s * 1000);
      const rows = await db.transaction().execute(async (all) => {
        const open = all
          .selectFrom('outbox')
          .select(['id', 'leased_until'])
          .where('channel', '=', plain(channel))
          .where('sent_at', 'is', null)
          .where('given_up_at', 'is', null)
          .where('due_at', '<=', now.getTime())
          .where((eb) =>
            eb.or([
              eb('leased_until', 'is', null),
              eb('leased_until', '<=', now.getTime()),
              eb('leased_until', '>', until),
            ]),
          )
          .orderBy('due_at')
          .orderBy('id')
          .limit(limit);
        const found = await (skipLocked ? open.forUpdate().skipLocked() : open).execute();
        const stepped = found.filter(({ leased_until }) => leased_until !== null && leased_until > until);
        await all.updateTable('outbox').set({ leased_until: until }).where('id', 'in', ids(stepped)).execute();
        const held = new Map(found.map(({ id, leased_until }) => [id, leased_until]));
        const claimed = await all
          .updateTable('outbox')
          .set((eb) => ({ leased_until: until, attempts: eb('attempts', '+', 1) }))
          .where('id', 'in', ids(found.filter((one) => !stepped.includes(one))))
          .returning(['id', 'key', 'channel', 'body', 'due_at', 'attempts'])
          .execute();
        return claimed.map((row) => ({ ...row, held: held.get(row.id) ?? undefined }));
      });
      return rows
        .toSorted((a, b) => a.due_at - b.due_at || a.id - b.id)
        .map((row) => ({
          key: row.key,
          channel: row.channel,
          body: JSON.parse(row.body),
          dueAt: new Date(row.due_at),
          attempt: row.attempts,
          ...(row.held === undefined ? {} : { heldUntil: new Date(row.held) }),
        }));
    },

    async sent(key, now) {
      const { numUpdatedRows } = await db
        .updateTable('outbox')
        .set({ sent_at: now.getTime(), leased_until: null, body: 'null', fault: null })
        .where('key', '=', plain(key))
        .where('sent_at', 'is', null)
        .executeTakeFirstOrThrow();
      return numUpdatedRows > 0n;
    },

    async sentAll(keys, now) {
      if (keys.length === 0) return;
      await db
        .updateTable('outbox')
        .set({ sent_at: now.getTime(), leased_until: null, body: 'null', fault: null })
        .where('key', 'in', keys.map(plain))
        .where('sent_at', 'is', null)
        .execute();
    },

    async next(channel) {
      const row = await db
        .selectFrom('outbox')
        .select('due_at')
        .where('channel', '=', plain(channel))
        .where('sent_at', 'is', null)
        .where('given_up_at', 'is', null)
        .where('leased_until', 'is', null)
        .orderBy('due_at')
        .limit(1)
        .executeTakeFirst();
      return row && new Date(row.due_at);
    },

    async failed({ key, attempt, heldUntil }, { fault, now, retryAt, perhaps = false }) {
      // A hold that has ended is no hold, but says that one was.
      const held = perhaps ? now : heldUntil;
      const { numUpdatedRows } = await db
        .updateTable('outbox')
        .set({
          leased_until: held === undefined ? null : Math.min(held.getTime(), now.getTime()),
          fault: plain(fault),
          ...(retryAt ? { due_at: retryAt.getTime() } : { given_up_at: now.getTime(), body: 'null' }),
        })
        .where('key', '=', plain(key))
        .where('attempts', '=', attempt)
        .where('sent_at', 'is', null)
        .where('given_up_at', 'is', null)
        .executeTakeFirstOrThrow();
      return numUpdatedRows > 0n;
    },

    async cancel(key) {
      const { numDeletedRows } = await db
        .deleteFrom('outbox')
        .where('key', '=', plain(key))
        .where('sent_at', 'is', null)
        .where('given_up_at', 'is', null)
        .executeTakeFirstOrThrow();
      return numDeletedRows > 0n;
    },

    async sweep(before) {
      const { numDeletedRows } = await db
        .deleteFrom('outbox')
        .where((eb) => eb.or([eb('sent_at', '<', before.getTime()), eb('given_up_at', '<', before.getTime())]))
        .executeTakeFirstOrThrow();
      return Number(numDeletedRows);
    },
  };
}

/** An empty list is no SQL everywhere; no row has the id 0. */
const ids = (rows: readonly { readonly id: number }[]): readonly number[] => [0, ...rows.map(({ id }) => id)];
