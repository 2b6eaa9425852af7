import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findMaterial } from '../materials/catalogue.ts';
import { sourceOf } from '../sources/sources.ts';
import { coalStages } from './data/charcoal.ts';
import { schedules } from './data/schedules.ts';
import { stepTexts } from './data/steps.ts';
import { accesses, activation_J_mol, coverLets, exchanges, places } from './data/weather.ts';
import { findLining, kinds } from './kind.ts';
import { firing } from './schedule.ts';
import { burstLimit } from './steam.ts';

const start_K = 293.15;
const kindOf = (id: string) => kinds.find((one) => one.id === id)!;
const most = (id: string) => Math.max(...schedules.filter((one) => one.id === id).map(({ up_to_m }) => up_to_m));
const fired = (id: string, thickness_m: number) => {
  const kind = kindOf(id);
  const { limit_K } = burstLimit({ strength_Pa: kind.strength_Pa.low });
  return { limit_K, ...firing({ kind, thickness_m, start_K, end_K: kind.ends_K, wet_limit_K: limit_K }) };
};
const cases = fc
  .constantFrom(...kinds)
  .chain(({ id, schedule }) => fc.tuple(fc.constant(id), fc.double({ min: 0.001, max: most(schedule), noNaN: true })));

describe('the data', () => {
  it('names its sources and standings', () => {
    const data = [
      ...schedules,
      ...coalStages,
      ...Object.values(stepTexts),
      ...Object.values(exchanges),
      ...Object.values(accesses),
      ...places.map(({ sun_W_m2 }) => sun_W_m2),
      coverLets,
      activation_J_mol,
      ...kinds.flatMap(({ wait_s, strength_Pa, cool_K_per_s, diffusivity_m2_s, until }) =>
        [wait_s, strength_Pa, cool_K_per_s, diffusivity_m2_s, until].filter((one) => one !== undefined),
      ),
    ];
    for (const { source, standing } of data) {
      expect(sourceOf(source).id).toBe(source);
      expect(standing).toMatch(/^(published|derived|common practice|from memory)$/);
    }
  });

  it('speaks of materials and schedules that are there', () => {
    for (const { materials, schedule } of kinds) {
      for (const id of materials) expect(findMaterial(id).id).toBe(id);
      expect(schedules.map(({ id }) => id)).toContain(schedule);
    }
    const listed = kinds.flatMap(({ materials }) => materials);
    expect(new Set(listed).size).toBe(listed.length);
  });

  it('covers every stage of every schedule with coals, once', () => {
    const covered = coalStages.flatMap(({ covers }) => covers);
    expect(new Set(covered).size).toBe(covered.length);
    expect(new Set(schedules.flatMap(({ rows }) => rows.map(({ id }) => id)))).toEqual(new Set(covered));
  });
});

describe('a first fire', () => {
  it('rises without a gap, lasts as long as its parts, and never goes back until it is out', () => {
    fc.assert(
      fc.property(cases, ([id, thickness_m]) => {
        const { stages, total_s, points } = fired(id, thickness_m);
        expect(stages[0]!.from_K).toBe(start_K);
        for (const [index, { to_K, from_K }] of stages.entries()) {
          expect(to_K).toBeGreaterThan(from_K);
          if (index > 0) expect(from_K).toBe(stages[index - 1]!.to_K);
        }
        expect(stages.at(-1)!.to_K).toBeCloseTo(kindOf(id).ends_K, 6);
        for (const end of ['low', 'typical', 'high'] as const)
          expect(stages.reduce((sum, { ramp_s, hold_s }) => sum + ramp_s[end] + hold_s[end], 0)).toBeCloseTo(
            total_s[end],
            3,
          );
        expect(total_s.low).toBeLessThanOrEqual(total_s.typical);
        expect(total_s.typical).toBeLessThanOrEqual(total_s.high);
        for (const [index, [time_s]] of points.entries())
          if (index > 0) expect(time_s).toBeGreaterThan(points[index - 1]![0]);
        expect(points.at(-2)![0]).toBeCloseTo(total_s.typical, 3);
      }),
    );
  });

  it('never takes a wet pore above what its body bears before the first hold is over', () => {
    fc.assert(
      fc.property(cases, ([id, thickness_m]) => {
        const { stages, limit_K } = fired(id, thickness_m);
        if (stages[0]!.id === 'free-water') expect(stages[0]!.to_K).toBeLessThanOrEqual(limit_K);
      }),
    );
  });

  it('takes longer for a thicker lining', () => {
    for (const { id, schedule } of kinds) {
      let before = 0;
      for (let thickness_m = 0.001; thickness_m <= most(schedule); thickness_m += 0.001) {
        const hours = fired(id, thickness_m).total_s.typical;
        expect(hours).toBeGreaterThanOrEqual(before - 1);
        before = hours;
      }
    }
  });

  it.each([0.02, 0.05, 0.07, 0.1])(
    'of low-cement castable climbs half as fast as of plain castable, %d m thick',
    (thickness_m) => {
      const [low, plain] = [fired('low-cement', thickness_m), fired('castable', thickness_m)];
      for (const [index, { ramp_s }] of low.stages.entries())
        expect(ramp_s.typical).toBeCloseTo(2 * plain.stages[index]!.ramp_s.typical, 6);
      // A maker's instruction: at most 28 K/h to 540 °C, 56 K/h above.
      for (const { from_K, to_K, ramp_s } of low.stages)
        expect(((to_K - from_K) / ramp_s.typical) * 3600).toBeLessThanOrEqual(to_K <= 273.15 + 540 ? 28 : 56);
    },
  );

  it('of castable keeps to what makers allow: 56 K/h to 540 °C, 111 K/h above', () => {
    for (const thickness_m of [0.02, 0.05, 0.07, 0.1])
      for (const { from_K, to_K, ramp_s } of fired('castable', thickness_m).stages)
        expect(((to_K - from_K) / ramp_s.low) * 3600).toBeLessThanOrEqual(to_K <= 273.15 + 540 ? 56 : 111);
  });

  it('ends at the working temperature that was asked for, and refuses one that does not even dry it', () => {
    const kind = kindOf('rammed');
    const rest = { kind, thickness_m: 0.04, start_K, wet_limit_K: 390 };
    expect(firing({ ...rest, end_K: 1173 }).stages.at(-1)!.to_K).toBe(1173);
    expect(firing({ ...rest, end_K: 700 }).stages.at(-1)!.to_K).toBe(700);
    expect(() => firing({ ...rest, end_K: 340 })).toThrow(/drying hold/);
    expect(() => firing({ ...rest, thickness_m: 0.2, end_K: 1173 })).toThrow(/beyond every schedule/);
  });
});

describe('a lining by its name', () => {
  it.each([
    ['clay-sand', 'rammed'],
    ['low cement castable', 'low-cement'],
    ['castable', 'castable'],
    ['perlite clay', 'bound-fill'],
    ['ramming plastic', 'plastic'],
    ['fireclay brick', 'brick'],
    ['fibre blanket', 'fibre'],
    ['wash', 'coating'],
  ])('%s is dried as %s', (name, id) => expect(findLining(name).kind.id).toBe(id));

  it.each([
    ['gypsum plaster', /no lining/],
    ['plaster and sand', /no lining/],
    ['ordinary concrete', /no lining/],
    ['vermiculite', /put in dry/],
    ['jelly', /no kind of lining/],
  ])('%s is refused', (name, what) => expect(() => findLining(name)).toThrow(what));
});
