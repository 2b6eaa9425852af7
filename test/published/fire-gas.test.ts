import { describe, expect, it } from 'vitest';
import { type Fuel, findFuel, fuels } from '../../core/fire/fuel/fuel.ts';
import { type AsFired, asFired } from '../../core/fire/fuel/fuel-as-fired.ts';
import { availableHeat, preheatSaving } from '../../core/fire/gas/available-heat.ts';
import { equilibriumAt } from '../../core/fire/gas/equilibrium.ts';
import { flame } from '../../core/fire/gas/flame.ts';
import { flueGas } from '../../core/fire/gas/flue.ts';
import { airNeed, waterSaturation_Pa } from '../../core/fire/gas/mixture.ts';
import {
  enthalpy_J_mol,
  entropy_J_molK,
  GAS_CONSTANT,
  heatCapacity_J_molK,
  type SpeciesName,
} from '../../core/fire/gas/nasa.ts';
import { librariesOf, stored } from '../reference/stored.ts';
import { outside } from './outside.ts';

interface GivenGas {
  readonly gases: Readonly<Record<string, number>>;
}
interface GivenMatter {
  readonly C: number;
  readonly H: number;
  readonly O: number;
  readonly N: number;
  readonly ash: number;
  readonly moisture: number;
  readonly lower_heat_J_kg: number;
}
interface Fired {
  readonly fuel: GivenGas | GivenMatter;
  readonly equivalence_ratio: number;
}
interface Burning extends Fired {
  readonly air_K: number;
  readonly oxygen_share: number;
  readonly pressure_Pa: number;
}
interface Kinds {
  readonly flame: Burning;
  readonly composition: Burning;
  readonly full: Burning;
  readonly flue: Fired & { readonly freeze_K: number };
  readonly available: Fired & { readonly air_K: number; readonly flue_K: number };
  readonly chart: Fired & { readonly flue_K: number };
  readonly saving: Fired & { readonly flue_K: number; readonly warm_K: number };
  readonly boudouard: { readonly T_K: number };
  readonly lower: Pick<Fired, 'fuel'>;
  readonly higher: Pick<Fired, 'fuel'>;
  readonly property: { readonly species: SpeciesName; readonly T_K: number };
  readonly saturation: { readonly T_K: number };
}
type Shares = Readonly<Record<string, number>>;

const reference = stored<{ readonly kind: keyof Kinds }, number | Shares>('fire_gas');
const source = librariesOf(reference);
const casesOf = <K extends keyof Kinds, Expected extends number | Shares = number>(kind: K) =>
  reference.cases
    .filter(({ inputs }) => inputs.kind === kind)
    .map((each) => ({ ...each, inputs: each.inputs as unknown as Kinds[K], expected: each.expected as Expected }));

/** The fuel of a stored case, as ours: only what it is made of matters here, never its data. */
function fuelOf(given: GivenGas | GivenMatter): {
  fuel: Fuel;
  ash: number;
  moisture: number;
  lower_heat_J_kg?: number;
} {
  if ('gases' in given)
    return { fuel: { ...findFuel('propane'), combustible: { gases: { ...given.gases } } }, ash: 0, moisture: 0 };
  const { C, H, O, N, ash, moisture, lower_heat_J_kg } = given;
  return { fuel: { ...findFuel('charcoal'), combustible: { C, H, O, N } }, ash, moisture, lower_heat_J_kg };
}
const firedOf = (given: GivenGas | GivenMatter): AsFired => asFired(fuelOf(given));
const flameOf = ({ fuel, equivalence_ratio, air_K, oxygen_share, pressure_Pa }: Burning) =>
  flame({ ...fuelOf(fuel), equivalence_ratio, air_K, oxygen_share, pressure_Pa });

/** `propane` of `propane φ 0.9, …`: rows of the table are by fuel, their worst case each. */
const fuelName = (id: string): string => id.split(' φ ')[0]!;
const worstOf = <T extends { id: string; off: number }>(cases: readonly T[]): T[] =>
  [...Map.groupBy(cases, ({ id }) => fuelName(id)).values()].map((group) =>
    group.reduce((worst, each) => (each.off > worst.off ? each : worst)),
  );

