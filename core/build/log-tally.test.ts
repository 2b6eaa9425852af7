import { describe, expect, it } from 'vitest';
import { anyLife, lives, modelErrors, readingErrors } from './log-data.ts';
import { tally } from './log-tally.ts';

describe('a tally', () => {
  it('counts burns and the hours of those that were timed', () => {
    expect(tally({ burns: [{ time_s: 3600 }, {}, { time_s: 1800 }] })).toMatchObject({
      burns: 3,
      hot_s: 5400,
      timed: 2,
    });
    expect(tally({ burns: [] })).toMatchObject({ burns: 0, hot_s: 0 });
  });

  it('of steady wear finds it, and the burns until a third is gone', () => {
    const burns = Array.from({ length: 10 }, (_, at) => ({ worn_m: 0.0005 * (at + 1) }));
    const found = tally({ burns, face: { material: 'clay-sand-lining', thickness_m: 0.045 } });
    expect(found.wear_m).toBeCloseTo(0.0005, 12);
    // 15 mm at half a millimetre a burn are 30 burns, of which 10 were.
    expect(found.left_burns).toBeCloseTo(20, 9);
  });

  it('the later a measurement, the more it says', () => {
    const both = (early: number, late: number) =>
      tally({ burns: [{ worn_m: early }, {}, {}, { worn_m: late }] }).wear_m!;
    const steady = both(0.001, 0.004);
    expect(both(0.001, 0.005) - steady).toBeCloseTo(4 * (both(0.002, 0.004) - steady), 12);
  });

  it('says nothing of what was not measured, and nothing is left of what is past it', () => {
    expect(tally({ burns: [{}, {}] }).wear_m).toBeUndefined();
    expect(tally({ burns: [{ worn_m: 0 }], face: { material: 'x', thickness_m: 0.04 } }).left_burns).toBeUndefined();
    expect(tally({ burns: [{ worn_m: 0.03 }], face: { material: 'x', thickness_m: 0.04 } }).left_burns).toBe(0);
  });

  it('has a judged life for every face, rammed clay the shortest', () => {
    const clay = tally({ burns: [], face: { material: 'clay-sand-lining' } }).life;
    expect(clay).toBe(lives[0]!.burns);
    expect(tally({ burns: [] }).life).toBe(anyLife);
    expect(clay.typical).toBeLessThan(anyLife.typical);
  });

  it('its data say where they are from', () => {
    for (const one of [...Object.values(readingErrors), ...Object.values(modelErrors)]) {
      expect(one.value).toBeGreaterThan(0);
      expect(one.note).not.toBe('');
      expect(['from memory', 'common practice']).toContain(one.standing);
    }
  });
});
