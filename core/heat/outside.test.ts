import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../ask-error.ts';
import { lossFlux_W_m2, lossFunction, lossParts, type Outside } from './outside.ts';

const anyOutside: fc.Arbitrary<Outside> = fc
  .record({
    face: fc.constantFrom('vertical', 'up', 'down'),
    length_m: fc.double({ min: 0.03, max: 1.5, noNaN: true }),
    air_K: fc.double({ min: 250, max: 320, noNaN: true }),
    emissivity: fc.double({ min: 0, max: 1, noNaN: true }),
    wind_m_s: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 12, noNaN: true })),
    round: fc.option(fc.double({ min: 0.1, max: 1, noNaN: true }), { nil: undefined }),
  })
  .map(({ round, ...rest }) => (round === undefined ? rest : { ...rest, diameter_m: round }) as Outside);
const anySurface_K = fc.double({ min: 240, max: 1300, noNaN: true });

const still: Outside = { face: 'vertical', length_m: 0.4, air_K: 293.15, emissivity: 0.8, wind_m_s: 0 };

describe('loss of an outside surface', () => {
  it('rises with the surface temperature', () =>
    fc.assert(
      fc.property(anyOutside, anySurface_K, fc.double({ min: 0.01, max: 200, noNaN: true }), (outside, T_K, more) => {
        const loss = lossFunction(outside);
        expect(loss(T_K + more)).toBeGreaterThan(loss(T_K));
      }),
    ));

  it('is nothing at the temperature of the air, and changes sign there', () =>
    fc.assert(
      fc.property(anyOutside, fc.double({ min: 0.5, max: 40, noNaN: true }), (outside, dT) => {
        const loss = lossFunction(outside);
        expect(loss(outside.air_K)).toBeCloseTo(0, 6);
        expect(loss(outside.air_K - dT)).toBeLessThan(0);
        expect(loss(outside.air_K + dT)).toBeGreaterThan(0);
      }),
    ));

  it('prepared agrees with plain to 0.1 % of itself', () =>
    fc.assert(
      fc.property(anyOutside, anySurface_K, (outside, T_K) => {
        const plain = lossFlux_W_m2(outside, T_K);
        expect(Math.abs(lossFunction(outside)(T_K) - plain)).toBeLessThanOrEqual(1e-3 * Math.abs(plain) + 1e-6);
      }),
    ));

  it('has no jump where the lid goes from laminar to turbulent', () => {
    const loss = lossFunction({ ...still, face: 'up', length_m: 0.1 });
    for (let T_K = 294; T_K < 700; T_K += 0.25) {
      // The steepest slope in this span is about 100 W/m²K.
      expect(loss(T_K + 0.25) - loss(T_K)).toBeLessThan(25);
    }
  });

  it('adds up from its parts less the sun', () =>
    fc.assert(
      fc.property(anyOutside, anySurface_K, fc.double({ min: 0, max: 500, noNaN: true }), (outside, T_K, sun_W_m2) => {
        const { convection_W_m2, radiation_W_m2 } = lossParts(outside, T_K);
        const whole = lossFlux_W_m2({ ...outside, sun_W_m2 }, T_K);
        expect(whole).toBeCloseTo(convection_W_m2 + radiation_W_m2 - sun_W_m2, 6);
      }),
    ));

  it('has a film that is the loss over the rise, and its limit where there is no rise', () => {
    const { film_W_m2K } = lossParts(still, 393.15);
    expect(film_W_m2K * 100).toBeCloseTo(lossFlux_W_m2(still, 393.15), 8);
    // What still air conducts and the wall radiates; from there on it grows with the sixth root of the rise.
    const none = lossParts(still, still.air_K).film_W_m2K;
    expect(lossParts(still, still.air_K + 1e-5).film_W_m2K).toBeGreaterThan(none);
    expect(lossParts(still, still.air_K + 1e-5).film_W_m2K).toBeLessThan(none + 0.15);
  });

  it('grows with wind, emissivity and density of the air', () => {
    const at = (more: Partial<Outside>) => lossFlux_W_m2({ ...still, ...more }, 373.15);
    expect(at({ wind_m_s: 1 })).toBeGreaterThan(at({}));
    expect(at({ wind_m_s: 3 })).toBeGreaterThan(at({ wind_m_s: 1 }));
    expect(at({ emissivity: 0.9 })).toBeGreaterThan(at({}));
    expect(at({ pressure_Pa: 80_000 })).toBeLessThan(at({}));
  });

  it('from a hot plate: facing up more than facing down', () => {
    const plate = { ...still, length_m: 0.09 };
    expect(lossFlux_W_m2({ ...plate, face: 'up' }, 350)).toBeGreaterThan(
      lossFlux_W_m2({ ...plate, face: 'down' }, 350),
    );
  });

  it('a plate colder than the air is the hot one turned over', () => {
    const plate = { ...still, length_m: 0.09, emissivity: 0 };
    // Same film temperature, same size of difference.
    const up = lossFlux_W_m2({ ...plate, face: 'up', air_K: 300 }, 320);
    const down = lossFlux_W_m2({ ...plate, face: 'down', air_K: 320 }, 300);
    expect(down).toBeCloseTo(-up, 9);
  });

  it.each([
    { length_m: 0 },
    { length_m: Number.NaN },
    { air_K: -1 },
    { emissivity: 1.2 },
    { wind_m_s: -1 },
    { diameter_m: 0 },
    { pressure_Pa: 0 },
  ])('refuses %o', (wrong) => {
    expect(() => lossFunction({ ...still, ...wrong })).toThrow(AskError);
  });
});