describe('adiabatic flames, beside another solver with the same twelve species', () => {
  const flames = casesOf('flame').map((each) => {
    const ours = flameOf(each.inputs).temperature_K;
    return { ...each, ours, off: Math.abs(ours - each.expected) };
  });
  it.each(flames)('$id', ({ off, tolerance, why }) => {
    expect(off, why).toBeLessThanOrEqual(tolerance);
  });
  it.each(worstOf(flames))('at worst $id', ({ id, ours, expected, tolerance, why }) => {
    outside({
      subject: id,
      quantity: 'worst of its fuel',
      ours,
      theirs: expected,
      unit: 'K',
      source,
      tolerance,
      reason: why,
    });
  });

  const mixed = casesOf<'composition', Shares>('composition').map((each) => {
    const { wet, soot, fuel, air_per_fuel } = flameOf(each.inputs);
    // Soot is stored as moles to a mole of gas: what is not soot of fuel and air weighs as the gas's own molar mass.
    const molarMass = gasMass(wet);
    const gas_mol = (1 - fuel.ash + air_per_fuel - soot) / molarMass;
    const ours: Shares = { ...wet, soot: soot / 0.012011 / gas_mol };
    const [name, off] = Object.entries(each.expected)
      .map(([species, share]) => [species, Math.abs(ours[species]! - share)] as const)
      .reduce((worst, next) => (next[1] > worst[1] ? next : worst));
    return { ...each, ours: ours[name]!, theirs: each.expected[name]!, name, off };
  });
  it.each(mixed)('$id', ({ off, name, tolerance, why }) => {
    expect(off, `${name}: ${why}`).toBeLessThanOrEqual(tolerance);
  });
  it.each(worstOf(mixed))('at worst $id', ({ id, ours, theirs, name, tolerance, why }) => {
    outside({
      subject: id,
      quantity: `${name}, worst of its fuel`,
      ours,
      theirs,
      unit: 'mol/mol',
      source,
      tolerance,
      reason: why,
    });
  });

  it('include soot and go on to 3000 K', () => {
    expect(mixed.filter(({ expected }) => expected.soot! > 1e-3).length).toBeGreaterThanOrEqual(6);
    expect(Math.max(...flames.map(({ expected }) => expected))).toBeGreaterThan(2600);
  });

  it.each(casesOf('full'))('$id', ({ id, inputs, expected, tolerance, why }) => {
    outside({
      subject: id,
      quantity: 'what a short list of species leaves out',
      ours: flameOf(inputs).temperature_K,
      theirs: expected,
      unit: 'K',
      source,
      tolerance,
      reason: why,
    });
  });
});

function gasMass(wet: Shares): number {
  const kg_mol: Shares = {
    ...{ N2: 0.028014, O2: 0.031998, CO2: 0.044009, H2O: 0.018015, CO: 0.02801, H2: 0.002016 },
    ...{ OH: 0.017007, O: 0.015999, H: 0.001008, NO: 0.030006, Ar: 0.03995 },
  };
  return Object.entries(wet).reduce((sum, [name, share]) => sum + share * kg_mol[name]!, 0);
}

describe('flue gas and the heat that stays, beside the same balance kept apart', () => {
  it.each(casesOf<'flue', Shares>('flue'))('$id', ({ id, inputs, expected, tolerance, why }) => {
    const { equivalence_ratio, freeze_K } = inputs;
    const { wet } = flueGas({ fuel: firedOf(inputs.fuel), ratio: { equivalence_ratio }, freeze_K });
    for (const name of ['CO2', 'H2O', 'H2', 'N2'] as const)
      expect(Math.abs(wet[name] - expected[name]!), `${name}: ${why}`).toBeLessThanOrEqual(tolerance);
    outside({
      subject: id,
      quantity: 'CO',
      ours: wet.CO,
      theirs: expected.CO!,
      unit: 'mol/mol',
      source,
      tolerance,
      reason: why,
    });
  });

  it.each(casesOf('available'))('$id', ({ id, inputs, expected, tolerance, why }) => {
    const { equivalence_ratio, air_K, flue_K } = inputs;
    outside({
      subject: id,
      quantity: 'available heat',
      ours: availableHeat({ fuel: firedOf(inputs.fuel), ratio: { equivalence_ratio }, air_K, flue_K }).share_of_lower,
      theirs: expected,
      unit: '1',
      source,
      tolerance,
      reason: why,
    });
  });
});

