import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../ask-error.ts';
import { saddle_m, sleeveFor } from './sleeve.ts';
import { drawSleeve } from './sleeve-drawing.ts';
import {
  degrees,
  planLength_m,
  radians,
  slotOnBore,
  spillDepth_m,
  type TuyereQuestion,
  tangentOffset_m,
  tangentTuyere,
} from './tuyere.ts';
import { firingDensity_W_m3, handbook_W_m2, hotGas_m3_s, ventDiameter_m, ventFor } from './vent.ts';

const usual: TuyereQuestion = {
  tube_radius_m: 0.02,
  tube_wall_m: 0.003,
  bore_radius_m: 0.116,
  lining_radius_m: 0.156,
  vessel_radius_m: 0.2,
  invert_m: 0.01,
  spill_depth_m: 0.02,
  spare_m: 0.01,
  tilt_rad: radians(10),
  steepest_rad: radians(20),
  tilt_given: false,
};

describe('a tangent tuyere', () => {
  it('touches the bore and runs longer than a radial one', () => {
    const { shape } = tangentTuyere(usual);
    expect(shape.offset_m + shape.bore_radius_m).toBeCloseTo(usual.bore_radius_m, 12);
    expect(shape.through_lining_m).toBeGreaterThan(usual.lining_radius_m - usual.bore_radius_m);
    const radial = planLength_m({ inner_radius_m: 0.116, outer_radius_m: 0.156, offset_m: 0 });
    expect(radial).toBeCloseTo(0.04, 12);
  });

  it('keeps any spill inside, unless the tilt was typed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        fc.double({ min: 0.157, max: 0.4, noNaN: true }),
        (spill_depth_m, vessel_radius_m) => {
          const made = tangentTuyere({ ...usual, spill_depth_m, vessel_radius_m });
          expect(made.holds).toBe(true);
          expect(made.outside_invert_m).toBeGreaterThanOrEqual(spill_depth_m + usual.spare_m - 1e-9);
          expect(degrees(made.shape.tilt_rad)).toBeGreaterThanOrEqual(10 - 1e-9);
          expect(degrees(made.shape.tilt_rad)).toBeLessThanOrEqual(20 + 1e-9);
          expect(made.raised).toBe(made.shape.invert_m > usual.invert_m);
        },
      ),
    );
  });

  it('that was typed too flat says what it would take, and that is enough', () => {
    const flat = tangentTuyere({ ...usual, spill_depth_m: 0.03, tilt_rad: 0, tilt_given: true });
    expect(flat.holds).toBe(false);
    expect(flat.shape.tilt_rad).toBe(0);
    const tilted = tangentTuyere({ ...usual, spill_depth_m: 0.03, tilt_rad: flat.needed_tilt_rad, tilt_given: true });
    expect(tilted.holds).toBe(true);
    const raised = tangentTuyere({
      ...usual,
      spill_depth_m: 0.03,
      tilt_rad: 0,
      tilt_given: true,
      invert_m: flat.needed_invert_m,
    });
    expect(raised.holds).toBe(true);
  });

  it('is refused as a drain where it falls outward, and where it is wider than the bore takes', () => {
    expect(() => tangentTuyere({ ...usual, tilt_rad: -0.01 })).toThrow(AskError);
    expect(() => tangentTuyere({ ...usual, tube_radius_m: 0.06 })).toThrow(AskError);
  });

  it('cuts a slot at least as long as it is wide, of half the bore at the most', () => {
    const slot = slotOnBore({ bore_radius_m: 0.116, tube_radius_m: 0.02, tilt_rad: 0 });
    expect(slot.height_m).toBeCloseTo(0.04, 12);
    expect(slot.arc_m).toBeGreaterThan(0.04);
    expect(slot.arc_m).toBeLessThan((Math.PI / 2) * 0.116);
    expect(tangentOffset_m({ bore_radius_m: 0.116, tube_radius_m: 0.116 })).toBe(0);
  });
});

describe('a spill', () => {
  it('gives back its volume: round the plinth, and over it', () => {
    const room = { bore_radius_m: 0.12, plinth_radius_m: 0.06, plinth_height_m: 0.04 };
    const low = spillDepth_m({ spill_m3: 0.001, ...room });
    expect(low * Math.PI * (0.12 ** 2 - 0.06 ** 2)).toBeCloseTo(0.001, 12);
    const high = spillDepth_m({ spill_m3: 0.003, ...room });
    expect(high).toBeGreaterThan(0.04);
    expect(high * Math.PI * 0.12 ** 2 - 0.04 * Math.PI * 0.06 ** 2).toBeCloseTo(0.003, 12);
  });
});

