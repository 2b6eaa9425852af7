import { AskError } from '../../core/ask-error.ts';
import type { PlanStep } from '../../core/dry/plan.ts';
import type { Answer, AnswerContext } from '../command.ts';
import type { NewReminder, Reminder } from '../memory-weeks.ts';
import { nobodyCalls, type Reach } from '../reach.ts';
import { readSource } from '../source.ts';
import { momentOn } from '../when/moment.ts';
import { dayIn, hourIn } from '../when/say.ts';
import { type ClockWords, splitWhen } from '../when/words.ts';
import { calendarOf } from './calendar.ts';
import { factsOf } from './hazards.ts';
import { checkRoom, zoneFor } from './limits.ts';
import type { RemindOptions } from './options.ts';
import { reachNote } from './words.ts';

/** What a plan's reminders are called where it stands under no build's name. */
const unnamed = 'dry';

/** A reminder for every step of a plan that is still ahead; those of the same plan that wait give way to them. */
export async function planReminders(
  asked: RemindOptions & { readonly for: string },
  context: AnswerContext,
): Promise<Answer> {
  const { asker, place, memory, now, units } = context;
  const zone = await zoneFor(asked, context);
  const { ask, build } = await readSource(asked.for, { command: 'remind', options: {}, asker, place }, context);
  const reply = await context.ask(ask);
  if (reply.kind === 'error') throw new AskError(reply.error);
  const { plan: steps } = reply.card;
  if (!steps || steps.length === 0) throw noPlan(ask.command);
  const plan = build?.name ?? unnamed;
  const before = (await memory.reminders(asker)).filter((one) => one.plan === plan);
  const reach = (await context.reach?.()) ?? nobodyCalls;
  const wanted = await remindersOf(steps, { zone, plan, clock: clockOf(asked.at), reach }, context);
  if (wanted.length === 0) throw allPast(steps);
  await checkRoom(wanted.length, context, before.length);
  const made = await memory.setReminders(asker, wanted, plan);
  const [first, last] = [made[0]!, made.at(-1)!];
  const reader = { zone, units };
  const gone = steps.length - wanted.length;
  return {
    headline: `${counted(made.length, 'reminder')} of ${plan === unnamed ? 'the drying plan' : plan}, from ${dayIn(first.dueAt, zone)} to ${dayIn(last.dueAt, zone)}, ${hourIn(first.dueAt, reader)} (${zone}).`,
    figures: [],
    assumed: asked.at === undefined ? [{ text: `at ${hourIn(first.dueAt, reader)}`, override: 'at=8:00' }] : [],
    sources: [],
    hazards: { facts: [...new Set(made.flatMap(({ facts }) => facts))] },
    table: { columns: ['on', 'what'], rows: made.map(({ dueAt, what }) => [dayIn(dueAt, zone), what]) },
    notes: [
      ...(gone > 0 ? [`${counted(gone, 'step')} of the plan ${gone === 1 ? 'is' : 'are'} past and left out.`] : []),
      ...(before.length > 0
        ? [
            `${counted(before.length, 'reminder')} of the plan as it was ${before.length === 1 ? 'is' : 'are'} taken back.`,
          ]
        : []),
      'Each repeats what must hold before it.',
      reachNote(reach),
    ],
    next: [
      { label: 'all that wait', line: 'remind list' },
      { label: 'take them back', line: `remind drop ${plan}` },
    ],
    ...(reach.kind === 'none'
      ? { attachment: { name: 'reminders.ics', text: calendarOf(made, now), apart: true } }
      : {}),
  };
}

interface Setting {
  readonly zone: string;
  readonly plan: string;
  readonly clock: ClockWords;
  readonly reach: Reach;
}

async function remindersOf(
  steps: readonly PlanStep[],
  { zone, plan, clock, reach }: Setting,
  { place, now, units }: AnswerContext,
): Promise<readonly NewReminder[]> {
  const all = await Promise.all(
    steps.map(async ({ at, what, holds, facts }): Promise<NewReminder> => {
      const { at: dueAt } = await momentOn(at.toISOString().slice(0, 10), clock, { zone, now, units });
      const where = reach.kind === 'none' ? place : reach.place;
      return { place: where, dueAt, zone, what, holds, facts: factsOf(what, facts), plan };
    }),
  );
  return all.filter(({ dueAt }) => dueAt > now);
}

/**
 * Where something has happened that moves a plan, its reminders move with it, at the hour they had. Says so; nothing
 * where none wait, or where it can't be known whose plan was meant.
 */
export async function followPlan(steps: readonly PlanStep[], context: AnswerContext): Promise<string | undefined> {
  const { asker, memory } = context;
  const waiting = (await memory.reminders(asker)).filter((one) => one.plan !== undefined);
  const names = [...new Set(waiting.map(({ plan }) => plan))];
  const [plan] = names;
  if (plan === undefined) return undefined;
  if (names.length > 1)
    return `Reminders of ${names.length} plans wait and keep their days: remind for=last moves those of ${unnamed}.`;
  const [first] = waiting as [Reminder];
  const reach = { kind: 'here', place: first.place } as const;
  const wanted = await remindersOf(steps, { zone: first.zone, plan, clock: hourOf(first), reach }, context);
  await memory.setReminders(asker, wanted, plan);
  return `Your reminders of ${plan === unnamed ? 'this plan' : plan} have moved with it: ${wanted.length} wait.`;
}

function hourOf({ dueAt, zone }: Reminder): ClockWords {
  const [hour = 9, minute = 0] = hourIn(dueAt, { zone, units: 'metric' }).split(':').map(Number);
  return { hour, minute };
}

function clockOf(typed: string | undefined): ClockWords {
  if (typed === undefined) return { hour: 9, minute: 0 };
  const found = splitWhen(typed);
  if (found?.when.kind === 'day' && found.when.clock && !found.when.day && found.what === '') return found.when.clock;
  throw new AskError({
    code: 'unreadable',
    what: `"${typed.slice(0, 20)}" is no hour`,
    expected: 'an hour of the day, such as 8:00 or 7 am',
    example: '8:00',
    option: 'at',
  });
}

const counted = (count: number, what: string): string =>
  `${count === 1 ? 'One' : count} ${what}${count === 1 ? '' : 's'}`;

const noPlan = (command: string) =>
  new AskError({
    code: 'impossible',
    what: `${command} has no dated steps to be reminded of`,
    expected: 'an answer of dry, or a build of such a question',
    example: 'remind for=(dry 1.5 in clay-sand)',
    option: 'for',
  });

const allPast = (steps: readonly PlanStep[]) =>
  new AskError({
    code: 'out-of-range',
    what: `every step of that plan is past, the last on ${steps.at(-1)?.at.toISOString().slice(0, 10)}`,
    expected: 'a plan with steps ahead: say when it was rammed',
    example: 'remind for=(dry 1.5 in clay-sand)',
    option: 'for',
  });
