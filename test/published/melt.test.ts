import { describe, expect, it } from 'vitest';
import { findPour } from '../../core/materials/catalogue.ts';
import { celsius } from '../../core/materials/data/make.ts';
import type { Element, Pour } from '../../core/materials/pour.ts';
import { absorbTime_s } from '../../core/melt/absorb.ts';
import { pots } from '../../core/melt/data/pots.ts';
import { scrapForms } from '../../core/melt/data/scrap-forms.ts';
import { estimateMelt } from '../../core/melt/melt.ts';
import { type HeatPoint, heatCurve, meltHeat_J_kg } from '../../core/melt/melt-heat.ts';
import { meltLoss } from '../../core/melt/melt-loss.ts';
import { fusion_J_kg, liquidHeat_J_kg, meltingPoint_K, solidHeat_J_kg } from '../../core/melt/metals.ts';
import { crucibleFromMelt } from '../../core/shape/crucible.ts';
import { librariesOf, stored } from '../reference/stored.ts';
import { outside } from './outside.ts';

interface Fire {
  readonly mass_kg: number;
  readonly pot_J_K: number;
  readonly area_m2: number;
  readonly film_W_m2K: number;
  readonly fire_K: number;
}
type Inputs =
  | { kind: 'pure' | 'solid'; element: Element; to_K: number }
  | { kind: 'sum'; shares: Partial<Record<Element, number>>; to_K: number }
  | { kind: 'fusion' | 'melting'; element: Element }
  | ({ kind: 'lump'; curve: readonly HeatPoint[] } & Fire)
  | ({ kind: 'fine'; element: Element; from_K: number; pour_K: number } & Fire)
  | { kind: 'steel' };

const cold_K = celsius(20);
const reference = stored<Inputs>('melt');
const units: Readonly<Record<Inputs['kind'], readonly [quantity: string, unit: string]>> = {
  pure: ['heat from 20 °C, liquid', 'J/kg'],
  solid: ['heat from 20 °C, solid', 'J/kg'],
  sum: ['heat from 20 °C, liquid', 'J/kg'],
  fusion: ['heat of fusion', 'J/kg'],
  melting: ['melting point', 'K'],
  lump: ['time to the pour', 's'],
  fine: ['time to the pour', 's'],
  steel: ['mean heat capacity', 'J/(kg K)'],
};

/** An alloy that is nothing but its elements. */
const sumOf = (composition: Pour['composition']): Pour => ({
  ...findPour('aluminium'),
  composition,
  solidus_K: { ...findPour('zinc').solidus_K },
  liquidus_K: { ...findPour('zinc').liquidus_K },
});

function ours(inputs: Inputs): number {
  switch (inputs.kind) {
    case 'pure':
      return liquidHeat_J_kg({ element: inputs.element, T_K: inputs.to_K }) - solidAt(inputs.element, cold_K);
    case 'solid':
      return solidAt(inputs.element, inputs.to_K) - solidAt(inputs.element, cold_K);
    case 'sum':
      return meltHeat_J_kg({ alloy: sumOf(inputs.shares), from_K: cold_K, pour_K: inputs.to_K, correction_J_kg: 0 });
    case 'fusion':
      return fusion_J_kg(inputs.element);
    case 'melting':
      return meltingPoint_K(inputs.element);
    case 'lump':
      return absorbTime_s(inputs);
    case 'fine': {
      const alloy = findPour(inputs.element === 'Al' ? 'pure-aluminium' : 'copper');
      return absorbTime_s({ ...inputs, curve: heatCurve({ alloy, from_K: inputs.from_K, pour_K: inputs.pour_K }) });
    }
    case 'steel':
      return pots.find(({ id }) => id === 'steel')!.heat_capacity_J_kgK.typical;
  }
}

const solidAt = (element: Element, T_K: number) => solidHeat_J_kg({ element, T_K });

