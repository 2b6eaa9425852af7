import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { type BlastInput, blastPoint, operatingPoint_m3_s } from './operating-point.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const plain: BlastInput = {
  fan: { free_flow_m3_s: 0.02, shut_off_Pa: 350, rated_density_kg_m3: 1.2 },
  speed: 1,
  pipe: { bore_m: 0.032, length_m: 0.9, roughness_m: 4.5e-5, losses: 0.5 },
  tuyere: { bore_m: 0.032, losses: 1 },
  bed: {
    bore_m: 0.3,
    depth_m: 0.25,
    lump_m: 0.03,
    sphericity: 0.7,
    void_share: 0.5,
    roughness_factor: 1.2,
    bed_K: 1400,
  },
  back_pressure_Pa: 0,
  air_K: 293,
  pressure_Pa: 101325,
  density_kg_m3: 1.2,
  dry_density_kg_m3: 1.19,
  viscosity_Pa_s: 1.82e-5,
};

describe('blower and furnace together (physics)', () => {
  it('balances: what the blower makes is what pipe, tuyere, bed and furnace take', () => {
    fc.assert(
      fc.property(
        real(0.005, 0.25),
        real(100, 8e3),
        real(0.02, 0.1),
        real(0, 90),
        real(0.4, 1.2),
        (free_flow_m3_s, shut_off_Pa, bore_m, back_pressure_Pa, speed) => {
          if (back_pressure_Pa >= shut_off_Pa * speed ** 2) return;
          const input = {
            ...plain,
            speed,
            back_pressure_Pa,
            fan: { ...plain.fan, free_flow_m3_s, shut_off_Pa },
            pipe: { ...plain.pipe, bore_m },
          };
          const { fan_Pa, pipe_Pa, tuyere_Pa, bed_Pa, flow_m3_s } = blastPoint(input);
          expect((pipe_Pa + tuyere_Pa + bed_Pa + back_pressure_Pa) / fan_Pa).toBeCloseTo(1, 6);
          expect(flow_m3_s).toBeLessThanOrEqual(speed * free_flow_m3_s);
        },
      ),
    );
  });

  it('gives more with a wider pipe, less with a deeper bed or more back-pressure', () => {
    const flow = (changed: Partial<BlastInput>) => blastPoint({ ...plain, ...changed }).flow_m3_s;
    const now = flow({});
    expect(flow({ pipe: { ...plain.pipe, bore_m: 0.05 } })).toBeGreaterThan(now);
    expect(flow({ bed: { ...plain.bed!, depth_m: 0.5 } })).toBeLessThan(now);
    expect(flow({ back_pressure_Pa: 50 })).toBeLessThan(now);
    const { bed: _, ...open } = plain;
    expect(blastPoint(open).flow_m3_s).toBeGreaterThan(now);
  });

  it('moves the same volume of thin air, and so less oxygen', () => {
    const { bed: _, ...open } = plain;
    const thinner = (value: number) => (value * 2) / 3;
    const sea = blastPoint(open);
    const high = blastPoint({
      ...open,
      density_kg_m3: thinner(open.density_kg_m3),
      dry_density_kg_m3: thinner(open.dry_density_kg_m3),
      // Thinned too, so that the Reynolds number stays and only inertia is compared.
      viscosity_Pa_s: thinner(open.viscosity_Pa_s),
    });
    expect(high.flow_m3_s / sea.flow_m3_s).toBeCloseTo(1, 7);
    expect(high.dry_air_kg_s / sea.dry_air_kg_s).toBeCloseTo(2 / 3, 7);
  });

  it('is the free flow where nothing resists, and nothing where everything does', () => {
    const fan = (flow: number) => 100 - flow;
    expect(operatingPoint_m3_s({ fan, system: () => 0, most_m3_s: 100 })).toBeCloseTo(100, 9);
    expect(operatingPoint_m3_s({ fan, system: () => undefined, most_m3_s: 100 })).toBeCloseTo(0, 9);
  });

  it('says that a blower cannot hold against the furnace, and whose number is wrong', () => {
    expect(() => blastPoint({ ...plain, back_pressure_Pa: 400 })).toThrow(/no air goes in/);
    expect(() => blastPoint({ ...plain, bed: { ...plain.bed!, void_share: 0.2 } })).toThrow(/void share of 20 %/);
    expect(() => blastPoint({ ...plain, pipe: { ...plain.pipe, bore_m: 0 } })).toThrow(AskError);
    const vacuum = { ...plain.fan, free_flow_m3_s: 0.04, shut_off_Pa: 18e3 };
    const straw = { ...plain.pipe, bore_m: 0.015 };
    expect(() => blastPoint({ ...plain, fan: vacuum, pipe: straw })).toThrow(/more than a tenth/);
  });

  it('shows its working', () => {
    const { steps, flow_m3_s } = blastPoint(plain);
    expect(steps().at(-1)?.gives.flow_m3_s).toBe(flow_m3_s);
  });
});
