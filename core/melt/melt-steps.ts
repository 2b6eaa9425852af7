import { sizingRules } from '../shape/rules.ts';
import type { Step } from '../step.ts';
import { fireFilm_W_m2K } from './absorb.ts';
import type { MeltEstimate } from './melt.ts';
import { meltHeatSteps } from './melt-heat.ts';

/** The working of a melt, in the order of the card. */
export function meltSteps(estimate: Omit<MeltEstimate, 'steps'>): readonly Step[] {
  const { question, typical, charge, loss, pot_kg, fire_K, area_m2 } = estimate;
  const { alloy, mass_kg, from_K, pour_K, crucible, pot, form } = question;
  return [
    ...meltHeatSteps({ alloy, from_K, pour_K: pour_K.typical }),
    {
      formula: 'metal heat = mass × melt heat',
      inputs: { mass_kg: mass_kg.typical, melt_heat_J_kg: typical.heat_J / mass_kg.typical },
      gives: { metal_heat_J: typical.heat_J },
      source: 'derived',
    },
    {
      formula: 'pot = (roundness × π × outside radius² × height − room) × density',
      inputs: {
        roundness: sizingRules.crucible_roundness.typical,
        outside_radius_m: crucible.shape.outside_radius_m,
        height_m: crucible.shape.height_m,
        room_m3: crucible.brimful_m3,
        density_kg_m3: pot.density_kg_m3.typical,
      },
      gives: { pot_kg },
      source: pot.density_kg_m3.source,
    },
    {
      formula: 'pot heat = pot × heat capacity × (pour − from)',
      inputs: { pot_kg, heat_capacity_J_kgK: pot.heat_capacity_J_kgK.typical, pour_K: pour_K.typical, from_K },
      gives: { pot_heat_J: typical.pot_J },
      source: pot.heat_capacity_J_kgK.source,
    },
    {
      formula: 'the working fill: holds = working × liquid density',
      inputs: {
        working_m3: crucible.shape.working_m3,
        liquid_density_kg_m3: alloy.liquid_density_kg_m3.typical,
      },
      gives: { holds_kg: charge.holds_kg, pours_count: charge.pours },
      source: alloy.liquid_density_kg_m3.source,
    },
    {
      formula:
        'cold scrap to the rim, then topped up above the liquid: first charge = brimful × solid density × bulk share',
      inputs: {
        brimful_m3: crucible.brimful_m3,
        solid_density_kg_m3: alloy.solid_density_kg_m3.typical,
        bulk_share: form.bulk.typical,
      },
      gives: { first_charge_kg: charge.first_kg, charges_count: charge.charges },
      source: form.bulk.source,
    },
    {
      formula: 'lost share = Σ share of the element × its loss in this form of scrap',
      inputs: Object.fromEntries(loss.elements.map(({ element, lost }) => [`${element}_lost`, lost.typical])),
      gives: { lost_share: loss.lost.typical, lost_kg: typical.lost_kg },
      source: form.aluminium_loss.source,
    },
    {
      formula: 'least time: m dh/dt = film × outside × (fire − metal), pot and metal at one temperature',
      inputs: { film_W_m2K: fireFilm_W_m2K.typical, outside_m2: area_m2, fire_K: fire_K.typical },
      gives: { absorbs_while_melting_W: typical.absorbed_W, least_time_s: typical.time_s },
      source: 'from-memory',
    },
  ];
}