describe('the sleeve', () => {
  const tube = { tube_radius_m: 0.023, offset_m: 0.096, tilt_rad: 0.2 };

  it('starts on the lining and ends on the vessel: every point of its edges lies on the cylinder', () => {
    for (const cylinder_radius_m of [0.156, 0.2]) {
      for (const angle_rad of [0, 1, 2, 3, 4, 5, 6]) {
        const s = saddle_m({ angle_rad, ...tube, cylinder_radius_m });
        const up = -tube.tube_radius_m * Math.cos(angle_rad);
        const x = s * Math.cos(tube.tilt_rad) - up * Math.sin(tube.tilt_rad);
        const y = tube.offset_m + tube.tube_radius_m * Math.sin(angle_rad);
        expect(Math.hypot(x, y)).toBeCloseTo(cylinder_radius_m, 12);
      }
    }
  });

  it('meets an axial, level tube square where it is thin: the curve is flat', () => {
    const flat = { tube_radius_m: 1e-6, offset_m: 0, tilt_rad: 0, cylinder_radius_m: 0.2 };
    expect(saddle_m({ angle_rad: 1, ...flat })).toBeCloseTo(0.2, 9);
  });

  it('has a sheet that takes both curves and the tabs, and a curve that closes', () => {
    const sleeve = sleeveFor({ ...tube, lining_radius_m: 0.156, vessel_radius_m: 0.2 });
    const end = Math.max(...sleeve.at_vessel.map(([, y]) => y));
    expect(sleeve.sheet.length_m).toBeCloseTo(end + 2 * sleeve.tab_length_m, 9);
    expect(sleeve.at_lining[0]?.[1]).toBeCloseTo(sleeve.at_lining.at(-1)?.[1] ?? Number.NaN, 9);
    expect(Math.min(...sleeve.at_lining.map(([, y]) => y))).toBe(0);
    expect(sleeve.at_vessel.every(([, y], at) => y > (sleeve.at_lining[at]?.[1] ?? 0))).toBe(true);
    expect(sleeve.tabs_count).toBeGreaterThanOrEqual(8);
  });
});

describe("the sleeve's pattern", () => {
  const sleeve = sleeveFor({
    tube_radius_m: 0.023,
    offset_m: 0.096,
    tilt_rad: 0.2,
    lining_radius_m: 0.156,
    vessel_radius_m: 0.2,
  });
  const drawing = drawSleeve(sleeve, 'US');

  it('is as large as the sheet to cut, and its points are finite', () => {
    const outline = drawing.shapes.flatMap((shape) => (shape.kind === 'area' ? shape.outline : []));
    const xs = outline.map(([x]) => x);
    const ys = outline.map(([, y]) => y);
    expect([...xs, ...ys].every(Number.isFinite)).toBe(true);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(sleeve.sheet.width_m, 9);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(sleeve.sheet.length_m, 9);
  });

  it('has two folds and a cut between tabs at both ends', () => {
    const lines = drawing.shapes.filter((shape) => shape.kind === 'line');
    expect(lines.filter(({ stroke }) => stroke === 'fold')).toHaveLength(2);
    expect(lines.filter(({ stroke, points }) => stroke === 'cut' && points.length === 2)).toHaveLength(
      2 * (sleeve.tabs_count + 1),
    );
  });
});

describe('a vent', () => {
  const fire = { rate_W: 15_000, flue_K: 1223, fuel: 'gas', bore_m: 0.232 } as const;

  it('lets the hot gas through at the velocity it was sized for', () => {
    const vent = ventFor(fire);
    expect(vent.velocity_m_s).toBeCloseTo(5, 9);
    expect(vent.verdict).toBe('right');
    expect(ventFor({ ...fire, diameter_m: vent.diameter_m }).velocity_m_s).toBeCloseTo(5, 9);
  });

  it('is called slow or fast outside 3 to 8 m/s', () => {
    const at = (velocity_m_s: number) => ventDiameter_m({ flow_m3_s: hotGas_m3_s(fire), velocity_m_s });
    expect(ventFor({ ...fire, diameter_m: at(2.9) }).verdict).toBe('slow');
    expect(ventFor({ ...fire, diameter_m: at(3) }).verdict).toBe('right');
    expect(ventFor({ ...fire, diameter_m: at(8) }).verdict).toBe('right');
    expect(ventFor({ ...fire, diameter_m: at(8.1) }).verdict).toBe('fast');
  });

  it('grows as the root of the firing rate and of the temperature', () => {
    const of = (more: Partial<typeof fire> | { rate_W: number } | { flue_K: number }) =>
      ventFor({ ...fire, ...more }).diameter_m;
    expect(of({ rate_W: 30_000 }) / of({})).toBeCloseTo(Math.SQRT2, 9);
    expect(of({ flue_K: 2446 }) / of({})).toBeCloseTo(Math.SQRT2, 9);
  });

  it("is larger than the handbook's: at that rule the hot gas runs above 8 m/s", () => {
    const { handbook_m } = ventFor(fire);
    const { velocity_m_s } = ventFor({ ...fire, diameter_m: handbook_m });
    // 22,500 Btu/h through 1 sq in is 10.2 W/mm²: about 13 m/s of gas at 950 °C.
    expect(velocity_m_s).toBeGreaterThan(8);
    expect(velocity_m_s).toBeLessThan(15);
    expect(handbook_W_m2.typical / 1e6).toBeCloseTo(10.2, 1);
  });

  it('by default meets the rule of 0.20 to 0.38 of the bore for usual furnaces', () => {
    for (const bore_m of [0.15, 0.23, 0.3]) {
      const rate_W = firingDensity_W_m3.gas.typical * Math.PI * (bore_m / 2) ** 2 * 1.3 * bore_m;
      const share = ventFor({ ...fire, rate_W, bore_m }).diameter_m / bore_m;
      expect(share).toBeGreaterThan(0.2);
      expect(share).toBeLessThan(0.38);
    }
  });
});
