import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BatchInput, batch } from './batch.ts';

const clay = { material: 'stoneware-clay', slot: 'clay', parts: 1, loose_density_kg_m3: 1000 } as const;
const sand = { material: 'silica-sand', slot: 'sand', parts: 2, loose_density_kg_m3: 1600 } as const;
const plain: BatchInput = {
  volume_m3: 0.03,
  dry_density_kg_m3: 1850,
  spare: 0.1,
  by: 'loose volume',
  parts: [clay, sand],
  water: 0.07,
  clay_moisture: 0,
};
const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('a batch (physics)', () => {
  it('shares 1 : 2 by loose volume as about 24 : 76 by mass', () => {
    const { dry_mass_kg, ingredients } = batch(plain);
    const [first, second] = ingredients.map((one) => one.dry_mass_kg / dry_mass_kg);
    expect(first).toBeCloseTo(1000 / 4200, 12);
    expect(second).toBeCloseTo(3200 / 4200, 12);
  });

  it('keeps mass: ingredients and water add up to the wet mix', () => {
    fc.assert(
      fc.property(
        positive(1e-4, 2),
        positive(100, 3000),
        positive(0, 0.5),
        positive(0.02, 0.3),
        positive(0, 0.6),
        positive(0.1, 9),
        (volume_m3, dry_density_kg_m3, spare, water, clay_moisture, parts) => {
          const made = batch({
            ...plain,
            volume_m3,
            dry_density_kg_m3,
            spare,
            water,
            clay_moisture,
            parts: [clay, { ...sand, parts }],
          });
          const weighed = made.ingredients.reduce((sum, { weighed_kg }) => sum + weighed_kg, 0);
          expect(weighed + made.water_kg).toBeCloseTo(made.wet_mass_kg, 9);
          expect(made.dry_mass_kg).toBeCloseTo(volume_m3 * dry_density_kg_m3 * (1 + spare), 6);
        },
      ),
    );
  });

  it('scales with the volume', () => {
    const once = batch(plain);
    const twice = batch({ ...plain, volume_m3: 0.06 });
    expect(twice.wet_mass_kg).toBeCloseTo(2 * once.wet_mass_kg, 9);
  });

  it('weighs more damp clay and adds that much less water', () => {
    const dry = batch(plain);
    const damp = batch({ ...plain, clay_moisture: 0.12 });
    const clayDry = dry.ingredients[0]?.dry_mass_kg ?? 0;
    expect(damp.ingredients[0]?.weighed_kg).toBeCloseTo(clayDry * 1.12, 9);
    expect(dry.water_kg - damp.water_kg).toBeCloseTo(clayDry * 0.12, 9);
    expect(damp.wet_mass_kg).toBeCloseTo(dry.wet_mass_kg, 9);
  });

  it('adds no water below none, when the clay brings more than is wanted', () => {
    expect(batch({ ...plain, parts: [clay], water: 0.05, clay_moisture: 0.3 }).water_kg).toBe(0);
  });

  it('shows its steps, which give the same numbers', () => {
    const made = batch(plain);
    const steps = made.steps();
    expect(steps[0]?.gives.dry_mass_kg).toBe(made.dry_mass_kg);
    expect(steps.at(-1)?.gives.wet_mass_kg).toBe(made.wet_mass_kg);
    expect(steps).toHaveLength(4);
  });
});
