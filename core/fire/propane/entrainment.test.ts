import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { freeJetAir, type MixingTubeInput, mixingTube, tubeAreaRatio } from './entrainment.ts';
import { jetFlow } from './jet.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const gas_density_kg_m3 = 1.83;
const air_density_kg_m3 = 1.2;
const jet = (jet_bore_m: number, gauge_Pa: number) =>
  jetFlow({
    jet_bore_m,
    upstream_Pa: 101325 + gauge_Pa,
    downstream_Pa: 101325,
    discharge: 0.83,
    gas_K: 293.15,
    k: 1.135,
    molar_mass_kg_mol: 0.044096,
    compressibility: 1,
  });
const tube = (jet_bore_m: number, gauge_Pa: number, tube_bore_m: number, changed: Partial<MixingTubeInput> = {}) => {
  const { flow_kg_s, thrust_N } = jet(jet_bore_m, gauge_Pa);
  return mixingTube({
    gas_kg_s: flow_kg_s,
    thrust_N,
    tube_bore_m,
    inlet_m2: 2 * (Math.PI / 4) * tube_bore_m ** 2,
    gas_density_kg_m3,
    air_density_kg_m3,
    tube_losses: 0.5,
    inlet_losses: 0.5,
    back_pressure_Pa: 0,
    ...changed,
  });
};

describe('air drawn by a jet (physics)', () => {
  it('keeps momentum: what the jet brings leaves in tube, holes and furnace', () => {
    fc.assert(
      fc.property(real(5e3, 300e3), real(5e-4, 2e-3), real(15, 40), real(0, 30), (gauge_Pa, bore_m, ratio, back_Pa) => {
        const { flow_kg_s, thrust_N } = jet(bore_m, gauge_Pa);
        const tube_bore_m = ratio * bore_m;
        const { air_kg_kg, tube_velocity_m_s } = tube(bore_m, gauge_Pa, tube_bore_m, { back_pressure_Pa: back_Pa });
        if (air_kg_kg === 0) return;
        const area = (Math.PI / 4) * tube_bore_m ** 2;
        const out_N = flow_kg_s * (1 + air_kg_kg) * tube_velocity_m_s * 1.25;
        const air_kg_s = flow_kg_s * air_kg_kg;
        const in_N = (0.5 * 1.5 * air_kg_s ** 2 * area) / (air_density_kg_m3 * (2 * area) ** 2);
        expect((out_N + in_N + back_Pa * area) / thrust_N).toBeCloseTo(1, 9);
      }),
    );
  });

  it('follows the area ratio, hardly the pressure', () => {
    const low = tube(0.0008, 50e3, 0.022).air_kg_kg;
    const high = tube(0.0008, 200e3, 0.022).air_kg_kg;
    expect(high / low).toBeGreaterThan(0.85);
    expect(high / low).toBeLessThan(1.15);
    expect(tube(0.0008, 100e3, 0.03).air_kg_kg).toBeGreaterThan(1.2 * tube(0.0008, 100e3, 0.022).air_kg_kg);
  });

  it('reaches stoichiometric propane at a diameter ratio between 20 and 35', () => {
    for (const losses_factor of [1.3, 2.5]) {
      const ratio = tubeAreaRatio({ air_kg_kg: 15.7, losses_factor, gas_density_kg_m3, air_density_kg_m3 });
      expect(Math.sqrt(ratio)).toBeGreaterThan(20);
      expect(Math.sqrt(ratio)).toBeLessThan(40);
    }
    expect(tube(0.0008, 100e3, 0.8e-3 * 20).air_kg_kg).toBeLessThan(15.7);
    expect(tube(0.0008, 100e3, 0.8e-3 * 36).air_kg_kg).toBeGreaterThan(15.7);
  });

  it('collapses under the furnace, at the pressure it says', () => {
    const open = tube(0.0008, 100e3, 0.022);
    const at = (back_pressure_Pa: number) => tube(0.0008, 100e3, 0.022, { back_pressure_Pa }).air_kg_kg;
    expect(at(30)).toBeLessThan(open.air_kg_kg);
    expect(at(open.stall_Pa * 0.999)).toBeGreaterThan(0);
    expect(at(open.stall_Pa * 1.001)).toBe(0);
  });

  it('draws more through wider holes and less with more losses', () => {
    const one = tube(0.0008, 100e3, 0.022).air_kg_kg;
    expect(tube(0.0008, 100e3, 0.022, { inlet_m2: 0.01 }).air_kg_kg).toBeGreaterThan(one);
    expect(tube(0.0008, 100e3, 0.022, { tube_losses: 2 }).air_kg_kg).toBeLessThan(one);
  });

  it('free: in proportion to the distance, refused near the jet', () => {
    const at = (distance_m: number) =>
      freeJetAir({ distance_m, jet_bore_m: 0.001, gas_density_kg_m3, air_density_kg_m3 });
    expect((at(0.1) + 1) / (at(0.05) + 1)).toBeCloseTo(2, 12);
    expect(at(0.05)).toBeCloseTo(0.32 * 50 * Math.sqrt(1.2 / 1.83) - 1, 12);
    expect(() => at(0.012)).toThrow(AskError);
  });
});
