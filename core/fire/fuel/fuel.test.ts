import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { triangleAt } from '../../doubt/triangle.ts';
import { cautionsFor } from '../../hazard/cautions.ts';
import { isFact } from '../../hazard/facts.ts';
import { nameKey } from '../../materials/catalogue.ts';
import { sourceOf } from '../../sources/sources.ts';
import { REFERENCE_K, speciesNames } from '../gas/nasa.ts';
import { type Fuel, findFuel, fuels } from './fuel.ts';
import { asFired, EVAPORATION_J_kg, sensibleHeat_J_kg } from './fuel-as-fired.ts';
import { fuelSchema } from './fuel-schema.ts';

function cited(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = 'source' in value && typeof value.source === 'string' ? [value.source] : [];
  return [...own, ...Object.values(value).flatMap(cited)];
}

const solidOrLiquid = fc.constantFrom(...fuels.filter(({ kind }) => kind !== 'gas'));
const rejected = (run: () => unknown): AskError => {
  try {
    run();
  } catch (error) {
    if (error instanceof AskError) return error;
    throw error;
  }
  throw new Error('was not refused');
};

describe('fuels', () => {
  it.each(fuels.map((fuel) => [fuel.id, fuel] as const))('%s keeps the schema and cites what exists', (_, fuel) => {
    expect(fuelSchema.safeParse(fuel).error).toBeUndefined();
    for (const id of cited(fuel)) expect(sourceOf(id).id).toBe(id);
    for (const fact of fuel.hazards) expect(isFact(fact), fact).toBe(true);
    if ('gases' in fuel.combustible)
      for (const name of Object.keys(fuel.combustible.gases)) expect(speciesNames).toContain(name);
    else expect(fuel.heat_capacity_J_kgK, 'a solid or liquid brings its own heat').toBeDefined();
  });

  it.each(fuels.filter(({ kind }) => kind === 'liquid').map((fuel) => [fuel.id, fuel] as const))(
    '%s is burned under the caution of oil',
    (_, { hazards }) => {
      const ids = cautionsFor({ facts: hazards }).map(({ id }) => id);
      expect(ids).toContain('oil-fire');
    },
  );

  it('cost, typically, what lies inside the range they are sampled in', () => {
    for (const { id, price_USD_kg: price } of fuels as readonly Fuel[]) {
      if (!price) continue;
      expect(price.typical, id).toBeGreaterThanOrEqual(triangleAt(price, 0.025));
      expect(price.typical, id).toBeLessThanOrEqual(triangleAt(price, 0.975));
    }
  });

  it('name nothing twice', () => {
    const owner = new Map<string, string>();
    for (const { id, name, aliases } of fuels)
      for (const text of [id, name, ...aliases]) {
        expect(owner.get(nameKey(text)) ?? id, text).toBe(id);
        owner.set(nameKey(text), id);
      }
  });

  it('are found by the words people use, and missed with the nearest names', () => {
    expect(findFuel('LPG').id).toBe('lpg');
    expect(findFuel('Charcoal').id).toBe('lump-charcoal');
    expect(findFuel('briquettes').id).toBe('charcoal-briquettes');
    expect(findFuel('used cooking oil').id).toBe('waste-vegetable-oil');
    const miss = rejected(() => findFuel('propain'));
    expect(miss.code).toBe('unknown-name');
    expect(miss.example).toBe('propane');
  });

  it.each(fuels.map((fuel) => [fuel.id, fuel] as const))(
    '%s: its stated typical heat is the one reckoned with',
    (_, fuel) => {
      const { lower_heat_J_kg } = asFired({ fuel });
      // Known gases take theirs from formation enthalpies; the datum beside them is rounded to three figures.
      expect(Math.abs(lower_heat_J_kg / fuel.lower_heat_J_kg.typical - 1)).toBeLessThan(0.002);
    },
  );
});

describe('a kilogram as fired', () => {
  it('weighs a kilogram', () => {
    fc.assert(
      fc.property(
        solidOrLiquid,
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        (fuel, ash, moisture) => {
          const one = asFired({ fuel, ash, moisture });
          const mass =
            one.C_mol * 0.012011 +
            one.H_mol * 0.001008 +
            one.O_mol * 0.015999 +
            one.N_mol * 0.014007 +
            one.water_mol * 0.018015;
          expect(mass + ash).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('gives less heat the wetter and the ashier it is, and more when water condenses', () => {
    fc.assert(
      fc.property(solidOrLiquid, fc.double({ min: 0, max: 0.3, noNaN: true }), (fuel, share) => {
        const dry = asFired({ fuel, ash: 0, moisture: 0 });
        const wet = asFired({ fuel, ash: 0, moisture: share });
        const ashy = asFired({ fuel, ash: share, moisture: 0 });
        expect(dry.lower_heat_J_kg * (1 - share) - wet.lower_heat_J_kg).toBeCloseTo(share * EVAPORATION_J_kg, 2);
        expect(ashy.lower_heat_J_kg).toBeCloseTo(dry.lower_heat_J_kg * (1 - share), 2);
        expect(wet.higher_heat_J_kg).toBeGreaterThanOrEqual(wet.lower_heat_J_kg);
        // Water that came in liquid and leaves liquid costs nothing: only its mass is missing.
        expect(wet.higher_heat_J_kg).toBeCloseTo(dry.higher_heat_J_kg * (1 - share), 2);
      }),
    );
  });

  it('brings no heat at 25 °C and more when warm', () => {
    for (const fuel of fuels) {
      const one = asFired({ fuel });
      expect(sensibleHeat_J_kg(one, REFERENCE_K)).toBe(0);
      expect(sensibleHeat_J_kg(one, 350)).toBeGreaterThan(0);
      expect(sensibleHeat_J_kg(one, 260)).toBeLessThan(0);
    }
  });

  it('of gas weighs a kilogram too, without ash or water', () => {
    for (const fuel of fuels.filter(({ kind }) => kind === 'gas')) {
      const { C_mol, H_mol, O_mol, N_mol } = asFired({ fuel });
      expect(C_mol * 0.012011 + H_mol * 0.001008 + O_mol * 0.015999 + N_mol * 0.014007).toBeCloseTo(1, 9);
      expect(rejected(() => asFired({ fuel, ash: 0.1 })).option).toBe('ash');
      expect(rejected(() => asFired({ fuel, moisture: 0.1 })).option).toBe('moisture');
    }
  });

  it('is refused where nothing is left to burn', () => {
    const wood = findFuel('wood');
    expect(rejected(() => asFired({ fuel: wood, moisture: 0.95 })).code).toBe('impossible');
    expect(rejected(() => asFired({ fuel: wood, moisture: 0.895, ash: 0 })).what).toContain('cannot burn');
    expect(rejected(() => asFired({ fuel: wood, moisture: -0.1 }))).toMatchObject({
      code: 'out-of-range',
      option: 'moisture',
    });
    expect(rejected(() => asFired({ fuel: wood, ash: Number.NaN })).option).toBe('ash');
  });
});
