import { describe, expect, it } from 'vitest';
import { answerLine } from '../../commands/answer.ts';
import { inProcessMemory } from '../../commands/memory.ts';
import { findFuel } from '../../core/fire/fuel/fuel.ts';
import { asFired } from '../../core/fire/fuel/fuel-as-fired.ts';
import { runWall } from '../../core/heat/transient/run-wall.ts';
import { layerModel } from '../../core/heat/wall-layers.ts';
import { findMaterial } from '../../core/materials/catalogue.ts';
import type { Furnace } from '../../core/melt/balance-climb.ts';
import { solveMelts } from '../../core/melt/balance-melt.ts';
import { efficiencies } from '../../core/melt/fuel-efficiency.ts';
import { librariesOf, stored } from '../reference/stored.ts';
import { outside } from './outside.ts';

interface Evenly {
  readonly power_W: number;
  readonly hot_K: number;
  readonly layers: readonly (readonly [thickness_m: number, k_W_mK: number, heat_J_m3K: number])[];
  readonly bore_m: number;
  readonly height_m: number;
  readonly ends: number;
  readonly opening_W_K4: number;
  readonly metal_J: number;
  readonly crucible_m2: number;
  readonly film: number;
  readonly pour_K: number;
}

const air_K = 293.15;
/** The reference's straight line. */
const left = (flue_K: number) => 0.97 - 4.2e-4 * (flue_K - 298.15);

function evenly(x: Evenly) {
  const charge = {
    metal_J: x.metal_J,
    crucible_J: 0,
    crucible_m2: x.crucible_m2,
    film_W_m2K: x.film,
    start_K: air_K,
    pour_K: x.pour_K,
  };
  const furnace: Furnace = {
    wall: {
      geometry: 'cylinder',
      inner_radius_m: x.bore_m / 2,
      layers: x.layers.map(([thickness_m, k, heat]) => ({
        thickness_m,
        density_kg_m3: heat / 1000,
        conductivity: { T_K: [300], k_W_mK: [k] },
        heat_capacity: { T_K: [300], c_J_kgK: [1000] },
        water: 0,
      })),
      start_K: air_K,
      outward_W_m2: (surface_K) => 15 * (surface_K - air_K),
    },
    side_m2: Math.PI * x.bore_m * x.height_m,
    ends: x.ends,
    opening_W_K4: x.opening_W_K4,
    air_K,
    hot_K: x.hot_K,
    fire: {
      fuel: asFired({ fuel: findFuel('charcoal') }),
      air_kg_kg: 9,
      unburned: 0,
      left,
      meanLeft: (from_K, to_K) => (left(from_K) + left(to_K)) / 2,
    },
    drop_dK: 50,
    firing: { power_W: x.power_W },
    charge,
    charge_again: charge,
    pause: [{ until_s: 600, drive: { kind: 'flux', into_W_m2: () => 0 } }],
  };
  const begin = {
    first: { climb_s: 2000, hold_s: 300 },
    relit_K: x.hot_K - 200,
    again: { climb_s: 1000, hold_s: 300 },
  };
  return solveMelts(furnace, begin, 1e-4).first;
}

describe('a furnace fired evenly, solved whole by another program', () => {
  const reference = stored<Evenly, { time_s: number; fuel_J: number; wall_J: number }>('fuel');
  it.each(reference.cases)('$id', ({ id, inputs, expected, tolerance, why }) => {
    const { time_s, fuel_J } = evenly(inputs);
    for (const [quantity, ours, theirs, unit] of [
      ['heat of the fuel', fuel_J / 1e6, expected.fuel_J / 1e6, 'MJ'],
      ['time to the pour', time_s / 60, expected.time_s / 60, 'min'],
    ] as const) {
      outside({
        subject: id,
        quantity,
        ours,
        theirs,
        unit,
        source: librariesOf(reference),
        tolerance: tolerance * theirs,
        reason: why,
      });
    }
  });
});

describe('heat a plane wall takes in 45 min, its face at 1100 °C after 10', () => {
  // Ran once with constant properties that were not kept; ours are the catalogue's, so a third apart is one and the same.
  const reason = 'their conductivities and densities were not kept; the catalogue spreads by a third in √(kρc)';
  const points = [
    [0, air_K],
    [600, 1373.15],
    [2700, 1373.15],
  ] as const;
  it.each([
    ['75 mm dense castable', [['dense-castable', 0.075]], 100],
    [
      '25 mm dense castable, 50 mm perlite cement',
      [
        ['dense-castable', 0.025],
        ['perlite-cement', 0.05],
      ],
      70,
    ],
    ['75 mm insulating castable', [['insulating-castable', 0.075]], 35],
    ['75 mm insulating brick', [['insulating-brick-23', 0.075]], 20],
    ['50 mm blanket', [['fibre-blanket', 0.05]], 11],
  ] as const)('%s', (subject, layers, theirs) => {
    const run = runWall({
      geometry: 'plane',
      inner_radius_m: 1,
      layers: layers.map(([name, thickness_m]) => {
        const { draw, density_kg_m3 } = layerModel({ material: findMaterial(name), thickness_m });
        return draw({ conductivity: 0, density_kg_m3: density_kg_m3.typical, water: 0 });
      }),
      start_K: air_K,
      outward_W_m2: (surface_K) => 15 * (surface_K - air_K),
      phases: [{ until_s: 2700, drive: { kind: 'temperature', points } }],
    });
    outside({
      subject,
      quantity: 'taken per m² of face',
      ours: run.in_J_m2.at(-1)! / 1e6,
      theirs,
      unit: 'MJ/m²',
      source: 'an earlier run with constant properties',
      tolerance: theirs / 3,
      reason,
    });
  });
});

