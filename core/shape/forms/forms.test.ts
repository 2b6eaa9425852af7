import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import type { UnitSystem } from '../../quantity/figure.ts';
import { readKey } from '../../quantity/key.ts';
import type { Furnace } from '../furnace.ts';
import { type FormsInput, formsFor } from './forms.ts';
import { boxOf } from './outline.ts';
import { pieceArea_m2 } from './piece.ts';
import { formRules } from './rules.ts';
import { sampleFurnace } from './sample.ts';
import { slant_m } from './sector.ts';
import { wireLength_m } from './wire.ts';

const rules: Omit<FormsInput, 'furnace'> = {
  overlap_m: formRules.overlap_m.typical,
  clip_spacing_m: formRules.clip_spacing_m.typical,
  radial_wires: formRules.radial_wires.typical,
  rings: formRules.rings.typical,
  wire_m: formRules.wire_m.typical,
  units: 'US',
};
const thin = { thickness_m: 0.001 };
const forms = (furnace: Furnace, more: Partial<FormsInput> = {}) => formsFor({ furnace, ...rules, ...more });
const tapered: Furnace = { ...sampleFurnace, bore: { ...sampleFurnace.bore, top_radius_m: 0.13 } };
const piece = (name: string, of: ReturnType<typeof forms>) => {
  const found = of.pieces.find((each) => each.name === name);
  if (!found) throw new Error(`no ${name} among ${of.pieces.map((each) => each.name)}`);
  return found;
};
const sizeOf = (outline: Parameters<typeof boxOf>[0]) => {
  const { left, right, bottom, top } = boxOf(outline);
  return [right - left, top - bottom] as const;
};
const thrown = (make: () => unknown): unknown => {
  try {
    make();
  } catch (error) {
    return error;
  }
  return undefined;
};

describe('straight forms', () => {
  const made = forms(sampleFurnace, { mesh: thin });
  const { bore, wall_m, floor_m, lid } = sampleFurnace;

  it('are rectangles of the developed length and the height, with the lap as a length', () => {
    const [inner, outer] = ['inner form', 'outer form'].map((name) => piece(name, made));
    expect(inner?.kind).toBe('rectangle');
    const [wide, tall] = sizeOf(inner!.outline);
    // Inside the bore: its outer face is the bore, so the middle of the mesh is half a thickness further in.
    expect(wide).toBeCloseTo(Math.PI * (2 * bore.bottom_radius_m - 0.001) + 0.04, 9);
    expect(tall).toBeCloseTo(bore.height_m, 12);
    const [outerWide, outerTall] = sizeOf(outer!.outline);
    expect(outerWide).toBeCloseTo(Math.PI * (2 * (bore.bottom_radius_m + wall_m) + 0.001) + 0.04, 9);
    expect(outerTall).toBeCloseTo(bore.height_m + floor_m, 12);
  });

  it('come with a bottom, two hoops and the wires of the lid', () => {
    expect(made.pieces.map(({ name }) => name)).toEqual([
      'inner form',
      'outer form',
      'bottom',
      'lid rim hoop',
      'vent hoop',
      'lid wires',
    ]);
    expect(sizeOf(piece('lid rim hoop', made).outline)[0]).toBeCloseTo(Math.PI * (2 * lid.radius_m + 0.001) + 0.04, 9);
    expect(sizeOf(piece('vent hoop', made).outline)[0]).toBeCloseTo(
      Math.PI * (2 * lid.vent_radius_m - 0.001) + 0.04,
      9,
    );
    const wires = piece('lid wires', made);
    expect(wires.lines.filter(({ name }) => name === 'radial wire')).toHaveLength(8);
    expect(wires.lines.filter(({ name }) => name === 'wire ring')).toHaveLength(2);
    expect(sizeOf(wires.holes[0]!)[0]).toBeCloseTo(2 * lid.vent_radius_m, 9);
  });

  it('keep the hole inside the sheet, and the same height above the floor in both', () => {
    const [inner, outer] = ['inner form', 'outer form'].map((name) => boxOf(piece(name, made).holes[0]!));
    expect(inner!.bottom).toBeGreaterThan(0);
    // The tube rises outward, so its hole is higher in the outer form, by less than its whole rise.
    const rise = outer!.bottom - floor_m - inner!.bottom;
    expect(rise).toBeGreaterThan(0);
    expect(rise).toBeLessThan(sampleFurnace.tuyere.through_all_m * Math.tan(sampleFurnace.tuyere.tilt_rad));
    // Slantwise through a curved wall the nearer form is cut longer.
    expect(inner!.right - inner!.left).toBeGreaterThan(outer!.right - outer!.left);
  });

  it('say why they are straight in a tapered can, and where the lining ends in a feather', () => {
    expect(made.advice.join(' ')).toMatch(/straight on purpose.*common practice, no source/);
    expect(made.advice.join(' ')).toMatch(/feather/);
  });

  it('show steps whose units can be read', () => {
    const steps = made.steps();
    expect(steps.length).toBeGreaterThan(3);
    for (const { inputs, gives } of steps) {
      for (const [key, value] of Object.entries({ ...inputs, ...gives })) {
        expect(Number.isFinite(value), key).toBe(true);
        if (key !== 'waste') expect(readKey(key).unit, key).not.toBe('1');
      }
    }
  });
});

