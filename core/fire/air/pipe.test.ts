import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { contractionLoss, expansionLoss, frictionFactor, type PipeInput, pipeDrop } from './pipe.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const plain: PipeInput = {
  flow_m3_s: 0.02,
  bore_m: 0.038,
  length_m: 1.5,
  roughness_m: 4.5e-5,
  losses: 2,
  density_kg_m3: 1.2,
  viscosity_Pa_s: 1.82e-5,
  pressure_Pa: 101325,
};

describe('friction in a pipe (physics)', () => {
  it('solves Colebrook: the equation closes', () => {
    fc.assert(
      fc.property(real(4000, 1e8), real(0, 0.05), (reynolds, roughness) => {
        const x = 1 / Math.sqrt(frictionFactor({ reynolds, roughness }));
        expect(x + 2 * Math.log10(roughness / 3.7 + (2.51 * x) / reynolds)).toBeCloseTo(0, 8);
      }),
    );
  });

  it('has no jump where the flow turns turbulent, and the drop never falls as the flow rises', () => {
    fc.assert(
      fc.property(real(100, 1e6), real(0, 0.05), (reynolds, roughness) => {
        const more = reynolds * 1.001;
        const now = frictionFactor({ reynolds, roughness });
        const next = frictionFactor({ reynolds: more, roughness });
        expect(Math.abs(next - now) / now).toBeLessThan(0.01);
        expect(next * more ** 2).toBeGreaterThan(now * reynolds ** 2);
      }),
    );
  });

  it('is Poiseuille when slow: the drop goes with the flow', () => {
    const slow = { ...plain, losses: 0, flow_m3_s: 1e-5 };
    const { drop_Pa } = pipeDrop(slow);
    expect(drop_Pa).toBeCloseTo((128 * 1.82e-5 * 1.5 * 1e-5) / (Math.PI * 0.038 ** 4), 12);
    expect(pipeDrop({ ...slow, flow_m3_s: 2e-5 }).drop_Pa).toBeCloseTo(2 * drop_Pa, 12);
  });

  it('falls as the fourth power of the bore for fittings, and about the fifth for length', () => {
    const halved = (part: Partial<PipeInput>) =>
      pipeDrop({ ...plain, ...part, bore_m: 0.04 }).drop_Pa / pipeDrop({ ...plain, ...part, bore_m: 0.08 }).drop_Pa;
    expect(halved({ length_m: 0 })).toBeCloseTo(16, 9);
    const long = halved({ losses: 0 });
    expect(long).toBeGreaterThan(25);
    expect(long).toBeLessThan(32);
  });

  it('loses nothing at no flow, and refuses a drop past a tenth of the pressure', () => {
    expect(pipeDrop({ ...plain, flow_m3_s: 0 }).drop_Pa).toBe(0);
    const refused = () => pipeDrop({ ...plain, bore_m: 0.012 });
    expect(refused).toThrow(AskError);
    expect(refused).toThrow(/more than a tenth/);
    expect(() => pipeDrop({ ...plain, bore_m: -1 })).toThrow(/pipe bore/);
    expect(() => frictionFactor({ reynolds: 0, roughness: 0 })).toThrow(AskError);
  });

  it('takes a given friction factor for a corrugated hose', () => {
    const hose = pipeDrop({ ...plain, friction_factor: 0.07 });
    expect(hose.friction_factor).toBe(0.07);
    expect(hose.drop_Pa).toBeGreaterThan(pipeDrop(plain).drop_Pa);
  });

  it('loses nothing where nothing narrows, and a step up loses all into a room', () => {
    expect(contractionLoss({ area_ratio: 1 })).toBeCloseTo(0, 12);
    expect(expansionLoss({ area_ratio: 1 })).toBe(0);
    expect(expansionLoss({ area_ratio: 0 })).toBe(1);
    fc.assert(
      fc.property(real(0, 0.98), (area_ratio) => {
        expect(contractionLoss({ area_ratio })).toBeGreaterThan(contractionLoss({ area_ratio: area_ratio + 0.02 }));
      }),
    );
  });

  it('shows its working', () => {
    const { steps, drop_Pa } = pipeDrop(plain);
    expect(steps().at(-1)?.gives.drop_Pa).toBe(drop_Pa);
  });
});
