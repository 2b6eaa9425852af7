import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../ask-error.ts';
import { materials } from '../materials/catalogue.ts';
import { at } from '../materials/curve.ts';
import type { Curve } from '../materials/material.ts';
import { gapFilm_W_m2K, gapFlux_W_m2, hotSideOfGap_K } from './gap.ts';
import { lossFunction } from './outside.ts';
import { type SteadyLayer, steadyWall } from './steady.ts';
import { thetaOf } from './steady-theta.ts';

const curve = (rows: readonly (readonly [T_K: number, k: number])[]): Curve => ({
  T_K: rows.map(([T]) => T),
  low: rows.map(([, k]) => 0.8 * k),
  typical: rows.map(([, k]) => k),
  high: rows.map(([, k]) => 1.3 * k),
  kind: 'local',
  source: 'derived',
  standing: 'derived',
});
const constant = (k: number) =>
  curve([
    [250, k],
    [2000, k],
  ]);
const lining = curve([
  [293, 0.8],
  [1273, 1.1],
]);
const fill = curve([
  [293, 0.045],
  [673, 0.1],
  [1073, 0.19],
]);
const side = lossFunction({ face: 'vertical', length_m: 0.4, air_K: 293.15, emissivity: 0.8, wind_m_s: 0 });
const wall = (fill_m: number): SteadyLayer[] => [
  { thickness_m: 0.04, conductivity: lining },
  { thickness_m: fill_m, conductivity: fill },
];

describe('the conductivity integral', () => {
  const curves = materials.flatMap(({ id, conductivity_W_mK: k }) => (k ? [[id, k] as const] : []));
  it.each(curves)('of %s has the slope of its table everywhere, and goes back where it came from', (_id, k) => {
    for (const end of ['low', 'typical', 'high'] as const) {
      const theta = thetaOf(k, end);
      for (let T_K = 151; T_K < 2500; T_K += 17.3) {
        expect(theta.back(theta.of(T_K))).toBeCloseTo(T_K, 8);
        const nearRow = k.T_K.some((row) => Math.abs(row - T_K) < 0.02);
        const slope = (theta.of(T_K + 0.01) - theta.of(T_K - 0.01)) / 0.02;
        if (!nearRow) expect(slope / at(k, T_K, end).value).toBeCloseTo(1, 4);
      }
    }
  });
});

