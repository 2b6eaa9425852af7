import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findVessel } from '../materials/find-vessel.ts';
import { crucibleFromSizes } from './crucible.ts';
import type { Furnace } from './furnace.ts';
import { shapeOf } from './profile.ts';
import { oneLift_kg, peopleFor } from './rules.ts';
import { sizeFurnace } from './size.ts';
import { volumesOf, weigh, weighTypical } from './weights.ts';

const inch = 0.0254;
const crucible = crucibleFromSizes({ diameter_m: 6 * inch, height_m: 8 * inch });
const made = (more = {}): Furnace =>
  sizeFurnace({ fuel: 'gas', flue_K: 1223, vessel: shapeOf(findVessel('31 gal can')), crucible, ...more }).furnace;
const of = (furnace: Furnace, insulation = 'vermiculite') => ({
  furnace,
  lining: 'clay-sand-lining',
  insulation,
  bricks: 'insulating-brick-23',
});

function scaled(furnace: Furnace, by: number): Furnace {
  const all = (value: unknown): unknown =>
    typeof value === 'number'
      ? value * by
      : typeof value === 'object' && value !== null
        ? Object.fromEntries(Object.entries(value).map(([key, one]) => [key, key === 'tolerance' ? one : all(one)]))
        : value;
  return all(furnace) as Furnace;
}

describe('weights', () => {
  it('grow with the cube of all lengths', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 3, noNaN: true }), (by) => {
        const small = weighTypical(of(made()));
        const large = weighTypical(of(scaled(made(), by)));
        for (const key of [
          'pot_dry_kg',
          'pot_wet_kg',
          'lid_dry_kg',
          'insulation_kg',
          'loose_m3',
          'whole_kg',
        ] as const) {
          expect(large[key] / small[key]).toBeCloseTo(by ** 3, 6);
        }
      }),
    );
  });

  it('rise with the thickness of wall, floor and lid, while the insulation falls', () => {
    const thin = weighTypical(of(made({ wall_m: 0.035 })));
    const thick = weighTypical(of(made({ wall_m: 0.055 })));
    expect(thick.pot_dry_kg).toBeGreaterThan(thin.pot_dry_kg);
    expect(thick.insulation_kg).toBeLessThan(thin.insulation_kg);
    expect(weighTypical(of(made({ lid_m: 0.07 }))).lid_dry_kg).toBeGreaterThan(thin.lid_dry_kg);
    expect(weighTypical(of(made({ floor_m: 0.07 }))).pot_dry_kg).toBeGreaterThan(
      weighTypical(of(made({ floor_m: 0.04 }))).pot_dry_kg,
    );
  });

  it('are wet more than dry, in ranges round the typical', () => {
    const { typical, ranges, movesMost } = weigh(of(made()));
    expect(typical.pot_wet_kg).toBeGreaterThan(typical.pot_dry_kg);
    for (const [key, range] of Object.entries(ranges)) {
      const value = typical[key as keyof typeof typical];
      expect(range?.low, key).toBeLessThan(value);
      expect(range?.high, key).toBeGreaterThan(value);
    }
    expect(movesMost?.input).toContain('rammed');
  });

  it('fill the can: bodies, bricks, room inside and insulation add up to it', () => {
    for (const taper of [false, true]) {
      const furnace = made({ taper });
      const { bore, vessel, underfloor_m, floor_m } = furnace;
      const volumes = volumesOf(furnace);
      const cone = (low: number, high: number, height: number) =>
        (Math.PI * height * (low ** 2 + low * high + high ** 2)) / 3;
      const room = cone(bore.bottom_radius_m, bore.top_radius_m, bore.height_m);
      const top = underfloor_m + floor_m + bore.height_m;
      const slope = (vessel.top_radius_m - vessel.bottom_radius_m) / vessel.height_m;
      const inside = cone(vessel.bottom_radius_m, vessel.bottom_radius_m + slope * top, top);
      expect(volumes.wall_m3 + volumes.floor_m3 + volumes.underfloor_m3 + volumes.insulation_m3 + room).toBeCloseTo(
        inside,
        12,
      );
    }
  });

  it('buy more loose fill than there is room, and as much of what does not settle', () => {
    const loose = weigh(of(made()));
    expect(loose.loose).toBe(true);
    expect(loose.typical.loose_m3).toBeGreaterThan(loose.typical.insulation_m3);
    const blanket = weigh(of(made(), 'fibre-blanket'));
    expect(blanket.loose).toBe(false);
    expect(blanket.typical.loose_m3).toBe(blanket.typical.insulation_m3);
  });

  it('need one person up to 23 kg', () => {
    expect(peopleFor({ lift_kg: oneLift_kg })).toBe(1);
    expect(peopleFor({ lift_kg: 23.1 })).toBe(2);
    expect(peopleFor({ lift_kg: 0 })).toBe(1);
  });
});
