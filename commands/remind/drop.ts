import { z } from 'zod';
import { AskError } from '../../core/ask-error.ts';
import { nearest } from '../../core/materials/nearest.ts';
import type { Command } from '../command.ts';
import type { Reminder } from '../memory-weeks.ts';
import { text } from '../options.ts';
import { said } from '../said.ts';
import { dayAndHour } from '../when/say.ts';
import { remindFamily } from './family.ts';

const options = z.strictObject({
  which: text({ label: 'number, words, plan, or all', most: 200 }),
});

export const remindDrop = {
  ...remindFamily,
  name: 'remind drop',
  summary: 'Take back a reminder, those of a plan, or all.',
  options,
  subject: 'which',
  private: true,
  examples: [
    { line: 'remind drop 1', says: 'the next one, as remind list counts them' },
    { line: 'remind drop weigh the lining', says: 'by its words' },
    { line: 'remind drop all', says: 'every one of them' },
  ],
  async answer({ which }, { asker, memory, units }) {
    const waiting = await memory.reminders(asker);
    const wanted = which.toLowerCase();
    if (waiting.length === 0) throw none();
    if (wanted === 'all') return said(`Taken back: ${counted(await memory.dropReminders(asker))}.`);
    const plan = waiting.find((one) => one.plan?.toLowerCase() === wanted)?.plan;
    if (plan !== undefined) {
      return said(`Taken back: ${counted(await memory.dropReminders(asker, { plan }))} of ${plan}.`);
    }
    const found = foundIn(waiting, wanted);
    await memory.dropReminders(asker, { id: found.id });
    const { dueAt, zone, what } = found;
    return said(`Taken back: ${what}, ${dayAndHour(dueAt, { zone, units })}.`, {
      next: [{ label: 'what still waits', line: 'remind list' }],
    });
  },
} satisfies Command<typeof options>;

function foundIn(waiting: readonly Reminder[], wanted: string): Reminder {
  const number = /^#?(\d{1,3})$/.exec(wanted)?.[1];
  const counted = number === undefined ? undefined : waiting[Number(number) - 1];
  if (counted) return counted;
  const worded = waiting.filter(({ id, what }) => id.toLowerCase() === wanted || what.toLowerCase().includes(wanted));
  const [first, second] = worded;
  if (first && !second) return first;
  const whats = waiting.map(({ what }) => what);
  if (first) {
    throw new AskError({
      code: 'ambiguous',
      what: `${worded.length} reminders say that`,
      expected: 'its number in remind list',
      example: String(waiting.indexOf(first) + 1),
      option: 'which',
    });
  }
  throw new AskError({
    code: 'unknown-name',
    what:
      number === undefined
        ? 'no reminder of yours says that'
        : `there is no number ${number} among your ${waiting.length}`,
    expected: 'a number of remind list, or words of it',
    example: nearest(wanted, whats, 1)[0] ?? '1',
    option: 'which',
  });
}

const counted = (count: number): string => (count === 1 ? 'one reminder' : `${count} reminders`);

const none = () =>
  new AskError({
    code: 'nothing-before',
    what: 'no reminder waits for you',
    expected: 'one that was set before',
    example: 'remind in 36 h weigh the lining',
  });
