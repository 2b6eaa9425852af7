import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, test } from 'vitest';
import { AskError } from '../../core/ask-error.ts';
import { momentOf, momentOn } from './moment.ts';
import { dayAndHour, daysBetween, fromNow } from './say.ts';
import { splitWhen } from './words.ts';
import { zoneNamed } from './zone-names.ts';

const berlin = 'Europe/Berlin';
/** A Wednesday, 19:00 in Berlin. */
const wednesday = new Date('2026-11-25T18:00:00Z');

async function read(text: string, { zone = berlin, now = wednesday } = {}) {
  const split = splitWhen(text);
  if (!split) throw new Error(`no time in "${text}"`);
  const { at, note, assumedHour } = await momentOf(split.when, { zone, now, units: 'metric' });
  return { at: at.toISOString(), what: split.what, note, assumedHour };
}

async function refusal(text: string, given = {}): Promise<AskError> {
  try {
    await read(text, given);
  } catch (error) {
    if (error instanceof AskError) return error;
    throw error;
  }
  throw new Error(`"${text}" was read`);
}

test.each([
  ['tomorrow 7am weigh', '2026-11-26T06:00:00.000Z', 'weigh'],
  ['saturday 9:00 light the fire', '2026-11-28T08:00:00.000Z', 'light the fire'],
  ['Sat at 9 p.m.: light', '2026-11-28T20:00:00.000Z', 'light'],
  ['in 3 weeks look', '2026-12-16T18:00:00.000Z', 'look'],
  ['in 3 weeks at 8:30 look', '2026-12-16T07:30:00.000Z', 'look'],
  ['in 36 h weigh', '2026-11-27T06:00:00.000Z', 'weigh'],
  ['in 1 day and 12 hours weigh', '2026-11-27T06:00:00.000Z', 'weigh'],
  ['in half an hour look', '2026-11-25T18:30:00.000Z', 'look'],
  ['in 1,5 h look', '2026-11-25T19:30:00.000Z', 'look'],
  ['in 6 months look', '2027-05-25T17:00:00.000Z', 'look'],
  ['2027-04-12 18:30 melt', '2027-04-12T16:30:00.000Z', 'melt'],
  ['2027-04-12T18:30 melt', '2027-04-12T16:30:00.000Z', 'melt'],
  ['12 april 18:30 melt', '2027-04-12T16:30:00.000Z', 'melt'],
  ['April 12th, 2027 at 6:30pm melt', '2027-04-12T16:30:00.000Z', 'melt'],
  ['12.4.2027 18:30 melt', '2027-04-12T16:30:00.000Z', 'melt'],
  ['25/4 18:30 melt', '2027-04-25T16:30:00.000Z', 'melt'],
  ['7pm on friday melt', '2026-11-27T18:00:00.000Z', 'melt'],
  ['19:01 look', '2026-11-25T18:01:00.000Z', 'look'],
  ['7am look', '2026-11-26T06:00:00.000Z', 'look'],
  ['wednesday 19:01 look', '2026-11-25T18:01:00.000Z', 'look'],
  ['wednesday 18:59 look', '2026-12-02T17:59:00.000Z', 'look'],
  ['12am look', '2026-11-25T23:00:00.000Z', 'look'],
  ['tomorrow noon look', '2026-11-26T11:00:00.000Z', 'look'],
  ['29 february 9:00 look', '2028-02-29T08:00:00.000Z', 'look'],
  ['light the small fire saturday 9am', '2026-11-28T08:00:00.000Z', 'light the small fire'],
  ['me to look at 4 bags in 36 h', '2026-11-27T06:00:00.000Z', 'look at 4 bags'],
  ['2 bags of clay come saturday 9am', '2026-11-28T08:00:00.000Z', '2 bags of clay come'],
])('%s', async (text, at, what) => {
  const now = text.startsWith('29 february') ? new Date('2026-11-25T18:00:00Z') : wednesday;
  const split = splitWhen(text);
  const found = await read(text, { now }).catch((error) => error);
  expect(found).toMatchObject({ at, what });
  expect(split).toBeDefined();
});

test('an hour that was not typed is named', async () => {
  expect((await read('saturday light')).assumedHour).toBe('9:00');
  expect((await read('saturday evening light')).assumedHour).toBe('19:00');
  expect((await read('saturday 9:00 light')).assumedHour).toBeUndefined();
});

