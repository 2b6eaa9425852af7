import fc from 'fast-check';
import { temperatureAt } from '../../core/heat/transient/crossings.ts';
import { closedBore, gas, openBore } from '../../core/heat/transient/drives.ts';
import { runWall } from '../../core/heat/transient/run-wall.ts';
import type { Phase, WallInput, WallLayer } from '../../core/heat/wall-run.ts';

/*
 * Walls for tests and benches: a dense lining before a light fill, as furnaces have them, and what may be done to them.
 */
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export const lining = (change: Partial<WallLayer> = {}): WallLayer => ({
  thickness_m: 0.05,
  density_kg_m3: 1900,
  conductivity: { T_K: [273.15, 1273.15], k_W_mK: [0.9, 1.3] },
  heat_capacity: { T_K: [273.15, 673.15, 1273.15], c_J_kgK: [800, 1050, 1110] },
  water: 0,
  ...change,
});

export const fill = (change: Partial<WallLayer> = {}): WallLayer => ({
  thickness_m: 0.04,
  density_kg_m3: 120,
  conductivity: { T_K: [273.15, 773.15, 1273.15], k_W_mK: [0.06, 0.16, 0.34] },
  heat_capacity: { T_K: [293.15], c_J_kgK: [1000] },
  water: 0,
  ...change,
});

export const steel = {
  thickness_m: 0.0015,
  density_kg_m3: 7850,
  heat_capacity: { T_K: [293.15, 373.15, 673.15], c_J_kgK: [440, 488, 606] },
};

export const outward =
  ({ air_K, film_W_m2K, emissivity }: { air_K: number; film_W_m2K: number; emissivity: number }) =>
  (T_K: number): number =>
    film_W_m2K * (T_K - air_K) + emissivity * 5.670374419e-8 * (T_K ** 4 - air_K ** 4);

export const air_K = 298.15;

/** 40 min up to 1000 °C, 1 h there, then shut. */
export const firing = (end_s = 8 * 3600): readonly Phase[] => [
  {
    until_s: 6000,
    drive: {
      kind: 'temperature',
      points: [
        [0, air_K],
        [2400, 1273.15],
      ],
    },
  },
  { until_s: end_s, drive: closedBore() },
];

export const furnace = (change: Partial<WallInput> = {}): WallInput => ({
  geometry: 'cylinder',
  inner_radius_m: 0.127,
  layers: [lining(), fill()],
  shell: steel,
  start_K: air_K,
  outward_W_m2: outward({ air_K, film_W_m2K: 6, emissivity: 0.8 }),
  phases: firing(),
  ...change,
});

/** The wall of wall_scipy.py: its numbers, its law of the film. */
export const eightHours = (change: Partial<WallInput> = {}): WallInput =>
  furnace({
    inner_radius_m: 0.1,
    shell: { thickness_m: 0.0015, density_kg_m3: 7850, heat_capacity: { T_K: [300], c_J_kgK: [490] } },
    outward_W_m2: (T) => 1.4 * Math.abs(T - air_K) ** 0.25 * (T - air_K) + 0.8 * 5.670374419e-8 * (T ** 4 - air_K ** 4),
    phases: [{ until_s: 8 * 3600, drive: { kind: 'temperature', points: [[0, 1173.15]] } }],
    ...change,
  });

const liningOf = (water: fc.Arbitrary<number>): fc.Arbitrary<WallLayer> =>
  fc
    .record({
      thickness_m: between(0.02, 0.1),
      density_kg_m3: between(700, 2400),
      cold: between(0.2, 1.5),
      rise: between(0.8, 1.8),
      c: between(750, 900),
      water,
    })
    .map(({ cold, rise, c, ...layer }) => ({
      ...layer,
      conductivity: { T_K: [293.15, 1273.15], k_W_mK: [cold, cold * rise] },
      heat_capacity: { T_K: [293.15, 873.15, 1273.15], c_J_kgK: [c, c * 1.3, c * 1.38] },
    }));

