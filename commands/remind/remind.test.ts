import fc from 'fast-check';
import { beforeEach, describe, expect, test } from 'vitest';
import { cautionsFor } from '../../core/hazard/cautions.ts';
import { answerLine } from '../answer.ts';
import type { Card } from '../card.ts';
import { inProcessMemory, type Memory } from '../memory.ts';
import type { Reach } from '../reach.ts';
import { calendarOf } from './calendar.ts';
import { saidOf } from './due.ts';
import { factsOf, holdsOf } from './hazards.ts';

/** A Wednesday, 19:00 in Berlin. */
const now = new Date('2026-11-25T18:00:00Z');
let memory: Memory;
beforeEach(() => {
  memory = inProcessMemory();
});

const here: Reach = { kind: 'here', place: 'x:here', said: 'I write to you here.' };
const ask = (line: string, { reach = here, at = now }: { reach?: Reach; at?: Date } = {}) =>
  answerLine(line, { asker: 'ann', place: 'shed', now: at, memory, reach: async () => reach });

async function cardOf(line: string, given = {}): Promise<Card> {
  const reply = await ask(line, given);
  if (reply.kind === 'error') throw new Error(`${line}: ${reply.error.what}`);
  return reply.card;
}

async function refusalOf(line: string, given = {}) {
  const reply = await ask(line, given);
  if (reply.kind === 'card') throw new Error(`${line} was answered: ${reply.card.headline}`);
  return reply;
}

describe('a zone', () => {
  test('is asked for once, with a line that gives it', async () => {
    const { error } = await refusalOf('remind saturday 9am light the small fire');
    expect(error.example).toBe('remind saturday 9am light the small fire zone=Europe/Berlin');
    await cardOf(error.example);
    expect((await cardOf('remind sunday 9am look')).headline).toContain('Sunday 29 November 2026, 9:00 (Europe/Berlin');
    expect(await memory.zone('ann')).toBe('Europe/Berlin');
  });

  test('is not needed for so many hours from now', async () => {
    const { headline } = await cardOf('remind in 36 h weigh the lining');
    expect(headline).toContain('Friday 27 November 2026, 6:00 (UTC');
  });

  test('is set, shown and refused by its own command', async () => {
    expect((await cardOf('zone')).headline).toBe('No time zone of yours is known: reminders ask for it.');
    expect((await cardOf('zone chicago')).notes[0]).toBe('It is Wednesday 25 November 2026, 12:00 there.');
    expect((await cardOf('zone')).headline).toBe('Your time zone is America/Chicago.');
    expect((await refusalOf('zone UTC+2')).error).toMatchObject({ code: 'refused', example: 'zone Europe/Berlin' });
    expect((await refusalOf('zone Berln')).error.example).toBe('zone Europe/Berlin');
  });
});

test('what is set is kept as it will be said, where it will be said', async () => {
  await cardOf('zone Berlin');
  const card = await cardOf('remind saturday 9am light the small fire');
  expect(card.headline).toBe(
    'I will remind you on Saturday 28 November 2026, 9:00 (Europe/Berlin, in 3 days): light the small fire.',
  );
  expect(card.cautions.at(-1)?.id).toBe('local-rules');
  expect(card.notes.join(' ')).toContain('no rain into it');
  expect(card.attachment).toBeUndefined();
  expect(await memory.reminders('ann')).toMatchObject([
    {
      place: 'x:here',
      dueAt: new Date('2026-11-28T08:00:00Z'),
      zone: 'Europe/Berlin',
      what: 'light the small fire',
      facts: ['hot-work'],
    },
  ]);
});

test('who cannot be called is told why, and given a file for the calendar', async () => {
  const reach: Reach = { kind: 'none', why: 'this prompt can call nobody' };
  const card = await cardOf('remind in 2 h weigh; twice, by "hand"', { reach });
  expect(card.headline).toMatch(/^Noted for /);
  expect(card.notes.at(-1)).toMatch(/^This prompt can call nobody: write it down/);
  const text = card.attachment?.text ?? '';
  expect(text).toContain('SUMMARY:weigh\\; twice\\, by "hand"\r\n');
  expect(text).toContain('DTSTART:20261125T200000Z\r\n');
});

test('clocks that change just then are told', async () => {
  await cardOf('zone Berlin');
  expect((await cardOf('remind 28 march 2027 2:30 look')).notes[0]).toBe(
    'Clocks go forward that day and leave out 2:30: 3:30 is taken.',
  );
});

