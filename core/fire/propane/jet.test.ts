import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { sourceOf } from '../../sources/sources.ts';
import { drills, nearestDrills } from '../data/drills.ts';
import { jetEdges } from '../data/jet-edges.ts';
import { criticalRatio, type JetInput, jetBore_m, jetFlow, jetUpstream_Pa } from './jet.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const air_Pa = 101325;
const plain: JetInput = {
  jet_bore_m: 0.0008,
  upstream_Pa: air_Pa + 100e3,
  downstream_Pa: air_Pa,
  discharge: 0.83,
  gas_K: 293.15,
  k: 1.135,
  molar_mass_kg_mol: 0.044096,
  compressibility: 1,
};

describe('a gas jet (physics)', () => {
  it('is Bernoulli at a small difference', () => {
    const { flow_kg_s, choked } = jetFlow({ ...plain, upstream_Pa: air_Pa + 100 });
    const density = (air_Pa * 0.044096) / (8.314462618 * 293.15);
    const bernoulli = 0.83 * (Math.PI / 4) * 0.0008 ** 2 * Math.sqrt(2 * density * 100);
    expect(choked).toBe(false);
    // The gas swells by 100 Pa in 101 kPa.
    expect(Math.abs(flow_kg_s / bernoulli - 1)).toBeLessThan(1e-3);
  });

  it('is found again from its flow: the pressure turned round', () => {
    fc.assert(
      fc.property(real(1, 690e3), real(0.0003, 0.003), (gauge_Pa, jet_bore_m) => {
        const { upstream_Pa: _, ...rest } = { ...plain, jet_bore_m };
        const { flow_kg_s } = jetFlow({ ...rest, upstream_Pa: air_Pa + gauge_Pa });
        expect(Math.abs(jetUpstream_Pa({ ...rest, flow_kg_s }) - air_Pa - gauge_Pa)).toBeLessThan(1e-3);
      }),
    );
    const { upstream_Pa: _, ...rest } = plain;
    expect(() => jetUpstream_Pa({ ...rest, flow_kg_s: 0.01 })).toThrow(/lets .* through at most/);
  });

  it('chokes at 74 kPa gauge at sea level for propane, without a jump', () => {
    const gauge_kPa = (k: number) => (air_Pa / criticalRatio({ k }) - air_Pa) / 1000;
    expect(gauge_kPa(1.13)).toBeGreaterThan(73);
    expect(gauge_kPa(1.15)).toBeLessThan(76);
    const upstream_Pa = air_Pa / criticalRatio({ k: 1.135 });
    const below = jetFlow({ ...plain, upstream_Pa: upstream_Pa * (1 - 1e-7) });
    const above = jetFlow({ ...plain, upstream_Pa: upstream_Pa * (1 + 1e-7) });
    expect([below.choked, above.choked]).toEqual([false, true]);
    expect(above.flow_kg_s / below.flow_kg_s).toBeCloseTo(1, 6);
    expect(above.thrust_N / below.thrust_N).toBeCloseTo(1, 5);
  });

  it('follows absolute pressure once choked: 100 to 200 kPa gauge is half as much again, not twice', () => {
    const ratio = jetFlow({ ...plain, upstream_Pa: air_Pa + 200e3 }).flow_kg_s / jetFlow(plain).flow_kg_s;
    expect(ratio).toBeCloseTo(301.325 / 201.325, 9);
  });

  it('does not feel the room once choked, and leaves at the speed of sound there', () => {
    const one = jetFlow(plain);
    expect(jetFlow({ ...plain, downstream_Pa: 50e3 }).flow_kg_s).toBeCloseTo(one.flow_kg_s, 15);
    const exit_K = (293.15 * 2) / 2.135;
    expect(one.exit_velocity_m_s).toBeCloseTo(Math.sqrt((1.135 * 8.314462618 * exit_K) / 0.044096), 6);
  });

  it('rises with pressure and bore, and turns round to the bore', () => {
    fc.assert(
      fc.property(real(1, 400e3), real(2e-4, 5e-3), real(0.5, 0.99), (gauge_Pa, jet_bore_m, discharge) => {
        const input = { ...plain, upstream_Pa: air_Pa + gauge_Pa, jet_bore_m, discharge };
        const { flow_kg_s } = jetFlow(input);
        expect(jetFlow({ ...input, upstream_Pa: input.upstream_Pa + 10 }).flow_kg_s).toBeGreaterThan(flow_kg_s);
        expect(jetBore_m({ ...input, flow_kg_s }) / jet_bore_m).toBeCloseTo(1, 9);
      }),
    );
  });

  it('is ±12.5 % in flow for ±0.05 mm on 0.8 mm', () => {
    const wide = jetFlow({ ...plain, jet_bore_m: 0.00085 }).flow_kg_s;
    expect(wide / jetFlow(plain).flow_kg_s - 1).toBeCloseTo(0.129, 3);
  });

  it('refuses no pressure, and numbers that are none', () => {
    expect(() => jetFlow({ ...plain, upstream_Pa: air_Pa })).toThrow(/no gas flows/);
    for (const wrong of [{ jet_bore_m: -1 }, { discharge: 1.2 }, { gas_K: 20 }, { upstream_Pa: Number.NaN }]) {
      expect(() => jetFlow({ ...plain, ...wrong })).toThrow(AskError);
    }
  });
});

