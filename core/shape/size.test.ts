import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../ask-error.ts';
import { vessels } from '../materials/catalogue.ts';
import { findVessel } from '../materials/find-vessel.ts';
import { changesFor } from './changes.ts';
import { crucibleFromMelt, crucibleFromSizes, crucibleFromWorking, liquidDensity } from './crucible.ts';
import type { VesselShape } from './furnace.ts';
import { insulationEnds_m, liningRadius_m, liningTop_m, shapeOf, vesselRadius_m } from './profile.ts';
import { sizingRules } from './rules.ts';
import { type SizeQuestion, sizeFurnace } from './size.ts';

const inch = 0.0254;
const can = (name: string) => shapeOf(findVessel(name));
const six = crucibleFromSizes({ diameter_m: 6 * inch, height_m: 8 * inch });
const plain = { fuel: 'gas', flue_K: 1223 } as const;
const drum: VesselShape = {
  name: 'drum',
  bottom_radius_m: 0.28,
  top_radius_m: 0.28,
  height_m: 0.83,
  wall_m: 0.001,
  given: true,
};

function refusal(question: SizeQuestion): AskError {
  try {
    sizeFurnace(question);
  } catch (error) {
    if (error instanceof AskError) return error;
    throw error;
  }
  throw new Error('this should be refused');
}

describe('a crucible', () => {
  it('from its working volume pours that volume, and is as slim as asked', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 0.05, noNaN: true }), (working_m3) => {
        const { shape } = crucibleFromWorking({ working_m3 });
        expect(shape.working_m3 / working_m3).toBeCloseTo(1, 9);
        expect(shape.height_m / (2 * shape.outside_radius_m)).toBeCloseTo(sizingRules.crucible_slimness.typical, 9);
        expect(shape.wall_m).toBeLessThan(shape.outside_radius_m);
      }),
    );
  });

  it('of a melt holds its mass, and is smaller for a denser metal', () => {
    const light = crucibleFromMelt({ mass_kg: 5, metal: 'aluminium' });
    const dense = crucibleFromMelt({ mass_kg: 5, metal: 'bronze' });
    expect(light.shape.working_m3 * liquidDensity('aluminium').typical).toBeCloseTo(5, 6);
    expect(dense.shape.outside_radius_m).toBeLessThan(light.shape.outside_radius_m);
  });

  it('holds less to work with than to the brim', () => {
    expect(six.shape.working_m3).toBeCloseTo(0.8 * six.brimful_m3, 9);
  });

  it('of no size is refused', () => {
    expect(() => crucibleFromWorking({ working_m3: 1 })).toThrow(AskError);
    expect(() => crucibleFromMelt({ mass_kg: 5, metal: 'dragon' })).toThrow(AskError);
  });
});