describe('metals and melting, beside another program, handbook tables and a solver', () => {
  it.each(reference.cases)('$id', ({ id, inputs, expected, tolerance, why }) => {
    const [quantity, unit] = units[inputs.kind];
    const source = librariesOf(reference);
    outside({ subject: id, quantity, ours: ours(inputs), theirs: expected, unit, source, tolerance, reason: why });
  });
});

/** J/kg, by the catalogue's own correction. */
const heat = (id: string, pour_C: number, from_C = 20) =>
  meltHeat_J_kg({ alloy: findPour(id), from_K: celsius(from_C), pour_K: celsius(pour_C) });

describe('worked examples of textbooks', () => {
  it('17.8 kg of aluminium from 25 to 800 °C', () => {
    const volume_m3 = 1.05 * (Math.PI / 4) * 0.4 ** 2 * 0.05;
    const mass_kg = volume_m3 * findPour('pure-aluminium').solid_density_kg_m3.typical;
    const source = 'textbook exercise: disc 40 × 5 cm and 5 %, c 0.9 kJ/kgK, latent heat 398 kJ/kg';
    outside({
      subject: 'aluminium disc',
      quantity: 'mass',
      ours: mass_kg,
      theirs: 17.8,
      unit: 'kg',
      source,
      tolerance: 0.05,
      reason: 'printed to three digits',
    });
    const theirs = 19.5e6;
    const mine = 17.8 * heat('pure-aluminium', 800, 25);
    outside({
      subject: 'aluminium disc',
      quantity: 'heat to 800 °C',
      ours: mine,
      theirs,
      unit: 'J',
      source,
      tolerance: 0.13 * theirs,
      reason: 'the exercise keeps the heat capacity of cold metal, 0.9, where tables rise to 1.2 kJ/kgK: 11 % low',
    });
    expect(theirs / mine).toBeCloseTo(0.89, 1);
  });

  it('10 g of aluminium from 580 °C to liquid at 660.4 °C', () => {
    const T_K = celsius(660.4);
    outside({
      subject: 'aluminium, 10 g',
      quantity: 'heat from 580 °C to liquid',
      ours: 0.01 * (liquidHeat_J_kg({ element: 'Al', T_K }) - solidAt('Al', celsius(580))),
      theirs: 4695.6,
      unit: 'J',
      source: 'textbook exercise, c 0.89 kJ/kgK, latent heat 398 kJ/kg',
      tolerance: 300,
      reason: 'a heat capacity of 0.89 where tables give 1.2 kJ/kgK: 0.3 × 80 K × 10 g = 250 J',
    });
  });
});

/** Heat that melting itself takes, without that of the warming on the way: sheets call it latent heat. */
function latent_J_kg(id: string): number {
  const alloy = findPour(id);
  const curve = heatCurve({ alloy, from_K: cold_K, pour_K: alloy.pour_K.typical });
  const [before, start, end, after] = curve.slice(-4) as [HeatPoint, HeatPoint, HeatPoint, HeatPoint];
  const slope = (a: HeatPoint, b: HeatPoint) => (b.heat_J_kg - a.heat_J_kg) / (b.T_K - a.T_K);
  const sensible = ((slope(before, start) + slope(end, after)) / 2) * (end.T_K - start.T_K);
  return end.heat_J_kg - start.heat_J_kg - sensible;
}

describe('latent heats that sheets of alloys print', () => {
  it.each([
    ['al-si8cu3', 389e3, 60e3, "die caster's copy of a database sheet, 380", 'other sheets print up to 500: split'],
    ['red-brass-c83300', 200e3, 15e3, 'alloy property site, C83300', 'printed to one digit'],
    ['za-12', 120e3, 15e3, 'alloy property site, ZA-12', 'one sheet, printed to two digits'],
  ] as const)('%s', (id, theirs, tolerance, source, reason) => {
    outside({
      subject: findPour(id).name,
      quantity: 'latent heat',
      ours: latent_J_kg(id),
      theirs,
      unit: 'J/kg',
      source,
      tolerance,
      reason,
    });
  });
});

