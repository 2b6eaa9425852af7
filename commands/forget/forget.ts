import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import type { Command } from '../command.ts';
import type { Kept } from '../memory.ts';
import { text } from '../options.ts';
import { said } from '../said.ts';

const options = z.strictObject({ what: text({ label: 'everything, typed in full', most: 40 }).optional() });

export const forget = {
  name: 'forget',
  summary: 'Delete everything that is kept of you.',
  options,
  subject: 'what',
  examples: [
    { line: 'forget', says: 'what there is to delete' },
    { line: 'forget everything', says: 'deletes it' },
  ],
  hazards: [],
  figures: {},
  passing: true,
  private: true,
  async answer({ what }, { asker, memory }) {
    const list = listOf(await memory.kept(asker));
    if (what === undefined) {
      if (list === '') return said('Nothing is kept of you.');
      return said(`Kept of you: ${list}. Nothing is deleted yet; forget everything deletes it for good.`, {
        next: [
          { label: 'read it first', line: 'mydata' },
          { label: 'delete it all', line: 'forget everything' },
        ],
      });
    }
    if (what.toLowerCase() !== 'everything') throw onlyEverything(what);
    await memory.forget(asker);
    return said(list === '' ? 'Nothing was kept of you.' : `Deleted for good: ${list}.`, {
      notes: [
        'Units and prices that were set for a place stay with the place.',
        'What you ticked on lists of others stays ticked, without your name.',
      ],
    });
  },
} satisfies Command<typeof options>;

/** `2 builds (3 revisions), 1 price, your units`; empty where there is nothing. */
function listOf(kept: Kept): string {
  const { builds, shared, prices, units, lastAsks, zone, drafts, reminders, checklists, entries } = kept;
  const count = (number: number, one: string, many = `${one}s`) =>
    number === 0 ? [] : [`${number} ${number === 1 ? one : many}`];
  const names = new Set(builds.map(({ name }) => name.toLowerCase())).size;
  return [
    ...count(names, 'build').map((words) => (builds.length > names ? `${words} (${builds.length} revisions)` : words)),
    ...count(shared.length, 'code that shares a build', 'codes that share builds'),
    ...count(prices.length, 'price'),
    ...(units ? [`your units (${units})`] : []),
    ...count(lastAsks.length, 'last question'),
    ...(zone === undefined ? [] : [`your time zone (${zone})`]),
    ...count(drafts.length, 'dialogue that was begun', 'dialogues that were begun'),
    ...count(reminders.length, 'reminder that waits', 'reminders that wait'),
    ...count(checklists.length, 'checklist'),
    ...count(entries.length, 'entry of your log', 'entries of your log'),
  ].join(', ');
}

const onlyEverything = (what: string) =>
  new AskError({
    code: 'unreadable',
    what: `"${what}" can't be forgotten by this; nothing was deleted`,
    expected: 'everything, typed in full; build drop and price drop delete one thing',
    example: 'forget',
    option: 'what',
  });