describe('a furnace', () => {
  it('adds up from the axis outward and from the bottom to its lid', () => {
    const { furnace, fit } = sizeFurnace({ ...plain, vessel: drum, crucible: six });
    const { bore, wall_m, underfloor_m, floor_m, lid, plinth, rim_m } = furnace;
    expect(bore.bottom_radius_m).toBeCloseTo(3 * inch + 0.04, 9);
    expect(bore.height_m).toBeCloseTo(plinth.height_m + 8 * inch + rim_m, 9);
    expect(bore.bottom_radius_m + wall_m + fit.insulation.bottom_m).toBeCloseTo(0.28, 9);
    expect(underfloor_m + floor_m + bore.height_m + lid.thickness_m + fit.headroom_m).toBeCloseTo(0.83, 9);
    expect(lid.radius_m).toBeCloseTo(bore.top_radius_m + wall_m, 9);
  });

  it('proposed for a crucible is the same as the one asked for in that vessel', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.25, noNaN: true }),
        fc.double({ min: 1.1, max: 1.5, noNaN: true }),
        fc.constantFrom('gas' as const, 'charcoal' as const),
        (diameter_m, slimness, fuel) => {
          const crucible = crucibleFromSizes({ diameter_m, height_m: slimness * diameter_m });
          const proposed = sizeFurnace({ ...plain, fuel, crucible });
          const mirrored = sizeFurnace({ ...plain, fuel, crucible, vessel: proposed.furnace.vessel });
          expect(mirrored.furnace).toEqual(proposed.furnace);
          expect(proposed.fit.fits).toBe(true);
        },
      ),
    );
  });

  it('proposed is never a cylinder, a closed drum or galvanised', () => {
    for (const diameter_m of [0.06, 0.1, 0.15, 0.2]) {
      const { furnace } = sizeFurnace({
        ...plain,
        crucible: crucibleFromSizes({ diameter_m, height_m: 1.25 * diameter_m }),
      });
      const known = vessels.find(({ name }) => name === furnace.vessel.name);
      expect(known?.hazards ?? []).toEqual([]);
    }
  });

  it('worked out for a vessel alone fits it, and again with its own crucible', () => {
    for (const name of ['10 gal can', '20 gal can', '31 gal can', '30 gal drum', '5 gal pail']) {
      const sized = sizeFurnace({ ...plain, vessel: can(name) });
      expect(sized.fit.fits, name).toBe(true);
      expect(changesFor(sized)).toEqual([]);
    }
  });

  it('never hides a negative: fits means room on every side', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.15, max: 0.6, noNaN: true }),
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        fc.double({ min: 0.05, max: 0.3, noNaN: true }),
        fc.boolean(),
        (bottom, more, height_m, diameter_m, taper) => {
          const vessel = { ...drum, bottom_radius_m: bottom / 2, top_radius_m: (bottom + more) / 2, height_m };
          const crucible = crucibleFromSizes({ diameter_m, height_m: 1.25 * diameter_m });
          try {
            const { furnace, fit, tuyere } = sizeFurnace({ ...plain, vessel, crucible, taper });
            expect(Object.values(furnace.tuyere).every(Number.isFinite)).toBe(true);
            expect(furnace.tuyere.tilt_rad).toBeGreaterThanOrEqual(0);
            expect(tuyere.holds).toBe(true);
            if (!fit.fits) return;
            const top_m = liningTop_m(furnace);
            for (const share of [0, 0.3, 0.7, 1]) {
              const z_m = furnace.underfloor_m + share * (top_m - furnace.underfloor_m);
              expect(vesselRadius_m(vessel, z_m) - liningRadius_m(furnace, z_m)).toBeGreaterThan(0.039);
            }
            expect(top_m + furnace.lid.thickness_m).toBeLessThanOrEqual(height_m + 1e-9);
          } catch (error) {
            expect(error).toBeInstanceOf(AskError);
          }
        },
      ),
    );
  });

  it('tapers with the can only where asked, and keeps the insulation even then', () => {
    const vessel = can('31 gal can');
    const straight = sizeFurnace({ ...plain, vessel, crucible: six });
    const tapered = sizeFurnace({ ...plain, vessel, crucible: six, taper: true });
    expect(straight.furnace.bore.top_radius_m).toBe(straight.furnace.bore.bottom_radius_m);
    expect(straight.fit.insulation.top_m).toBeGreaterThan(straight.fit.insulation.bottom_m);
    const { bottom_m, top_m } = insulationEnds_m(tapered.furnace);
    expect(top_m).toBeCloseTo(bottom_m, 9);
  });

  it('gets thinner insulation from a thicker wall, by just as much', () => {
    const of = (wall_m: number) => sizeFurnace({ ...plain, vessel: drum, crucible: six, wall_m }).fit.insulation.top_m;
    expect(of(0.04) - of(0.06)).toBeCloseTo(0.02, 9);
  });

  it('carries the tolerance of the catalogue: a can that only just fits is not sure to', () => {
    const { fit } = sizeFurnace({ ...plain, vessel: can('20 gal can'), crucible: six });
    expect(fit.fits).toBe(true);
    expect(fit.sure).toBe(false);
    expect(sizeFurnace({ ...plain, vessel: drum, crucible: six }).fit.sure).toBe(true);
  });
});