describe('tapered forms', () => {
  const made = forms(tapered, { mesh: thin });

  it('are sectors with the area of the cone and of the lap', () => {
    const inner = piece('inner form', made);
    expect(inner.kind).toBe('sector');
    const cone = { bottom_radius_m: 0.1143 - 0.0005, top_radius_m: 0.13 - 0.0005, height_m: tapered.bore.height_m };
    const side = Math.PI * (cone.bottom_radius_m + cone.top_radius_m) * slant_m(cone);
    const sheet = pieceArea_m2({ outline: inner.outline, holes: [] });
    // Chords 0.1 mm off an edge 0.8 m long take or give 0.1 mm of 315: 0.03 %.
    expect(Math.abs(sheet - side - 0.04 * slant_m(cone))).toBeLessThan(4e-4 * side);
  });

  it('lap by the same length all along the edge, not by an angle', () => {
    const inner = piece('inner form', made);
    const seam = inner.lines.find(({ name }) => name.startsWith('seam'));
    const [low, high] = seam!.points as [readonly [number, number], readonly [number, number]];
    const lapped = inner.outline.filter(([x]) => x > Math.max(low[0], high[0]) - 1e-12 || x > high[0]);
    const along = Math.hypot(high[0] - low[0], high[1] - low[1]);
    const off = ([x, y]: readonly [number, number]) =>
      Math.abs((x - low[0]) * (high[1] - low[1]) - (y - low[1]) * (high[0] - low[0])) / along;
    const corners = inner.outline.filter((point) => Math.abs(off(point) - 0.04) < 1e-9 && point[0] > low[0]);
    expect(corners).toHaveLength(2);
    expect(lapped.length).toBeGreaterThan(0);
  });

  it('advise straight ones, and say that this is practice', () => {
    expect(made.advice[0]).toMatch(/^Make the forms straight.*regretted.*common practice, no source/);
  });

  it('are refused where the taper goes beyond a cone', () => {
    const cone: Furnace = { ...sampleFurnace, bore: { bottom_radius_m: 0.02, top_radius_m: 0.4, height_m: 0.1 } };
    expect(thrown(() => forms(cone))).toMatchObject({ code: 'impossible', option: 'taper' });
  });
});

it('take a taper that no tape could measure for none', () => {
  for (const taper of [1e-17, 1e-12, 9e-6]) {
    const top_radius_m = sampleFurnace.bore.bottom_radius_m + taper;
    const made = forms({ ...sampleFurnace, bore: { ...sampleFurnace.bore, top_radius_m } });
    expect(made.pieces[0]?.kind).toBe('rectangle');
  }
  const top_radius_m = sampleFurnace.bore.bottom_radius_m + 2e-5;
  const made = forms({ ...sampleFurnace, bore: { ...sampleFurnace.bore, top_radius_m } });
  expect(made.pieces[0]?.kind).toBe('sector');
  expect(made.pieces[0]?.outline.length).toBeLessThan(100);
});

