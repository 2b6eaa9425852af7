import { z } from 'zod';
import type { Command } from '../command.ts';
import { nobodyCalls } from '../reach.ts';
import { said } from '../said.ts';
import { dayAndHour, fromNow } from '../when/say.ts';
import { calendarOf } from './calendar.ts';
import { remindFamily } from './family.ts';

const options = z.strictObject({});

export const remindList = {
  ...remindFamily,
  name: 'remind list',
  summary: 'The reminders that wait for you, the next one first.',
  options,
  private: true,
  examples: [{ line: 'remind list', says: 'with a calendar file of them' }],
  async answer(_options, { asker, memory, now, units, reach }) {
    const waiting = await memory.reminders(asker);
    if (waiting.length === 0) {
      return said('No reminder waits for you.', {
        next: [{ label: 'set one', line: 'remind in 36 h weigh the lining' }],
      });
    }
    const calls = ((await reach?.()) ?? nobodyCalls).kind !== 'none';
    const late = waiting.filter(({ dueAt }) => dueAt <= now).length;
    return said(waiting.length === 1 ? 'One reminder waits for you.' : `${waiting.length} reminders wait for you.`, {
      table: {
        columns: ['', 'when', 'what', 'plan'],
        rows: waiting.map(({ dueAt, zone, what, plan = '' }, at) => [
          String(at + 1),
          `${dayAndHour(dueAt, { zone, units })} (${zone}, ${dueAt <= now ? 'past' : fromNow(dueAt, now, zone)})`,
          what,
          plan,
        ]),
      },
      notes: calls || late === 0 ? [] : ['Those that are past were not called: nothing here calls you by itself.'],
      attachment: { name: 'reminders.ics', text: calendarOf(waiting, now), apart: true },
      next: [{ label: 'take the next one back', line: 'remind drop 1' }],
    });
  },
} satisfies Command<typeof options>;
