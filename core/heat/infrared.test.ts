import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bandSignal, infraredReading_K, trueTemperature_K } from './infrared.ts';

const anyT_K = fc.double({ min: 280, max: 900, noNaN: true });
const anyShare = fc.double({ min: 0.05, max: 1, noNaN: true });
const anyRoom_K = fc.double({ min: 260, max: 310, noNaN: true });
const zinc = { set_emissivity: 0.95, emissivity: 0.23, surroundings_K: 293.15 };

describe('an infrared thermometer', () => {
  it('reads true where it is set to the surface, and where all is at one temperature', () =>
    fc.assert(
      fc.property(anyT_K, anyShare, anyShare, anyRoom_K, (surface_K, emissivity, set, surroundings_K) => {
        const right = infraredReading_K({ surface_K, set_emissivity: emissivity, emissivity, surroundings_K });
        expect(right).toBeCloseTo(surface_K, 5);
        const even = infraredReading_K({
          surface_K: surroundings_K,
          set_emissivity: set,
          emissivity,
          surroundings_K,
        });
        expect(even).toBeCloseTo(surroundings_K, 5);
      }),
    ));

  it('is undone by the way back', () =>
    fc.assert(
      fc.property(anyT_K, anyShare, anyRoom_K, (surface_K, emissivity, surroundings_K) => {
        fc.pre(surface_K > surroundings_K);
        const seen = { set_emissivity: 0.95, emissivity, surroundings_K };
        const reading_K = infraredReading_K({ surface_K, ...seen });
        expect(trueTemperature_K({ reading_K, ...seen })).toBeCloseTo(surface_K, 4);
      }),
    ));

  it('reads shiny zinc far too cold: of 135 °C about 57', () => {
    expect(infraredReading_K({ surface_K: 408.15, ...zinc })).toBeCloseTo(330, 0);
  });

  it('would be corrected to 25 K too little by total radiation', () => {
    const reading_K = infraredReading_K({ surface_K: 500, ...zinc });
    const byTotal_K = ((0.95 * reading_K ** 4 - 0.72 * 293.15 ** 4) / 0.23) ** 0.25;
    expect(500 - byTotal_K).toBeGreaterThan(20);
    expect(500 - byTotal_K).toBeLessThan(30);
  });

  it('sees more of what is hotter', () =>
    fc.assert(
      fc.property(anyT_K, (T_K) => {
        expect(bandSignal(T_K + 1)).toBeGreaterThan(bandSignal(T_K));
      }),
    ));

  it('refuses a reading below the reflection alone, and an emissivity that is none', () => {
    expect(() => trueTemperature_K({ reading_K: 270, ...zinc })).toThrow('a reading of -3 °C');
    expect(() => trueTemperature_K({ reading_K: 330, ...zinc, emissivity: 0 })).toThrow('the emissivity is 0');
    expect(() => infraredReading_K({ surface_K: 330, ...zinc, set_emissivity: 1.2 })).toThrow('the emissivity is 1.2');
  });
});