describe('what to change', () => {
  const missing = (question: SizeQuestion) => changesFor(sizeFurnace(question));

  it('gives up wished-for insulation first, by just what is missing', () => {
    const [first] = missing({ ...plain, vessel: can('20 gal can'), crucible: six, behind_m: 0.05 });
    expect(first).toMatchObject({ option: 'behind', to_m: 0.04 });
  });

  it('then thins the wall, and no further than its rule', () => {
    const [first] = missing({ ...plain, vessel: can('20 gal can'), crucible: six, wall_m: 0.045 });
    expect(first).toMatchObject({ option: 'wall', to_m: 0.04 });
    for (const change of missing({ ...plain, vessel: can('20 gal can'), crucible: six, gap_m: 0.06 })) {
      if (change.option === 'wall') expect(change.to_m).toBeGreaterThanOrEqual(sizingRules.wall_m.low);
    }
  });

  it('each makes it fit when done', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('10 gal can', '20 gal can', '31 gal can', '16 gal drum', '60 l drum'),
        fc.double({ min: 0.08, max: 0.2, noNaN: true }),
        fc.constantFrom('gas' as const, 'charcoal' as const),
        (name, diameter_m, fuel) => {
          const crucible = crucibleFromSizes({ diameter_m, height_m: 1.25 * diameter_m });
          const question: SizeQuestion = { ...plain, fuel, vessel: can(name), crucible };
          const key = {
            behind: 'behind_m',
            wall: 'wall_m',
            gap: 'gap_m',
            under: 'underfloor_m',
            lid: 'lid_m',
            floor: 'floor_m',
            plinth: 'plinth_m',
            rim: 'rim_m',
          } as const;
          try {
            for (const change of changesFor(sizeFurnace(question))) {
              const next =
                change.option === 'vessel'
                  ? { ...question, vessel: shapeOf(findVessel(change.id)) }
                  : change.option === 'crucible'
                    ? { ...question, crucible: crucibleFromSizes(change) }
                    : change.option === 'several'
                      ? { ...question, ...Object.fromEntries(change.to.map(({ option, to_m }) => [key[option], to_m])) }
                      : { ...question, [key[change.option]]: change.to_m };
              expect(sizeFurnace(next).fit.fits, JSON.stringify(change)).toBe(true);
            }
          } catch (error) {
            expect(error).toBeInstanceOf(AskError);
          }
        },
      ),
    );
  });

  it('names a bigger vessel of the catalogue', () => {
    const changes = missing({ ...plain, vessel: can('5 gal pail'), crucible: six });
    expect(changes.at(-1)).toMatchObject({ option: 'vessel', id: 'drum-30-gal' });
  });
});

describe('refused, with the number that says why', () => {
  it.each([
    [
      'a crucible wider than the can',
      { crucible: crucibleFromSizes({ diameter_m: 0.6, height_m: 0.3 }) },
      'crucible',
      '600 mm',
    ],
    ['walls that leave no bore', { crucible: six, wall_m: 0.25 }, 'wall', '250 mm'],
    ['a tube that falls outward', { crucible: six, tilt_rad: -0.1 }, 'tilt', '5.73°'],
    ['a lid that hits the rim', { crucible: six, lid_m: 0.45 }, 'lid', '450 mm'],
    ['a vent as wide as the bore', { crucible: six, vent_m: 0.3 }, 'vent', '300 mm'],
    ['a tube too wide for a tangent', { crucible: six, tube_m: 0.2 }, 'tuyere', '200 mm'],
  ])('%s', (_what, more, option, number) => {
    const error = refusal({ ...plain, vessel: drum, ...more });
    expect(error.option).toBe(option);
    expect(error.what).toContain(number);
  });

  it('a taper beyond a cone, and a vessel with no room', () => {
    expect(refusal({ ...plain, vessel: { ...drum, top_radius_m: 1.2 } }).option).toBe('vessel');
    expect(refusal({ ...plain, vessel: can('paint can') }).what).toMatch(/bore of \d+ mm/);
    expect(refusal({ ...plain, vessel: { ...drum, height_m: 0.15 } }).what).toContain('150 mm');
    expect(refusal(plain).code).toBe('missing');
  });
});
