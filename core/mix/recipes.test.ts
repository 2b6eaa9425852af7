import { describe, expect, it } from 'vitest';
import { findMaterial } from '../materials/catalogue.ts';
import { sourceOf } from '../sources/sources.ts';
import { bags } from './price.ts';
import { recipeSchema } from './recipe.ts';
import { recipes } from './recipes.ts';
import { slotOf } from './slots.ts';

describe('recipes and bags as data', () => {
  it.each(recipes.map((recipe) => [recipe.id, recipe] as const))('%s is whole', (_id, recipe) => {
    recipeSchema.parse(recipe);
    expect(sourceOf(recipe.source).title).not.toBe('');
    const { properties } = findMaterial(recipe.lining);
    expect(properties.density_kg_m3).toBeDefined();
    expect(properties.mixing_water).toBeDefined();
    for (const { material, slot } of recipe.parts) expect(slotOf(findMaterial(material))).toBe(slot);
  });

  it.each(recipes.filter(({ role }) => role === 'hot face').map((recipe) => [recipe.id, recipe] as const))(
    '%s is filled with a clay that stands what the wall of it is judged by',
    (_id, { lining, parts }) => {
      const limit = (id: string) => findMaterial(id).properties.service_limit_K?.low ?? Number.NaN;
      const binders = parts.filter(({ slot }) => slot === 'clay' || slot === 'castable');
      for (const { material } of binders) expect(limit(material)).toBeGreaterThanOrEqual(limit(lining));
    },
  );

  it('are at least ten, each under its own name', () => {
    expect(recipes.length).toBeGreaterThanOrEqual(10);
    const names = recipes.flatMap(({ id, name, aliases }) => [id, name, ...aliases]);
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(bags.map((bag) => [bag.material, bag] as const))(
    'a bag of %s has a size, a price and a source',
    (material, bag) => {
      expect(findMaterial(material).id).toBe(material);
      expect((bag.mass_kg ?? 0) > 0).not.toBe((bag.volume_m3 ?? 0) > 0);
      expect(bag.price_USD.low).toBeLessThanOrEqual(bag.price_USD.high);
      expect(sourceOf(bag.source).title).not.toBe('');
    },
  );
});
