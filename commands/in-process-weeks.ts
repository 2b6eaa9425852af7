import type { Ask } from './command.ts';
import type { Key } from './memory.ts';
import type { Checklist, KeptWeeks, LogEntry, Reminder, WeeksMemory } from './memory-weeks.ts';
import { sameName as same } from './same-name.ts';
import { shareCode } from './share-code.ts';

const keyOf = ({ asker, place }: Key): string => JSON.stringify([asker, place]);
const byTime = (a: { readonly at: Date }, b: { readonly at: Date }): number => a.at.getTime() - b.at.getTime();

/** Forgets at exit: its reminders are sent by nobody. */
export function inProcessWeeks(): WeeksMemory & {
  keptWeeks(asker: string): KeptWeeks;
  forgetWeeks(asker: string): void;
} {
  const zones = new Map<string, string>();
  const drafts = new Map<string, Ask>();
  const reminders = new Map<string, Reminder>();
  const lists = new Map<string, Checklist>();
  const entries = new Map<string, LogEntry & { readonly asker: string }>();
  const remindersOf = (asker: string) =>
    [...reminders.values()]
      .filter((one) => one.asker === asker)
      .toSorted((a, b) => a.dueAt.getTime() - b.dueAt.getTime());
  const listsOf = (place: string) =>
    [...lists.values()]
      .filter((one) => one.place === place)
      .toSorted((a, b) => b.startedAt.getTime() - a.startedAt.getTime());
  const entriesOf = (asker: string) =>
    [...entries.values()].filter((one) => one.asker === asker).map(({ asker: _, ...entry }) => entry);

  const memory: WeeksMemory = {
    zone: async (asker) => zones.get(asker),
    setZone: async (asker, zone) => void (zone === undefined ? zones.delete(asker) : zones.set(asker, zone)),

    draft: async (key) => drafts.get(keyOf(key)),
    keepDraft: async (key, ask) => void (ask === undefined ? drafts.delete(keyOf(key)) : drafts.set(keyOf(key), ask)),

    async setReminders(asker, wanted, plan) {
      if (plan !== undefined) await memory.dropReminders(asker, { plan });
      const made = wanted.map((one): Reminder => ({ id: shareCode(), ...one, asker }));
      for (const one of made) if (!reminders.has(one.id)) reminders.set(one.id, one);
      return made;
    },
    reminders: async (asker) => remindersOf(asker),
    async dropReminders(asker, which) {
      const gone = remindersOf(asker).filter(
        (one) => which === undefined || ('id' in which ? one.id === which.id : one.plan === which.plan),
      );
      for (const { id } of gone) reminders.delete(id);
      return gone.length;
    },

    async openChecklist({ asker, place }, { name, ask: { command, options } }, startedAt) {
      const known = listsOf(place).find((one) => same(one.name) === same(name));
      const ask = { command, options };
      const list = known
        ? { ...known, ask }
        : { id: shareCode(), place, name, owner: asker, ask, startedAt, ticks: [] };
      lists.set(list.id, list);
      return list;
    },
    checklist: async (place, name) => listsOf(place).find((one) => name === undefined || same(one.name) === same(name)),
    checklists: async (place) => listsOf(place),
    async tick(id, item, { by, now }) {
      const list = lists.get(id);
      if (!list || list.ticks.some((one) => one.item === item)) return false;
      lists.set(id, { ...list, ticks: [...list.ticks, { item, by, at: now }].toSorted(byTime) });
      return true;
    },
    async untick(id, item) {
      const list = lists.get(id);
      if (!list?.ticks.some((one) => one.item === item)) return false;
      lists.set(id, { ...list, ticks: list.ticks.filter((one) => one.item !== item) });
      return true;
    },
    dropChecklist: async (id) => lists.delete(id),

    async addEntry(asker, { id = shareCode(), build, kind, at, data }) {
      const entry = { id, build, kind, at, data };
      if (!entries.has(id)) entries.set(id, { ...entry, asker });
      return entry;
    },
    entries: async (asker, build) =>
      entriesOf(asker)
        .filter((one) => build === undefined || same(one.build) === same(build))
        .toSorted(byTime),
    dropEntry: async (asker, id) => entries.get(id)?.asker === asker && entries.delete(id),
  };

  return {
    ...memory,
    keptWeeks(asker) {
      const zone = zones.get(asker);
      return {
        ...(zone === undefined ? {} : { zone }),
        drafts: [...drafts.values()]
          .filter((ask) => ask.asker === asker)
          .map(({ command, options, place }) => ({ command, options, place })),
        reminders: remindersOf(asker),
        checklists: [...lists.values()].filter(({ owner }) => owner === asker),
        entries: entriesOf(asker).toSorted(byTime),
      };
    },
    forgetWeeks(asker) {
      zones.delete(asker);
      for (const [key, ask] of drafts) if (ask.asker === asker) drafts.delete(key);
      for (const { id } of remindersOf(asker)) reminders.delete(id);
      for (const [id, entry] of entries) if (entry.asker === asker) entries.delete(id);
      for (const [id, list] of lists) {
        if (list.owner === asker) lists.delete(id);
        else lists.set(id, { ...list, ticks: list.ticks.map((one) => (one.by === asker ? { ...one, by: '' } : one)) });
      }
    },
  };
}
