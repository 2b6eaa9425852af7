import { AskError } from '../../core/ask-error.ts';
import type { Answer, AnswerContext, Command } from '../command.ts';
import type { NewReminder } from '../memory-weeks.ts';
import { about } from '../options.ts';
import { nobodyCalls, type Reach } from '../reach.ts';
import { capital } from '../sentence.ts';
import { type Moment, momentOf, needsZone } from '../when/moment.ts';
import { dayIn, fromNow, hourIn } from '../when/say.ts';
import { type Split, splitWhen } from '../when/words.ts';
import { zoneNamed } from '../when/zone-names.ts';
import { calendarOf } from './calendar.ts';
import { remindFamily } from './family.ts';
import { factsOf, holdsOf } from './hazards.ts';
import { checkRoom, zoneFor } from './limits.ts';
import { remindOptions as options, type RemindOptions } from './options.ts';
import { planReminders } from './plan.ts';
import { reachNote } from './words.ts';

export const remind = {
  ...remindFamily,
  name: 'remind',
  summary: 'Be called at a time, with what must hold before it and what can hurt.',
  options,
  subject: 'what',
  examples: [
    { line: 'remind saturday 9am light the small fire zone=Europe/Berlin', says: 'with your zone, once' },
    { line: 'remind in 36 h weigh the lining', says: 'so many hours from now' },
    { line: 'remind for=(dry 1.5 in clay-sand) at=8:00 zone=America/Chicago', says: 'every step of a drying plan' },
  ],
  async answer(asked, context) {
    const { asker, memory } = context;
    if (asked.zone !== undefined) {
      const named = asked.zone;
      await memory.setZone(
        asker,
        about('zone', () => zoneNamed(named)),
      );
    }
    return asked.for === undefined ? one(asked, context) : planReminders({ ...asked, for: asked.for }, context);
  },
} satisfies Command<typeof options>;

async function one(asked: RemindOptions, context: AnswerContext): Promise<Answer> {
  const { asker, memory, now, units } = context;
  const { when, what } = splitOf(asked);
  const zone = needsZone(when) ? await zoneFor(asked, context) : ((await memory.zone(asker)) ?? 'UTC');
  const reader = { zone, units };
  const moment = await withLine(asked, what, () => momentOf(when, { ...reader, now }));
  await checkRoom(1, context);
  const reach = (await context.reach?.()) ?? nobodyCalls;
  const facts = factsOf(what);
  const wanted: NewReminder = {
    place: reach.kind === 'none' ? context.place : reach.place,
    dueAt: moment.at,
    zone: reader.zone,
    what,
    holds: holdsOf(facts),
    facts,
  };
  const made = await memory.setReminders(asker, [wanted]);
  return {
    headline: headlineOf(wanted, reach, context),
    figures: [],
    assumed: assumedOf(moment),
    sources: [],
    hazards: { facts },
    notes: [
      ...(moment.note === undefined ? [] : [`${capital(moment.note)}.`]),
      ...(wanted.holds.length > 0 ? [`Before it: ${wanted.holds.join('; ')}.`] : []),
      reachNote(reach),
    ],
    next: [{ label: 'all that wait', line: 'remind list' }],
    ...(reach.kind === 'none'
      ? { attachment: { name: 'reminder.ics', text: calendarOf(made, now), apart: true } }
      : {}),
  };
}

function headlineOf({ dueAt, zone, what }: NewReminder, reach: Reach, { now, units }: AnswerContext): string {
  const day = `${dayIn(dueAt, zone)}, ${hourIn(dueAt, { zone, units })} (${zone}, ${fromNow(dueAt, now, zone)})`;
  return reach.kind === 'none' ? `Noted for ${day}: ${what}.` : `I will remind you on ${day}: ${what}.`;
}

const assumedOf = ({ assumedHour }: Moment): Answer['assumed'] =>
  assumedHour === undefined
    ? []
    : [{ text: `${assumedHour}, since no hour was given`, override: 'an hour beside the day' }];

/** What is to be done, and when: in one text, or in two. */
function splitOf({ what = '', when }: RemindOptions): Split {
  const found = about(when === undefined ? 'what' : 'when', () => splitWhen(when ?? what));
  if (!found) {
    throw new AskError({
      code: what === '' && when === undefined ? 'missing' : 'unreadable',
      what:
        when === undefined
          ? what === ''
            ? 'it says neither when nor what'
            : 'it does not say when'
          : `"${when.slice(0, 40)}" is no time I know`,
      expected: 'tomorrow 7am, saturday 9:00, in 3 weeks, in 36 h, 12 april 18:30 or 2026-04-12 18:30, and what to do',
      example: `remind tomorrow 9:00 ${what === '' ? 'weigh the lining' : what}`.slice(0, 200),
    });
  }
  const task = when === undefined ? found.what : [what, found.what].filter((part) => part !== '').join(' ');
  if (task !== '') return { when: found.when, what: task };
  throw new AskError({
    code: 'missing',
    what: 'it does not say what to remind you of',
    expected: 'a few words behind the time',
    example: `remind ${when ?? what} weigh the lining`,
  });
}

/** An example that is only a time becomes the asker's line with that time in it. */
async function withLine<Value>({ when }: RemindOptions, what: string, read: () => Promise<Value>): Promise<Value> {
  try {
    return await read();
  } catch (error) {
    if (!(error instanceof AskError)) throw error;
    throw when === undefined
      ? error.with({ option: 'what', example: `${error.example} ${what}` })
      : error.with({ option: 'when' });
  }
}
