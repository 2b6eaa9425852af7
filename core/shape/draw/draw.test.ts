import { describe, expect, it } from 'vitest';
import type { UnitSystem } from '../../quantity/figure.ts';
import type { Drawing, Matter, Point } from '../drawing.ts';
import { formsFor } from '../forms/forms.ts';
import { boxOf } from '../forms/outline.ts';
import { sampleFurnace } from '../forms/sample.ts';
import type { Furnace } from '../furnace.ts';
import { drawForms } from './forms.ts';
import { drawFurnace } from './furnace.ts';

const { bore, tuyere } = sampleFurnace;
const tapered: Furnace = { ...sampleFurnace, bore: { ...bore, top_radius_m: bore.top_radius_m + 0.015 } };
const charcoal: Furnace = {
  ...sampleFurnace,
  plinth: { radius_m: 0.06, height_m: 0 },
  bed_m: 0.11,
  bore: { ...bore, height_m: 0.36 },
  tuyere: { ...tuyere, offset_m: 0, tilt_rad: 0, invert_m: 0.01, through_lining_m: 0.038, through_all_m: 0.08 },
};
const areas = ({ shapes }: Drawing, matter: Matter) =>
  shapes.flatMap((shape) => (shape.kind === 'area' && shape.matter === matter ? [shape] : []));
const units = 'US';
const formsOf = (furnace: Furnace, roll_m?: number) =>
  formsFor({
    furnace,
    overlap_m: 0.04,
    clip_spacing_m: 0.12,
    radial_wires: 8,
    rings: 2,
    wire_m: 0.0013,
    units,
    ...(roll_m === undefined ? {} : { mesh: { roll_m } }),
  });
const drawn = (furnace: Furnace, reader: UnitSystem): readonly Drawing[] => [
  ...drawFurnace(furnace, reader),
  ...drawForms(formsOf(furnace), reader),
  ...drawForms(formsOf(furnace, 0.28), reader),
];
const all: readonly (readonly [string, Drawing])[] = Object.entries({
  straight: sampleFurnace,
  tapered,
  charcoal,
}).flatMap(([name, furnace]) => drawn(furnace, units).map((drawing) => [`${name} ${drawing.id}`, drawing] as const));

const shapePoints = ({ shapes }: Drawing): readonly Point[] =>
  shapes.flatMap((shape) => (shape.kind === 'area' ? [...shape.outline, ...(shape.holes ?? []).flat()] : shape.points));
const markPoints = ({ marks }: Drawing): readonly Point[] =>
  marks.flatMap((mark) => {
    if (mark.kind === 'length') return [mark.from, mark.to];
    return mark.kind === 'angle' ? [mark.corner, mark.from, mark.to] : [mark.at, mark.words];
  });

