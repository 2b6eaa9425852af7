import { describe, expect, it } from 'vitest';
import { findMaterial, findPour } from '../../core/materials/catalogue.ts';
import { at } from '../../core/materials/curve.ts';
import { celsius } from '../../core/materials/data/make.ts';
import { findVessel } from '../../core/materials/find-vessel.ts';
import type { Curve, Datum, Material, PropertyName } from '../../core/materials/material.ts';
import { brimful_m3 } from '../../core/materials/vessel.ts';
import { librariesOf, stored } from '../reference/stored.ts';
import { outside } from './outside.ts';

interface Inputs {
  readonly material: string;
  readonly property: 'density_kg_m3' | 'conductivity_W_mK' | 'heat_capacity_J_kgK';
  readonly temperature_K?: number;
}

const library = stored<Inputs>('ht_materials');
const source = librariesOf(library);
const rowsOf = (material: string, property: Inputs['property']) =>
  library.cases.filter(({ inputs }) => inputs.material === material && inputs.property === property);

const conductivity = (id: string): Curve => findMaterial(id).conductivity_W_mK!;
const heatCapacity = (id: string): Curve => findMaterial(id).heat_capacity_J_kgK!;
const property = (id: string, name: PropertyName): Datum => (findMaterial(id) as Material).properties[name]!;

/** The mean from 20 °C of a true heat capacity, as handbooks of brick print it. */
function meanFrom20(curve: Curve, T_K: number): number {
  const steps = 400;
  const width = (T_K - celsius(20)) / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += at(curve, celsius(20) + (i + 0.5) * width, 'typical').value;
  return sum / steps;
}

describe.each([
  ['Fireclay', 'fireclay-brick', 0.02],
  ['High-duty fireclay', 'high-duty-fireclay-brick', 0.02],
  ['Silica', 'silica-brick', 0.1],
  ['L1260', 'cast-insulating-brick-1260', 0.08],
] as const)('%s of the heat atlas', (theirs, ours, heatTolerance) => {
  it.each(rowsOf(theirs, 'conductivity_W_mK'))('$id', ({ id, inputs, expected }) => {
    outside({
      subject: ours,
      quantity: id,
      ours: at(conductivity(ours), inputs.temperature_K!, 'typical').value,
      theirs: expected,
      unit: 'W/(m K)',
      source,
      tolerance: 0.005 * expected,
      reason: 'the same table: rounding only',
    });
  });

  it.each(rowsOf(theirs, 'density_kg_m3'))('$id', ({ id, expected }) => {
    outside({
      subject: ours,
      quantity: id,
      ours: property(ours, 'density_kg_m3').typical,
      theirs: expected,
      unit: 'kg/m³',
      source,
      tolerance: 0.005 * expected,
      reason: 'the same table: rounding only',
    });
  });

  it.each(rowsOf(theirs, 'heat_capacity_J_kgK'))('$id, as a mean from 20 °C', ({ id, inputs, expected }) => {
    outside({
      subject: ours,
      quantity: `${id}, mean from 20 °C`,
      ours: meanFrom20(heatCapacity(ours), inputs.temperature_K!),
      theirs: expected,
      unit: 'J/(kg K)',
      source,
      tolerance: heatTolerance * expected,
      reason: 'ours is a true heat capacity with 4–7 rows; silica and light brick are from memory',
    });
  });
});

describe('insulation and brick at room temperature', () => {
  it.each([
    ['vermiculite', 'Loose fill, Vermiculite, exfoliated, 120 kg/m^3'],
    ['vermiculite', 'Loose fill, Vermiculite, exfoliated, 80 kg/m^3'],
    ['perlite', 'Loose fill, Perlite, expanded, 50 kg/m^3'],
    ['perlite', 'Loose fill, Perlite, expanded, 100 kg/m^3'],
    ['perlite', 'Loose fill, Perlite, expanded, 150 kg/m^3'],
    ['perlite-cement-backup', 'Concrete, Perlite, vermiculite, and polystyrene beads, 320 kg/m^3'],
    ['perlite-cement-backup', 'Concrete, Perlite, vermiculite, and polystyrene beads, 480 kg/m^3'],
    ['vermiculite-cement', 'Concrete, Perlite, vermiculite, and polystyrene beads, 480 kg/m^3'],
    ['vermiculite-cement', 'Vermiculite aggregate, 480 kg/m^3'],
    ['common-red-brick', 'Brick, fired clay, 1600 kg/m^3'],
    ['common-red-brick', 'Brick, fired clay, 1760 kg/m^3'],
    ['common-red-brick', 'Brick, fired clay, 1920 kg/m^3'],
  ])('%s beside %s', (ours, theirs) => {
    const [row] = rowsOf(theirs, 'conductivity_W_mK');
    outside({
      subject: ours,
      quantity: `conductivity, ${theirs}`,
      ours: at(conductivity(ours), celsius(20), 'typical').value,
      theirs: row!.expected,
      unit: 'W/(m K)',
      source,
      tolerance: 0.26 * row!.expected,
      reason: 'one middle row of ours beside several densities of theirs, printed near 24 °C',
    });
    expect(row!.expected).toBeGreaterThanOrEqual(at(conductivity(ours), celsius(20), 'low').value);
    expect(row!.expected).toBeLessThanOrEqual(at(conductivity(ours), celsius(20), 'high').value);
  });
});

