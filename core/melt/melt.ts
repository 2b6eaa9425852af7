import { type Doubt, sampleDoubt } from '../doubt/sample.ts';
import type { Pour } from '../materials/pour.ts';
import type { Spread } from '../materials/spread.ts';
import type { Crucible } from '../shape/crucible.ts';
import { sizingRules } from '../shape/rules.ts';
import type { WithSteps } from '../step.ts';
import { absorbed_W, absorbTime_s, fireAboveFace_dK, fireFilm_W_m2K } from './absorb.ts';
import { type Charge, planCharge } from './charge.ts';
import { crucibleHeat_J, crucibleMass_kg, outsideArea_m2 } from './crucible-heat.ts';
import type { PotMaterial } from './data/pots.ts';
import type { ScrapForm } from './data/scrap-forms.ts';
import { type HeatPoint, heatCurve, shiftedCurve } from './melt-heat.ts';
import { type Cover, type MeltLoss, meltLoss } from './melt-loss.ts';
import { meltSteps } from './melt-steps.ts';

export interface MeltQuestion {
  readonly alloy: Pour;
  readonly mass_kg: Spread;
  readonly from_K: number;
  readonly pour_K: Spread;
  readonly crucible: Pick<Crucible, 'shape' | 'brimful_m3'>;
  readonly pot: PotMaterial;
  readonly form: ScrapForm;
  readonly cover: Cover;
}

const outputs = ['heat_J', 'pot_J', 'lost_kg', 'left_kg', 'holds_kg', 'time_s', 'absorbed_W'] as const;
export type MeltOutput = (typeof outputs)[number];

export type MeltInput =
  | 'handbook heat'
  | 'pouring temperature'
  | 'mass'
  | 'loss'
  | 'liquid density'
  | 'working fill'
  | 'density of the pot'
  | 'heat capacity of the pot'
  | 'film'
  | 'fire';

export interface MeltEstimate extends WithSteps, Doubt<MeltInput, MeltOutput> {
  readonly question: MeltQuestion;
  readonly typical: Readonly<Record<MeltOutput, number>>;
  readonly curve: readonly HeatPoint[];
  readonly charge: Charge;
  /** Times scrap is put in, dense to loose. */
  readonly charges: { readonly low: number; readonly high: number };
  readonly loss: MeltLoss;
  readonly pot_kg: number;
  /** Fire round the pot. */
  readonly fire_K: Spread;
  readonly area_m2: number;
}

/** The pour a user asks for may lie above what the catalogue's face is for: the fire follows. */
function fireFor({ alloy, pour_K }: MeltQuestion): Spread {
  const face_K = Math.max(alloy.hot_face_K.typical, pour_K.typical + 100);
  const { low, typical, high } = fireAboveFace_dK;
  return { low: face_K + low, typical: face_K + typical, high: face_K + high };
}

interface MeltModel {
  readonly inputs: Readonly<Record<MeltInput, Spread>>;
  readonly model: (values: Readonly<Record<MeltInput, number>>) => Record<MeltOutput, number>;
  readonly curve: readonly HeatPoint[];
  readonly loss: MeltLoss;
  readonly fire_K: Spread;
  readonly area_m2: number;
}

/** A melt for any draw of its doubts. */
export function meltModel(question: MeltQuestion): MeltModel {
  const { alloy, mass_kg, from_K, pour_K, crucible, pot, form, cover } = question;
  const loss = meltLoss({ alloy, form, cover });
  const fire_K = fireFor(question);
  const area_m2 = outsideArea_m2(crucible.shape);
  const fill = sizingRules.crucible_fill;
  const inputs: Record<MeltInput, Spread> = {
    'handbook heat': alloy.melting_correction_J_kg,
    'pouring temperature': pour_K,
    mass: mass_kg,
    loss: loss.lost,
    'liquid density': alloy.liquid_density_kg_m3,
    'working fill': fill,
    'density of the pot': pot.density_kg_m3,
    'heat capacity of the pot': pot.heat_capacity_J_kgK,
    film: fireFilm_W_m2K,
    fire: fire_K,
  };
  const curve = heatCurve({ alloy, from_K, pour_K: pour_K.typical });
  const holdsAt = (density_kg_m3: number, filled: number) =>
    ((crucible.shape.working_m3 * filled) / fill.typical) * density_kg_m3;
  const correction_J_kg = alloy.melting_correction_J_kg.typical;
  const scratch = [...curve];
  const model = (values: Readonly<Record<MeltInput, number>>): Record<MeltOutput, number> => {
    const poured_K = values['pouring temperature'];
    const shift_J_kg = values['handbook heat'] - correction_J_kg;
    const way = shiftedCurve(curve, { pour_K: poured_K, shift_J_kg }, scratch);
    const holds_kg = holdsAt(values['liquid density'], values['working fill']);
    const pot_kg = crucibleMass_kg({ shape: crucible.shape, density_kg_m3: values['density of the pot'] });
    const heat_capacity_J_kgK = values['heat capacity of the pot'];
    const fire = { area_m2, film_W_m2K: values.film, fire_K: values.fire };
    return {
      heat_J: values.mass * way.at(-1)!.heat_J_kg,
      pot_J: crucibleHeat_J({ mass_kg: pot_kg, heat_capacity_J_kgK, from_K, pour_K: poured_K }),
      lost_kg: values.mass * values.loss,
      left_kg: values.mass * (1 - values.loss),
      holds_kg,
      time_s: absorbTime_s({
        curve: way,
        mass_kg: Math.min(values.mass, holds_kg),
        pot_J_K: pot_kg * heat_capacity_J_kgK,
        ...fire,
      }),
      absorbed_W: absorbed_W(fire, alloy.liquidus_K.typical),
    };
  };
  return { inputs, model, curve, loss, fire_K, area_m2 };
}

/**
 * Everything about one melt that needs no furnace: heat of metal and pot, fill, loss, least time. Ranges are the
 * central 95 % over 1,000 samples of the inputs' spreads. No range where some sample's fire is colder than its pour.
 */
export function estimateMelt(question: MeltQuestion): MeltEstimate {
  const { alloy, mass_kg, crucible, pot, form } = question;
  const { inputs, model, curve, loss, fire_K, area_m2 } = meltModel(question);
  const chargeAt = (bulk: number) =>
    planCharge({
      mass_kg: mass_kg.typical,
      working_m3: crucible.shape.working_m3,
      brimful_m3: crucible.brimful_m3,
      liquid_kg_m3: alloy.liquid_density_kg_m3.typical,
      solid_kg_m3: alloy.solid_density_kg_m3.typical,
      bulk,
    });
  const middle = Object.fromEntries(Object.entries(inputs).map(([name, { typical }]) => [name, typical])) as Record<
    MeltInput,
    number
  >;
  const estimate = {
    question,
    typical: Object.freeze(model(middle)),
    ...sampleDoubt({ inputs, model }),
    curve,
    charge: Object.freeze(chargeAt(form.bulk.typical)),
    charges: Object.freeze({ low: chargeAt(form.bulk.high).charges, high: chargeAt(form.bulk.low).charges }),
    loss,
    pot_kg: crucibleMass_kg({ shape: crucible.shape, density_kg_m3: pot.density_kg_m3.typical }),
    fire_K,
    area_m2,
  };
  return Object.freeze({ ...estimate, steps: () => meltSteps(estimate) });
}
