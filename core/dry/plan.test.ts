import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isFact } from '../hazard/facts.ts';
import { addDays, daysBetween, isoDay, middayOf, plainDay, readDay } from './calendar.ts';
import { kinds } from './kind.ts';
import { type PlanInput, planOf } from './plan.ts';

const kindOf = (id: string) => kinds.find((one) => one.id === id)!;
const base: PlanInput = {
  from: readDay('2026-03-01'),
  kind: kindOf('rammed'),
  ready_days: { typical: 12, high: 19.3 },
  heat: 'thermometer',
  until_cold_s: 30 * 3600,
};
const ids = (more: Partial<PlanInput>) =>
  planOf({ ...base, ...more }).map(({ id, day_offset }) => `${id} ${day_offset}`);
const inputs = fc
  .record({
    kind: fc.constantFrom(...kinds),
    typical: fc.double({ min: 0, max: 60, noNaN: true }),
    more: fc.double({ min: 0, max: 60, noNaN: true }),
    heat: fc.constantFrom('thermometer' as const, 'charcoal' as const),
    fill: fc.boolean(),
    stays_covered: fc.boolean(),
    until_cold_s: fc.double({ min: 3600, max: 4e5, noNaN: true }),
    happened: fc.option(
      fc.record({ what: fc.constantFrom('rained' as const, 'late' as const, 'steams' as const), day: fc.nat(40) }),
      { nil: undefined },
    ),
  })
  .map(({ typical, more, happened, ...rest }): PlanInput => {
    // The caller says when it is ready: never before what has come between.
    const at = happened ? Math.max(typical, happened.day) : typical;
    return { ...base, ...rest, ready_days: { typical: at, high: at + more }, ...(happened ? { happened } : {}) };
  });

describe('a plan', () => {
  it('of a rammed lining covers, airs, weighs twice, dries by fire at the late end, fires and looks', () => {
    expect(ids({})).toEqual(['cover 0', 'open 2', 'weigh 12', 'weigh-again 19', 'warm 20', 'fire 21', 'look 23']);
    expect(planOf(base)[0]!.at).toEqual(readDay('2026-03-01'));
    expect(isoDay(planOf(base)[4]!.at)).toBe('2026-03-21');
  });

  it('of a castable keeps it moist and goes to the fire', () => {
    expect(ids({ kind: kindOf('castable'), ready_days: { typical: 1, high: 2 } })).toEqual([
      ...['moist 0', 'strip 2', 'warm 2', 'fire 3', 'look 5'],
    ]);
  });

  it('starts anew after rain, holds where it steams, and moves what is late', () => {
    expect(ids({ happened: { what: 'rained', day: 6 }, ready_days: { typical: 18, high: 25 } })[0]).toBe('rain 6');
    expect(ids({ happened: { what: 'steams', day: 20 }, ready_days: { typical: 20, high: 21 } })).toEqual([
      ...['steam 20', 'warm 21', 'fire 22', 'look 24'],
    ]);
    expect(ids({ happened: { what: 'late', day: 40 }, ready_days: { typical: 40, high: 40 } })[0]).toBe('warm 40');
  });

  it('is in order, names each step once, lights nothing before it is ready and holds to facts that are known', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const plan = planOf(input);
        const offsets = plan.map(({ day_offset }) => day_offset);
        expect(offsets).toEqual(offsets.toSorted((a, b) => a - b));
        expect(new Set(plan.map(({ id }) => id)).size).toBe(plan.length);
        expect(plan.map(({ id }) => id).slice(-1)).toEqual(['look']);
        for (const { id, day_offset, at, facts, holds, what, doneWhen } of plan) {
          expect(daysBetween(input.from, at)).toBe(day_offset);
          expect(facts.every(isFact)).toBe(true);
          expect(`${what}${doneWhen}${holds.join('')}`).not.toContain('!');
          if (input.happened) expect(day_offset).toBeGreaterThanOrEqual(input.happened.day);
          if (id !== 'warm' && id !== 'fire') continue;
          expect(day_offset).toBeGreaterThanOrEqual(input.ready_days.high - 1e-6);
          expect(holds.length).toBeGreaterThan(0);
          expect(facts).toEqual(expect.arrayContaining(['hot-work', 'damp-lining']));
          expect(facts.includes('charcoal')).toBe(input.heat === 'charcoal');
        }
      }),
    );
  });
});

describe('days', () => {
  it('are counted from midday to midday, over the ends of months and leap years', () => {
    expect(plainDay(addDays(readDay('2028-02-28'), 1))).toBe('Tuesday 29 February 2028');
    expect(daysBetween(readDay('2026-03-01'), readDay('2027-03-01'))).toBe(365);
    expect(isoDay(middayOf(new Date('2026-03-01T23:59:59Z')))).toBe('2026-03-01');
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60_000 }), (count) => {
        const day = addDays(readDay('2000-01-01'), count);
        expect(readDay(isoDay(day))).toEqual(day);
        expect(daysBetween(readDay('2000-01-01'), day)).toBe(count);
      }),
    );
  });

  it.each(['2026-02-30', '2026-13-01', '1/3/2026', 'Monday', '', '0026-01-01'])('refuse "%s"', (text) =>
    expect(() => readDay(text)).toThrow(/no day/),
  );
});
