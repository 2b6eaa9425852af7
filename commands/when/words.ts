import { AskError } from '../../core/ask-error.ts';
import { capital } from '../sentence.ts';

/** A date as it was typed, before anything is known of today. */
export type DayWords =
  | { readonly kind: 'ahead'; readonly days: number }
  | { readonly kind: 'weekday'; readonly weekday: number; readonly next: boolean }
  | { readonly kind: 'date'; readonly year?: number; readonly month: number; readonly day: number };

export interface ClockWords {
  readonly hour: number;
  readonly minute: number;
  /** What was typed where it names no hour: `morning`. */
  readonly about?: string;
}

/** A moment as it was typed. */
export type WhenWords =
  | { readonly kind: 'span'; readonly hours: number; readonly span: Span; readonly clock?: ClockWords }
  | { readonly kind: 'day'; readonly day?: DayWords; readonly clock?: ClockWords };

/** Whole days keep the hour across a change of clocks; hours do not. */
export interface Span {
  readonly years: number;
  readonly months: number;
  readonly weeks: number;
  readonly days: number;
}

export interface Split {
  readonly when: WhenWords;
  /** What stands beside it. */
  readonly what: string;
}

/**
 * A moment at the beginning of a text, or at its end: `saturday 9am light the fire`, `light the fire in 36 h`.
 * @throws AskError where it may be two; its example is the text with one of them in it
 */
export function splitWhen(text: string): Split | undefined {
  const clean = text.replace(/\s+/g, ' ').trim();
  try {
    return splitIn(clean);
  } catch (error) {
    if (!(error instanceof Unclear)) throw error;
    const { typed, fix, ...parts } = error.parts;
    const at = clean.toLowerCase().indexOf(typed.toLowerCase());
    const mended = at < 0 ? fix : `${clean.slice(0, at)}${fix}${clean.slice(at + typed.length)}`;
    throw new AskError({ ...parts, example: mended.slice(0, 200) });
  }
}

function splitIn(clean: string): Split | undefined {
  const first = takeWhen(clean.replace(/^me\s+(?!to\b)/i, ''));
  if (first) return { when: first[0], what: first[1].replace(/^(?:[-–—:]\s*)?(?:to\s+)?/i, '').trim() };
  let fault: unknown;
  for (const { index } of clean.matchAll(/ /g)) {
    try {
      const last = takeWhen(clean.slice(index + 1));
      if (last && last[1] === '') return { when: last[0], what: taskOf(clean.slice(0, index)) };
    } catch (error) {
      fault = error;
    }
  }
  if (fault) throw fault;
  return undefined;
}

const taskOf = (text: string): string => text.replace(/[\s,:–—-]+$/, '').replace(/^(?:me )?to /i, '');

interface UnclearParts {
  readonly code: 'ambiguous' | 'out-of-range' | 'unreadable';
  readonly what: string;
  readonly expected: string;
  /** What was typed, and what may stand in its place. */
  readonly typed: string;
  readonly fix: string;
}

/** A part of a text that can't be read; which text it stands in is known further out. */
class Unclear extends Error {
  readonly parts: UnclearParts;

  constructor(parts: UnclearParts) {
    super(parts.what);
    this.parts = parts;
  }
}

type Taken<Value> = readonly [Value, rest: string] | undefined;

function take(
  text: string,
  pattern: RegExp,
): readonly [groups: Record<string, string | undefined>, rest: string] | undefined {
  const found = new RegExp(`^(?:${pattern.source})(?![\\p{L}\\p{N}/])`, 'iu').exec(text);
  if (!found) return undefined;
  return [found.groups ?? {}, text.slice(found[0].length).replace(/^[\s,]+/, '')];
}

const optional = (text: string, pattern: RegExp): string => take(text, pattern)?.[1] ?? text;

function takeWhen(text: string): Taken<WhenWords> {
  const span = takeSpan(text);
  if (span) {
    const [{ hours, ...whole }, rest] = span;
    const clock = hours === 0 ? takeClock(optional(rest, /at/)) : undefined;
    return [{ kind: 'span', hours, span: whole, ...(clock ? { clock: clock[0] } : {}) }, clock?.[1] ?? rest];
  }
  const day = takeDay(optional(text, /on/));
  if (day) {
    const clock = hourAt(day[1], true);
    const hour = clock?.[0] ?? day[0].clock;
    return [{ kind: 'day', day: day[0].day, ...(hour ? { clock: hour } : {}) }, clock?.[1] ?? day[1]];
  }
  const clock = hourAt(text, false);
  if (!clock) return undefined;
  const after = takeDay(optional(clock[1], /on/));
  return after
    ? [{ kind: 'day', day: after[0].day, clock: clock[0] }, after[1]]
    : [{ kind: 'day', clock: clock[0] }, clock[1]];
}

