import { AskError } from '../../ask-error.ts';
import type { Step, WithSteps } from '../../step.ts';
import { type AsFired, sensibleHeat_J_kg } from '../fuel/fuel-as-fired.ts';
import { type Flue, type FlueLoss, flueGas, flueLoss } from './flue.ts';
import { type AirRatio, airNeed, type Oxidiser, oxidiser, oxidiserEnthalpy_J_mol } from './mixture.ts';
import { REFERENCE_K } from './nasa.ts';

export interface AvailableHeatInput {
  readonly fuel: AsFired;
  readonly ratio?: AirRatio;
  readonly blast?: Oxidiser;
  readonly air_K?: number;
  readonly fuel_K?: number;
  /** Of the gas as it leaves the furnace: near the hot face, never the metal. */
  readonly flue_K: number;
  readonly freeze_K?: number;
  /** Where it is known from `flueGas`: it is the same at every temperature. */
  readonly flue?: Flue;
}

export interface AvailableHeat extends WithSteps {
  /** Left in the furnace for each kilogram of fuel. Below zero: such a fire can't reach that flue temperature. */
  readonly available_J_kg: number;
  /** The same, of the lower and of the higher heating value. Always say which. */
  readonly share_of_lower: number;
  readonly share_of_higher: number;
  /** Warmth that air and fuel brought above 25 °C. */
  readonly brought_J_kg: number;
  readonly loss: FlueLoss;
  readonly flue: Flue;
}

/** Above this the frozen flue is no flue any more: dissociation holds several per cent of the heat. */
const HOTTEST_FLUE_K = 2100;

/**
 * Heat that stays in the furnace = lower heat + warmth of air and fuel − what leaves with the flue, unburned gas counted.
 * Flue 250–2100 K. Source: enthalpy balance with NASA TM-4513 data.
 * @throws AskError `out-of-range`
 */
export function availableHeat(input: AvailableHeatInput): AvailableHeat {
  const { fuel, ratio = {}, blast = oxidiser(), air_K = REFERENCE_K, fuel_K = REFERENCE_K, flue_K, freeze_K } = input;
  if (!(flue_K >= 250 && flue_K <= HOTTEST_FLUE_K))
    throw new AskError({
      code: 'out-of-range',
      what: `a flue at ${Math.round(flue_K - 273.15)} °C is outside what burned gas without dissociation can tell`,
      expected: `a gas temperature at the exit up to ${Math.round(HOTTEST_FLUE_K - 273.15)} °C`,
      example: '1100 °C',
      option: 'flue',
    });
  const { flue = flueGas({ fuel, ratio, blast, ...(freeze_K === undefined ? {} : { freeze_K }) }) } = input;
  const loss = flueLoss({ flue, fuel, flue_K });
  const perMole = oxidiserEnthalpy_J_mol(blast, air_K) - oxidiserEnthalpy_J_mol(blast, REFERENCE_K);
  const brought_J_kg = airNeed(fuel, ratio, blast).mol_kg * perMole + sensibleHeat_J_kg(fuel, fuel_K);
  const lost = loss.dry_gas_J_kg + loss.vapour_J_kg + loss.unburned_J_kg + loss.ash_J_kg;
  const available_J_kg = fuel.lower_heat_J_kg + brought_J_kg - lost;
  const answer = {
    available_J_kg,
    share_of_lower: available_J_kg / fuel.lower_heat_J_kg,
    share_of_higher: available_J_kg / fuel.higher_heat_J_kg,
    brought_J_kg,
    loss,
    flue,
  };
  return Object.freeze({ ...answer, steps: () => availableSteps(answer, fuel, flue_K) });
}

/**
 * Share of the fuel that warmer air saves at the same flue temperature and the same heat left in the furnace:
 * 1 − available heat with cold air ÷ with warm air.
 */
export function preheatSaving({ warm_K, ...cold }: AvailableHeatInput & { readonly warm_K: number }): number {
  const { share_of_lower } = availableHeat(cold);
  if (!(share_of_lower > 0))
    throw new AskError({
      code: 'impossible',
      what: `with cold air this fire leaves ${Math.round(share_of_lower * 100)} % of its heat at that flue temperature`,
      expected: 'a flue cooler than the flame',
      example: '1100 °C',
      option: 'flue',
    });
  return 1 - share_of_lower / availableHeat({ ...cold, air_K: warm_K }).share_of_lower;
}

function availableSteps(
  { available_J_kg, share_of_lower, share_of_higher, brought_J_kg, loss, flue }: Omit<AvailableHeat, 'steps'>,
  fuel: AsFired,
  flue_K: number,
): readonly Step[] {
  return [
    {
      formula:
        'what leaves with the flue: warmth of dry gas, of vapour and of ash from 25 °C, heat of unburned CO and H2',
      inputs: { flue_K, fuel_air_ratio: flue.equivalence_ratio },
      gives: { ...loss },
      source: 'nasa-tm-4513',
    },
    {
      formula:
        'available = lower heat + brought − dry gas − vapour − unburned − ash; share of lower heat = available ÷ lower heat',
      inputs: { lower_heat_J_kg: fuel.lower_heat_J_kg, brought_J_kg, ...loss },
      gives: { available_J_kg, share_of_lower_heat: share_of_lower, share_of_higher_heat: share_of_higher },
      source: 'derived',
    },
  ];
}
