import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { slotOnBore } from '../tuyere.ts';
import { holeOf, type Tube, tubeOf } from './hole.ts';
import { sampleFurnace } from './sample.ts';
import type { Cone } from './sector.ts';

const straight: Cone = { bottom_radius_m: 0.1143, top_radius_m: 0.1143, height_m: 0.3 };
const level: Tube = { radius_m: 0.019, offset_m: 0, tilt_rad: 0, out_m: 0.1143, up_m: 0.05 };
const span = (values: readonly number[]) => Math.max(...values) - Math.min(...values);

describe('the hole of a tube in a shell', () => {
  it('lies on the shell and on the tube', () => {
    const tubes = fc.record({
      radius_m: fc.double({ min: 0.005, max: 0.03, noNaN: true }),
      offset_m: fc.double({ min: -0.08, max: 0.08, noNaN: true }),
      tilt_rad: fc.double({ min: 0, max: 0.4, noNaN: true }),
      out_m: fc.constant(0.06),
      up_m: fc.double({ min: 0.06, max: 0.1, noNaN: true }),
    });
    // No narrower than where the widest tube furthest out still enters whole.
    const tops = fc.double({ min: 0.1143, max: 0.14, noNaN: true });
    fc.assert(
      fc.property(tubes, tops, (tube, top_radius_m) => {
        const cone = { ...straight, top_radius_m };
        const { edge, grazes, notch } = holeOf(cone, tube);
        expect(notch).toBe(false);
        const ends = edge.length / 2;
        edge.forEach(({ turn_rad, up_m }, at) => {
          const radius = cone.bottom_radius_m + ((top_radius_m - cone.bottom_radius_m) * up_m) / cone.height_m;
          const [x, y] = [radius * Math.cos(turn_rad) - tube.out_m, radius * Math.sin(turn_rad) - tube.offset_m];
          const z = up_m - tube.up_m;
          const along = x * Math.cos(tube.tilt_rad) + z * Math.sin(tube.tilt_rad);
          const off = Math.sqrt(x ** 2 + y ** 2 + z ** 2 - along ** 2);
          // At its two ends the hole is found by halving, where the radius changes with the root of the turn.
          const isEnd = at === 0 || at === ends - 1 || at === ends || at === edge.length - 1;
          expect(Math.abs(off - tube.radius_m)).toBeLessThan(isEnd ? 1e-6 : 1e-9);
        });
        expect(grazes).toBe(false);
      }),
    );
  });

  it('of a thin radial tube is a circle', () => {
    const { edge, middle_rad } = holeOf(straight, { ...level, radius_m: 0.002 });
    expect(middle_rad).toBeCloseTo(0, 9);
    expect(span(edge.map(({ up_m }) => up_m))).toBeCloseTo(0.004, 6);
    // asin(r / R) R − r is r³ / (6 R²), 0.1 µm here.
    expect(span(edge.map(({ turn_rad }) => turn_rad * 0.1143))).toBeCloseTo(0.004, 6);
  });

  it('of a level tangent tube is the slot R acos((R − d) ÷ R), d high', () => {
    const { edge, grazes } = holeOf(straight, { ...level, offset_m: 0.1143 - 0.019 });
    const slot = slotOnBore({ bore_radius_m: 0.1143, tube_radius_m: 0.019, tilt_rad: 0 });
    // The far end is the touching point, which halving brackets to where a square of the gap vanishes.
    expect(span(edge.map(({ turn_rad }) => turn_rad * 0.1143))).toBeCloseTo(slot.arc_m, 6);
    expect(span(edge.map(({ up_m }) => up_m))).toBeCloseTo(slot.height_m, 4);
    expect(grazes).toBe(true);
  });

  it('mirrors with the offset', () => {
    const [one, other] = [0.07, -0.07].map((offset_m) => holeOf(straight, { ...level, offset_m }));
    expect(one!.middle_rad).toBeCloseTo(-other!.middle_rad, 9);
  });

  it('becomes a notch where it runs out below', () => {
    const { notch, edge } = holeOf(straight, { ...level, up_m: 0.01 });
    expect(notch).toBe(true);
    expect(Math.min(...edge.map(({ up_m }) => up_m))).toBe(0);
  });

  it('is refused above the shell and beside it', () => {
    expect(() => holeOf(straight, { ...level, up_m: 0.29 })).toThrow(AskError);
    expect(() => holeOf(straight, { ...level, offset_m: 0.12 })).toThrow(AskError);
  });
});

it("takes the furnace's tube with its lowest edge at the stated height", () => {
  const { bore, tuyere } = sampleFurnace;
  const tube = tubeOf(sampleFurnace, tuyere.bore_radius_m);
  expect(Math.hypot(tube.out_m, tube.offset_m)).toBeCloseTo(bore.bottom_radius_m, 12);
  expect(tube.up_m - tuyere.bore_radius_m / Math.cos(tuyere.tilt_rad)).toBeCloseTo(tuyere.invert_m, 12);
});