describe('whole heats that handbooks give', () => {
  it.each([
    ['al-si7', 740, 1180e3, 0.06, 'handbook latent heat 389–430 J/g and liquid mixing; from memory'],
    ['grey-iron', 1350, 1250e3, 0.04, 'foundry rule, from memory'],
  ] as const)('%s at %d °C', (id, pour_C, theirs, share, source) => {
    outside({
      subject: findPour(id).name,
      quantity: `heat from 20 to ${pour_C} °C`,
      ours: heat(id, pour_C),
      theirs,
      unit: 'J/kg',
      source,
      tolerance: share * theirs,
      reason: 'the spread the handbook itself leaves',
    });
  });

  it('spans for Al-7Si what handbooks span, 6 % either way', () => {
    const alloy = findPour('al-si7');
    const at = (correction_J_kg: number) =>
      meltHeat_J_kg({ alloy, from_K: cold_K, pour_K: celsius(740), correction_J_kg });
    expect(at(alloy.melting_correction_J_kg.low)).toBeLessThan(1180e3 * 0.95);
    expect(at(alloy.melting_correction_J_kg.high)).toBeGreaterThan(1180e3 * 1.05);
  });
});

describe('a melt that was measured', () => {
  const alloy = findPour('aluminium');
  const estimate = estimateMelt({
    alloy,
    mass_kg: { low: 10, typical: 10, high: 10 },
    from_K: cold_K,
    pour_K: { low: celsius(690), typical: celsius(700), high: celsius(710) },
    crucible: crucibleFromMelt({ mass_kg: 10, metal: 'aluminium' }),
    pot: pots[0]!,
    form: scrapForms[1]!,
    cover: undefined,
  });

  it('3 kg of charcoal for 10 kg of aluminium: 12 to 15 % of its heat', () => {
    for (const [lower_J_kg, theirs] of [
      [25e6, 0.15],
      [31e6, 0.12],
    ] as const)
      outside({
        subject: '10 kg of aluminium over 3 kg of charcoal',
        quantity: `share of the heat at ${lower_J_kg / 1e6} MJ/kg`,
        ours: estimate.typical.heat_J / (3 * lower_J_kg),
        theirs,
        unit: '1',
        source: 'student thesis, abstract: masses; its own efficiency of 76 % counts something else',
        tolerance: 0.005,
        reason: 'half of the last printed digit',
      });
  });

  it('takes longer than the least that the crucible allows: 93 min', () => {
    expect(estimate.ranges.time_s?.high).toBeLessThan(93 * 60);
    expect(estimate.typical.time_s).toBeGreaterThan(0.05 * 93 * 60);
  });
});

describe('losses that others measured', () => {
  const lossOf = (form: string) =>
    meltLoss({
      alloy: findPour('pure-aluminium'),
      form: scrapForms.find(({ id }) => id === form)!,
      cover: undefined,
    }).lost;

  it('of heavy aluminium in a fired crucible', () => {
    outside({
      subject: 'aluminium, clean heavy',
      quantity: 'loss, high end',
      ours: lossOf('heavy').high,
      theirs: 0.04,
      unit: '1',
      source: 'note on furnace technology: fired crucible 2–4 %',
      tolerance: 0.005,
      reason: 'half of the last printed digit',
    });
  });

  it('of aluminium turnings pushed under a heel', () => {
    outside({
      subject: 'aluminium turnings',
      quantity: 'loss, low end',
      ours: lossOf('swarf').low,
      theirs: 0.1,
      unit: '1',
      source: 'Mater. Sci. Forum 794–796 (2014) 1083: about 90 % recovered in a heel',
      tolerance: 0.02,
      reason: '"about 90 %"; loose swarf in a small pot loses more',
    });
  });
});
