import type { Memory } from '../../commands/memory.ts';
import type { Checklist } from '../../commands/memory-weeks.ts';
import { shareCode } from '../../commands/share-code.ts';
import type { Db, Tables } from './schema.ts';
import { nameKey, plain } from './text.ts';

type Part = Pick<Memory, 'openChecklist' | 'checklist' | 'checklists' | 'tick' | 'untick' | 'dropChecklist'>;

/** Checklists of a place, and who ticked what of them. */
export function checklists(db: Db): Part {
  const of = (place: string) =>
    db
      .selectFrom('checklists')
      .selectAll()
      .where('place', '=', plain(place))
      .orderBy('started_at', 'desc')
      .orderBy('name_key');

  return {
    async openChecklist({ asker, place }, { name, ask: { command, options } }, now) {
      const question = { command: plain(command), options: JSON.stringify(options) };
      const row = await db
        .insertInto('checklists')
        .values({
          id: shareCode(),
          place: plain(place),
          name_key: nameKey(name),
          name: plain(name),
          asker: plain(asker),
          started_at: now.getTime(),
          ...question,
        })
        .onConflict((conflict) => conflict.columns(['place', 'name_key']).doUpdateSet(question))
        .returningAll()
        .executeTakeFirstOrThrow();
      return withTicks(db, row);
    },
    async checklist(place, name) {
      const all = of(place);
      const row = await (name === undefined ? all : all.where('name_key', '=', nameKey(name)))
        .limit(1)
        .executeTakeFirst();
      return row && withTicks(db, row);
    },
    async checklists(place) {
      return Promise.all((await of(place).execute()).map((row) => withTicks(db, row)));
    },

    async tick(id, item, { by, now }) {
      // Copied from the list's own row, so that nothing is ticked on a list that is dropped in this moment.
      const row = await db
        .insertInto('ticks')
        .columns(['list', 'item', 'asker', 'ticked_at'])
        .expression((eb) =>
          eb
            .selectFrom('checklists')
            .where('id', '=', plain(id))
            .select(['id', eb.val(plain(item)).as('item'), eb.val(plain(by)).as('by'), eb.val(now.getTime()).as('at')]),
        )
        .onConflict((conflict) => conflict.doNothing())
        .returning('list')
        .executeTakeFirst();
      return row !== undefined;
    },
    async untick(id, item) {
      const { numDeletedRows } = await db
        .deleteFrom('ticks')
        .where('list', '=', plain(id))
        .where('item', '=', plain(item))
        .executeTakeFirstOrThrow();
      return numDeletedRows > 0n;
    },
    async dropChecklist(id) {
      const { numDeletedRows } = await db
        .deleteFrom('checklists')
        .where('id', '=', plain(id))
        .executeTakeFirstOrThrow();
      return numDeletedRows > 0n;
    },
  };
}

/** A list with its ticks, first ticked first. */
export async function withTicks(db: Db, row: Tables['checklists']): Promise<Checklist> {
  const { id, place, name, asker: owner, command, options, started_at } = row;
  const ticks = await db
    .selectFrom('ticks')
    .select(['item', 'asker', 'ticked_at'])
    .where('list', '=', id)
    .orderBy('ticked_at')
    .orderBy('item')
    .execute();
  return {
    id,
    place,
    name,
    owner,
    ask: { command, options: JSON.parse(options) },
    startedAt: new Date(started_at),
    ticks: ticks.map(({ item, asker, ticked_at }) => ({ item, by: asker, at: new Date(ticked_at) })),
  };
}
