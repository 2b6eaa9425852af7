import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Flat, type Placement, packOnRoll, placed } from './roll.ts';

const sides = fc.double({ min: 0.02, max: 1.5, noNaN: true });
const rolls = fc.double({ min: 0.3, max: 1.3, noNaN: true });
const flats = fc
  .array(fc.record({ width_m: sides, height_m: sides }), { minLength: 1, maxLength: 14 })
  .map((all) => all.map((each, at): Flat => ({ name: String(at), ...each })));
/** Rounding of sums of a few lengths, m. */
const HAIR = 1e-7;

const overlap = (one: Placement, other: Placement): boolean =>
  one.at[0] < other.at[0] + other.along_m - HAIR &&
  other.at[0] < one.at[0] + one.along_m - HAIR &&
  one.at[1] < other.at[1] + other.across_m - HAIR &&
  other.at[1] < one.at[1] + one.across_m - HAIR;

describe('pieces on a roll', () => {
  it('all lie inside it, none on another, each once and in its own size', () => {
    fc.assert(
      fc.property(flats, rolls, (pieces, roll_m) => {
        const packing = packOnRoll(pieces, roll_m);
        const fits = pieces.every(({ width_m, height_m }) => Math.min(width_m, height_m) <= roll_m);
        expect(packing !== undefined).toBe(fits);
        if (!packing) return;
        const { placements, length_m } = packing;
        expect(placements.map(({ name }) => name).sort()).toEqual(pieces.map(({ name }) => name).sort());
        placements.forEach((one, at) => {
          const piece = pieces[Number(one.name)]!;
          const [along, across] = one.turned ? [piece.height_m, piece.width_m] : [piece.width_m, piece.height_m];
          expect([one.along_m, one.across_m]).toEqual([along, across]);
          expect(Math.min(...one.at)).toBeGreaterThanOrEqual(0);
          expect(one.at[0] + one.along_m).toBeLessThanOrEqual(length_m + HAIR);
          expect(one.at[1] + one.across_m).toBeLessThanOrEqual(roll_m + HAIR);
          for (const other of placements.slice(at + 1)) expect(overlap(one, other)).toBe(false);
        });
      }),
    );
  });

  it('never take less roll than their area, nor more than laid end to end', () => {
    fc.assert(
      fc.property(flats, rolls, (pieces, roll_m) => {
        const packing = packOnRoll(pieces, roll_m);
        if (!packing) return;
        const area = pieces.reduce((sum, { width_m, height_m }) => sum + width_m * height_m, 0);
        const inRow = pieces.reduce((sum, { width_m, height_m }) => sum + Math.max(width_m, height_m), 0);
        expect(packing.length_m * roll_m).toBeGreaterThanOrEqual(area - HAIR);
        expect(packing.length_m).toBeLessThanOrEqual(inRow + HAIR);
      }),
    );
  });

  it('side by side where two fit', () => {
    const pieces = ['a', 'b'].map((name): Flat => ({ name, width_m: 1, height_m: 0.3 }));
    expect(packOnRoll(pieces, 0.61)?.length_m).toBeCloseTo(1, 12);
    expect(packOnRoll(pieces, 0.5)?.length_m).toBeCloseTo(2, 12);
  });

  it('turns an outline to the left, unmirrored, into its place', () => {
    const outline = [
      [0, 0],
      [2, 0],
      [2, 1],
    ] as const;
    const at = { name: 'a', at: [10, 20], turned: true, along_m: 1, across_m: 2 } as const;
    expect(placed(outline, outline, at)).toEqual([
      [11, 20],
      [11, 22],
      [10, 22],
    ]);
    expect(placed(outline, outline, { ...at, turned: false })).toEqual([
      [10, 20],
      [12, 20],
      [12, 21],
    ]);
  });
});
