import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apparentEmissivity, diskToDisk, openBoreFlux, openingLoss_W, reradiatingFactor } from './opening.ts';

const anyHole = fc.record({
  radius_m: fc.double({ min: 0.005, max: 0.2, noNaN: true }),
  depth_m: fc.double({ min: 0.0001, max: 0.5, noNaN: true }),
});
const black_W_m2 = 5.670374419e-8;

describe('a hole through a wall', () => {
  it('of no depth passes everything', () => {
    expect(diskToDisk({ radius_m: 0.05, depth_m: 0 })).toBe(1);
    expect(reradiatingFactor({ radius_m: 0.05, depth_m: 0 })).toBe(1);
  });

  it('passes more by its warm side than straight through, and less than everything', () =>
    fc.assert(
      fc.property(anyHole, (hole) => {
        expect(reradiatingFactor(hole)).toBeGreaterThan(diskToDisk(hole));
        expect(reradiatingFactor(hole)).toBeLessThan(1);
      }),
    ));

  it('passes less the deeper it is', () =>
    fc.assert(
      fc.property(anyHole, fc.double({ min: 1.01, max: 3, noNaN: true }), ({ radius_m, depth_m }, deeper) => {
        expect(reradiatingFactor({ radius_m, depth_m: depth_m * deeper })).toBeLessThan(
          reradiatingFactor({ radius_m, depth_m }),
        );
      }),
    ));

  it('does not jump where the series takes over', () => {
    const at = (depth_m: number) => reradiatingFactor({ radius_m: 1, depth_m });
    expect(at(0.0199999) - at(0.0200001)).toBeLessThan(1e-5);
    expect(at(0.0199999) - at(0.0200001)).toBeGreaterThan(0);
  });

  it('deep, goes over to 8/3 of radius over depth', () => {
    expect((reradiatingFactor({ radius_m: 1, depth_m: 2000 }) * 2000) / (8 / 3)).toBeCloseTo(1, 2);
  });

  it('passes far less than a side of one temperature would say: at 4 radii 0.357, not 0.528', () => {
    const hole = { radius_m: 0.02, depth_m: 0.08 };
    expect(reradiatingFactor(hole)).toBeCloseTo(0.357, 3);
    expect((1 + diskToDisk(hole)) / 2).toBeCloseTo(0.528, 3);
  });

  it('loses what a black disk does where it has no depth, nothing where there is none, and takes in heat when colder', () => {
    const vent = { radius_m: 0.04, depth_m: 0, cavity_K: 1273, air_K: 293 };
    expect(openingLoss_W(vent)).toBeCloseTo(Math.PI * 0.04 ** 2 * black_W_m2 * (1273 ** 4 - 293 ** 4), 6);
    expect(openingLoss_W({ ...vent, radius_m: 0 })).toBe(0);
    expect(openingLoss_W({ ...vent, cavity_K: 280 })).toBeLessThan(0);
    expect(() => openingLoss_W({ ...vent, radius_m: -0.01 })).toThrow('-0.01 m');
  });
});

describe('an open bore', () => {
  const bore = { face_K: 1200, air_K: 293, opening_ratio: 0.15, emissivity: 0.8 };

  it('looks blacker the smaller its mouth, between the wall itself and black', () => {
    expect(apparentEmissivity({ emissivity: 0.8, opening_ratio: 1 })).toBeCloseTo(0.8, 12);
    expect(apparentEmissivity({ emissivity: 0.8, opening_ratio: 0.1 })).toBeGreaterThan(
      apparentEmissivity({ emissivity: 0.8, opening_ratio: 0.3 }),
    );
    expect(apparentEmissivity({ emissivity: 0.8, opening_ratio: 0 })).toBe(1);
    expect(apparentEmissivity({ emissivity: 1, opening_ratio: 0.5 })).toBe(1);
  });

  it('loses nothing at the temperature of the air, more when hotter, never more than its black mouth and its film', () => {
    expect(openBoreFlux({ ...bore, face_K: 293 })).toBe(0);
    expect(openBoreFlux({ ...bore, face_K: 1300 })).toBeGreaterThan(openBoreFlux(bore));
    const most = 0.15 * (black_W_m2 * (1200 ** 4 - 293 ** 4) + 10 * (1200 - 293));
    expect(openBoreFlux(bore)).toBeLessThan(most);
    expect(openBoreFlux(bore)).toBeGreaterThan(0.8 * most);
  });
});
