import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import {
  PROPANE,
  propaneBoiling_K,
  propaneLatentHeat_J_kg,
  propaneLiquidDensity_kg_m3,
  propaneLiquidHeatCapacity_J_kgK,
  propanePressure_Pa,
} from './propane.ts';

const kelvin = fc.double({ min: 224, max: 322, noNaN: true });

describe('propane (physics)', () => {
  it('turns pressure back into temperature', () => {
    fc.assert(
      fc.property(kelvin, (liquid_K) => {
        expect(propaneBoiling_K({ pressure_Pa: propanePressure_Pa({ liquid_K }) })).toBeCloseTo(liquid_K, 9);
      }),
    );
  });

  it('boils at −42 °C in the open', () => {
    expect(propaneBoiling_K({ pressure_Pa: 101325 }) - 273.15).toBeCloseTo(-42.1, 0);
  });

  it('warmed, presses more, takes less heat to evaporate, is lighter and holds more heat', () => {
    fc.assert(
      fc.property(kelvin, (liquid_K) => {
        const warm = { liquid_K: liquid_K + 0.5 };
        expect(propanePressure_Pa(warm)).toBeGreaterThan(propanePressure_Pa({ liquid_K }));
        expect(propaneLatentHeat_J_kg(warm)).toBeLessThan(propaneLatentHeat_J_kg({ liquid_K }));
        expect(propaneLiquidDensity_kg_m3(warm)).toBeLessThan(propaneLiquidDensity_kg_m3({ liquid_K }));
        expect(propaneLiquidHeatCapacity_J_kgK(warm)).toBeGreaterThan(propaneLiquidHeatCapacity_J_kgK({ liquid_K }));
      }),
    );
  });

  it('obeys Clausius and Clapeyron as far as its vapour is an ideal gas', () => {
    // Near 1 bar the vapour is 4 % denser than ideal, and its slope with it.
    const liquid_K = 231;
    const slope = (propanePressure_Pa({ liquid_K: 231.1 }) - propanePressure_Pa({ liquid_K: 230.9 })) / 0.2;
    const ideal =
      (propaneLatentHeat_J_kg({ liquid_K }) * propanePressure_Pa({ liquid_K })) /
      (PROPANE.gas_constant_J_kgK * liquid_K ** 2);
    expect(slope / ideal).toBeGreaterThan(0.98);
    expect(slope / ideal).toBeLessThan(1.06);
  });

  it('is refused outside −50 to 50 °C', () => {
    expect(() => propanePressure_Pa({ liquid_K: 330 })).toThrow(AskError);
    expect(() => propaneBoiling_K({ pressure_Pa: 1e3 })).toThrow(AskError);
  });
});
