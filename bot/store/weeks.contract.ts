import { beforeEach, describe, expect, test } from 'vitest';
import type { Memory } from '../../commands/memory.ts';
import type { NewReminder } from '../../commands/memory-weeks.ts';

const at = (seconds: number) => new Date(Date.UTC(2026, 2, 1) + seconds * 1000);
const ann = { asker: 'matrix:@ann:shed', place: 'matrix:!club:shed' };
const bob = { asker: 'discord:2', place: ann.place };
const ask = { command: 'size can', options: { can: '20 gal', wall: '1½"' } };
const light = (seconds: number, plan?: string): NewReminder => ({
  place: ann.place,
  dueAt: at(seconds),
  zone: 'Europe/Berlin',
  what: 'light the first small fire',
  holds: ['the lining loses less than 0.5 % a day'],
  facts: ['damp-lining'],
  next: 'dry for=last',
  ...(plan === undefined ? {} : { plan }),
});

/** What every Memory does for a build of several weeks. */
export function weeksContract(fresh: () => Promise<Memory>): void {
  let memory: Memory;
  beforeEach(async () => {
    memory = await fresh();
  });

  test('a zone is set, changed and unset', async () => {
    expect(await memory.zone(ann.asker)).toBeUndefined();
    await memory.setZone(ann.asker, 'Europe/Berlin');
    await memory.setZone(ann.asker, 'America/New_York');
    expect(await memory.zone(ann.asker)).toBe('America/New_York');
    expect(await memory.zone(bob.asker)).toBeUndefined();
    await memory.setZone(ann.asker, undefined);
    expect(await memory.zone(ann.asker)).toBeUndefined();
  });

  test('a dialogue begun is one a person and place', async () => {
    const begun = { ...ann, command: 'start', options: { metal: 'aluminium' } };
    await memory.keepDraft(ann, { ...begun, options: {} });
    await memory.keepDraft(ann, begun);
    expect(await memory.draft(ann)).toEqual(begun);
    expect(await memory.draft({ ...ann, place: 'elsewhere' })).toBeUndefined();
    expect(await memory.draft(bob)).toBeUndefined();
    await memory.keepDraft(ann, undefined);
    expect(await memory.draft(ann)).toBeUndefined();
  });

  describe('reminders', () => {
    test('wait, soonest first, each with all it says', async () => {
      const [late, soon] = await memory.setReminders(ann.asker, [light(200), light(100, 'dry can')]);
      expect(soon).toMatchObject({ ...light(100, 'dry can'), asker: ann.asker });
      expect(soon?.id).not.toBe(late?.id);
      expect(await memory.reminders(ann.asker)).toEqual([soon, late]);
      expect(await memory.reminders(bob.asker)).toEqual([]);
    });

    test('of one plan are replaced together, others stay', async () => {
      const [own] = await memory.setReminders(ann.asker, [light(50)]);
      await memory.setReminders(ann.asker, [light(100, 'dry can'), light(200, 'dry can')], 'dry can');
      await memory.setReminders(bob.asker, [light(100, 'dry can')], 'dry can');
      const again = await memory.setReminders(ann.asker, [light(300, 'dry can')], 'dry can');
      expect(await memory.reminders(ann.asker)).toEqual([own, ...again]);
      expect(await memory.reminders(bob.asker)).toHaveLength(1);
    });

    test('given an id, are set once', async () => {
      const once = () => memory.setReminders(ann.asker, [{ ...light(1), id: 'ONCE' }, light(2)]);
      await once();
      await once();
      const waiting = (await memory.reminders(ann.asker)).map(({ id }) => id);
      expect(waiting).toHaveLength(3);
      expect(waiting.filter((id) => id === 'ONCE')).toHaveLength(1);
      const plan = () => memory.setReminders(ann.asker, [{ ...light(3, 'p'), id: 'PLAN' }], 'p');
      await plan();
      await plan();
      expect(await memory.reminders(ann.asker)).toHaveLength(4);
    });

    test('are called off one by one, by plan, or all', async () => {
      const [one] = await memory.setReminders(ann.asker, [light(1), light(2, 'p'), light(3, 'p'), light(4)]);
      expect(await memory.dropReminders(bob.asker, { id: one?.id ?? '' })).toBe(0);
      expect(await memory.dropReminders(ann.asker, { id: one?.id ?? '' })).toBe(1);
      expect(await memory.dropReminders(ann.asker, { id: one?.id ?? '' })).toBe(0);
      expect(await memory.dropReminders(ann.asker, { plan: 'p' })).toBe(2);
      expect(await memory.dropReminders(ann.asker)).toBe(1);
      expect(await memory.reminders(ann.asker)).toEqual([]);
    });
  });

  describe('checklists', () => {
    test('one of a name in a place, its question renewed, its ticks kept', async () => {
      const list = await memory.openChecklist(ann, { name: 'Big Can', ask }, at(1));
      expect(list).toMatchObject({
        place: ann.place,
        name: 'Big Can',
        owner: ann.asker,
        ask,
        startedAt: at(1),
        ticks: [],
      });
      await memory.tick(list.id, 'shell', { by: bob.asker, now: at(2) });
      const other = { ...ask, options: { can: '31 gal' } };
      const again = await memory.openChecklist(bob, { name: ' big can', ask: other }, at(3));
      expect(again).toEqual({ ...list, ask: other, ticks: [{ item: 'shell', by: bob.asker, at: at(2) }] });
      expect(await memory.checklist('elsewhere')).toBeUndefined();
    });

    test('the newest of a place, or the one named', async () => {
      const first = await memory.openChecklist(ann, { name: 'can', ask }, at(1));
      const second = await memory.openChecklist(bob, { name: 'pot', ask }, at(2));
      expect(await memory.checklist(ann.place)).toEqual(second);
      expect(await memory.checklist(ann.place, 'CAN')).toEqual(first);
      expect(await memory.checklists(ann.place)).toEqual([second, first]);
      expect(await memory.dropChecklist(second.id)).toBe(true);
      expect(await memory.dropChecklist(second.id)).toBe(false);
      expect(await memory.checklists(ann.place)).toEqual([first]);
    });

    test('each item is ticked once, by whoever is first', async () => {
      const { id } = await memory.openChecklist(ann, { name: 'can', ask }, at(1));
      const ticked = await Promise.all(
        [ann, bob, ann, bob].map(({ asker }, i) => memory.tick(id, 'forms', { by: asker, now: at(i) })),
      );
      expect(ticked.filter(Boolean)).toHaveLength(1);
      expect(await memory.tick('nowhere', 'forms', { by: ann.asker, now: at(9) })).toBe(false);
      await memory.tick(id, 'shell', { by: bob.asker, now: at(20) });
      expect((await memory.checklist(ann.place))?.ticks.map(({ item }) => item)).toEqual(['forms', 'shell']);
      expect(await memory.untick(id, 'forms')).toBe(true);
      expect(await memory.untick(id, 'forms')).toBe(false);
      expect((await memory.checklist(ann.place))?.ticks.map(({ item }) => item)).toEqual(['shell']);
    });
  });

  test('a log keeps what was done, oldest first, of one build or all', async () => {
    const burn = {
      build: 'Can',
      kind: 'burn',
      at: at(20),
      data: { fuel: 'lump charcoal', fuel_kg: 3.2, duration_s: 3600 },
    };
    const second = await memory.addEntry(ann.asker, burn);
    const first = await memory.addEntry(ann.asker, { ...burn, build: 'pot', kind: 'drying', at: at(10), data: {} });
    expect(second).toEqual({ ...burn, id: second.id });
    expect(await memory.entries(ann.asker)).toEqual([first, second]);
    expect(await memory.entries(ann.asker, 'can')).toEqual([second]);
    expect(await memory.entries(bob.asker)).toEqual([]);
    expect(await memory.dropEntry(bob.asker, second.id)).toBe(false);
    expect(await memory.dropEntry(ann.asker, second.id)).toBe(true);
    expect(await memory.dropEntry(ann.asker, second.id)).toBe(false);
    expect(await memory.entries(ann.asker)).toEqual([first]);
  });

  test('an entry that is given an id is added once', async () => {
    const burn = { id: 'ONCE', build: 'can', kind: 'burn', at: at(20), data: { fuel_kg: 3.2 } };
    expect(await memory.addEntry(ann.asker, burn)).toEqual(burn);
    expect(await memory.addEntry(ann.asker, burn)).toEqual(burn);
    expect(await memory.entries(ann.asker)).toEqual([burn]);
  });

  test('all of it is told to its owner, and gone when forgotten; what others own stays', async () => {
    const fill = async ({ asker, place }: typeof ann) => {
      await memory.setZone(asker, 'Europe/Berlin');
      await memory.keepDraft({ asker, place }, { command: 'start', options: {}, asker, place });
      const reminders = await memory.setReminders(asker, [light(1)]);
      const list = await memory.openChecklist({ asker, place }, { name: `list of ${asker}`, ask }, at(1));
      const entry = await memory.addEntry(asker, { build: 'can', kind: 'burn', at: at(1), data: {} });
      return { reminders, list, entry };
    };
    const mine = await fill(ann);
    const theirs = await fill(bob);
    await memory.tick(theirs.list.id, 'shell', { by: ann.asker, now: at(5) });
    expect(await memory.kept(ann.asker)).toMatchObject({
      zone: 'Europe/Berlin',
      drafts: [{ command: 'start', options: {}, place: ann.place }],
      reminders: mine.reminders,
      checklists: [mine.list],
      entries: [mine.entry],
    });
    await memory.forget(ann.asker);
    const gone = await memory.kept(ann.asker);
    expect(gone).toMatchObject({ drafts: [], reminders: [], checklists: [], entries: [] });
    expect(gone.zone).toBeUndefined();
    const ticks = [{ item: 'shell', by: '', at: at(5) }];
    expect(await memory.kept(bob.asker)).toMatchObject({
      zone: 'Europe/Berlin',
      reminders: theirs.reminders,
      checklists: [{ ...theirs.list, ticks }],
      entries: [theirs.entry],
    });
  });
}