describe('heat left with cold and warm air, and carbon monoxide over carbon, each summed on its own', () => {
  it.each(casesOf('chart'))('$id', ({ id, inputs, expected, tolerance, why }) => {
    const { equivalence_ratio, flue_K } = inputs;
    outside({
      subject: id,
      quantity: 'available heat, of the higher value',
      ours: availableHeat({ fuel: firedOf(inputs.fuel), ratio: { equivalence_ratio }, flue_K }).share_of_higher,
      theirs: expected,
      unit: '1',
      source,
      tolerance,
      reason: why,
    });
  });

  it.each(casesOf('saving'))('$id', ({ id, inputs, expected, tolerance, why }) => {
    const { equivalence_ratio, flue_K, warm_K } = inputs;
    outside({
      subject: id,
      quantity: 'fuel saved by warm air',
      ours: preheatSaving({ fuel: firedOf(inputs.fuel), ratio: { equivalence_ratio }, flue_K, warm_K }),
      theirs: expected,
      unit: '1',
      source,
      tolerance,
      reason: why,
    });
  });

  it.each(casesOf('boudouard'))('$id', ({ id, inputs, expected, tolerance, why }) => {
    const { moles } = equilibriumAt({ elements_mol: [2, 0, 1, 0, 0], T_K: inputs.T_K, pressure_Pa: 100_000 });
    outside({
      subject: id,
      quantity: 'CO of CO and CO2',
      ours: moles.CO / (moles.CO + moles.CO2),
      theirs: expected,
      unit: '1',
      source,
      tolerance,
      reason: why,
    });
  });
});

describe('heats and properties of single species', () => {
  it.each([...casesOf('lower'), ...casesOf('higher')])('$id', ({ id, inputs, expected, tolerance, why }) => {
    const { lower_heat_J_kg, higher_heat_J_kg } = firedOf(inputs.fuel);
    outside({
      subject: id,
      quantity: 'heating value',
      ours: id.includes('lower') ? lower_heat_J_kg : higher_heat_J_kg,
      theirs: expected,
      unit: 'J/kg',
      source,
      tolerance,
      reason: why,
    });
  });

  const states = casesOf<'property', Shares>('property').map((each) => {
    const { species, T_K } = each.inputs;
    const of = (ours: number, theirs: number, scale: number): number =>
      Math.abs(ours - theirs) / Math.max(Math.abs(theirs), scale);
    const off = Math.max(
      of(heatCapacity_J_molK({ species, T_K }), each.expected.cp!, GAS_CONSTANT),
      of(enthalpy_J_mol({ species, T_K }), each.expected.h!, GAS_CONSTANT * T_K),
      of(entropy_J_molK({ species, T_K }), each.expected.s!, GAS_CONSTANT),
    );
    return { ...each, off };
  });
  it(`of ${states.length} states: cp, h and s`, () => {
    const worst = states.reduce((a, b) => (b.off > a.off ? b : a));
    outside({
      subject: `cp, h, s of 30 species, ${states.length} states`,
      quantity: `largest difference as a share (${worst.id})`,
      ours: worst.off,
      theirs: 0,
      unit: '1',
      source,
      tolerance: worst.tolerance,
      reason: worst.why,
    });
  });

  it.each(casesOf('saturation'))('$id', ({ id, inputs, expected, tolerance, why }) => {
    outside({
      subject: id,
      quantity: 'saturation pressure',
      ours: waterSaturation_Pa(inputs.T_K),
      theirs: expected,
      unit: 'Pa',
      source,
      tolerance,
      reason: why,
    });
  });

  const KEY_VALUES = 'CODATA Key Values for Thermodynamics (1989), from memory';
  it.each([
    ['CO2', -393.51, 0.13],
    ['CO', -110.53, 0.17],
    ['H2O', -241.826, 0.04],
    ['H2O(L)', -285.83, 0.04],
    ['H', 217.998, 0.006],
    ['O', 249.18, 0.1],
  ] as const)('%s: heat of formation', (species, kJ_mol, uncertainty) => {
    outside({
      subject: species,
      quantity: 'heat of formation at 298.15 K',
      ours: enthalpy_J_mol({ species, T_K: 298.15 }) / 1000,
      theirs: kJ_mol,
      unit: 'kJ/mol',
      source: KEY_VALUES,
      // The polynomials meet their own reference to some joules.
      tolerance: uncertainty + 0.01,
      reason: 'the uncertainty that the table states, and 10 J for the fit',
    });
  });
  it.each([
    ['N2', 191.609],
    ['O2', 205.152],
    ['H2', 130.68],
  ] as const)('%s: entropy', (species, J_molK) => {
    outside({
      subject: species,
      quantity: 'entropy at 298.15 K, 1 bar',
      ours: entropy_J_molK({ species, T_K: 298.15 }),
      theirs: J_molK,
      unit: 'J/(mol K)',
      source: KEY_VALUES,
      tolerance: 0.005,
      reason: 'three decimals printed, and the fit',
    });
  });
});

