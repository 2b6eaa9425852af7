import type { Memory } from '../../commands/memory.ts';
import type { Reminder } from '../../commands/memory-weeks.ts';
import { shareCode } from '../../commands/share-code.ts';
import type { Db } from './schema.ts';
import { plain } from './text.ts';

const prefix = 'reminders:';

/** The outbox's channel for reminders of the platform a person is on: `discord:81…` is on `discord`. */
export const reminderChannel = (asker: string): string => `${prefix}${asker.split(':', 1)[0]}`;

const keyOf = ({ id }: Pick<Reminder, 'id'>): string => `reminder:${id}`;

/** Waiting, or sent by now. */
const isSet = async (all: Db, one: Reminder): Promise<boolean> =>
  (await all
    .selectFrom('outbox')
    .select('id')
    .where('key', '=', keyOf(one))
    .where('asker', '=', one.asker)
    .executeTakeFirst()) !== undefined;

/** A message's body as the reminder it is. */
export function reminderOf(body: unknown): Reminder {
  const { dueAt, ...rest } = body as Omit<Reminder, 'dueAt'> & { readonly dueAt: string };
  return { ...rest, dueAt: new Date(dueAt) };
}

/** Reminders are messages that wait in the outbox: whoever delivers those delivers these. */
export function reminders(db: Db): Pick<Memory, 'setReminders' | 'reminders' | 'dropReminders'> {
  const waiting = (all: Db, asker: string) =>
    all
      .selectFrom('outbox')
      .select(['id', 'body'])
      .where('asker', '=', plain(asker))
      .where('channel', '=', reminderChannel(plain(asker)))
      .where('sent_at', 'is', null)
      .where('given_up_at', 'is', null)
      .orderBy('due_at')
      .orderBy('id');
  const drop = async (all: Db, asker: string, which: Parameters<Memory['dropReminders']>[1]) => {
    const rows = (await waiting(all, asker).execute()).filter(({ body }) => {
      const { id, plan } = reminderOf(JSON.parse(body));
      return which === undefined || ('id' in which ? id === which.id : plan === which.plan);
    });
    if (rows.length === 0) return 0;
    const { numDeletedRows } = await all
      .deleteFrom('outbox')
      .where(
        'id',
        'in',
        rows.map(({ id }) => id),
      )
      .executeTakeFirstOrThrow();
    return Number(numDeletedRows);
  };

  return {
    setReminders: (asker, wanted, plan) =>
      db.transaction().execute(async (all) => {
        if (plan !== undefined) await drop(all, asker, { plan });
        const made = wanted.map((one): Reminder => ({ id: shareCode(), ...one, asker: plain(asker) }));
        for (const [at, one] of made.entries()) {
          if (wanted[at]?.id !== undefined && (await isSet(all, one))) continue;
          await all
            .insertInto('outbox')
            .values({
              key: keyOf(one),
              channel: reminderChannel(one.asker),
              asker: one.asker,
              body: JSON.stringify(one),
              due_at: one.dueAt.getTime(),
              attempts: 0,
            })
            .execute();
        }
        return made;
      }),
    async reminders(asker) {
      return (await waiting(db, asker).execute()).map(({ body }) => reminderOf(JSON.parse(body)));
    },
    dropReminders: (asker, which) => db.transaction().execute((all) => drop(all, asker, which)),
  };
}