async function cardOf(line: string) {
  const reply = await answerLine(line, { asker: 'ann', place: 'shed', now: new Date(0), memory: inProcessMemory() });
  if (reply.kind === 'error') throw new Error(reply.error.what);
  return reply.card;
}

async function figuresOf(line: string) {
  const { figures } = await cardOf(line);
  return (id: string) => figures.find((one) => one.id === id)!;
}

describe('3 kg of charcoal melted 10 kg of aluminium in 93 min (a student thesis, abstract only)', () => {
  // 3 kg at 29.5 MJ/kg in 93 min.
  const line = 'fuel charcoal amount=10 kg metal=aluminium rate=15.9 kW';

  it('is at the dear end of our range for a furnace that was not described: ours asks for less', async () => {
    const figure = await figuresOf(line);
    const mass = figure('fuel.mass');
    expect(mass.value).toBeGreaterThan(1);
    expect(mass.value).toBeLessThan(3);
    expect(figure('fuel.time').value / 60).toBeLessThan(93);
    outside({
      subject: '10 kg aluminium over charcoal',
      quantity: 'charcoal, thesis against the high end of ours',
      ours: mass.range!.high,
      theirs: 3,
      unit: 'kg',
      source: 'charcoal-melt-thesis, abstract',
      tolerance: 1.2,
      reason: 'one melt in an undescribed furnace; waiting, charging and lighting are in theirs and not in ours',
    });
  });

  it('has the efficiency the thesis’ numbers come to, 12 to 15 %, within our range or just below it', async () => {
    const figure = await figuresOf(line);
    const { range } = figure('fuel.efficiency');
    expect(range!.low).toBeLessThan(0.2);
    outside({
      subject: '10 kg aluminium over charcoal',
      quantity: 'efficiency, thesis against the low end of ours',
      ours: range!.low * 100,
      theirs: 13.5,
      unit: '%',
      source: 'charcoal-melt-thesis, abstract: 12 to 15 % of the lower heat',
      tolerance: 4,
      reason: 'their heating value is not given: 25 to 31 MJ/kg',
    });
  });
});

describe('efficiency as told of furnaces', () => {
  it.each([
    'fuel charcoal amount=5 kg metal=aluminium',
    'fuel propane amount=5 kg metal=aluminium',
    'fuel propane amount=3 kg metal=bronze layers=2 in fibre blanket',
  ])('%s is inside what commercial crucible furnaces do, 3.5 to 28 %', async (line) => {
    const figure = await figuresOf(line);
    const { low, high } = efficiencies.commercial;
    const [middle, half] = [(low + high) / 2, (high - low) / 2];
    outside({
      subject: line,
      quantity: 'metal’s heat of the fuel’s, first melt',
      ours: figure('fuel.efficiency').value * 100,
      theirs: middle * 100,
      unit: '%',
      source: 'casting-course-20: 3.5 to 28 %',
      tolerance: half * 100,
      reason: 'the whole range that is told',
    });
  });

  it('is inside what is told of a hobby melt from cold, 3 to 12 % from memory', async () => {
    const figure = await figuresOf('fuel charcoal amount=5 kg metal=aluminium');
    const { low, high } = efficiencies.single;
    outside({
      subject: '5 kg aluminium over charcoal',
      quantity: 'metal’s heat of the fuel’s, first melt',
      ours: figure('fuel.efficiency').value * 100,
      theirs: ((low + high) / 2) * 100,
      unit: '%',
      source: 'from memory: 3 to 12 %',
      tolerance: ((high - low) / 2) * 100,
      reason: 'the whole range that is told',
    });
  });

  it('falls below both for a little bronze in a thick clay lining: the wall takes most of it', async () => {
    const card = await cardOf('fuel charcoal amount=3 kg metal=bronze rate=20 kW');
    const figure = (id: string) => card.figures.find((one) => one.id === id)!;
    expect(figure('fuel.efficiency').value).toBeLessThan(efficiencies.commercial.low);
    expect(figure('fuel.stored').value).toBeGreaterThan(5 * figure('fuel.metal_heat').value);
  });
});
