import { describe, expect, it } from 'vitest';
import { air_K, firing, furnace } from '../../../test/bench/wall-samples.ts';
import { openBoreFlux } from '../opening.ts';
import { temperatureAt, timeAbove, timeBelow } from './crossings.ts';
import { closedBore, gas, lidOn, netPower, openBore } from './drives.ts';
import { cubicAt, topShare } from './hermite.ts';
import { depthOf } from './isotherms.ts';
import { runWall } from './run-wall.ts';
import { heatAt, layerTable, pieceAt } from './table.ts';

const run = runWall(furnace({ phases: firing(20 * 3600) }));
const fine = runWall(furnace({ phases: firing(20 * 3600), tolerance_dK: 0.001 }));

describe('when', () => {
  it('finds the crossings up and down, between steps', () => {
    const [up, down] = [timeAbove(run, 'shell', 350)!, timeBelow(run, 'shell', 350)!];
    expect(up).toBeLessThan(run.shell_peak.time_s);
    expect(down).toBeGreaterThan(run.shell_peak.time_s);
    for (const at of [up, down]) expect(temperatureAt(run, 'shell', at)).toBeCloseTo(350, 2);
    // The shell changes by 0.3 K a minute or less there: the same to the error of a step.
    expect(Math.abs(up - timeAbove(fine, 'shell', 350)!)).toBeLessThan(20);
    expect(Math.abs(down - timeBelow(fine, 'shell', 350)!)).toBeLessThan(120);
  });

  it('knows never and always', () => {
    expect(timeAbove(run, 'shell', 1000)).toBeUndefined();
    expect(timeBelow(run, 'shell', 1000)).toBe(0);
    expect(timeAbove(run, 'shell', air_K - 1)).toBe(0);
    expect(timeBelow(run, 'shell', air_K - 1)).toBeUndefined();
    expect(() => timeAbove(run, 1, 400)).toThrow(/no interface 1/);
  });

  it('reads face and interfaces too', () => {
    expect(timeAbove(run, 'face', 1273.15)).toBeCloseTo(2400, 3);
    expect(temperatureAt(run, 'face', 1200)).toBeCloseTo((air_K + 1273.15) / 2, 6);
    expect(timeAbove(run, 0, 600)!).toBeLessThan(timeBelow(run, 0, 600)!);
  });

  it('is between steps as near to a fine solution as at their ends', () => {
    for (let at = 600; at < 20 * 3600; at += 97) {
      expect(Math.abs(temperatureAt(run, 'shell', at) - temperatureAt(fine, 'shell', at)), `${at} s`).toBeLessThan(0.5);
      expect(Math.abs(temperatureAt(run, 0, at) - temperatureAt(fine, 0, at)), `${at} s`).toBeLessThan(1);
    }
  });
});

describe('the top of a cubic', () => {
  it('is where its slope is nil, and no step end is above it', () => {
    const span = { step_s: 100, from_K: 400, from_rate: 0.02, to_K: 400.2, to_rate: -0.015 };
    const share = topShare(span)!;
    const top = cubicAt(span, share);
    for (const beside of [share - 0.01, share + 0.01, 0, 1]) expect(cubicAt(span, beside)).toBeLessThan(top);
    expect(topShare({ ...span, to_rate: 0.01 })).toBeUndefined();
  });

  it('gives back a parabola', () => {
    const at = (t: number) => 500 - (t - 30) ** 2 / 100;
    const rate = (t: number) => (30 - t) / 50;
    const share = topShare({ step_s: 100, from_K: at(0), from_rate: rate(0), to_K: at(100), to_rate: rate(100) });
    expect(share).toBeCloseTo(0.3, 12);
  });
});

describe('how deep', () => {
  it('lies deeper for a lower temperature, and a later peak counts', () => {
    const depths = [1200, 900, 700, 500, 400].map((T_K) => depthOf(run, T_K));
    expect(depths).toEqual(depths.toSorted((a, b) => a - b));
    expect(depthOf(run, 2000)).toBe(0);
    expect(depthOf(run, air_K)).toBe(run.depth_m.at(-1));
    expect(depthOf({ depth_m: Float64Array.of(0, 0.1), hottest_K: Float64Array.of(1000, 500) }, 750)).toBeCloseTo(0.05);
  });
});

describe('drives', () => {
  const into = (drive: ReturnType<typeof closedBore>, face_K: number) => drive.into_W_m2(face_K);

  it('give what their names say', () => {
    expect(into(closedBore(), 900)).toBe(0);
    expect(into(netPower(1234), 900)).toBe(1234);
    expect(into(gas({ gas_K: 1500, film_W_m2K: 20, emissivity: 0.3 }), 1500)).toBeCloseTo(0);
    expect(into(gas({ gas_K: 1500, film_W_m2K: 20, emissivity: 0 }), 1400)).toBeCloseTo(2000);
    expect(into(lidOn({ resistance_m2K_W: 2, outside_K: 300 }), 900)).toBe(-300);
  });

  it('lose through the open mouth what the mouth loses', () => {
    const mouth = { opening_ratio: 0.1, emissivity: 0.8, film_W_m2K: 10, air_K: 300 };
    expect(into(openBore(mouth), 1200)).toBe(-openBoreFlux({ ...mouth, face_K: 1200 }));
    expect(into(openBore(mouth), 300)).toBeCloseTo(0);
  });
});

describe('a table of k and c', () => {
  const table = layerTable({
    density_kg_m3: 2,
    conductivity: { T_K: [300, 500], k_W_mK: [1, 2] },
    heat_capacity: { T_K: [400, 600], c_J_kgK: [10, 30] },
  });

  it('integrates the straight pieces and holds the ends', () => {
    // c: 10 up to 400 K, then rising to 30 at 600 K, then 30; times the density of 2.
    const from = (T_K: number) => heatAt(table, T_K) - heatAt(table, 400);
    expect(from(300)).toBeCloseTo(-2 * 10 * 100, 9);
    expect(from(600)).toBeCloseTo(2 * 20 * 200, 9);
    expect(from(700)).toBeCloseTo(2 * (20 * 200 + 30 * 100), 9);
  });

  it('finds the same piece from any beginning', () => {
    for (const T of [200, 300, 350, 400, 450, 500, 550, 600, 800]) {
      const found = [0, 1, 2, 3, 4].map((from) => pieceAt(table, T, from));
      expect(new Set(found).size, `${T} K`).toBe(1);
    }
  });
});
