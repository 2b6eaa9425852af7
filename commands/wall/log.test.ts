import { describe, expect, it } from 'vitest';
import { modelErrors, readingErrors } from '../../core/build/log-data.ts';
import { sampleDoubt } from '../../core/doubt/sample.ts';
import { temperatureAt } from '../../core/heat/transient/crossings.ts';
import { runWall } from '../../core/heat/transient/run-wall.ts';
import { answerWall } from '../../core/heat/wall-answer.ts';
import { airDoubt, type Draw, type WallQuestion, wallModel } from '../../core/heat/wall-question.ts';
import { findMaterial } from '../../core/materials/catalogue.ts';
import type { LogEntry } from '../memory-weeks.ts';
import { byReadings } from './log.ts';

const layer = (name: string, thickness_m: number) => ({ material: findMaterial(name), thickness_m, water: 0 });
const layers = [layer('clay-sand-lining', 0.04), layer('vermiculite', 0.06)];
const question: WallQuestion = {
  layers,
  bore_m: 0.25,
  height_m: 0.3,
  hot_K: { low: 1073, typical: 1123, high: 1173 },
  ramp_s: 2400,
  hold_s: 3600,
  lid_off_s: 0,
  lid: [layer('clay-sand-lining', 0.05)],
  floor: layers,
  vent_radius_m: 0.04,
  shell_m: 0.001,
  emissivity: { low: 0.8, typical: 0.9, high: 0.96 },
  wind_m_s: { low: 0, typical: 0.3, high: 1 },
  air_K: { low: 285, typical: 293, high: 301 },
};
const after_s = 4500;
const [reading_K, air_K] = [355, 290];
const entry = (kind: string, data: LogEntry['data']): LogEntry => ({
  id: 'A',
  build: 'pot',
  kind,
  at: new Date(0),
  data,
});
const shell = entry('shell', { shell_K: reading_K, after_s, air_K });
const by = (...entries: LogEntry[]) => byReadings(question, { build: 'pot', entries })!;
const fineness = { cells: 5, tolerance_dK: 3 } as const;
const weightedMean = (values: readonly number[], weights: readonly number[]) =>
  values.reduce((sum, one, at) => sum + one * weights[at]!, 0) / weights.reduce((sum, one) => sum + one, 0);

describe('a wall by a reading of its shell', () => {
  it('comes to where weights on its draws put it, and to their spread', () => {
    const model = wallModel(question);
    const { draw: moved, readings } = by(shell);
    expect(readings[0]!.used).toBe(true);
    const draws: Draw[] = [];
    sampleDoubt({
      inputs: model.inputs,
      together: model.together,
      samples: 400,
      model: (one) => {
        if (draws.length < 400) draws.push({ ...one });
        return { none: 0 };
      },
    });
    const shellOf = (draw: Draw, air = draw[airDoubt]!) => {
      const run = runWall(model.input({ ...draw, [airDoubt]: air }, fineness));
      return { then_K: temperatureAt(run, 'shell', after_s), peak_K: run.shell_peak.T_K };
    };
    const rise_dK = reading_K - air_K;
    const error = Math.hypot(
      readingErrors.shell_K.value / 2,
      (readingErrors.firing_rise.value / 2) * rise_dK,
      (modelErrors.shell_rise.value / 2) * rise_dK,
    );
    const weights = draws.map((draw) => Math.exp(-(((shellOf(draw, air_K).then_K - reading_K) / error) ** 2) / 2));
    const before = draws.map((draw) => shellOf(draw).peak_K);
    const after = draws.map((draw) => shellOf(moved(draw)).peak_K);
    const even = draws.map(() => 1);
    const spreadOf = (values: readonly number[], of: readonly number[]) => {
      const mean = weightedMean(values, of);
      return Math.sqrt(
        weightedMean(
          values.map((one) => (one - mean) ** 2),
          of,
        ),
      );
    };
    // Weights of 400 draws, and a model that bends: a fifth of the spread before the reading.
    const near = 0.2 * spreadOf(before, even);
    expect(Math.abs(weightedMean(after, even) - weightedMean(before, weights))).toBeLessThan(near);
    expect(Math.abs(spreadOf(after, even) - spreadOf(before, weights))).toBeLessThan(near);
    expect(spreadOf(after, even)).toBeLessThan(0.8 * spreadOf(before, even));
  }, 60_000);

  it('is not read before the shell has felt the fire, and not at all of a damp wall', () => {
    expect(by(entry('shell', { shell_K: 295, after_s: 200 }))).toBeUndefined();
    const damp = { ...question, layers: [{ ...layers[0]!, water: 0.05 }, layers[1]!] };
    expect(byReadings(damp, { build: 'pot', entries: [shell] })).toBeUndefined();
    expect(byReadings(question, undefined)).toBeUndefined();
  });

  it('after its fire went out is held against the cooling wall', () => {
    const out = (after: number) =>
      by(entry('shell', { shell_K: 370, after_s: after, out_s: 3600, air_K })).readings[0]!;
    const [at, later, cold] = [out(3600), out(5400), out(14 * 3600)];
    expect(later.estimate).toBeGreaterThan(at.estimate);
    expect(cold.estimate).toBeLessThan(later.estimate);
  });

  it('with a hotter bore than the question has, less is expected of the wall', () => {
    const at = (hot_K: number) =>
      by(entry('shell', { shell_K: reading_K, after_s, air_K, hot_K })).readings[0]!.estimate;
    expect(at(1223)).toBeGreaterThan(at(1123));
    expect(at(1123)).toBeCloseTo(by(shell).readings[0]!.estimate, 9);
  });
});

describe('a wall by a bucket of its lining', () => {
  it('conducts by its density too, where the two go together', () => {
    const bucket = entry('bucket', { material: 'clay-sand-lining', how: 'rammed', volume_m3: 0.005, mass_kg: 9 });
    const { spreads } = by(bucket);
    const { inputs, densities, together } = wallModel(question);
    expect(spreads[densities[0]!]!.typical).toBeLessThan(inputs[densities[0]!]!.typical);
    const tie = together.find(({ goesWith }) => goesWith === densities[0]);
    expect(tie).toBeDefined();
    const conducts = spreads[tie!.input]!;
    expect(Math.sign(conducts.typical - inputs[tie!.input]!.typical)).toBe(-Math.sign(tie!.rank));
    expect(spreads[densities[1]!]).toEqual(inputs[densities[1]!]);
  });
});

describe('a wall whose draws are moved', () => {
  it('is the same where they stay, and has no range where they all go to one place', () => {
    const plain = answerWall(question);
    expect(answerWall(question, { moved: (draw) => draw }).ranges).toEqual(plain.ranges);
    const { typical } = wallModel(question);
    const { ranges, firing } = answerWall(question, { moved: () => typical });
    expect(ranges.shell_peak!.high).toBeCloseTo(ranges.shell_peak!.low, 9);
    expect(firing.shell_peak_K).toBe(plain.firing.shell_peak_K);
  }, 60_000);
});
