import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { air_K, fill, firing, furnace, lining, steel, wetWalls } from '../../../test/bench/wall-samples.ts';
import type { WallInput, WallLayer } from '../wall-run.ts';
import { temperatureAt } from './crossings.ts';
import { closedBore, netPower } from './drives.ts';
import { runWall } from './run-wall.ts';

const damp = (change: Partial<WallInput> = {}) => furnace({ layers: [lining({ water: 0.06 }), fill()], ...change });

/** Conducts so well that it is at one temperature, insulated outside: what goes in can be added up by hand. */
const block: WallLayer = {
  thickness_m: 0.02,
  density_kg_m3: 2000,
  conductivity: { T_K: [300], k_W_mK: [1e4] },
  heat_capacity: { T_K: [300], c_J_kgK: [1000] },
  water: 0.1,
};
const heated = (...phases: WallInput['phases']) =>
  runWall({
    geometry: 'plane',
    inner_radius_m: 0,
    layers: [block],
    start_K: 293.15,
    outward_W_m2: () => 0,
    phases,
  });

/** m³ of the lining on a m² of hot face. */
const ringOf = ({ inner_radius_m, layers }: WallInput): number =>
  ((inner_radius_m + layers[0]!.thickness_m) ** 2 - inner_radius_m ** 2) / (2 * inner_radius_m);

describe('free water', () => {
  it('takes its heat up to 100 °C and its latent heat there, and no more', () => {
    const dry_kg = 2000 * 0.02;
    const water_kg = 0.1 * dry_kg;
    const to_boil_J = 80 * (dry_kg * 1000 + water_kg * 4190);
    const boiled_J = to_boil_J + water_kg * 2.256e6;
    const all_J = boiled_J + 200 * dry_kg * 1000;
    const power_W = 10_000;
    const until = (heat_J: number) => heated({ until_s: heat_J / power_W, drive: netPower(power_W) });
    const end_K = (heat_J: number) => until(heat_J).shell_K.at(-1)!;
    expect(Math.abs(end_K(to_boil_J) - 373.15)).toBeLessThan(0.05);
    expect(Math.abs(end_K(0.5 * (to_boil_J + boiled_J)) - 373.15)).toBeLessThan(0.05);
    expect(until(0.5 * (to_boil_J + boiled_J)).water_left_kg_m2 / water_kg).toBeCloseTo(0.5, 2);
    expect(Math.abs(end_K(all_J) - 573.15)).toBeLessThan(0.05);
    expect(until(all_J).water_left_kg_m2).toBe(0);
  });

  it('does not come back in cooling: half boiled, cooled and heated again, only the other half has to go', () => {
    const dry_kg = 2000 * 0.02;
    const water_kg = 0.1 * dry_kg;
    const power_W = 10_000;
    const half_J = 80 * (dry_kg * 1000 + water_kg * 4190) + 0.5 * water_kg * 2.256e6;
    const down_J = 40 * (dry_kg * 1000 + 0.5 * water_kg * 4190);
    const once_s = half_J / power_W;
    const cool_s = once_s + down_J / power_W;
    const cooled = heated(
      { until_s: once_s, drive: netPower(power_W) },
      { until_s: cool_s, drive: netPower(-power_W) },
    );
    expect(Math.abs(cooled.shell_K.at(-1)! - 333.15)).toBeLessThan(0.3);
    expect(cooled.water_left_kg_m2 / water_kg).toBeCloseTo(0.5, 2);
    expect(cooled.imbalance).toBeLessThan(1e-3);
  });

  it('condensing on the shell, brings it to 100 °C early and no further, and the balance holds', () => {
    const input = damp({ phases: firing() });
    const [bore, shell] = (['hot face', 'shell'] as const).map((vapour) => runWall({ ...input, vapour }));
    const ends = [...shell!.time_s].flatMap((at_s, at) => (at_s <= 3600 ? [at] : []));
    const wet_K = ends.map((at) => shell!.shell_K[at]!);
    const dry_K = ends.map((at) => temperatureAt(bore!, 'shell', shell!.time_s[at]!));
    // Three tolerances of 0.3 K: what a step may be off while water boils.
    for (const [at, T] of wet_K.entries()) expect(T).toBeGreaterThan(dry_K[at]! - 0.9);
    const gained_dK = wet_K.map((T, at) => T - dry_K[at]!);
    expect(Math.max(...gained_dK)).toBeGreaterThan(50);
    for (const [at, T] of wet_K.entries()) if (dry_K[at]! < 372) expect(T).toBeLessThan(373.15 + 0.9);
    // The heat that the shell got back was lost by no one else: at most the latent heat of all the water.
    const water_kg = 0.06 * lining().density_kg_m3 * ringOf(input);
    const back_J = bore!.out_J_m2.at(-1)! - shell!.out_J_m2.at(-1)!;
    expect(back_J).toBeLessThan(1.001 * water_kg * 2.256e6);
    for (const { imbalance } of [bore!, shell!]) expect(imbalance).toBeLessThan(1e-3);
  });

  it('makes no difference where there is none', () => {
    const input = furnace({ phases: firing() });
    expect(runWall({ ...input, vapour: 'shell' }).shell_peak).toEqual(runWall(input).shell_peak);
  });

  it('is gone for good where the wall was hot, and a second firing needs less', () => {
    const fire = [
      [0, air_K],
      [2400, 1273.15],
      [20_000, 1273.15],
    ] as const;
    const once = damp({ phases: [{ until_s: 20_000, drive: { kind: 'temperature', points: fire } }] });
    const wet = runWall(once);
    const dry = runWall({ ...once, layers: [lining(), fill()] });
    const water_kg = 0.06 * 1900 * (0.05 * (1 + 0.025 / 0.127));
    expect(wet.water_left_kg_m2).toBe(0);
    // Both are near their steady state by then: what is left between them is what the water took.
    const water_J = water_kg * (2.256e6 + 4190 * (373.15 - air_K));
    expect((wet.in_J_m2.at(-1)! - dry.in_J_m2.at(-1)!) / water_J).toBeGreaterThan(0.85);
    expect((wet.in_J_m2.at(-1)! - dry.in_J_m2.at(-1)!) / water_J).toBeLessThan(1.05);
  });

  it('holds the shell back for as long as it boils', () => {
    const [wet, dry] = [damp(), furnace()].map((input) => runWall({ ...input, phases: firing() }));
    expect(wet!.shell_peak.time_s).toBeGreaterThan(dry!.shell_peak.time_s);
    expect(wet!.shell_peak.T_K).toBeLessThan(dry!.shell_peak.T_K);
  });

  it('is not counted in a wall that starts above 100 °C', () => {
    const run = runWall(damp({ start_K: 400, phases: [{ until_s: 60, drive: closedBore() }] }));
    expect(run.water_left_kg_m2).toBe(0);
  });

  it('boils under steel and at interfaces as anywhere', () => {
    const run = runWall(
      furnace({ layers: [lining({ water: 0.1 }), fill({ water: 0.5 })], shell: steel, phases: firing(24 * 3600) }),
    );
    expect(run.imbalance).toBeLessThan(1e-3);
  });

  it('never stops the solver, whatever the wall and however wet', () => {
    fc.assert(
      fc.property(wetWalls, (input) => {
        const run = runWall(input);
        expect(run.imbalance).toBeLessThan(1e-3);
        expect(run.water_left_kg_m2).toBeGreaterThanOrEqual(0);
        expect(Math.min(...run.shell_K)).toBeGreaterThan(air_K - 0.6);
      }),
      { numRuns: 300, endOnFailure: true },
    );
  });
});
