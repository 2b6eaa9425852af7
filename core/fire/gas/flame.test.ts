import { describe, expect, it } from 'vitest';
import { readKey } from '../../quantity/key.ts';
import { sourceOf } from '../../sources/sources.ts';
import { findFuel, fuels } from '../fuel/fuel.ts';
import { flame } from './flame.ts';

const propane = findFuel('propane');
const sum = (shares: object): number =>
  Object.values(shares).reduce((total: number, share: number) => total + share, 0);

describe('a flame', () => {
  it.each(fuels.map((fuel) => [fuel.id, fuel] as const))('of %s is a gas whose shares sum to one', (_, fuel) => {
    const { wet, dry, temperature_K } = flame({ fuel, excess_air: 0.1 });
    expect(sum(wet)).toBeCloseTo(1, 9);
    expect(sum(dry)).toBeCloseTo(1, 9);
    expect(temperature_K).toBeGreaterThan(1900);
    expect(temperature_K).toBeLessThan(2300);
  });

  it('is hottest a little rich, and cooler on both sides', () => {
    const at = (equivalence_ratio: number): number => flame({ fuel: propane, equivalence_ratio }).temperature_K;
    const ratios = Array.from({ length: 60 }, (_, i) => 0.7 + i * 0.01);
    const peak = ratios.reduce((best, ratio) => (at(ratio) > at(best) ? ratio : best));
    expect(peak).toBeGreaterThan(1);
    expect(peak).toBeLessThan(1.12);
    for (const ratio of ratios) {
      const [here, next] = [at(ratio), at(ratio + 0.01)];
      if (ratio + 0.01 < peak) expect(next).toBeGreaterThan(here);
      if (ratio > peak) expect(next).toBeLessThan(here);
    }
  });

  it('is hotter with warm air and with oxygen, cooler with damp air, water and ash', () => {
    const plain = flame({ fuel: propane, equivalence_ratio: 0.9 }).temperature_K;
    expect(flame({ fuel: propane, equivalence_ratio: 0.9, air_K: 600 }).temperature_K).toBeGreaterThan(plain + 100);
    expect(flame({ fuel: propane, equivalence_ratio: 0.9, oxygen_share: 0.3 }).temperature_K).toBeGreaterThan(
      plain + 200,
    );
    expect(
      flame({ fuel: propane, equivalence_ratio: 0.9, relative_humidity: 0.8, air_K: 298.15 }).temperature_K,
    ).toBeLessThan(plain);
    const charcoal = findFuel('lump charcoal');
    const clean = flame({ fuel: charcoal, ash: 0.02, excess_air: 0.2 }).temperature_K;
    // Ash only warms up, with some fortieth of the heat capacity of the gas: a fortieth of 1800 K.
    const ashy = flame({ fuel: charcoal, ash: 0.25, excess_air: 0.2 }).temperature_K;
    expect(clean - ashy).toBeGreaterThan(20);
    expect(clean - ashy).toBeLessThan(90);
    const damp = flame({ fuel: charcoal, moisture: 0.15, excess_air: 0.2 }).temperature_K;
    expect(damp).toBeLessThan(flame({ fuel: charcoal, moisture: 0.03, excess_air: 0.2 }).temperature_K);
  });

  it('moves less between fuels than between airs', () => {
    const fuelled = fuels.filter(({ id }) => id !== 'wood').map((fuel) => flame({ fuel }).temperature_K);
    expect(Math.max(...fuelled) - Math.min(...fuelled)).toBeLessThan(100);
    expect(
      flame({ fuel: propane }).temperature_K - flame({ fuel: propane, excess_air: 0.5 }).temperature_K,
    ).toBeGreaterThan(300);
  });

  it('smokes and makes CO where air is short', () => {
    const short = flame({ fuel: findFuel('coke'), equivalence_ratio: 2.3 });
    expect(short.soot).toBeGreaterThan(0);
    expect(short.wet.CO).toBeGreaterThan(0.3);
    expect(flame({ fuel: findFuel('coke'), equivalence_ratio: 0.9 }).soot).toBe(0);
  });

  it('shows its working in units that can be printed', () => {
    const steps = flame({ fuel: propane, excess_air: 0.1 }).steps();
    expect(steps).toHaveLength(3);
    for (const { inputs, gives, source } of steps) {
      expect(sourceOf(source).id).toBe(source);
      for (const [key, value] of Object.entries({ ...inputs, ...gives })) {
        expect(Number.isFinite(value), key).toBe(true);
        expect(readKey(key).label).not.toMatch(/ [A-Z]$/);
      }
    }
  });
});