test('a person has room for so many', async () => {
  for (let n = 0; n < 100; n++) await cardOf(`remind in ${n + 1} h look`);
  expect((await refusalOf('remind in 3 h look')).error).toMatchObject({ code: 'refused', example: 'remind list' });
  await cardOf('remind drop all');
  await cardOf('remind in 3 h look');
});

test.each([
  ['remind', 'missing'],
  ['remind saturday 9am', 'missing'],
  ['remind look at the pot', 'unreadable'],
  ['remind look when=soon', 'unreadable'],
  ['remind today 7am light the fire', 'out-of-range'],
  ['remind 3/4 9:00 light the fire', 'ambiguous'],
  ['remind for=(mix 30 L)', 'impossible'],
  ['remind for=(dry 1.5 in clay-sand) at=dawn', 'unreadable'],
  ['remind drop 7', 'nothing-before'],
])('%s: %s, with an example that works', async (line, code) => {
  await cardOf('zone Berlin');
  const { error } = await refusalOf(line);
  expect(error.code).toBe(code);
  const again = await ask(error.example);
  expect(again.kind, `${error.example}: ${again.kind === 'error' ? again.error.what : ''}`).toBe('card');
});

test('cautions reach what is refused', async () => {
  const { cautions } = await refusalOf('remind today 7am melt brass in the garage');
  expect(cautions.map(({ id }) => id)).toContain('local-rules');
});

describe('the list', () => {
  test('has the soonest first, and each can be taken back by number, words or all', async () => {
    await cardOf('zone Berlin');
    for (const line of ['in 3 h look at the pot', 'in 1 h weigh it', 'in 2 h look at the fire', 'in 4 h sweep'])
      await cardOf(`remind ${line}`);
    const { table, attachment } = await cardOf('remind list');
    expect(table?.rows.map(([, , what]) => what)).toEqual(['weigh it', 'look at the fire', 'look at the pot', 'sweep']);
    expect(attachment?.text.match(/BEGIN:VEVENT/g)).toHaveLength(4);
    expect((await refusalOf('remind drop look')).error).toMatchObject({ code: 'ambiguous', example: 'remind drop 2' });
    await cardOf('remind drop 1');
    await cardOf('remind drop the pot');
    expect((await refusalOf('remind drop weigh')).error.code).toBe('unknown-name');
    expect((await cardOf('remind drop all')).headline).toBe('Taken back: 2 reminders.');
    expect((await cardOf('remind list')).headline).toBe('No reminder waits for you.');
  });
});

describe('a drying plan', () => {
  const plan = 'dry 1.5 in clay-sand from=2026-11-20';

  test('is taken step by step, at the hour that is asked for, with its holds and facts', async () => {
    await cardOf('zone America/Chicago');
    const steps = (await cardOf(plan)).plan ?? [];
    const card = await cardOf(`remind for=(${plan}) at=7:30`);
    const waiting = await memory.reminders('ann');
    const ahead = steps.filter(({ at }) => at > now);
    expect(waiting.map(({ what, holds }) => ({ what, holds }))).toEqual(
      ahead.map(({ what, holds }) => ({ what, holds })),
    );
    expect(card.table?.rows).toHaveLength(ahead.length);
    for (const [at, { dueAt, facts, plan: name }] of waiting.entries()) {
      // 7:30 in Chicago in winter.
      expect(dueAt.toISOString()).toBe(`${ahead[at]?.at.toISOString().slice(0, 10)}T13:30:00.000Z`);
      expect(facts).toEqual(expect.arrayContaining([...(ahead[at]?.facts ?? [])]));
      expect(name).toBe('dry');
    }
    const fire = waiting.find(({ what }) => what.startsWith('The first fire'));
    expect(saidOf(fire!, { now, mayBeRepeat: false }).holds.length).toBeGreaterThan(0);
    expect(card.cautions.at(-1)?.id).toBe('local-rules');
  });

  test('takes the place of what waited of it, and of nothing else', async () => {
    await cardOf('zone Berlin');
    await cardOf('remind in 1 h look');
    await cardOf(`remind for=(${plan})`);
    const before = (await memory.reminders('ann')).length;
    const card = await cardOf(`remind for=(${plan}) at=6:00`);
    expect(card.notes.join(' ')).toMatch(/of the plan as it was are taken back/);
    expect(await memory.reminders('ann')).toHaveLength(before);
    expect((await cardOf('remind drop dry')).headline).toMatch(/of dry\.$/);
    expect(await memory.reminders('ann')).toHaveLength(1);
  });

  test('that is moved by rain moves its reminders, at the hour they had', async () => {
    await cardOf('zone Berlin');
    await cardOf(`remind for=(${plan}) at=6:00`);
    await cardOf(plan);
    const before = await memory.reminders('ann');
    expect((await cardOf('again where=indoors')).notes.join(' ')).not.toContain('moved');
    expect(await memory.reminders('ann')).toEqual(before);
    await cardOf(plan);
    const { notes, plan: steps = [] } = await cardOf('again happened=rained on=2026-11-24');
    expect(notes[0]).toMatch(/^Your reminders of this plan have moved with it/);
    const moved = await memory.reminders('ann');
    expect(moved.map(({ what }) => what)).toEqual(steps.filter(({ at }) => at > now).map(({ what }) => what));
    for (const { dueAt } of moved) expect(dueAt.toISOString()).toContain('T05:00:00.000Z');
  });

  test('of a build goes by its name', async () => {
    await cardOf('zone Berlin');
    await cardOf(`build save big can for=(${plan})`);
    expect((await cardOf('remind for=big can')).headline).toContain('of big can');
    expect((await memory.reminders('ann')).every((one) => one.plan === 'big can')).toBe(true);
  });
});

