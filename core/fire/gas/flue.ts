import { AskError } from '../../ask-error.ts';
import type { AsFired } from '../fuel/fuel-as-fired.ts';
import { type AirRatio, ASH_J_kgK, airNeed, equivalenceRatio, mixture, type Oxidiser, oxidiser } from './mixture.ts';
import { enthalpy_J_mol, GAS_CONSTANT, gibbs_J_mol, REFERENCE_K } from './nasa.ts';

export const FLUE_GASES = ['CO2', 'H2O', 'O2', 'N2', 'Ar', 'CO', 'H2'] as const;
export type FlueGas = (typeof FLUE_GASES)[number];

export interface Flue {
  /** For one kilogram of fuel as fired. */
  readonly moles: Readonly<Record<FlueGas, number>>;
  readonly wet: Readonly<Record<FlueGas, number>>;
  /** Without water, as a meter reads it. */
  readonly dry: Readonly<Record<FlueGas, number>>;
  readonly equivalence_ratio: number;
  /** Where the water-gas shift was taken to stop; only when rich. */
  readonly freeze_K?: number;
}

export interface FlueInput {
  readonly fuel: AsFired;
  readonly ratio?: AirRatio;
  readonly blast?: Oxidiser;
  /** Rich gas only: below this the shift is too slow to follow. */
  readonly freeze_K?: number;
}

/**
 * Flue gas that left the flame: lean, completely burned; rich, without free oxygen, CO and H2 sharing what is left as the
 * water-gas shift has it at `freeze_K` (about 1500 K, from memory). Mole balance; no dissociation, so not for a flame.
 * @throws AskError `out-of-range` where oxygen is short even for CO: soot.
 */
export function flueGas({ fuel, ratio = {}, blast = oxidiser(), freeze_K = 1500 }: FlueInput): Flue {
  const phi = equivalenceRatio(ratio);
  const [C, H, O, N, Ar] = mixture({ fuel, ratio, blast }).elements_mol as [number, number, number, number, number];
  const inert = { N2: N / 2, Ar };
  if (phi <= 1) {
    const spare = fuel.oxygen_need_mol * (1 / phi - 1);
    return gas({ ...inert, CO2: C, H2O: H / 2, O2: spare, CO: 0, H2: 0 }, { equivalence_ratio: phi });
  }
  if (O <= C)
    throw new AskError({
      code: 'out-of-range',
      what: `${phi.toFixed(2)} times the balanced fuel leaves ${(O / C).toFixed(2)} oxygen atoms to a carbon atom: it smokes`,
      expected: 'oxygen at least to turn all carbon to CO',
      example: '1.1',
      option: 'ratio',
    });
  const CO2 = shiftedCO2({ C, H, O, constant: waterGasConstant(freeze_K) });
  return gas(
    { ...inert, CO2, CO: C - CO2, H2O: O - C - CO2, H2: H / 2 - (O - C - CO2), O2: 0 },
    { equivalence_ratio: phi, freeze_K },
  );
}

/** K = p(CO2)·p(H2) ÷ (p(CO)·p(H2O)). 200–5000 K. Source: NASA TM-4513. */
export const waterGasConstant = (T_K: number): number =>
  Math.exp(
    (gibbs_J_mol({ species: 'CO', T_K }) +
      gibbs_J_mol({ species: 'H2O', T_K }) -
      gibbs_J_mol({ species: 'CO2', T_K }) -
      gibbs_J_mol({ species: 'H2', T_K })) /
      (GAS_CONSTANT * T_K),
  );

/**
 * x = CO2 of: x (H/2 − O + C + x) = K (C − x)(O − C − x), moles of atoms C, H, O with C < O < 2C + H/2. The root that
 * leaves every gas at or above zero, in the form without cancellation.
 */
function shiftedCO2({ C, H, O, constant: K }: { C: number; H: number; O: number; constant: number }): number {
  const a = 1 - K;
  const b = H / 2 - O + C + K * O;
  const c = K * C * (O - C);
  const root = Math.sqrt(b * b + 4 * a * c);
  const x = b >= 0 ? (2 * c) / (b + root) : (root - b) / (2 * a);
  return Math.min(Math.max(x, 0, O - C - H / 2), O - C, C);
}