const Btu = 1055.056;
const lb = 0.45359237;
const gal = 0.003785411784;
const fired = (name: string, input: Partial<Parameters<typeof asFired>[0]> = {}): AsFired =>
  asFired({ fuel: findFuel(name), ...input });
const LP_TABLES = "two LP-gas suppliers' property tables";
const NOTES = 'Furnaces and Boilers, university notes';
const TEXTBOOK = 'a textbook table of hydrocarbon fuels (Turns, An Introduction to Combustion, app. B), from memory';

describe('published heating values', () => {
  const MJ = 1e6;
  it.each([
    ['propane', 'higher', 21_591 * (Btu / lb), LP_TABLES, 0.005, 'commercial propane is no pure gas'],
    ['propane', 'higher', 21_548 * (Btu / lb), LP_TABLES, 0.005, 'commercial propane is no pure gas'],
    [
      'propane',
      'lower',
      (84_300 * Btu) / (gal * 507),
      NOTES,
      0.01,
      'by the gallon: liquid at 60 °F taken as 507 kg/m³',
    ],
    ['methane', 'lower', 21_500 * (Btu / lb), NOTES, 0.005, 'three figures printed'],
    ['methane', 'higher', 23_900 * (Btu / lb), NOTES, 0.005, 'three figures printed'],
    ['diesel', 'lower', 18_500 * (Btu / lb), NOTES, 0.01, 'heating oil varies by 1 %'],
    ['diesel', 'higher', 19_700 * (Btu / lb), NOTES, 0.01, 'heating oil varies by 1 %'],
    ['methane', 'lower', 50.016 * MJ, TEXTBOOK, 0.001, 'other formation enthalpies, rounded molar masses'],
    ['methane', 'higher', 55.528 * MJ, TEXTBOOK, 0.001, 'other formation enthalpies, rounded molar masses'],
    ['propane', 'lower', 46.357 * MJ, TEXTBOOK, 0.001, 'other formation enthalpies, rounded molar masses'],
    ['propane', 'higher', 50.368 * MJ, TEXTBOOK, 0.001, 'other formation enthalpies, rounded molar masses'],
    ['butane', 'lower', 45.742 * MJ, TEXTBOOK, 0.003, 'n-butane there, three tenths isobutane here'],
    [
      'coke',
      'lower',
      (25e6 * Btu) / (2000 * lb),
      'a general definition of coke: 25 million Btu a (short) ton',
      0.03,
      'two figures, no analysis',
    ],
  ] as const)('%s, %s', (name, which, theirs, from, share, reason) => {
    const { lower_heat_J_kg, higher_heat_J_kg } = fired(name);
    outside({
      subject: name,
      quantity: `${which} heating value`,
      ours: which === 'lower' ? lower_heat_J_kg : higher_heat_J_kg,
      theirs,
      unit: 'J/kg',
      source: from,
      tolerance: share * theirs,
      reason,
    });
  });

  /** Published as a span: ours against its middle, half its width (and a word of why) allowed. */
  it.each([
    [
      'bone-dry wood, higher',
      fired('wood', { moisture: 0 }).higher_heat_J_kg,
      8500 * (Btu / lb),
      9000 * (Btu / lb),
      'an encyclopaedia entry on bone-dry wood, softwood to hardwood',
    ],
    [
      'used motor oil, higher',
      fired('used motor oil').higher_heat_J_kg,
      (140_000 * Btu) / (gal * 890),
      (150_000 * Btu) / (gal * 890),
      'a chapter and a trade journal on used oil, by the gallon at 890 kg/m³',
    ],
    [
      'charcoal of five species, higher',
      fired('charcoal', { moisture: 0.03 }).higher_heat_J_kg,
      30.3 * MJ,
      31.5 * MJ,
      'Agriculture and Natural Resources 242470',
    ],
    [
      'charcoal with 10 to 15 % water, higher',
      fired('charcoal', { moisture: 0.125, ash: 0.025 }).higher_heat_J_kg,
      27.2 * MJ * 0.97,
      27.2 * MJ * 1.07,
      'energy agencies’ definition: ≈ 27.2 MJ/kg, ash 2–3 %; 5 % for its "about"',
    ],
    [
      'charcoal, dry and ash-free, higher',
      fired('charcoal', { moisture: 0, ash: 0 }).higher_heat_J_kg,
      27.9 * MJ,
      34.7 * MJ,
      'FAO Forestry Paper 41 as quoted: 27 % to 9 % volatiles',
    ],
  ] as const)('%s', (subject, ours, low, high, from) => {
    outside({
      subject,
      quantity: 'heating value, against the middle of a span',
      ours,
      theirs: (low + high) / 2,
      unit: 'J/kg',
      source: from,
      tolerance: (high - low) / 2,
      reason: 'half the published span',
    });
  });

  it('keeps the limits of barbecue charcoal inside its spreads (EN 1860-2)', () => {
    const lump = findFuel('charcoal');
    expect(lump.ash.high).toBeGreaterThanOrEqual(0.08);
    expect(lump.moisture.high).toBeGreaterThanOrEqual(0.08);
    expect(lump.fixed_carbon!.typical).toBeGreaterThanOrEqual(0.75);
    const briquettes = findFuel('briquettes');
    expect(briquettes.ash.high).toBeGreaterThanOrEqual(0.18);
    expect(briquettes.fixed_carbon!.low).toBeLessThanOrEqual(0.6);
  });
});

