import { describe, expect, it } from 'vitest';
import { findPour, pours } from '../materials/catalogue.ts';
import { exactly } from '../materials/spread.ts';
import { crucibleFromMelt, crucibleFromSizes } from '../shape/crucible.ts';
import { crucibleMass_kg, outsideArea_m2, withWall } from './crucible-heat.ts';
import { pots } from './data/pots.ts';
import { scrapForms } from './data/scrap-forms.ts';
import { estimateMelt, type MeltQuestion } from './melt.ts';
import { meltHeat_J_kg, pourFor } from './melt-heat.ts';

const [graphite, steel] = pots;

function question(id: string, mass_kg: number, more: Partial<MeltQuestion> = {}): MeltQuestion {
  const alloy = findPour(id);
  return {
    alloy,
    mass_kg: exactly(mass_kg),
    from_K: 293.15,
    pour_K: pourFor(alloy, 'medium'),
    crucible: crucibleFromMelt({ mass_kg, metal: id }),
    pot: graphite!,
    form: scrapForms[1]!,
    cover: undefined,
    ...more,
  };
}

describe.each(pours.map(({ id }) => id))('a melt of 4 kg %s', (id) => {
  const estimate = estimateMelt(question(id, 4));

  it('says what it came to within its ranges', () => {
    for (const [name, range] of Object.entries(estimate.ranges)) {
      expect(range, name).toBeDefined();
      const value = estimate.typical[name as keyof typeof estimate.typical];
      expect(value, name).toBeGreaterThanOrEqual(range!.low * 0.999);
      expect(value, name).toBeLessThanOrEqual(range!.high * 1.001);
    }
  });

  it('takes mass times heat, and keeps the metal', () => {
    const { alloy, pour_K } = estimate.question;
    const each = meltHeat_J_kg({ alloy, from_K: 293.15, pour_K: pour_K.typical });
    expect(estimate.typical.heat_J).toBeCloseTo(4 * each, 3);
    expect(estimate.typical.left_kg + estimate.typical.lost_kg).toBeCloseTo(4, 9);
  });

  it('fits the crucible that was made for it, in one pour', () => {
    expect(estimate.charge.pours).toBe(1);
    expect(estimate.charges.high).toBeGreaterThanOrEqual(estimate.charge.charges);
    expect(estimate.charges.low).toBeLessThanOrEqual(estimate.charge.charges);
  });

  it('gives finite steps', () => {
    for (const { gives } of estimate.steps()) expect(Object.values(gives).every(Number.isFinite)).toBe(true);
  });
});

describe('a melt', () => {
  it('gives the same answer each time it is asked', () => {
    const [one, two] = [estimateMelt(question('brass', 3)), estimateMelt(question('brass', 3))];
    expect(one.ranges).toEqual(two.ranges);
  });

  it('of twice the mass takes twice the heat', () => {
    const crucible = crucibleFromSizes({ diameter_m: 0.2, height_m: 0.25 });
    const of = (mass: number) => estimateMelt(question('copper', mass, { crucible })).typical;
    expect(of(8).heat_J / of(4).heat_J).toBeCloseTo(2, 12);
    expect(of(8).pot_J).toBe(of(4).pot_J);
  });

  it('poured hotter than usual is still reached by the fire', () => {
    const hot = { low: 1380, typical: 1400, high: 1420 };
    expect(estimateMelt(question('aluminium', 4, { pour_K: hot })).ranges.time_s).toBeDefined();
  });
});

describe('the pot', () => {
  const crucible = crucibleFromSizes({ diameter_m: 0.16, height_m: 0.2 });

  it('with a thin wall weighs about outside times wall times density', () => {
    const wall_m = 1e-4;
    const { shape } = withWall(crucible, wall_m, true);
    const mass = crucibleMass_kg({ shape, density_kg_m3: 7850 });
    // The roundness of a crucible takes its share of the wall too.
    expect(mass / (0.87 * outsideArea_m2(shape) * wall_m * 7850)).toBeCloseTo(1, 2);
  });

  it('keeps its outside where that was measured, and its room where that was asked for', () => {
    const measured = withWall(crucible, 0.005, true);
    expect(measured.shape.outside_radius_m).toBe(0.08);
    expect(measured.brimful_m3).toBeGreaterThan(crucible.brimful_m3);
    const asked = withWall(crucible, 0.005, false);
    expect(asked.shape.outside_radius_m).toBeLessThan(0.08);
    expect(asked.shape.working_m3).toBe(crucible.shape.working_m3);
  });

  it('of thin steel is lighter in heat than of thick clay', () => {
    const of = (pot: typeof graphite, wall_m?: number) =>
      estimateMelt(
        question('aluminium', 4, {
          pot: pot!,
          ...(wall_m ? { crucible: withWall(crucible, wall_m, true) } : { crucible }),
        }),
      ).typical.pot_J;
    expect(of(steel, 0.003)).toBeLessThan(of(graphite));
  });
});