const fillOf = (water: fc.Arbitrary<number>): fc.Arbitrary<WallLayer> =>
  fc
    .record({
      thickness_m: between(0.02, 0.1),
      density_kg_m3: between(60, 500),
      cold: between(0.04, 0.15),
      middle: between(1.5, 3),
      hot: between(1.3, 2.2),
      c: between(800, 1100),
      water,
    })
    .map(({ cold, middle, hot, c, ...layer }) => ({
      ...layer,
      conductivity: { T_K: [293.15, 773.15, 1273.15], k_W_mK: [cold, cold * middle, cold * middle * hot] },
      heat_capacity: { T_K: [293.15], c_J_kgK: [c] },
    }));

const phases: fc.Arbitrary<readonly Phase[]> = fc
  .record({
    hot_K: between(900, 1700),
    ramp_s: fc.oneof(fc.constant(0), between(60, 7200)),
    hold_s: between(900, 10_000),
    gas_film: between(10, 50),
    by_gas: fc.boolean(),
    open: fc.boolean(),
  })
  .map(({ hot_K, ramp_s, hold_s, gas_film, by_gas, open }) => {
    const out_s = ramp_s + hold_s;
    return [
      {
        until_s: out_s,
        drive: by_gas
          ? gas({ gas_K: hot_K, film_W_m2K: gas_film, emissivity: 0.3 })
          : {
              kind: 'temperature',
              points: [
                [0, air_K],
                [ramp_s, hot_K],
              ],
            },
      },
      {
        until_s: out_s + 4 * 3600,
        drive: open ? openBore({ opening_ratio: 0.12, emissivity: 0.8, air_K, film_W_m2K: 10 }) : closedBore(),
      },
    ];
  });

const walls = (liningWater: fc.Arbitrary<number>, fillWater: fc.Arbitrary<number>): fc.Arbitrary<WallInput> =>
  fc.record({
    geometry: fc.constantFrom('plane', 'cylinder', 'sphere'),
    inner_radius_m: between(0.05, 0.4),
    layers: fc.tuple(liningOf(liningWater), fillOf(fillWater)),
    shell: fc.constantFrom(steel, { ...steel, thickness_m: 0.0005 }),
    start_K: fc.constant(air_K),
    outward_W_m2: fc
      .record({ air_K: fc.constant(air_K), film_W_m2K: between(3, 30), emissivity: between(0.1, 0.95) })
      .map(outward),
    phases,
  });

export const dryWalls = walls(fc.constant(0), fc.constant(0));
/** Up to soaked: 15 % in the lining, as much as its own weight in the fill. */
export const wetWalls = walls(between(0.002, 0.15), fc.oneof(fc.constant(0), between(0.005, 1)));

/** How far a run as usual is off one with three times the cells and a fifteenth of the tolerance; heat as a share. */
export function errorsOf(input: WallInput): { shell_dK: number; peak_dK: number; heat: number } {
  const run = runWall(input);
  const fine = runWall({ ...input, cells: 72, tolerance_dK: 0.02 });
  const end_s = input.phases.at(-1)!.until_s;
  let shell_dK = 0;
  for (let at = 1; at <= 50; at++) {
    const [ours, theirs] = [run, fine].map((one) => temperatureAt(one, 'shell', (at / 50) * end_s));
    shell_dK = Math.max(shell_dK, Math.abs(ours! - theirs!));
  }
  const [ours_J, theirs_J] = [run, fine].map(
    ({ time_s, in_J_m2 }) => in_J_m2[time_s.indexOf(input.phases[0]!.until_s)]!,
  );
  return {
    shell_dK,
    peak_dK: Math.abs(run.shell_peak.T_K - fine.shell_peak.T_K),
    heat: Math.abs(ours_J! / theirs_J! - 1),
  };
}
