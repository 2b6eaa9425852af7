import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AskError } from '../../ask-error.ts';
import { airViscosity, humidAir, OXYGEN_SHARE, saturatedVapour_Pa, standardAtmosphere } from './atmosphere.ts';

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('the atmosphere (physics)', () => {
  it('thins with height: density at 3000 m is three quarters of that at the sea', () => {
    const density = (altitude_m: number) =>
      humidAir({ ...standardAtmosphere({ altitude_m }), humidity: 0 }).density_kg_m3;
    expect(density(0)).toBeCloseTo(1.225, 3);
    expect(density(3000) / density(0)).toBeCloseTo(0.742, 3);
    fc.assert(
      fc.property(real(-500, 4900), real(1, 100), (altitude_m, more) => {
        expect(standardAtmosphere({ altitude_m: altitude_m + more }).pressure_Pa).toBeLessThan(
          standardAtmosphere({ altitude_m }).pressure_Pa,
        );
      }),
    );
  });

  it('weighs less when humid, and feeds less oxygen', () => {
    fc.assert(
      fc.property(real(255, 322), real(60e3, 105e3), real(0.01, 1), (air_K, pressure_Pa, humidity) => {
        const dry = humidAir({ air_K, pressure_Pa, humidity: 0 });
        const damp = humidAir({ air_K, pressure_Pa, humidity });
        expect(damp.density_kg_m3).toBeLessThan(dry.density_kg_m3);
        expect(damp.dry_density_kg_m3).toBeLessThan(damp.density_kg_m3);
        expect(damp.oxygen_density_kg_m3).toBeCloseTo(OXYGEN_SHARE * damp.dry_density_kg_m3, 12);
      }),
    );
  });

  it('joins water and ice at 0 °C and rises with temperature', () => {
    expect(saturatedVapour_Pa({ air_K: 273.1499 })).toBeCloseTo(saturatedVapour_Pa({ air_K: 273.15 }), 1);
    expect(saturatedVapour_Pa({ air_K: 300 })).toBeGreaterThan(saturatedVapour_Pa({ air_K: 299 }));
    expect(airViscosity({ air_K: 1200 })).toBeGreaterThan(airViscosity({ air_K: 300 }));
  });

  it('refuses what it does not know, with the number', () => {
    expect(() => standardAtmosphere({ altitude_m: 9000 })).toThrow(AskError);
    expect(() => standardAtmosphere({ altitude_m: 9000 })).toThrow(/altitude of 9000 m/);
    expect(() => humidAir({ air_K: 293, pressure_Pa: 101325, humidity: 1.2 })).toThrow(/humidity of 120 %/);
    expect(() => humidAir({ air_K: 293, pressure_Pa: Number.NaN, humidity: 0.2 })).toThrow(AskError);
  });
});
