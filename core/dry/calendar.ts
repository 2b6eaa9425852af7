import { AskError } from '../ask-error.ts';

const DAY_ms = 86_400_000;
const NOON_ms = DAY_ms / 2;
const weekdays = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** Midday UTC of the calendar day a moment lies in: days are counted from middays, so that no clock change moves them. */
export const middayOf = (moment: Date): Date => new Date(Math.floor(moment.getTime() / DAY_ms) * DAY_ms + NOON_ms);

export const addDays = (day: Date, count: number): Date => new Date(day.getTime() + count * DAY_ms);

export const daysBetween = (from: Date, to: Date): number => Math.round((to.getTime() - from.getTime()) / DAY_ms);

/**
 * A calendar day as `2026-03-01`.
 * @throws AskError `unreadable` for anything else, or a day no calendar has.
 */
export function readDay(text: string): Date {
  const [, year, month, day] = /^\s*(\d{4})-(\d{1,2})-(\d{1,2})\s*$/.exec(text) ?? [];
  const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day), 12));
  const real = date.getUTCMonth() === Number(month) - 1 && date.getUTCDate() === Number(day);
  if (real && Number(year) >= 2000 && Number(year) < 2200) return date;
  throw new AskError({
    code: 'unreadable',
    what: `"${text.slice(0, 40)}" is no day`,
    expected: 'year, month and day',
    example: '2026-03-01',
  });
}

export const isoDay = (day: Date): string => day.toISOString().slice(0, 10);

/** `Sunday 1 March 2026`. */
export const plainDay = (day: Date): string =>
  `${weekdays[day.getUTCDay()]} ${day.getUTCDate()} ${months[day.getUTCMonth()]} ${day.getUTCFullYear()}`;

/** `1 March`. */
export const shortDay = (day: Date): string => `${day.getUTCDate()} ${months[day.getUTCMonth()]}`;