/** Behind a date or an `at` a bare number may be an hour, and nobody knows which. */
function hourAt(text: string, behindDate: boolean): Taken<ClockWords> {
  const rest = take(text, /at/)?.[1];
  const clock = takeClock(rest ?? text);
  if (clock) return clock;
  const bare = rest === undefined ? behindDate && take(text, /(?<hour>\d{1,2})(?= )/) : take(rest, /(?<hour>\d{1,2})/);
  if (bare && Number(bare[0].hour) <= 24) throw whichHour(Number(bare[0].hour), rest === undefined);
  return undefined;
}

const numbers: Readonly<Record<string, number>> = { a: 1, an: 1, one: 1, two: 2, three: 3, four: 4, six: 6, half: 0.5 };

function takeSpan(text: string): Taken<Span & { readonly hours: number }> {
  let rest = take(text, /in/)?.[1];
  if (rest === undefined) return undefined;
  const span = { years: 0, months: 0, weeks: 0, days: 0, hours: 0 };
  let found = false;
  for (;;) {
    const part = take(
      optional(rest, /and/),
      /(?<count>\d+(?:[.,]\d+)?|an?|one|two|three|four|six|half an?) ?(?<unit>min(?:ute)?s?|h(?:(?:ou)?rs?)?|d(?:ays?)?|w(?:ee)?ks?|w|mon(?:th)?s?|months?|y(?:ea)?rs?)/,
    );
    if (!part) break;
    const [{ count = '1', unit = 'h' }, left] = part;
    const many = numbers[count.toLowerCase().split(' ', 1)[0] ?? ''] ?? Number(count.replace(',', '.'));
    add(span, unit.toLowerCase(), many);
    rest = left;
    found = true;
  }
  return found ? [span, rest] : undefined;
}

type Counted = { -readonly [Key in keyof (Span & { hours: number })]: number };

/** Part of a day or a week is hours; part of a month is nothing. */
function add(span: Counted, unit: string, many: number): void {
  if (unit.startsWith('min')) span.hours += many / 60;
  else if (unit.startsWith('h')) span.hours += many;
  else if (Number.isInteger(many)) span[wholeUnits[unit.slice(0, 1)] ?? 'days'] += many;
  else if (unit.startsWith('d') || unit.startsWith('w')) span.hours += many * (unit.startsWith('d') ? 24 : 168);
  else throw wholeOnly(String(many), unit);
}

const wholeUnits: Readonly<Record<string, keyof Span>> = { d: 'days', w: 'weeks', m: 'months', y: 'years' };

const weekdays = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];
const months = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];
const startingWith = (all: readonly string[], word: string): number =>
  all.findIndex((one) => one.startsWith(word.toLowerCase().slice(0, 3))) + 1;
export const monthNames = months.map(capital);

const monthPattern =
  'jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?';
const dayFirst = new RegExp(
  `(?<day>\\d{1,2})(?:st|nd|rd|th|\\.)? (?:of )?(?<month>${monthPattern})\\.?(?:,? (?<year>\\d{4}))?`,
);
const monthFirst = new RegExp(
  `(?<month>${monthPattern})\\.? (?<day>\\d{1,2})(?:st|nd|rd|th)?(?![:.]?\\d)(?:,? (?<year>\\d{4}))?`,
);

function takeDay(text: string): Taken<{ readonly day: DayWords; readonly clock?: ClockWords }> {
  const ahead: readonly (readonly [RegExp, number, ClockWords?])[] = [
    [/(?:the )?day after tomorrow/, 2],
    [/tomorrow/, 1],
    [/today/, 0],
    [/tonight/, 0, { hour: 20, minute: 0, about: 'tonight' }],
  ];
  for (const [pattern, days, clock] of ahead) {
    const found = take(text, pattern);
    if (found) return [{ day: { kind: 'ahead', days }, ...(clock ? { clock } : {}) }, found[1]];
  }
  const weekday = take(
    text,
    /(?<which>next|this|coming)? ?(?<day>mon(?:day)?|tue(?:s(?:day)?)?|wed(?:nesday)?|thu(?:r(?:s(?:day)?)?)?|fri(?:day)?|sat(?:urday)?|sun(?:day)?)/,
  );
  if (weekday) {
    const [{ which = '', day = '' }, rest] = weekday;
    const next = which.toLowerCase() === 'next';
    return [{ day: { kind: 'weekday', weekday: startingWith(weekdays, day), next } }, rest];
  }
  const iso = take(
    text.replace(/^(\d{4}-\d{2}-\d{2})T(?=\d)/, '$1 '),
    /(?<year>\d{4})-(?<month>\d{1,2})-(?<day>\d{1,2})/,
  );
  if (iso) return [{ day: dated(iso[0]) }, iso[1]];
  for (const pattern of [dayFirst, monthFirst]) {
    const found = take(text, pattern);
    if (!found) continue;
    const { month = '', ...others } = found[0];
    return [{ day: dated({ ...others, month: String(startingWith(months, month)) }) }, found[1]];
  }
  const dotted = take(text, /(?<day>\d{1,2})\.(?<month>\d{1,2})\.(?<year>\d{4})?/);
  if (dotted) return [{ day: dated(dotted[0]) }, dotted[1]];
  const slashed = take(text, /(?<first>\d{1,2})\/(?<second>\d{1,2})(?:\/(?<year>\d{4}))?/);
  return slashed && [{ day: slashedDay(slashed[0]) }, slashed[1]];
}