describe('a steady wall', () => {
  it('of one plane layer between films is the sum of two resistances', () => {
    const { flow_W, shell_K } = steadyWall({
      geometry: 'plane',
      layers: [{ thickness_m: 0.1, conductivity: constant(0.5) }],
      hot_K: 800,
      outward_W_m2: (T_K) => 12 * (T_K - 300),
    });
    expect(flow_W).toBeCloseTo(500 / (0.1 / 0.5 + 1 / 12), 6);
    expect(shell_K).toBeCloseTo(300 + flow_W / 12, 8);
  });

  it('takes k at the mean temperature where k is a straight line, in every shape', () => {
    for (const geometry of ['plane', 'cylinder', 'sphere'] as const) {
      const ask = (conductivity: Curve) =>
        steadyWall({
          geometry,
          inner_radius_m: 0.1,
          layers: [{ thickness_m: 0.05, conductivity }],
          hot_K: 1200,
          outward_W_m2: (T_K) => 1e9 * (T_K - 400),
        }).flow_W;
      expect(ask(lining) / ask(constant(at(lining, 800).value))).toBeCloseTo(1, 6);
    }
  });

  it('bent to a huge radius is a plane', () => {
    const ask = (geometry: 'plane' | 'cylinder' | 'sphere') =>
      steadyWall({ geometry, inner_radius_m: 1e4, layers: wall(0.06), hot_K: 1273, outward_W_m2: side });
    for (const shape of ['cylinder', 'sphere'] as const) {
      expect(ask(shape).shell_K).toBeCloseTo(ask('plane').shell_K, 2);
      expect(ask(shape).hot_flux_W_m2 / ask('plane').hot_flux_W_m2).toBeCloseTo(1, 4);
    }
  });

  it('loses through the shell what goes in at the hot face', () => {
    const answer = steadyWall({
      geometry: 'sphere',
      inner_radius_m: 0.1,
      layers: wall(0.06),
      hot_K: 1273,
      outward_W_m2: side,
    });
    expect(answer.hot_flux_W_m2 * 4 * Math.PI * 0.1 ** 2).toBeCloseTo(answer.flow_W, 8);
    expect(side(answer.shell_K) * 4 * Math.PI * 0.2 ** 2).toBeCloseTo(answer.flow_W, 6);
  });

  it('loses less and is cooler outside the thicker its fill: there is no critical radius at this size', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.15, noNaN: true }),
        fc.double({ min: 0.002, max: 0.05, noNaN: true }),
        fc.double({ min: 500, max: 1500, noNaN: true }),
        (fill_m, more_m, hot_K) => {
          const ask = (thick_m: number) =>
            steadyWall({ geometry: 'cylinder', inner_radius_m: 0.1, layers: wall(thick_m), hot_K, outward_W_m2: side });
          expect(ask(fill_m + more_m).flow_W).toBeLessThan(ask(fill_m).flow_W);
          expect(ask(fill_m + more_m).shell_K).toBeLessThan(ask(fill_m).shell_K);
        },
      ),
    ));

  it('falls from face to face, whatever the layers', () =>
    fc.assert(
      fc.property(
        fc.array(
          fc.oneof(
            fc.record({
              thickness_m: fc.double({ min: 0.001, max: 0.1, noNaN: true }),
              conductivity: fc.constantFrom(lining, fill, constant(20)),
              end: fc.constantFrom('low' as const, 'typical' as const, 'high' as const),
            }),
            fc.record({
              gap_m: fc.double({ min: 0.001, max: 0.01, noNaN: true }),
              hot_emissivity: fc.double({ min: 0.1, max: 0.95, noNaN: true }),
              cold_emissivity: fc.double({ min: 0.1, max: 0.95, noNaN: true }),
            }),
            fc.record({ joint_m2K_W: fc.double({ min: 0.0001, max: 0.1, noNaN: true }) }),
          ),
          { minLength: 1, maxLength: 5 },
        ),
        fc.double({ min: 400, max: 1700, noNaN: true }),
        fc.constantFrom('plane' as const, 'cylinder' as const, 'sphere' as const),
        (layers, hot_K, geometry) => {
          const { faces_K, shell_K } = steadyWall({
            geometry,
            inner_radius_m: 0.08,
            layers,
            hot_K,
            outward_W_m2: side,
          });
          expect(faces_K[0]).toBe(hot_K);
          expect(faces_K.at(-1)).toBe(shell_K);
          for (let i = 1; i < faces_K.length; i++) expect(faces_K[i]!).toBeLessThan(faces_K[i - 1]!);
          expect(shell_K).toBeGreaterThan(293.15);
        },
      ),
    ));

  it('loses more at the high end of its conductivity', () => {
    const ask = (end: 'low' | 'typical' | 'high') =>
      steadyWall({
        geometry: 'cylinder',
        inner_radius_m: 0.1,
        layers: wall(0.06).map((layer) => ({ ...layer, end })),
        hot_K: 1273,
        outward_W_m2: side,
      }).flow_W;
    expect(ask('low')).toBeLessThan(ask('typical'));
    expect(ask('typical')).toBeLessThan(ask('high'));
  });

  it('says which layers leave their table', () => {
    const ask = (hot_K: number) =>
      steadyWall({ geometry: 'plane', layers: wall(0.06), hot_K, outward_W_m2: side }).extrapolated;
    expect(ask(1000)).toEqual([]);
    expect(ask(1500)).toEqual([0, 1]);
  });

  it('shows its working, layer by layer', () => {
    const steps = steadyWall({
      geometry: 'cylinder',
      inner_radius_m: 0.1,
      layers: wall(0.06),
      hot_K: 1273,
      outward_W_m2: side,
    }).steps();
    expect(steps.map(({ gives }) => gives.cold_side_K)).toHaveLength(2);
    expect(steps[0]!.gives.cold_side_K).toBe(steps[1]!.gives.hot_side_K);
  });

  const good = {
    geometry: 'cylinder',
    inner_radius_m: 0.1,
    layers: wall(0.06),
    hot_K: 1273,
    outward_W_m2: side,
  } as const;
  it.each([
    [{ hot_K: 280 }, 'not hotter than what is around'],
    [{ hot_K: 293.15 }, 'not hotter than what is around'],
    [{ hot_K: Number.NaN }, 'NaN K'],
    [{ layers: [] }, 'no layers'],
    [{ layers: [{ thickness_m: 0, conductivity: lining }] }, 'layer 1 is 0 m thick'],
    [{ layers: [{ thickness_m: -0.01, conductivity: lining }] }, 'layer 1 is -0.01 m thick'],
    [{ layers: [{ joint_m2K_W: -1 }] }, 'layer 1 is -1 m²K/W'],
    [{ inner_radius_m: 0 }, "the bore's radius is 0 m"],
  ])('refuses %o', (wrong, what) => {
    expect(() => steadyWall({ ...good, ...wrong })).toThrow(what);
    expect(() => steadyWall({ ...good, ...wrong })).toThrow(AskError);
  });
});

describe('an air gap', () => {
  const gap = { width_m: 0.003, hot_emissivity: 0.85, cold_emissivity: 0.85 };

  it('gives back the hot side of its own flux', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 280, max: 1200, noNaN: true }),
        fc.double({ min: 250, max: 1200, noNaN: true }),
        (hot_K, cold_K) => {
          expect(hotSideOfGap_K(gap, cold_K, gapFlux_W_m2(gap, hot_K, cold_K))).toBeCloseTo(hot_K, 6);
        },
      ),
    ));

  it('insulates badly when hot: at 400 °C it radiates three times what its air conducts', () => {
    const { radiation_W_m2K, conduction_W_m2K } = gapFilm_W_m2K(gap, 673.15);
    expect(radiation_W_m2K).toBeCloseTo(51, 0);
    expect(conduction_W_m2K).toBeCloseTo(17, 0);
  });
});
