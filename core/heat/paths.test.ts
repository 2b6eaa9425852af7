import { describe, expect, it } from 'vitest';
import { findMaterial } from '../materials/catalogue.ts';
import { openingLoss_W } from './opening.ts';
import { lossByPath, type PathName, type PathsQuestion } from './paths.ts';
import type { SteadyLayer } from './steady.ts';

const curveOf = (name: string) => findMaterial(name).conductivity_W_mK!;
const layers: SteadyLayer[] = [
  { thickness_m: 0.025, conductivity: curveOf('dense castable') },
  { thickness_m: 0.06, conductivity: curveOf('perlite') },
];
const air = { air_K: 293.15, emissivity: 0.9, wind_m_s: 0 } as const;
const furnace: PathsQuestion = {
  hot_K: 1200,
  bore_radius_m: 0.125,
  bore_height_m: 0.3,
  side: { layers, outside: { ...air, face: 'vertical', length_m: 0.45 } },
  lid: {
    layers: [{ thickness_m: 0.05, conductivity: curveOf('dense castable') }],
    outside: { ...air, face: 'up', length_m: 0.1 },
  },
  floor: { layers, outside: { ground_K: 288, ground_W_mK: 1 } },
  vent_radius_m: 0.04,
  tuyere_radius_m: 0.02,
  air_K: 293.15,
};
const loss = (question: PathsQuestion, name: PathName) =>
  lossByPath(question).paths.find(({ path }) => path === name)?.loss_W ?? 0;

describe('loss by path', () => {
  it('adds up, shares to one, largest first', () => {
    const { paths, total_W } = lossByPath(furnace);
    expect(paths.reduce((sum, { loss_W }) => sum + loss_W, 0)).toBeCloseTo(total_W, 8);
    expect(paths.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(paths.map(({ loss_W }) => loss_W)).toEqual(paths.map(({ loss_W }) => loss_W).toSorted((a, b) => b - a));
    expect(new Set(paths.map(({ path }) => path)).size).toBe(6);
  });

  it('has no path that is not there', () => {
    const { vent_radius_m: _vent, tuyere_radius_m: _tuyere, ...closed } = furnace;
    expect(
      lossByPath(closed)
        .paths.map(({ path }) => path)
        .toSorted(),
    ).toEqual(['corners', 'floor', 'lid', 'side']);
  });

  it('without a lid radiates from the whole mouth', () => {
    const { lid: _lid, vent_radius_m: _vent, ...open } = furnace;
    expect(loss(open, 'lid')).toBe(0);
    expect(loss(open, 'vent')).toBeCloseTo(
      openingLoss_W({ radius_m: 0.125, depth_m: 0, cavity_K: 1200, air_K: 293.15 }),
      8,
    );
    expect(loss(open, 'vent')).toBeGreaterThan((0.125 / 0.04) ** 2 * loss(furnace, 'vent'));
  });

  it('takes the vent out of the lid', () => {
    expect(loss({ ...furnace, vent_radius_m: 0.06 }, 'lid')).toBeLessThan(loss(furnace, 'lid'));
    expect(loss({ ...furnace, vent_radius_m: 0.06 }, 'vent')).toBeGreaterThan(loss(furnace, 'vent'));
  });

  it('in the side goes with the height, and in floor and lid does not', () => {
    const tall = { ...furnace, bore_height_m: 0.6 };
    expect(loss(tall, 'side')).toBeCloseTo(2 * loss(furnace, 'side'), 8);
    for (const same of ['lid', 'floor', 'corners'] as const) expect(loss(tall, same)).toBe(loss(furnace, same));
  });

  it('into wet ground is more than into dry sand, and into perfect ground no more than the floor lets through', () => {
    const on = (ground_W_mK: number) =>
      loss({ ...furnace, floor: { layers, outside: { ground_K: 288, ground_W_mK } } }, 'floor');
    expect(on(2)).toBeGreaterThan(on(0.3));
    expect(on(1e6) / on(1e5)).toBeCloseTo(1, 3);
  });

  it('shows its working', () => {
    const { steps, total_W } = lossByPath(furnace);
    expect(steps().at(-1)?.gives.total_W).toBe(total_W);
  });
});