test('whatever a reminder to light, melt or pour says, it says what can hurt and what must hold', async () => {
  const doing = fc.constantFrom('light', 'fire up', 'burn', 'melt', 'pour', 'cast', 'heat', 'kindle', 'firing');
  const words = fc.array(
    fc.constantFrom('the', 'small', 'pot', 'at last', 'brass', 'in the garage', '<b>', '@everyone'),
    { maxLength: 5 },
  );
  await fc.assert(
    fc.asyncProperty(doing, words, words, async (task, before, after) => {
      const what = [...before, task, ...after].join(' ');
      const facts = factsOf(what);
      const said = saidOf(
        { id: 'X', asker: 'a', place: 'p', dueAt: now, zone: 'UTC', what, holds: holdsOf(facts), facts },
        { now, mayBeRepeat: false },
      );
      expect(said.cautions.at(-1)?.id).toBe('local-rules');
      expect(said.holds.length).toBeGreaterThan(0);
    }),
  );
});

test('a name that is no fact stands in no reminder', () => {
  expect(factsOf('look', ['hot-work', 'no such fact'])).toEqual(['hot-work']);
  expect(cautionsFor({ facts: factsOf('look') })).toEqual([]);
});

describe('what is said when it is due', () => {
  const reminder = {
    id: 'K7M2P9QX',
    asker: 'a',
    place: 'p',
    dueAt: now,
    zone: 'Europe/Berlin',
    what: 'look',
    holds: [],
    facts: [],
  };
  const said = (after_min: number, mayBeRepeat = false) =>
    saidOf(reminder, { now: new Date(now.getTime() + after_min * 60_000), mayBeRepeat });

  test('late ones say so, by the day', () => {
    expect(said(1).remarks).toEqual([]);
    expect(said(30).remarks).toEqual(['Due at 19:00; I was away.']);
    expect(said(20 * 60).remarks).toEqual(['Due yesterday, 19:00; I was away.']);
    expect(said(75 * 60).remarks).toEqual(['Due 3 days ago, 19:00; I was away.']);
    expect(said(1, true).remarks).toEqual([expect.stringContaining('may be a repeat')]);
  });

  test('the foot names it and its time', () => {
    expect(said(0).foot).toBe('Reminder K7M2P9QX · Wednesday 25 November 2026, 19:00 (Europe/Berlin)');
  });
});

test('a calendar file keeps to RFC 5545: CRLF, at most 75 octets a line, no letter torn, signs escaped', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: 'grapheme', maxLength: 300 }),
      fc.array(fc.string({ maxLength: 100 }), { maxLength: 4 }),
      (what, holds) => {
        const text = calendarOf([{ dueAt: now, what, holds }], now);
        expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
        const lines = text.slice(0, -2).split('\r\n');
        for (const line of lines) {
          expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
          expect(line).not.toMatch(/[\n\r]/);
        }
        const whole = lines.join('\r\n').replaceAll('\r\n ', '').split('\r\n');
        for (const line of whole) expect(line).toMatch(/^[A-Z]+[:;]/);
        const summary = whole.find((line) => line.startsWith('SUMMARY:'))?.slice(8) ?? '';
        const back = summary.replace(/\\([\\;,n])/g, (_, sign: string) => (sign === 'n' ? '\n' : sign));
        expect(back).toBe(
          what
            .toWellFormed()
            .replace(/\r\n?/g, '\n')
            .replace(/[^\P{Cc}\n]/gu, ' '),
        );
      },
    ),
  );
});
