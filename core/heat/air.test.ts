import { expect, it } from 'vitest';
import { airAt } from './air.ts';

it('air is held beyond its table', () => {
  expect(airAt(100)).toEqual(airAt(200));
  expect(airAt(2000)).toEqual(airAt(1220));
});

it('air has no step at a row', () => {
  for (let T_K = 220; T_K < 1220; T_K += 20) {
    const [before, after] = [airAt(T_K - 1e-6), airAt(T_K)];
    expect(after.conductivity_W_mK / before.conductivity_W_mK).toBeCloseTo(1, 7);
    expect(after.kinematic_viscosity_m2_s / before.kinematic_viscosity_m2_s).toBeCloseTo(1, 7);
  }
});

it('thin air is more viscous for its mass, by one over the pressure', () => {
  expect(airAt(300, 80_000).kinematic_viscosity_m2_s / airAt(300).kinematic_viscosity_m2_s).toBeCloseTo(
    101_325 / 80_000,
    12,
  );
  expect(airAt(300, 80_000).conductivity_W_mK).toBe(airAt(300).conductivity_W_mK);
});
