import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weighed } from './weighing.ts';

const DAY_s = 86_400;
const settling_s = { low: 2 * DAY_s, typical: 5 * DAY_s, high: 12 * DAY_s };

/** A lining that dries as e^(−t/τ), weighed by a perfect scale. */
const masses = (dry_kg: number, free_kg: number, tau_days: number, days: readonly number[]) =>
  days.map((day) => ({ day, mass_kg: dry_kg + free_kg * Math.exp(-day / tau_days) }));

describe('dry by the scale', () => {
  it('finds from three weighings how slowly it dries and what is left', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 9, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        (tau_days, free_kg) => {
          const weighings = masses(30, free_kg, tau_days, [1, 3, 5]);
          const {
            settling_s: found,
            settling_from,
            left_kg,
          } = weighed({ weighings, dry_kg: 30, settling_s, scale_kg: 0 });
          expect(settling_from).toBe('weighings');
          expect(found.typical / DAY_s).toBeCloseTo(tau_days, 6);
          const truly = free_kg * Math.exp(-5 / tau_days);
          // The loss of an interval is that of its middle but for a share of (Δt/τ)²/24.
          expect(left_kg.typical / truly).toBeCloseTo(1, 1);
          expect(left_kg.high).toBeGreaterThanOrEqual(truly);
        },
      ),
    );
  });

  it('calls nothing dry that may hold more than 1 % or lose more than 0.1 % a day', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 3, noNaN: true }),
        fc.double({ min: 0.5, max: 12, noNaN: true }),
        fc.integer({ min: 1, max: 20 }),
        (free_kg, tau_days, apart) => {
          const weighings = masses(30, free_kg, tau_days, [5, 5 + apart]);
          const found = weighed({ weighings, dry_kg: 30, settling_s });
          expect(found.more_days).toBeGreaterThanOrEqual(0);
          if (found.verdict !== 'dry') return;
          const left = free_kg * Math.exp(-(5 + apart) / tau_days);
          expect(left / 30).toBeLessThan(0.01);
          expect(left / tau_days / 30).toBeLessThan(0.001);
        },
      ),
    );
  });

  it.each([
    ['wet', [31, 30.2]],
    ['wetter', [30, 30.4]],
    ['too close to call', [30.1, 30.02]],
  ] as const)('is %s for %j three days apart', (verdict, [before, last]) => {
    const weighings = [
      { day: 6, mass_kg: before },
      { day: 9, mass_kg: last },
    ];
    expect(weighed({ weighings, dry_kg: 28, settling_s }).verdict).toBe(verdict);
  });

  it('is dry where nothing is lost over long enough, and says how long that is', () => {
    const at = (apart: number) =>
      weighed({
        weighings: [
          { day: 10, mass_kg: 30 },
          { day: 10 + apart, mass_kg: 30 },
        ],
        dry_kg: 28,
        settling_s,
      });
    const { apart_days } = at(1);
    expect(at(1).verdict).toBe('too close to call');
    expect(at(Math.ceil(apart_days)).verdict).toBe('dry');
    expect(at(Math.ceil(apart_days)).more_days).toBe(0);
  });

  it('refuses one weighing, and days that do not rise', () => {
    expect(() => weighed({ weighings: [{ day: 1, mass_kg: 30 }], dry_kg: 28, settling_s })).toThrow(/one weighing/);
    const same = [
      { day: 2, mass_kg: 30 },
      { day: 2, mass_kg: 29 },
    ];
    expect(() => weighed({ weighings: same, dry_kg: 28, settling_s })).toThrow(/not later/);
  });
});
