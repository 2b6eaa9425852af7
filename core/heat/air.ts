/** What heat transfer to air needs of it. */
export interface Air {
  readonly kinematic_viscosity_m2_s: number;
  readonly conductivity_W_mK: number;
  readonly prandtl: number;
}

const STANDARD_Pa = 101_325;
const FIRST_K = 200;
const STEP_K = 20;

// Dry air at 101,325 Pa from 200 K, every 20 K: CoolProp 8.
const viscosity_mm2_s = [
  7.537, 8.986, 10.537, 12.183, 13.922, 15.75, 17.664, 19.661, 21.74, 23.897, 26.131, 28.439, 30.82, 33.273, 35.795,
  38.385, 41.043, 43.766, 46.554, 49.405, 52.319, 55.295, 58.331, 61.428, 64.583, 67.798, 71.07, 74.399, 77.785, 81.227,
  84.724, 88.276, 91.883, 95.544, 99.258, 103.026, 106.846, 110.719, 114.644, 118.62, 122.648, 126.728, 130.858,
  135.038, 139.269, 143.551, 147.881, 152.262, 156.692, 161.171, 165.7, 170.277,
];
const conductivity_mW_mK = [
  18.503, 20.159, 21.773, 23.346, 24.883, 26.384, 27.854, 29.294, 30.706, 32.092, 33.453, 34.792, 36.109, 37.406,
  38.684, 39.945, 41.188, 42.416, 43.628, 44.826, 46.011, 47.183, 48.343, 49.491, 50.629, 51.755, 52.872, 53.98, 55.078,
  56.168, 57.249, 58.322, 59.388, 60.447, 61.498, 62.543, 63.582, 64.614, 65.641, 66.662, 67.677, 68.687, 69.693,
  70.693, 71.689, 72.68, 73.667, 74.65, 75.629, 76.604, 77.576, 78.543,
];
const prandtl = [
  0.7255, 0.7207, 0.7166, 0.713, 0.7098, 0.70706, 0.7047, 0.7028, 0.7011, 0.6999, 0.6989, 0.6983, 0.698, 0.6979, 0.6981,
  0.6984, 0.699, 0.6998, 0.7007, 0.7018, 0.703, 0.7042, 0.7056, 0.7069, 0.7084, 0.7098, 0.7113, 0.7128, 0.7143, 0.7157,
  0.7172, 0.7186, 0.72, 0.7214, 0.7227, 0.724, 0.7252, 0.7264, 0.7275, 0.7286, 0.7297, 0.7307, 0.7316, 0.7326, 0.7334,
  0.7342, 0.735, 0.7358, 0.7365, 0.7371, 0.7377, 0.7383,
];
const last = prandtl.length - 1;
/** Viscosity over temperature is nearly a straight line, and so a better thing to interpolate. */
const viscosity_per_K = viscosity_mm2_s.map((value, row) => value / (FIRST_K + STEP_K * row));

/**
 * Dry air at a film temperature. Linear between rows 20 K apart of a CoolProp table, 200 to 1220 K, held at the ends.
 * Within 0.03 % of CoolProp in each property from 250 to 700 K at one atmosphere (measured in
 * `test/published/heat-steady.test.ts`). Pressure changes the kinematic viscosity only, as 1/p (ideal gas): good from
 * 50 to 110 kPa. Source: `coolprop`.
 */
export function airAt(T_K: number, pressure_Pa: number = STANDARD_Pa): Air {
  const place = (T_K - FIRST_K) / STEP_K;
  const row = place <= 0 ? 0 : place >= last ? last - 1 : Math.floor(place);
  const share = place <= 0 ? 0 : place >= last ? 1 : place - row;
  const between = (rows: readonly number[]) => rows[row]! + share * (rows[row + 1]! - rows[row]!);
  const held_K = FIRST_K + STEP_K * (row + share);
  return {
    kinematic_viscosity_m2_s: (1e-6 * between(viscosity_per_K) * held_K * STANDARD_Pa) / pressure_Pa,
    conductivity_W_mK: 1e-3 * between(conductivity_mW_mK),
    prandtl: between(prandtl),
  };
}