describe('is asked back or refused', () => {
  test.each([
    ['3/4 9:00 weigh', 'ambiguous', '3 April 9:00 weigh'],
    ['3/4/2027 9:00 weigh', 'ambiguous', '3 April 2027 9:00 weigh'],
    ['next saturday 9:00 weigh', 'ambiguous', '5 December'],
    ['saturday at 9 weigh', 'ambiguous', 'saturday at 9:00 weigh'],
    ['saturday 9 bags', 'ambiguous', 'saturday 9:00 bags'],
    ['weigh at 9', 'ambiguous', 'weigh at 9:00'],
    ['saturday midnight weigh', 'ambiguous', 'saturday 23:59 weigh'],
    ['today 7am weigh', 'out-of-range', 'tomorrow 7:00'],
    ['2026-04-12 18:30 weigh', 'out-of-range', 'tomorrow 18:30'],
    ['31 february weigh', 'out-of-range', '28 February'],
    ['31/13 weigh', 'out-of-range', '12 april'],
    ['25:00 weigh', 'out-of-range', '9:00 weigh'],
    ['13 pm weigh', 'out-of-range', '9:00 weigh'],
    ['2029-01-01 weigh', 'out-of-range', 'in 12 months'],
    ['in 99999999 h weigh', 'out-of-range', 'in 12 months'],
    ['in 1.5 months weigh', 'unreadable', 'in 6 weeks weigh'],
  ])('%s', async (text, code, example) => {
    expect(await refusal(text)).toMatchObject({ code, example });
  });

  test('what names no time is none', () => {
    for (const text of ['', 'weigh the lining', 'look at the pot', 'mayor', 'sunny side', 'in the shed', 'may']) {
      expect(splitWhen(text), text).toBeUndefined();
    }
  });

  test('every example can be read where its text stands', async () => {
    for (const text of ['3/4 9:00 weigh', 'saturday at 9 weigh', 'saturday midnight weigh', '25:00 weigh']) {
      await expect(read((await refusal(text)).example)).resolves.toMatchObject({ what: 'weigh' });
    }
  });
});

/** Days on which clocks change, by the tz database. */
describe('over a change of clocks', () => {
  test.each([
    // Forward: an hour, or half an hour, is left out.
    [berlin, '2027-03-28 2:30', '2027-03-28T01:30:00.000Z', /leave out 2:30: 3:30 is taken/],
    ['America/New_York', '2027-03-14 2:30', '2027-03-14T07:30:00.000Z', /leave out 2:30: 3:30 is taken/],
    ['Australia/Lord_Howe', '2027-10-03 2:15', '2027-10-02T15:45:00.000Z', /leave out 2:15: 2:45 is taken/],
    // Back: it comes twice.
    [berlin, '2027-10-31 2:30', '2027-10-31T00:30:00.000Z', /2:30 comes twice/],
    ['America/New_York', '2026-11-01 1:30', '2026-11-01T05:30:00.000Z', /1:30 comes twice/],
    ['Australia/Lord_Howe', '2027-04-04 1:45', '2027-04-03T14:45:00.000Z', /1:45 comes twice/],
  ])('%s, %s', async (zone, typed, at, note) => {
    const found = await read(`${typed} look`, { zone, now: new Date('2026-10-01T00:00:00Z') });
    expect(found.at).toBe(at);
    expect(found.note).toMatch(note);
  });

  test.each([
    [berlin, '2027-03-27T08:00:00Z', 'in 1 day', '2027-03-28T07:00:00.000Z'],
    [berlin, '2027-03-27T08:00:00Z', 'in 24 h', '2027-03-28T08:00:00.000Z'],
    ['America/New_York', '2026-10-31T13:00:00Z', 'in 1 week', '2026-11-07T14:00:00.000Z'],
    ['Australia/Lord_Howe', '2027-04-03T00:00:00Z', 'in 2 days', '2027-04-05T00:30:00.000Z'],
  ])('%s: days keep the hour, hours do not (%s, %s)', async (zone, now, typed, at) => {
    expect((await read(`${typed} look`, { zone, now: new Date(now) })).at).toBe(at);
  });
});

const zoneNames = Intl.supportedValuesOf('timeZone');
const zones = fc.constantFrom(...zoneNames);
const moments = fc.integer({ min: Date.UTC(2026, 0, 1), max: Date.UTC(2032, 0, 1) });

/** The date and hour that a zone's clocks show, by the other implementation there is. */
function shown(at: Date, zone: string): string {
  const parts = new Intl.DateTimeFormat('en-CA', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  }).formatToParts(at);
  const of = (type: string) => parts.find((part) => part.type === type)?.value;
  return `${of('year')}-${of('month')}-${of('day')} ${of('hour')}:${of('minute')}`;
}

test('a date and hour is due when the clocks of the zone show it, or the first minute after where they leave it out', async () => {
  await fc.assert(
    fc.asyncProperty(zones, moments, async (zone, from_ms) => {
      const wall = Temporal.Instant.fromEpochMilliseconds(from_ms).toZonedDateTimeISO('UTC').toPlainDateTime();
      const typed = `${wall.toPlainDate()} ${String(wall.hour).padStart(2, '0')}:${String(wall.minute).padStart(2, '0')}`;
      const { at, note } = await momentOn(
        wall.toPlainDate().toString(),
        { hour: wall.hour, minute: wall.minute },
        { zone, now: new Date(0), units: 'metric' },
      );
      const clock = shown(at, zone);
      if (note?.includes('leave out')) {
        // No minute of the day before or after shows it.
        expect(clock > typed).toBe(true);
        for (let minutes = -180; minutes <= 180; minutes += 15) {
          expect(shown(new Date(at.getTime() + minutes * 60_000), zone)).not.toBe(typed);
        }
      } else expect(clock).toBe(typed);
    }),
    { numRuns: 300 },
  );
});

