import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { type Bed, bedDrop, type ErgunInput, ergunDrop_Pa } from './ergun.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const plain: ErgunInput = {
  velocity_m_s: 1,
  depth_m: 0.3,
  lump_m: 0.03,
  sphericity: 0.7,
  void_share: 0.5,
  density_kg_m3: 0.26,
  viscosity_Pa_s: 5e-5,
  roughness_factor: 1,
};
const bed: Bed = {
  bore_m: 0.3,
  depth_m: 0.3,
  lump_m: 0.03,
  sphericity: 0.7,
  void_share: 0.5,
  roughness_factor: 1,
  bed_K: 1500,
};

describe('a bed of lumps (physics)', () => {
  it('goes with the velocity when slow and with its square when fast', () => {
    const ratio = (velocity_m_s: number) =>
      ergunDrop_Pa({ ...plain, velocity_m_s: 2 * velocity_m_s }) / ergunDrop_Pa({ ...plain, velocity_m_s });
    expect(ratio(1e-5)).toBeCloseTo(2, 3);
    expect(ratio(9)).toBeGreaterThan(3.8);
  });

  it('rises with depth, with less void, with smaller lumps and with roughness', () => {
    fc.assert(
      fc.property(real(0.01, 5), real(0.42, 0.59), real(0.005, 0.1), (velocity_m_s, void_share, lump_m) => {
        const one = { ...plain, velocity_m_s, void_share, lump_m };
        const drop = ergunDrop_Pa(one);
        expect(ergunDrop_Pa({ ...one, depth_m: 0.6 })).toBeCloseTo(2 * drop, 9);
        expect(ergunDrop_Pa({ ...one, void_share: void_share - 0.01 })).toBeGreaterThan(drop);
        expect(ergunDrop_Pa({ ...one, lump_m: lump_m * 0.9 })).toBeGreaterThan(drop);
        expect(ergunDrop_Pa({ ...one, roughness_factor: 1.55 })).toBeCloseTo(1.55 * drop, 9);
      }),
    );
  });

  it('resists a hot blast more than a cold one of the same mass', () => {
    const at = (bed_K: number) =>
      bedDrop({ bed: { ...bed, bed_K }, flow_m3_s: 0.015, air_K: 293, density_kg_m3: 1.2 }).drop_Pa;
    expect(at(293)).toBeGreaterThan(0);
    // Inertia: ρ·v² goes as T; at least that.
    expect(at(1465)).toBeGreaterThan(5 * at(293) * 0.99);
  });

  it('refuses what it does not know', () => {
    for (const wrong of [{ void_share: 0.3 }, { void_share: 0.7 }, { roughness_factor: 2 }, { lump_m: -1 }]) {
      expect(() => ergunDrop_Pa({ ...plain, ...wrong })).toThrow(AskError);
    }
  });

  it('shows its working', () => {
    const { steps, drop_Pa } = bedDrop({ bed, flow_m3_s: 0.015, air_K: 293, density_kg_m3: 1.2 });
    expect(steps().at(-1)?.gives.drop_Pa).toBe(drop_Pa);
  });
});