describe('drills', () => {
  it('fall from number 1 to 80 and rise in the other series', () => {
    const bores = (series: string) => drills.filter((drill) => drill.series === series).map(({ bore_m }) => bore_m);
    expect(bores('number')).toEqual(bores('number').toSorted((a, b) => b - a));
    expect(bores('number')).toHaveLength(80);
    for (const series of ['metric', 'fraction']) expect(bores(series)).toEqual(bores(series).toSorted((a, b) => a - b));
  });

  it('are found nearest first, one of each series, with what their flow is off by', () => {
    const found = nearestDrills({ bore_m: 0.00081 });
    expect(found.map(({ name }) => name).sort()).toEqual(['0.8 mm', '1/32 in', 'no. 67']);
    expect(found[0]!.flow_share).toBeCloseTo((found[0]!.bore_m / 0.00081) ** 2, 12);
    fc.assert(
      fc.property(real(3e-4, 0.01), (bore_m) => {
        const [first, second, third] = nearestDrills({ bore_m }).map((drill) => Math.abs(drill.bore_m - bore_m));
        expect(first!).toBeLessThanOrEqual(second!);
        expect(second!).toBeLessThanOrEqual(third!);
        const metric = nearestDrills({ bore_m }).find(({ series }) => series === 'metric')!;
        expect(Math.abs(metric.bore_m - bore_m)).toBeLessThanOrEqual(0.5e-4 + 1e-12);
      }),
    );
  });

  it('know the fractions: 1/16, 5/64, 3/8', () => {
    const names = drills.filter(({ series }) => series === 'fraction').map(({ name }) => name);
    expect(names.slice(0, 5)).toEqual(['1/64 in', '1/32 in', '3/64 in', '1/16 in', '5/64 in']);
    expect(names.at(-1)).toBe('3/8 in');
  });

  it('refuse a hole that no drill here makes', () => {
    expect(() => nearestDrills({ bore_m: 0.0001 })).toThrow(AskError);
  });
});

describe('edges of a jet', () => {
  it('are in order, within what the formula takes, and cited', () => {
    for (const { low, typical, high, source } of Object.values(jetEdges)) {
      expect(low).toBeLessThanOrEqual(typical);
      expect(typical).toBeLessThanOrEqual(high);
      expect(sourceOf(source).id).toBe(source);
      for (const discharge of [low, high]) expect(jetFlow({ ...plain, discharge }).flow_kg_s).toBeGreaterThan(0);
    }
  });
});