describe('steel of EN 1993-1-2', () => {
  it.each([
    [20, 53.3],
    [200, 47.3],
    [400, 40.7],
    [600, 34],
    [800, 27.3],
  ])('conducts at %d °C', (T, theirs) => {
    outside({
      subject: 'mild-steel',
      quantity: `conductivity at ${T} °C`,
      ours: at(conductivity('mild-steel'), celsius(T), 'typical').value,
      theirs,
      unit: 'W/(m K)',
      source: 'EN 1993-1-2:2005, by formula',
      tolerance: 0.05,
      reason: 'theirs is rounded to 0.1',
    });
  });

  it.each([
    [20, 440],
    [100, 488],
    [200, 530],
    [400, 606],
  ])('stores heat at %d °C', (T, theirs) => {
    outside({
      subject: 'mild-steel',
      quantity: `heat capacity at ${T} °C`,
      ours: at(heatCapacity('mild-steel'), celsius(T), 'typical').value,
      theirs,
      unit: 'J/(kg K)',
      source: 'EN 1993-1-2:2005, by formula',
      tolerance: 0.6,
      reason: 'theirs is rounded to 1',
    });
  });
});

interface Limit {
  readonly ours: string;
  readonly name: PropertyName;
  readonly end: 'low' | 'typical' | 'high';
  readonly theirs: number;
  readonly from: string;
}

describe('temperatures of standards and tables', () => {
  it.each<Limit>([
    { ours: 'perlite', name: 'service_limit_K', end: 'low', theirs: 650, from: 'EN 15599-1:2010, scope' },
    { ours: 'perlite', name: 'service_limit_K', end: 'typical', theirs: 760, from: 'ASTM C549, scope' },
    { ours: 'perlite', name: 'service_limit_K', end: 'high', theirs: 871, from: 'softening, web toolbox' },
    { ours: 'vermiculite', name: 'service_limit_K', end: 'high', theirs: 1050, from: 'EN 15600-1:2010, scope' },
    { ours: 'vermiculite', name: 'melting_K', end: 'typical', theirs: 1315, from: "a maker's sheet" },
    { ours: 'insulating-brick-23', name: 'service_limit_K', end: 'high', theirs: 1230, from: 'C155 reheat, table' },
    { ours: 'insulating-brick-26', name: 'service_limit_K', end: 'high', theirs: 1400, from: 'C155 reheat, table' },
    { ours: 'insulating-brick-28', name: 'service_limit_K', end: 'high', theirs: 1510, from: 'C155 reheat, table' },
    { ours: 'fibre-blanket', name: 'service_limit_K', end: 'high', theirs: 1180, from: "a supplier's note" },
    { ours: 'galvanised-steel', name: 'melting_K', end: 'typical', theirs: 419.53, from: 'chemicals 1.5.2, zinc' },
    { ours: 'hydrated-lime', name: 'service_limit_K', end: 'high', theirs: 450, from: 'Tantawy 2017' },
  ])('$ours $name, $end', ({ ours, name, end, theirs, from }) => {
    outside({
      subject: ours,
      quantity: `${name}, ${end}`,
      ours: property(ours, name)[end],
      theirs: celsius(theirs),
      unit: 'K',
      source: from,
      tolerance: 1,
      reason: 'the same limit, rounded to a degree',
    });
  });
});

describe('mass lost on firing, from atomic masses', () => {
  const water = 18.015;
  it.each([
    ['kaolin', 'kaolinite Al2Si2O5(OH)4', (2 * water) / 258.16],
    ['gypsum-plaster', 'gypsum CaSO4·2H2O', (2 * water) / 172.17],
    ['hydrated-lime', 'portlandite Ca(OH)2', water / 74.093],
  ])('%s loses at most what pure %s does', (ours, mineral, theirs) => {
    outside({
      subject: ours,
      quantity: `ignition loss of pure ${mineral}`,
      ours: property(ours, 'ignition_loss').high,
      theirs,
      unit: '1',
      source: 'atomic masses (IUPAC 2021)',
      tolerance: 1e-4,
      reason: 'ours is rounded to 0.01 %',
    });
  });
});

describe('vessels filled with water', () => {
  it.each([
    ['drum-55-gal-open', 55, 'US gal stated; 49 CFR and PPP-D-729 call it 55 gal', 0.03],
    ['drum-55-gal-tight', 55, 'US gal stated; 49 CFR and PPP-D-729 call it 55 gal', 0.05],
  ])('%s', (id, gallons, from, share) => {
    const theirs = gallons * 0.003785411784;
    outside({
      subject: id,
      quantity: 'volume to the brim',
      ours: brimful_m3(findVessel(id)),
      theirs,
      unit: 'm³',
      source: from,
      tolerance: share * theirs,
      reason: 'a drum holds some more than its stated volume, as headspace',
    });
  });

  it('propane cylinder of 20 lb', () => {
    outside({
      subject: 'propane-cylinder-20-lb',
      quantity: 'water capacity',
      ours: brimful_m3(findVessel('propane-cylinder-20-lb')),
      theirs: (47.6 * 0.45359237) / 998.2,
      unit: 'm³',
      source: '47.6 lb of water, as stamped',
      tolerance: 0.0005,
      reason: 'ends taken as 2:1 ellipses',
    });
  });
});

describe('pouring temperatures of pages and tables', () => {
  it.each([
    ['aluminium', 'high', 788, 'Aluminum Association safety page'],
    ['aluminium', 'low', 620, 'page quoting a German foundry handbook'],
    ['zinc-alloy', 'typical', 435, 'EN 12844 table, alloy 3'],
    ['grey-iron', 'high', 1440, "a foundry's process page"],
  ] as const)('%s, %s', (id, end, theirs, from) => {
    outside({
      subject: id,
      quantity: `pouring temperature, ${end}`,
      ours: findPour(id).pour_K[end],
      theirs: celsius(theirs),
      unit: 'K',
      source: from,
      tolerance: 10,
      reason: 'both are ranges of practice',
    });
  });
});