describe('mesh', () => {
  it('is split into panels with laps of their own where a shell is wider than the roll', () => {
    const whole = forms(sampleFurnace, { mesh: { roll_m: 1.2192 } });
    const narrow = forms(sampleFurnace, { mesh: { roll_m: 0.3 } });
    const panels = narrow.pieces.filter(({ name }) => name.startsWith('outer form, panel'));
    expect(panels.length).toBeGreaterThan(1);
    const round = (of: readonly (typeof panels)[number][]) =>
      of.reduce((sum, { outline }) => sum + sizeOf(outline)[0], 0);
    const extra = (panels.length - 1) * rules.overlap_m;
    expect(round(panels)).toBeCloseTo(round([piece('outer form', whole)]) + extra, 9);
    expect(panels.filter(({ holes }) => holes.length > 0)).toHaveLength(1);
    expect(narrow.pieces.filter(({ name }) => name.startsWith('bottom, strip')).length).toBe(2);
    expect(narrow.advice.join(' ')).toMatch(/wider roll/);
  });

  it('refuses a roll that nothing fits', () => {
    expect(
      thrown(() =>
        forms({ ...sampleFurnace, lid: { ...sampleFurnace.lid, thickness_m: 0.2 } }, { mesh: { roll_m: 0.15 } }),
      ),
    ).toMatchObject({
      code: 'impossible',
      option: 'roll',
    });
  });

  it('of the widths sold, takes the fewest pieces and then the least', () => {
    const best = forms(sampleFurnace);
    for (const roll_m of [0.6096, 0.9144, 1.2192]) {
      const one = forms(sampleFurnace, { mesh: { roll_m } });
      expect(best.pieces.length).toBeLessThanOrEqual(one.pieces.length);
      if (one.pieces.length === best.pieces.length) expect(best.mesh.area_m2).toBeLessThanOrEqual(one.mesh.area_m2);
    }
  });

  it('balances: pieces and waste make the whole roll', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 1.5, noNaN: true }),
        fc.double({ min: 0, max: 0.02, noNaN: true }),
        (roll_m, taper) => {
          const bore = { ...sampleFurnace.bore, top_radius_m: sampleFurnace.bore.bottom_radius_m + taper };
          const { pieces, mesh } = forms({ ...sampleFurnace, bore }, { mesh: { roll_m } });
          const cut = pieces.filter(({ from }) => from === 'mesh').reduce((sum, each) => sum + pieceArea_m2(each), 0);
          expect(mesh.waste).toBeGreaterThan(0);
          expect(cut + mesh.waste * mesh.area_m2).toBeCloseTo(mesh.length_m * mesh.width_m, 9);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('wire', () => {
  it('is the sum of its cuts, and grows as clips come closer', () => {
    const loose = forms(sampleFurnace);
    expect(loose.wire_length_m).toBeCloseTo(wireLength_m(loose.wires), 12);
    expect(loose.clips_count).toBe(loose.wires.find(({ name }) => name === 'clip')?.count);
    const close = forms(sampleFurnace, { clip_spacing_m: formRules.clip_spacing_m.low });
    expect(close.clips_count).toBeGreaterThan(loose.clips_count);
    expect(close.wire_length_m).toBeGreaterThan(loose.wire_length_m);
  });

  it('clips are never further apart than asked', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.3, noNaN: true }), (clip_spacing_m) => {
        const { clips_count } = forms(sampleFurnace, { clip_spacing_m });
        const middle = sampleFurnace.bore.bottom_radius_m + sampleFurnace.wall_m / 2;
        const area = 2 * Math.PI * middle * sampleFurnace.bore.height_m;
        expect(clips_count * clip_spacing_m ** 2).toBeGreaterThanOrEqual(area * 0.999);
      }),
    );
  });
});

it.each([
  ['a lap without sense', { overlap_m: -0.01 }, 'overlap'],
  ['clips a hair apart', { clip_spacing_m: 0.001 }, 'clips'],
  ['half a wire', { radial_wires: 7.5 }, 'radials'],
  ['rings without end', { rings: 40 }, 'rings'],
  ['wire like a bar', { wire_m: 0.05 }, 'wire'],
  ['a roll of nothing', { mesh: { roll_m: Number.NaN } }, 'roll'],
])('refuses %s with its number', (_, more, option) => {
  const error = thrown(() => forms(sampleFurnace, more));
  expect(error).toBeInstanceOf(AskError);
  expect(error).toMatchObject({ code: 'out-of-range', option });
});

it('refuses in the units of the reader', () => {
  const cone: Furnace = { ...sampleFurnace, bore: { bottom_radius_m: 0.02, top_radius_m: 0.4, height_m: 0.1 } };
  const said = (units: UnitSystem) => thrown(() => forms(cone, { units }));
  expect(said('US')).toMatchObject({ what: expect.stringMatching(/\d in \(\d+ mm\) across/) });
  expect(said('metric')).toMatchObject({ what: expect.stringMatching(/\d mm \([\d /]+ in\) across/) });
});
