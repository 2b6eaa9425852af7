import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boiling_K, burstLimit, steamPressure_Pa } from './steam.ts';

const kelvin = fc.double({ min: 273.16, max: 647, noNaN: true });

describe('steam', () => {
  it('boils at the temperature whose pressure it has: the two equations are one curve', () => {
    fc.assert(
      fc.property(kelvin, (water_K) => {
        // Near the critical point both forms lose digits to the same root.
        expect(Math.abs(boiling_K({ pressure_Pa: steamPressure_Pa({ water_K }) }) - water_K)).toBeLessThan(1e-5);
      }),
    );
  });

  it('rises steadily with temperature', () => {
    fc.assert(
      fc.property(kelvin, fc.double({ min: 0.01, max: 50, noNaN: true }), (water_K, more) => {
        const hotter = Math.min(647.09, water_K + more);
        expect(steamPressure_Pa({ water_K: hotter })).toBeGreaterThanOrEqual(steamPressure_Pa({ water_K }));
      }),
    );
  });

  it.each([200, 273, 650])('is refused at %d K', (water_K) => expect(() => steamPressure_Pa({ water_K })).toThrow());
});

describe('the hottest a wet body may get', () => {
  it('is the boiling point for a body that bears hardly anything, and rises with its strength', () => {
    expect(burstLimit({ strength_Pa: 1e3 }).limit_K).toBeGreaterThan(373.1);
    expect(burstLimit({ strength_Pa: 1e3 }).limit_K).toBeLessThan(373.5);
    const limits = [0.05e6, 0.1e6, 1e6, 3e6].map((strength_Pa) => burstLimit({ strength_Pa }).limit_K);
    expect(limits).toEqual(limits.toSorted((a, b) => a - b));
  });

  it('leaves steam no stronger than the body, with its working', () => {
    const { limit_K, steps } = burstLimit({ strength_Pa: 1e6 });
    expect(steamPressure_Pa({ water_K: limit_K })).toBeCloseTo(1e6 + 101_325, 0);
    expect(steps().at(-1)?.gives).toEqual({ limit_K });
  });
});
