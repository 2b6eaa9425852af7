import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { areaWithin_m2 } from './outline.ts';
import { bentLength_m, type Cone, flatten, sectorOf, slant_m } from './sector.ts';

const radius = fc.double({ min: 0.02, max: 0.5, noNaN: true });
const cones = fc
  .record({ bottom_radius_m: radius, top_radius_m: radius, height_m: fc.double({ min: 0.05, max: 1, noNaN: true }) })
  .filter(({ bottom_radius_m: a, top_radius_m: b }) => Math.abs(a - b) > 1e-4);
const share = fc.double({ min: 0, max: 1, noNaN: true });
const turns = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
/** Rounding only: the formulas are exact. */
const HAIR = 1e-9;

describe('the flat of a frustum', () => {
  it('has arcs as long as the circles they roll into, and the slant between them', () => {
    fc.assert(
      fc.property(cones, (cone) => {
        const { inner_radius_m, outer_radius_m, angle_rad, slant_m: slant } = sectorOf(cone);
        const [small, large] = [cone.bottom_radius_m, cone.top_radius_m].sort((a, b) => a - b) as [number, number];
        expect(inner_radius_m * angle_rad).toBeCloseTo(2 * Math.PI * small, 9);
        expect(outer_radius_m * angle_rad).toBeCloseTo(2 * Math.PI * large, 9);
        expect(Math.abs(outer_radius_m - inner_radius_m - slant)).toBeLessThan(HAIR * outer_radius_m);
      }),
    );
  });

  it('has the area of the side, π (R + r) s', () => {
    fc.assert(
      fc.property(cones, (cone) => {
        const { inner_radius_m, outer_radius_m, angle_rad } = sectorOf(cone);
        const flat = (angle_rad / 2) * (outer_radius_m ** 2 - inner_radius_m ** 2);
        const side = Math.PI * (cone.bottom_radius_m + cone.top_radius_m) * slant_m(cone);
        expect(Math.abs(flat - side)).toBeLessThan(1e-6 * side);
      }),
    );
  });

  it('keeps small distances: what is near on the shell is as near in the flat', () => {
    fc.assert(
      fc.property(cones, turns, share, share, (cone, turn_rad, up, way) => {
        const s = slant_m(cone);
        const step = 1e-5;
        const at = { turn_rad: turn_rad * 0.99, along_m: up * s * 0.99 };
        const radius_m = cone.bottom_radius_m + ((cone.top_radius_m - cone.bottom_radius_m) * at.along_m) / s;
        const [round, rise] = [Math.cos(way * 2 * Math.PI) * step, Math.sin(way * 2 * Math.PI) * step];
        const near = { turn_rad: at.turn_rad + round / radius_m, along_m: at.along_m + rise };
        const [a, b] = [flatten(cone, at), flatten(cone, near)];
        // A step of 10 µm on a radius of 20 mm or more turns by half a thousandth: as much may the chord be short.
        expect(Math.abs(Math.hypot(b[0] - a[0], b[1] - a[1]) / step - 1)).toBeLessThan(1e-3);
      }),
    );
  });

  it('lies on two circles about one point', () => {
    const cone: Cone = { bottom_radius_m: 0.15, top_radius_m: 0.18, height_m: 0.4 };
    const { inner_radius_m, outer_radius_m, slant_m: along_m } = sectorOf(cone);
    for (const turn_rad of [-3, -1, 0, 0.5, 2]) {
      const [x, y] = flatten(cone, { turn_rad, along_m: 0 });
      const [X, Y] = flatten(cone, { turn_rad, along_m });
      expect(Math.hypot(x, y + inner_radius_m)).toBeCloseTo(inner_radius_m, 9);
      expect(Math.hypot(X, Y + inner_radius_m)).toBeCloseTo(outer_radius_m, 9);
    }
  });

  it('becomes the rectangle as the taper goes to nothing', () => {
    const straight: Cone = { bottom_radius_m: 0.15, top_radius_m: 0.15, height_m: 0.4 };
    expect(sectorOf(straight)).toMatchObject({ angle_rad: 0, slant_m: 0.4, outer_radius_m: Number.POSITIVE_INFINITY });
    let before = Number.POSITIVE_INFINITY;
    for (const taper of [1e-2, 1e-4, 1e-6, 1e-9]) {
      const [x, y] = flatten({ ...straight, top_radius_m: 0.15 + taper }, { turn_rad: 3, along_m: 0.2 });
      const off = Math.hypot(x - 0.15 * 3, y - 0.2);
      expect(off).toBeLessThan(before);
      // The sagitta R α² k / 2 with k = taper / 0.4 is 1.7 taper; the widening adds 1.5 taper.
      expect(off).toBeLessThan(4 * taper + 1e-12);
      before = off;
    }
    expect(flatten(straight, { turn_rad: 3, along_m: 0.2 })).toEqual([0.15 * 3, 0.2]);
  });

  it('refuses a taper that closes to a point or past it', () => {
    for (const bottom_radius_m of [0, -0.02]) {
      const error = (() => {
        try {
          sectorOf({ bottom_radius_m, top_radius_m: 0.2, height_m: 0.3 });
        } catch (thrown) {
          return thrown;
        }
        return undefined;
      })();
      expect(error).toBeInstanceOf(AskError);
      expect(error).toMatchObject({ code: 'impossible', option: 'taper' });
      expect((error as AskError).what).toMatch(/closes to a point/);
    }
    expect(() => sectorOf({ bottom_radius_m: 0.1, top_radius_m: 0.2, height_m: 0 })).toThrow(AskError);
  });
});

it('measures bent sheet in mid-thickness', () => {
  expect(bentLength_m({ inside_diameter_m: 0.3, sheet_m: 0.002 })).toBeCloseTo(Math.PI * 0.302, 12);
  expect(bentLength_m({ inside_diameter_m: 0.3, sheet_m: 0 })).toBeCloseTo(Math.PI * 0.3, 12);
});

it('counts the area within an outline', () => {
  expect(
    areaWithin_m2([
      [0, 0],
      [2, 0],
      [2, 1],
      [0, 1],
    ]),
  ).toBe(2);
});
