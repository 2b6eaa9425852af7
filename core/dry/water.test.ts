import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dryingHeat_J, liningWater } from './water.ts';

const share = fc.double({ min: 0, max: 1.5, noNaN: true });

describe('water in a lining', () => {
  it('is wet mass less dry mass, part free and part held, none below nothing', () => {
    fc.assert(
      fc.property(share, share, (mixing_water, held_water) => {
        const found = liningWater({ volume_m3: 0.02, dry_density_kg_m3: 1850, mixing_water, held_water });
        expect(found.dry_kg).toBe(37);
        expect(found.free_kg + found.held_kg).toBeCloseTo(found.wet_kg - found.dry_kg, 9);
        expect(found.free_kg).toBeGreaterThanOrEqual(0);
        expect(found.held_kg).toBeLessThanOrEqual(37 * held_water + 1e-9);
      }),
    );
  });

  it('takes as much heat as there is of it, less from warmer air', () => {
    const at = (start_K: number) => dryingHeat_J({ water_kg: 1, start_K });
    expect(dryingHeat_J({ water_kg: 3, start_K: 293 })).toBeCloseTo(3 * at(293), 6);
    expect(at(303)).toBeLessThan(at(283));
    expect(at(400)).toBe(at(373.15));
  });
});