function dated({ year, month, day }: Record<string, string | undefined>): DayWords {
  return {
    kind: 'date',
    ...(year === undefined ? {} : { year: Number(year) }),
    month: Number(month),
    day: Number(day),
  };
}

function slashedDay({ first = '', second = '', year }: Record<string, string | undefined>): DayWords {
  const [a, b] = [Number(first), Number(second)];
  if (a <= 12 && b <= 12 && a !== b && a > 0 && b > 0) throw whichDay(a, b, year);
  const more = year === undefined ? {} : { year };
  return a > 12 ? dated({ ...more, day: first, month: second }) : dated({ ...more, day: second, month: first });
}

const parts: Readonly<Record<string, number>> = { morning: 9, noon: 12, midday: 12, afternoon: 15, evening: 19 };

function takeClock(text: string): Taken<ClockWords> {
  const half = take(text, /(?<hour>\d{1,2})(?:[:.](?<minute>\d{2}))? ?(?<half>[ap])\.?m\.?/);
  if (half) {
    const [{ hour = '', minute = '0', half: which = 'a' }, rest] = half;
    const [h, m] = [Number(hour), Number(minute)];
    if (h < 1 || h > 12 || m > 59) throw noHour(`${hour}${minute === '0' ? '' : `:${minute}`} ${which}m`);
    return [{ hour: (h % 12) + (which.toLowerCase() === 'p' ? 12 : 0), minute: m }, rest];
  }
  const whole =
    take(text, /(?<hour>\d{1,2}):(?<minute>\d{2})(?::\d{2})?(?: ?h)?/) ??
    take(text, /(?<hour>\d{1,2}) ?h(?<minute>\d{2})?/);
  if (whole) {
    const [{ hour = '', minute = '0' }, rest] = whole;
    const [h, m] = [Number(hour), Number(minute)];
    if (h > 23 || m > 59) throw noHour(`${hour}:${minute.padStart(2, '0')}`);
    return [{ hour: h, minute: m }, rest];
  }
  const named = take(text, /(?:in the |at )?(?<part>morning|noon|midday|afternoon|evening)/);
  if (named) {
    const part = named[0].part?.toLowerCase() ?? 'noon';
    const exact = part === 'noon' || part === 'midday';
    return [{ hour: parts[part] ?? 12, minute: 0, ...(exact ? {} : { about: part }) }, named[1]];
  }
  const midnight = take(text, /(?:at )?midnight/);
  if (midnight) throw whichMidnight();
  return undefined;
}

const whichHour = (hour: number, bare: boolean) =>
  new Unclear({
    code: 'ambiguous',
    what: bare
      ? `${hour} may be an hour, in the morning or the evening, or a number of something`
      : `${hour} may be in the morning or in the evening`,
    expected: hour > 12 ? `${hour}:00` : `${hour}:00 or ${hour} pm`,
    typed: bare ? ` ${hour} ` : `at ${hour}`,
    fix: bare ? ` ${hour}:00 ` : `at ${hour}:00`,
  });

const whichMidnight = () =>
  new Unclear({
    code: 'ambiguous',
    what: 'midnight may be the one that begins the day or the one that ends it',
    expected: '0:00 for the beginning of a day, 23:59 for its end',
    typed: 'midnight',
    fix: '23:59',
  });

const whichDay = (a: number, b: number, year: string | undefined) => {
  const after = year === undefined ? '' : ` ${year}`;
  const [first, second] = [`${a} ${monthNames[b - 1]}${after}`, `${b} ${monthNames[a - 1]}${after}`];
  return new Unclear({
    code: 'ambiguous',
    what: `${a}/${b} may be ${first} or ${second}`,
    expected: `the month in letters: ${first} or ${second}`,
    typed: `${a}/${b}${year === undefined ? '' : `/${year}`}`,
    fix: first,
  });
};

const noHour = (typed: string) =>
  new Unclear({
    code: 'out-of-range',
    what: `there is no ${typed} on a clock`,
    expected: '0:00 to 23:59, or 1 to 12 with am or pm',
    typed,
    fix: '9:00',
  });

const wholeOnly = (count: string, unit: string) =>
  new Unclear({
    code: 'unreadable',
    what: `part of a ${unit.startsWith('y') ? 'year' : 'month'} is no certain number of days`,
    expected: 'whole ones, or weeks and days',
    typed: `${count} ${unit}`,
    fix: '6 weeks',
  });
