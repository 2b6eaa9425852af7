import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { FLAME, flameHolding } from './flame-holding.ts';

const mixture = { density_kg_m3: 1.2, viscosity_Pa_s: 1.8e-5 };

describe('a flame at a tube (physics)', () => {
  it('has the gradient 8·V/D while laminar', () => {
    const { gradient_per_s, reynolds } = flameHolding({ ...mixture, tube_velocity_m_s: 1.5, tube_bore_m: 0.012 });
    expect(reynolds).toBeLessThan(2000);
    expect(gradient_per_s).toBeCloseTo((8 * 1.5) / 0.012, 9);
  });

  it('rises with velocity, whatever the flow', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 40, noNaN: true }), (tube_velocity_m_s) => {
        const at = (velocity: number) =>
          flameHolding({ ...mixture, tube_velocity_m_s: velocity, tube_bore_m: 0.025 }).gradient_per_s;
        expect(at(tube_velocity_m_s * 1.01)).toBeGreaterThan(at(tube_velocity_m_s));
      }),
    );
  });

  it('places slow, middling and fast tubes against its bands', () => {
    const slow = flameHolding({ ...mixture, tube_velocity_m_s: 0.5, tube_bore_m: 0.025 });
    expect([slow.against_flashback, slow.against_practical]).toEqual(['below', 'below']);
    const usual = flameHolding({ ...mixture, tube_velocity_m_s: 10, tube_bore_m: 0.025 });
    expect([usual.against_flashback, usual.against_practical]).toEqual(['above', 'within']);
    // A bare end would not be sure to hold it: a flare or a step is needed.
    expect(usual.against_blow_off).not.toBe('below');
    const fine = flameHolding({ ...mixture, tube_velocity_m_s: 1, tube_bore_m: 0.001 });
    expect(fine.against_quench).toBe('below');
  });

  it('names its numbers as remembered, and keeps the bands apart and in order', () => {
    for (const { standing } of Object.values(FLAME)) expect(standing).toBe('from memory');
    expect(FLAME.flashback_per_s.high).toBeLessThan(FLAME.blow_off_per_s.low);
    expect(() => flameHolding({ ...mixture, tube_velocity_m_s: -1, tube_bore_m: 0.025 })).toThrow(AskError);
  });
});