describe.each(all)('%s', (_, drawing) => {
  const body = boxOf(shapePoints(drawing));
  const size = Math.max(body.right - body.left, body.top - body.bottom);

  it('has finite coordinates, and marks no further off than half the drawing', () => {
    for (const point of [...shapePoints(drawing), ...markPoints(drawing)])
      expect(point.every(Number.isFinite)).toBe(true);
    const marks = boxOf(markPoints(drawing));
    expect(marks.left).toBeGreaterThan(body.left - size / 2);
    expect(marks.right).toBeLessThan(body.right + size / 2);
    expect(marks.bottom).toBeGreaterThan(body.bottom - size / 2);
    expect(marks.top).toBeLessThan(body.top + size / 2);
    for (const mark of drawing.marks) {
      if (mark.kind === 'length') expect(Math.abs(mark.off_m)).toBeLessThan(1.5 * size);
    }
  });

  it('dimensions nothing twice, and nothing of no size', () => {
    const told = drawing.marks.flatMap((mark) => {
      if (mark.kind !== 'length') return [];
      const { from, to, name } = mark;
      const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
      expect(long, name).toBeGreaterThan(1e-5);
      return [[...from, ...to].map((each) => each.toFixed(5)).join(' ')];
    });
    expect(new Set(told).size).toBe(told.length);
  });

  it('says in words what it shows, in both systems', () => {
    expect(drawing.title.length).toBeGreaterThan(5);
    expect(drawing.alt).toMatch(/\d in \([\d.]+ mm\)/);
    expect(drawing.alt).not.toMatch(/mm \(/);
    expect(drawing.alt).not.toMatch(/NaN|undefined|Infinity/);
  });
});

it.each([...drawn(tapered, 'metric'), ...drawn(charcoal, 'metric')])(
  'leads with millimetres where asked: $id',
  (drawing) => {
    const words = [
      drawing.alt,
      ...drawing.marks.flatMap((mark) => (mark.kind === 'callout' ? [mark.text] : [])),
    ].join();
    expect(words).toMatch(/\d mm \([\d /.]+ in\)/);
    expect(words).not.toMatch(/in \(/);
  },
);

describe('the section', () => {
  const named = (drawing: Drawing): readonly string[] =>
    drawing.marks.flatMap((mark) => (mark.kind === 'callout' ? [] : [mark.name]));
  const lengthOf = (drawing: Drawing, name: string): number => {
    const mark = drawing.marks.find((each) => each.kind === 'length' && each.name === name);
    if (mark?.kind !== 'length') throw new Error(`no ${name} among ${named(drawing)}`);
    return Math.hypot(mark.to[0] - mark.from[0], mark.to[1] - mark.from[1]);
  };
  const [section, plan] = drawFurnace(sampleFurnace, units) as [Drawing, Drawing];

  it("shows the furnace's own numbers", () => {
    expect(lengthOf(section, 'bore')).toBeCloseTo(2 * bore.bottom_radius_m, 9);
    expect(lengthOf(section, 'wall')).toBeCloseTo(sampleFurnace.wall_m, 9);
    expect(lengthOf(section, 'floor')).toBeCloseTo(sampleFurnace.floor_m, 9);
    expect(lengthOf(section, 'height')).toBeCloseTo(bore.height_m, 9);
    expect(lengthOf(section, 'lid')).toBeGreaterThan(0);
    expect(lengthOf(section, 'vent')).toBeCloseTo(2 * sampleFurnace.lid.vent_radius_m, 9);
    expect(lengthOf(section, 'plinth')).toBeCloseTo(sampleFurnace.plinth.height_m, 9);
    expect(lengthOf(section, 'hole above floor')).toBeCloseTo(tuyere.invert_m, 9);
  });

  it('tells bottom from top only where they differ', () => {
    expect(named(section)).not.toContain('bore, top');
    expect(named(drawFurnace(tapered, units)[0]!)).toEqual(expect.arrayContaining(['bore, top', 'bore, bottom']));
  });

  it('stands the floor on brick, not on what is tamped round it', () => {
    const { underfloor_m } = sampleFurnace;
    const under = areas(section, 'brick');
    expect(under).toHaveLength(1);
    const box = boxOf(under[0]!.outline);
    expect([box.bottom, box.top]).toEqual([0, underfloor_m]);
    expect(box.right).toBeGreaterThanOrEqual(bore.bottom_radius_m + sampleFurnace.wall_m - 1e-9);
    const [without] = drawFurnace({ ...sampleFurnace, underfloor_m: 0 }, units);
    expect(areas(without!, 'brick')).toEqual([]);
    expect(section.alt).toContain('brick laid flat');
  });

  it('has the spill of a full crucible as a hidden line, and the tilt', () => {
    expect(section.shapes.some((shape) => shape.kind === 'line' && shape.stroke === 'hidden')).toBe(true);
    expect(named(section)).toContain('tilt');
    expect(named(drawFurnace(charcoal, units)[0]!)).not.toContain('tilt');
  });

  it("shows the room under the vessel's own lid, and no lid where the furnace's stands out", () => {
    const { vessel, lid, underfloor_m, floor_m } = sampleFurnace;
    const room_m = vessel.height_m - underfloor_m - floor_m - bore.height_m - lid.thickness_m;
    expect(lengthOf(section, 'to own lid')).toBeCloseTo(room_m, 9);
    const low = { ...sampleFurnace, vessel: { ...vessel, height_m: vessel.height_m - room_m } };
    expect(named(drawFurnace(low, units)[0]!)).not.toContain('to own lid');
    const made = { ...sampleFurnace, vessel: { ...vessel, given: false } };
    expect(named(drawFurnace(made, units)[0]!)).not.toContain('to own lid');
  });

  it('stands the crucible on its plinth, or on charcoal that goes down to the floor', () => {
    const spanOf = (drawing: Drawing, matter: Matter) => {
      const found = drawing.shapes.flatMap((shape) =>
        shape.kind === 'area' && shape.matter === matter ? shape.outline : [],
      );
      return found.length === 0 ? undefined : boxOf(found);
    };
    expect(spanOf(section, 'charcoal')).toBeUndefined();
    const [over] = drawFurnace(charcoal, units) as [Drawing];
    const [bed, pot] = [spanOf(over, 'charcoal'), spanOf(over, 'crucible')];
    expect(bed?.bottom).toBeCloseTo(charcoal.underfloor_m + charcoal.floor_m, 9);
    expect((pot?.bottom ?? 0) - (bed?.bottom ?? 0)).toBeCloseTo(charcoal.bed_m, 9);
    expect(bed?.top).toBeGreaterThan(pot?.bottom ?? Number.NaN);
    expect(bed?.top).toBeLessThan(pot?.top ?? Number.NaN);
    expect(bed?.right).toBeCloseTo(charcoal.bore.bottom_radius_m, 9);
  });

  it('has a plan with the offset, both lengths through the wall and the angle to the radius', () => {
    expect(lengthOf(plan, 'offset')).toBeCloseTo(tuyere.offset_m, 9);
    expect(lengthOf(plan, 'through lining')).toBeCloseTo(tuyere.through_lining_m, 9);
    const angle = plan.marks.find((mark) => mark.kind === 'angle');
    if (angle?.kind !== 'angle') throw new Error('no angle');
    const way = (to: Point) => Math.atan2(to[1] - angle.corner[1], to[0] - angle.corner[0]);
    expect(way(angle.to) - way(angle.from)).toBeCloseTo(Math.asin(tuyere.offset_m / bore.bottom_radius_m), 9);
  });
});

describe.each([undefined, 0.28])('the roll of %s m', (roll_m) => {
  const { mesh, pieces } = formsOf(sampleFurnace, roll_m);
  const roll = drawForms({ ...formsOf(sampleFurnace, roll_m) }, 'metric').at(-1)!;
  const laid = roll.shapes.flatMap((shape) =>
    shape.kind === 'area' && shape.matter === 'mesh' ? boxOf(shape.outline) : [],
  );
  const sheet = boxOf(shapePoints(roll));
  const callouts = roll.marks.flatMap((mark) => (mark.kind === 'callout' ? mark : []));

  it('names every piece on the piece', () => {
    const cut = pieces.filter(({ from }) => from === 'mesh');
    expect(laid).toHaveLength(cut.length);
    for (const [n, { left, right, bottom, top }] of laid.entries()) {
      const on = callouts.filter(
        ({ text, at: [x, y] }) => !text.startsWith('at ') && x > left && x < right && y > bottom && y < top,
      );
      const name = mesh.placements[n]!.name;
      expect(
        on.some(({ text }) => text.split(' ').every((word) => name.includes(word))),
        name,
      ).toBe(true);
    }
  });

  it('tells for each where it begins, from the left and from below', () => {
    const said = callouts.flatMap(({ text, at }) => {
      const [, mm] = /^at ([\d.]+) mm/.exec(text) ?? [];
      return mm === undefined ? [] : [{ mm: Number(mm), at }];
    });
    const told = (start: number, axis: 0 | 1) =>
      start < 5e-4 ||
      // Printed to a millimetre, and one label for pieces up to half a millimetre apart.
      said.some(
        ({ mm, at }) => at[1 - axis] === 0 && Math.abs(mm / 1000 - start) < 0.0011 && Math.abs(at[axis] - start) < 6e-4,
      );
    for (const { left, bottom } of laid) {
      expect(told(left - sheet.left, 0), `left ${left}`).toBe(true);
      expect(told(bottom - sheet.bottom, 1), `bottom ${bottom}`).toBe(true);
    }
  });
});

it('prints every pattern full size, and no other', () => {
  const drawings = drawForms(formsOf(sampleFurnace), units);
  expect(drawings.filter(({ fullSize }) => fullSize).map(({ id }) => id)).toEqual([
    'inner-form',
    'outer-form',
    'bottom',
    'lid-rim-hoop',
    'vent-hoop',
    'lid-wires',
  ]);
  expect(drawings.at(-1)?.id).toBe('roll');
});