test('the same minute tomorrow is 23 to 25 hours away, and shows the same hour', async () => {
  await fc.assert(
    fc.asyncProperty(zones, moments, async (zone, from_ms) => {
      const now = new Date(Math.floor(from_ms / 60_000) * 60_000);
      const { at } = await momentOf(
        { kind: 'span', hours: 0, span: { years: 0, months: 0, weeks: 0, days: 1 } },
        { zone, now, units: 'metric' },
      );
      const hours = (at.getTime() - now.getTime()) / 3_600_000;
      expect(hours).toBeGreaterThanOrEqual(23);
      expect(hours).toBeLessThanOrEqual(25);
      expect(daysBetween(now, at, zone)).toBe(1);
    }),
    { numRuns: 300 },
  );
});

test('whatever is typed is read, refused in words, or no time at all', async () => {
  const bits = [
    '3/4',
    'at',
    '9',
    'am',
    'saturday',
    'in',
    '3',
    'weeks',
    'next',
    '31',
    'feb',
    '2026-13-40',
    '99:99',
    ',',
    'to',
    'ﬁre',
    '²',
  ];
  const text = fc.oneof(
    fc.string({ maxLength: 40 }),
    fc.array(fc.constantFrom(...bits), { maxLength: 8 }).map((all) => all.join(' ')),
  );
  await fc.assert(
    fc.asyncProperty(text, zones, async (typed, zone) => {
      try {
        const split = splitWhen(typed);
        if (!split) return;
        const { at } = await momentOf(split.when, { zone, now: wednesday, units: 'metric' });
        expect(at.getTime()).toBeGreaterThan(wednesday.getTime());
      } catch (error) {
        expect(error).toBeInstanceOf(AskError);
      }
    }),
    { numRuns: 500 },
  );
});

describe('a zone', () => {
  test.each([
    ['Europe/Berlin', 'Europe/Berlin'],
    ['europe/berlin', 'Europe/Berlin'],
    ['Berlin', 'Europe/Berlin'],
    ['new york', 'America/New_York'],
    ['Kolkata', 'Asia/Kolkata'],
    ['Kyiv', 'Europe/Kyiv'],
    ['US/Eastern', 'US/Eastern'],
    ['port-au-prince', 'America/Port-au-Prince'],
    ['utc', 'UTC'],
  ])('%s is %s', (typed, name) => {
    expect(zoneNamed(typed).toLowerCase()).toBe(name.toLowerCase());
    expect(() => shown(wednesday, zoneNamed(typed))).not.toThrow();
  });

  test.each([
    ['UTC+2', 'refused', /summer time/],
    ['+02:00', 'refused', /summer time/],
    ['GMT-5', 'refused', /summer time/],
    ['Etc/GMT+5', 'refused', /summer time/],
    ['CET', 'refused', /half the year/],
    ['est', 'refused', /half the year/],
    ['Berln', 'unknown-name', /no time zone/],
    ['Mars/Olympus', 'unknown-name', /no time zone/],
    ['', 'unknown-name', /no time zone/],
    ['__proto__', 'unknown-name', /no time zone/],
  ])('"%s" is %s', (typed, code, what) => {
    const refused = (() => {
      try {
        return zoneNamed(typed);
      } catch (error) {
        return error;
      }
    })();
    expect(refused).toMatchObject({ code });
    expect((refused as AskError).what).toMatch(what);
    expect(zoneNamed((refused as AskError).example)).toBe((refused as AskError).example);
  });

  test('the nearest are offered', () => {
    expect(() => zoneNamed('Berln')).toThrow(expect.objectContaining({ example: 'Europe/Berlin' }));
    expect(() => zoneNamed('chicagoo')).toThrow(expect.objectContaining({ example: 'America/Chicago' }));
  });

  test('every zone there is is known by its own name', () => {
    for (const name of zoneNames) if (name.includes('/')) expect(zoneNamed(name)).toBe(name);
  });
});

test('is said with the month in letters, in the reader’s clock', () => {
  const at = new Date('2026-11-28T23:30:00Z');
  expect(dayAndHour(at, { zone: berlin, units: 'metric' })).toBe('Sunday 29 November 2026, 0:30');
  expect(dayAndHour(at, { zone: 'America/Chicago', units: 'US' })).toBe('Saturday 28 November 2026, 5:30 pm');
  expect(fromNow(at, wednesday, berlin)).toBe('in 4 days');
  expect(fromNow(wednesday, at, berlin)).toBe('4 days ago');
});
