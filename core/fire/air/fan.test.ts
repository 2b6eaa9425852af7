import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { sourceOf } from '../../sources/sources.ts';
import { blowers } from '../data/blowers.ts';
import { corrugated_friction, fittings, roughness_m } from '../data/fittings.ts';
import { type Fan, fanPower, fanPressure_Pa } from './fan.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const fan: Fan = { free_flow_m3_s: 0.02, shut_off_Pa: 350, rated_density_kg_m3: 1.2 };

describe('a blower (physics)', () => {
  it('gives its two rated ends, and falls between them', () => {
    expect(fanPressure_Pa({ fan, flow_m3_s: 0, density_kg_m3: 1.2, speed: 1 })).toBe(350);
    expect(fanPressure_Pa({ fan, flow_m3_s: 0.02, density_kg_m3: 1.2, speed: 1 })).toBe(0);
    fc.assert(
      fc.property(real(0, 0.03), real(1e-5, 0.01), (flow_m3_s, more) => {
        const at = (flow: number) => fanPressure_Pa({ fan, flow_m3_s: flow, density_kg_m3: 1.2, speed: 1 });
        expect(at(flow_m3_s + more)).toBeLessThan(at(flow_m3_s));
      }),
    );
  });

  it('obeys the fan laws: flow with speed, pressure with its square and with density, power with its cube', () => {
    fc.assert(
      fc.property(real(0.2, 1.4), real(0.8, 1.3), real(0, 0.019), (speed, density_kg_m3, flow_m3_s) => {
        const rated = fanPressure_Pa({ fan, flow_m3_s, density_kg_m3: 1.2, speed: 1 });
        const pressure_Pa = fanPressure_Pa({ fan, flow_m3_s: flow_m3_s * speed, density_kg_m3, speed });
        expect(pressure_Pa).toBeCloseTo((rated * density_kg_m3 * speed ** 2) / 1.2, 6);
        const power = fanPower({ flow_m3_s: flow_m3_s * speed, pressure_Pa }).air_power_W;
        expect(power).toBeCloseTo((flow_m3_s * rated * density_kg_m3 * speed ** 3) / 1.2, 6);
      }),
    );
  });

  it('refuses a blower that is none', () => {
    for (const wrong of [{ shut_off_Pa: 0 }, { free_flow_m3_s: -1 }, { rated_density_kg_m3: 12 }]) {
      expect(() => fanPressure_Pa({ fan: { ...fan, ...wrong }, flow_m3_s: 0, density_kg_m3: 1.2, speed: 1 })).toThrow(
        AskError,
      );
    }
  });
});

describe('blowers, fittings and pipes kept as data', () => {
  const all = [
    ...blowers.flatMap(({ free_flow_m3_s, shut_off_Pa }) => [free_flow_m3_s, shut_off_Pa]),
    ...Object.values(fittings),
    ...Object.values(roughness_m),
    corrugated_friction,
  ];

  it('are in order, cited and within what the formulas take', () => {
    for (const { low, typical, high, source } of all) {
      expect(low).toBeLessThanOrEqual(typical);
      expect(typical).toBeLessThanOrEqual(high);
      expect(sourceOf(source).id).toBe(source);
    }
    for (const { free_flow_m3_s, shut_off_Pa } of blowers) {
      for (const end of ['low', 'typical', 'high'] as const) {
        const one = { free_flow_m3_s: free_flow_m3_s[end], shut_off_Pa: shut_off_Pa[end], rated_density_kg_m3: 1.2 };
        expect(fanPressure_Pa({ fan: one, flow_m3_s: 0, density_kg_m3: 1.2, speed: 1 })).toBeCloseTo(
          shut_off_Pa[end],
          9,
        );
      }
    }
  });

  it('name every blower once', () => {
    const names = blowers.flatMap(({ id, name, aliases }) => [...new Set([id.replaceAll('-', ' '), name, ...aliases])]);
    expect(new Set(names).size).toBe(names.length);
  });
});
