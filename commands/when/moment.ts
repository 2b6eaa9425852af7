import type { Temporal } from 'temporal-polyfill';
import { AskError } from '../../core/ask-error.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { dayAndHour, hourIn } from './say.ts';
import { temporal } from './temporal.ts';
import { type ClockWords, type DayWords, monthNames, type WhenWords } from './words.ts';

export interface Moment {
  readonly at: Date;
  /** Where clocks are changed just then: what was taken. */
  readonly note?: string;
  /** An hour that was not typed. */
  readonly assumedHour?: string;
}

export interface Reading {
  readonly zone: string;
  readonly now: Date;
  readonly units: UnitSystem;
  /** Where a date is given and no hour. */
  readonly usualHour?: ClockWords;
}

const nine: ClockWords = { hour: 9, minute: 0 };

/** So many hours from now are the same everywhere: nothing need be known of the asker's clock. */
export const needsZone = (when: WhenWords): boolean =>
  when.kind === 'day' || when.clock !== undefined || Object.values(when.span).some((many) => many > 0);

/**
 * What was typed as a moment, by the asker's clock. An hour that is left out in spring is moved on by as much as the
 * clocks are; of one that comes twice in autumn the first is taken.
 * @throws AskError where it is past, or no day of the calendar
 */
export async function momentOf(when: WhenWords, reading: Reading): Promise<Moment> {
  const T = await temporal();
  const now = T.Instant.fromEpochMilliseconds(reading.now.getTime()).toZonedDateTimeISO(reading.zone);
  return when.kind === 'span' ? spanFrom(T, now, when, reading) : dayFrom(T, now, when, reading);
}

/** A calendar date, `2026-04-12`, at an hour of the asker's clock: for the steps of a plan. May be past. */
export async function momentOn(date: string, clock: ClockWords, reading: Reading): Promise<Moment> {
  const T = await temporal();
  return settled(T, T.PlainDate.from(date), clock, reading);
}

type T = typeof Temporal;

function spanFrom(
  T: T,
  now: Temporal.ZonedDateTime,
  { hours, span, clock }: Extract<WhenWords, { kind: 'span' }>,
  reading: Reading,
): Moment {
  if (hours > 30 * 24 * 365 || Object.values(span).some((many) => many > 10_000)) throw tooFar('that');
  const whole = now.toPlainDateTime().add(span);
  const hour = clock ?? { hour: whole.hour, minute: whole.minute };
  const { at, note } = settled(T, whole.toPlainDate(), hour, reading);
  if (hours === 0) return ahead({ at, ...(note === undefined ? {} : { note }) }, reading);
  const from_ms = Object.values(span).some((many) => many > 0) ? at.getTime() : reading.now.getTime();
  return ahead({ at: new Date(Math.floor((from_ms + hours * 3_600_000) / 1000) * 1000) }, reading);
}

function dayFrom(
  T: T,
  now: Temporal.ZonedDateTime,
  { day, clock }: Extract<WhenWords, { kind: 'day' }>,
  reading: Reading,
): Moment {
  const hour = clock ?? reading.usualHour ?? nine;
  const named = clock === undefined || clock.about !== undefined;
  const found = candidates(T, now.toPlainDate(), day)
    .map((date) => settled(T, date, hour, reading))
    .find(({ at }) => at > reading.now);
  if (!found) throw past(T, now, day, hour, reading);
  const moment = ahead(found, reading);
  return named ? { ...moment, assumedHour: hourIn(moment.at, reading) } : moment;
}

/** The dates that may be meant, soonest first: a weekday is the coming one, a date without a year the next of its kind. */
function candidates(T: T, today: Temporal.PlainDate, day: DayWords | undefined): readonly Temporal.PlainDate[] {
  if (!day) return [today, today.add({ days: 1 })];
  if (day.kind === 'ahead') return [today.add({ days: day.days })];
  if (day.kind === 'date') {
    const years = day.year === undefined ? [today.year, today.year + 1, today.year + 2] : [day.year];
    const dates = years.flatMap((year) => dateIn(T, year, day) ?? []);
    if (dates.length === 0) throw noDate(day);
    return dates;
  }
  const first = today.add({ days: (day.weekday - today.dayOfWeek + 7) % 7 });
  const second = first.add({ days: 7 });
  if (day.next && !first.equals(today)) throw whichNext(first, second);
  return day.next ? [second] : [first, second];
}

function dateIn(T: T, year: number, { month, day }: { readonly month: number; readonly day: number }) {
  try {
    return T.PlainDate.from({ year, month, day }, { overflow: 'reject' });
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** The moment of a date and hour in the zone, and what its clocks do just then. */
function settled(T: T, date: Temporal.PlainDate, { hour, minute }: ClockWords, reading: Reading): Moment {
  const wall = date.toPlainDateTime(T.PlainTime.from({ hour, minute }));
  const moment = wall.toZonedDateTime(reading.zone, { disambiguation: 'compatible' });
  const later = wall.toZonedDateTime(reading.zone, { disambiguation: 'later' });
  const at = new Date(moment.epochMilliseconds);
  const asked = `${hour}:${String(minute).padStart(2, '0')}`;
  if (!moment.toPlainDateTime().equals(wall)) {
    return { at, note: `clocks go forward that day and leave out ${asked}: ${hourIn(at, reading)} is taken` };
  }
  if (later.epochMilliseconds === moment.epochMilliseconds) return { at };
  return { at, note: `clocks go back that day and ${asked} comes twice: the first one is taken` };
}

const most_ms = 2 * 366 * 86_400_000;

function ahead(moment: Moment, { now }: Reading): Moment {
  if (moment.at.getTime() - now.getTime() > most_ms) throw tooFar(`${moment.at.getUTCFullYear()}`);
  return moment;
}

function past(
  T: T,
  now: Temporal.ZonedDateTime,
  day: DayWords | undefined,
  hour: ClockWords,
  reading: Reading,
): AskError {
  const [date = now.toPlainDate()] = candidates(T, now.toPlainDate(), day);
  const { at } = settled(T, date, hour, reading);
  const same = settled(T, now.toPlainDate(), hour, reading).at > reading.now ? 'today' : 'tomorrow';
  const clock = `${hour.hour}:${String(hour.minute).padStart(2, '0')}`;
  return new AskError({
    code: 'out-of-range',
    what: `${dayAndHour(at, reading)} is past`,
    expected: `a time ahead of ${dayAndHour(reading.now, reading)}`,
    example: `${same} ${clock}`,
  });
}

const tooFar = (what: string) =>
  new AskError({
    code: 'out-of-range',
    what: `${what} is more than two years ahead`,
    expected: 'at most two years ahead',
    example: 'in 12 months',
  });

const noDate = ({ month, day, year }: Extract<DayWords, { kind: 'date' }>) => {
  const name = monthNames[month - 1];
  const after = year === undefined ? '' : ` ${year}`;
  return new AskError({
    code: 'out-of-range',
    what: name === undefined ? `there is no month ${month}` : `${name}${after} has no ${day}`,
    expected: 'a day of the calendar',
    example: name === undefined ? '12 april' : `28 ${name}${after}`,
  });
};

const whichNext = (first: Temporal.PlainDate, second: Temporal.PlainDate) => {
  const said = ({ day, month }: Temporal.PlainDate) => `${day} ${monthNames[month - 1]}`;
  return new AskError({
    code: 'ambiguous',
    what: `next may be ${said(first)} or the one after it, ${said(second)}`,
    expected: 'the weekday alone for the coming one, or the date',
    example: said(second),
  });
};
