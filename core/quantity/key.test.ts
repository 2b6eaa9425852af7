import { expect, test } from 'vitest';
import { readKey } from './key.ts';

test.each([
  ['dry_density_kg_m3', 'dry density', 'kg/m3'],
  ['thickness_m', 'thickness', 'm'],
  ['area_m2', 'area', 'm2'],
  ['volume_m3', 'volume', 'm3'],
  ['mass_kg', 'mass', 'kg'],
  ['soak_s', 'soak', 's'],
  ['surface_K', 'surface', 'K'],
  ['rise_dK', 'rise', 'dK'],
  ['expansion_per_K', 'expansion', '1/K'],
  ['conductivity_W_mK', 'conductivity', 'W/(m K)'],
  ['heat_capacity_J_kgK', 'heat capacity', 'J/(kg K)'],
  ['latent_J_kg', 'latent', 'J/kg'],
  ['loss_W', 'loss', 'W'],
  ['loss_W_m2', 'loss', 'W/m2'],
  ['film_W_m2K', 'film', 'W/(m2 K)'],
  ['air_m3_s', 'air', 'm3/s'],
  ['fuel_kg_s', 'fuel', 'kg/s'],
  ['cost_USD', 'cost', 'USD'],
  ['bags_count', 'bags', 'count'],
  ['spare', 'spare', '1'],
  ['sand_parts', 'sand parts', '1'],
])('%s', (key, label, unit) => {
  expect(readKey(key)).toEqual({ label, unit });
});