function gas(moles: Record<FlueGas, number>, rest: Pick<Flue, 'equivalence_ratio' | 'freeze_K'>): Flue {
  const total = FLUE_GASES.reduce((sum, name) => sum + moles[name], 0);
  const shares = (of: number, without?: FlueGas): Record<FlueGas, number> =>
    Object.fromEntries(FLUE_GASES.map((name) => [name, name === without ? 0 : moles[name] / of])) as Record<
      FlueGas,
      number
    >;
  return Object.freeze({ moles, wet: shares(total), dry: shares(total - moles.H2O, 'H2O'), ...rest });
}

/**
 * k in excess air = k·y/(x − y): dry flue of balanced burning ÷ its dry air. Carbon 1, propane 0.92, methane 0.90: the
 * carbon form overstates the excess air of a gas flame. Source: atom balance, derived.
 */
export function dryFlueRatio(fuel: AsFired, blast: Oxidiser = oxidiser()): number {
  const { moles } = flueGas({ fuel, blast });
  return (moles.CO2 + moles.N2 + moles.Ar) / (airNeed(fuel, {}, blast).mol_kg * (1 - blast.H2O));
}

/**
 * Excess air from a dry oxygen reading: e = k·y/(x − y), x the oxygen share of the dry air. Complete burning, no CO; false
 * air leaking in before the probe is counted as excess.
 * @throws AskError `out-of-range` unless 0 ≤ y < x.
 */
export function excessAirFromOxygen(input: { fuel: AsFired; dry_oxygen: number; blast?: Oxidiser }): number {
  const { fuel, dry_oxygen, blast = oxidiser() } = input;
  const share = blast.O2 / (1 - blast.H2O);
  if (dry_oxygen >= 0 && dry_oxygen < share) return (dryFlueRatio(fuel, blast) * dry_oxygen) / (share - dry_oxygen);
  throw new AskError({
    code: 'out-of-range',
    what: `${(dry_oxygen * 100).toFixed(1)} % oxygen cannot be read in flue of air with ${(share * 100).toFixed(2)} %`,
    expected: `a dry reading from 0 to below ${(share * 100).toFixed(1)} %`,
    example: '5%',
    option: 'oxygen',
  });
}

/** The way back: y = e·x/(k + e). */
export function oxygenFromExcessAir(input: { fuel: AsFired; excess_air: number; blast?: Oxidiser }): number {
  const { fuel, excess_air, blast = oxidiser() } = input;
  return (excess_air * (blast.O2 / (1 - blast.H2O))) / (dryFlueRatio(fuel, blast) + excess_air);
}

/** What leaves with the flue of one kilogram of fuel, counted from 25 °C. */
export interface FlueLoss {
  readonly dry_gas_J_kg: number;
  /** Warmth of the vapour; its condensation is not in it. */
  readonly vapour_J_kg: number;
  /** Heat that CO and H2 would still give. */
  readonly unburned_J_kg: number;
  readonly ash_J_kg: number;
}

/** Heat of CO and of H2 burned to gas, J/mol. */
export const CO_J_mol =
  enthalpy_J_mol({ species: 'CO', T_K: REFERENCE_K }) - enthalpy_J_mol({ species: 'CO2', T_K: REFERENCE_K });
const H2_J_mol = -enthalpy_J_mol({ species: 'H2O', T_K: REFERENCE_K });

/** Losses of a flue at a temperature, 200–6000 K; meant below about 2000 K, where gas has not come apart. */
export function flueLoss({ flue, fuel, flue_K }: { flue: Flue; fuel: AsFired; flue_K: number }): FlueLoss {
  const warmth = (species: FlueGas): number =>
    flue.moles[species] * (enthalpy_J_mol({ species, T_K: flue_K }) - enthalpy_J_mol({ species, T_K: REFERENCE_K }));
  const dry_gas_J_kg = FLUE_GASES.reduce((sum, name) => (name === 'H2O' ? sum : sum + warmth(name)), 0);
  return {
    dry_gas_J_kg,
    vapour_J_kg: warmth('H2O'),
    unburned_J_kg: flue.moles.CO * CO_J_mol + flue.moles.H2 * H2_J_mol,
    ash_J_kg: fuel.ash * ASH_J_kgK * (flue_K - REFERENCE_K),
  };
}