describe('published air needs and flame temperatures', () => {
  it.each([
    ['propane', 23.86, 'one table of propane', 0.02, 'four figures printed'],
    ['propane', 23.5, 'another table of propane', 0.5, 'rounded, or for a commercial mixture'],
    ['methane', 9.53, 'handbooks of fuel gas, from memory', 0.05, 'air taken as 20.9 to 21 % oxygen'],
  ] as const)('%s: %d volumes of air', (name, theirs, from, tolerance, reason) => {
    outside({
      subject: name,
      quantity: 'volumes of air to one of gas',
      ours: airNeed(fired(name)).mol_mol!,
      theirs,
      unit: 'm³/m³',
      source: from,
      tolerance,
      reason,
    });
  });

  it.each([
    ['methane', 17.2],
    ['propane', 15.7],
    ['butane', 15.5],
    ['diesel', 14.6],
    ['waste vegetable oil', 12.5],
  ] as const)('%s: kilograms of air', (name, theirs) => {
    outside({
      subject: name,
      quantity: 'kilograms of air to one of fuel',
      ours: airNeed(fired(name)).kg_kg,
      theirs,
      unit: 'kg/kg',
      source: 'handbooks of combustion, from memory',
      tolerance: 0.1,
      reason: 'one decimal; oils vary in make-up',
    });
  });

  it.each([
    ['methane', 2226],
    ['propane', 2267],
    ['butane', 2270],
  ] as const)('%s: balanced flame from 298 K', (name, theirs) => {
    outside({
      subject: name,
      quantity: 'adiabatic flame temperature',
      ours: flame({ fuel: findFuel(name) }).temperature_K,
      theirs,
      unit: 'K',
      source: TEXTBOOK,
      tolerance: 3,
      reason: 'whole kelvins, air there without argon, other formation enthalpies',
    });
  });
});

describe('rules of the trade, no source found', () => {
  it.each(fuels.map(({ id }) => id))('%s: about a cubic foot of air to 100 Btu', (id) => {
    const fuel = fired(id);
    const ft3 = (airNeed(fuel).mol_kg * GAS_CONSTANT * 288.71) / 101_325 / 0.028316846592;
    outside({
      subject: id,
      quantity: 'air for 100 Btu (gross), at 60 °F',
      ours: ft3 / (fuel.higher_heat_J_kg / Btu / 100),
      theirs: 1,
      unit: 'ft³',
      source: 'handbook rule for any fuel, from memory',
      // Ours: 0.91 damp wood, 0.95 gases, 0.96 to 0.99 oils, 1.02 charcoal, 1.06 coke.
      tolerance: 0.1,
      reason:
        'the rule says "about": it holds for all of these within a tenth on gross heat; on net heat gases come to 1.05',
    });
  });

  it('is within a tenth on net heat too', () => {
    for (const { id } of fuels) {
      const fuel = fired(id);
      const ft3 = (airNeed(fuel).mol_kg * GAS_CONSTANT * 288.71) / 101_325 / 0.028316846592;
      expect(Math.abs(ft3 / (fuel.lower_heat_J_kg / Btu / 100) - 1), id).toBeLessThan(0.1);
    }
  });
});
