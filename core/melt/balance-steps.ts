import { lowerHeatStep } from '../fire/fuel/fuel-as-fired.ts';
import type { Step } from '../step.ts';
import { chargeAfterClimb_K, lag_s } from './balance-charge.ts';
import { type Furnace, meanLeft } from './balance-climb.ts';
import type { Melt, Melts } from './balance-melt.ts';
import { type BalanceModel, crucibleAgain } from './balance-question.ts';

/** The working of the typical melts. */
export function balanceSteps(
  model: BalanceModel,
  furnace: Furnace,
  { first, again }: Melts,
  ends: number,
): readonly Step[] {
  const { fire, charge, hot_K, drop_dK, air_K } = furnace;
  const flue_K = hot_K - drop_dK;
  const climb = { from_K: air_K, to_K: hot_K, climb_s: first.climb_s };
  return [
    lowerHeatStep(fire.fuel),
    {
      formula: 'share left in the furnace = 1 + warmth of the air − what leaves by the flue, as gas balance',
      inputs: { flue_K, air_K, unburned: fire.unburned },
      gives: {
        left_at_heat: fire.left(flue_K),
        left_on_the_way_up: meanLeft(furnace, air_K),
        air_per_fuel_count: fire.air_kg_kg,
      },
      source: 'nasa-tm-4513',
    },
    {
      formula: 'metal and crucible lag behind the hot face by heat ÷ (rise × film × outside of the crucible)',
      inputs: {
        metal_J: charge.metal_J,
        crucible_J: charge.crucible_J,
        film_W_m2K: charge.film_W_m2K,
        crucible_m2: charge.crucible_m2,
        start_K: charge.start_K,
        pour_K: charge.pour_K,
      },
      gives: { lag_s: lag_s(charge), charge_after_climb_K: chargeAfterClimb_K(charge, climb) },
      source: 'from-memory',
    },
    {
      formula:
        'heating up (face rising for two thirds of it): power × share left × time = side wall × (1 + lid and floor) + openings + what the charge took',
      inputs: { power_W: first.power_W, hot_face_K: hot_K, lid_and_floor: ends },
      gives: { climb_s: first.climb_s, hold_s: first.hold_s },
      source: 'derived',
    },
    {
      formula: 'side wall, by the transient wall: stored = into hot face − through shell',
      inputs: { into_hot_face_J: first.stored_J + first.shell_J, through_shell_J: first.shell_J },
      gives: { stored_J: first.stored_J },
      source: 'derived',
    },
    flows('first melt', first),
    {
      formula: 'fuel = fuel heat ÷ lower heat; efficiency = metal ÷ fuel heat',
      inputs: { fuel_heat_J: first.fuel_J, metal_J: first.metal_J, lower_heat_J_kg: fire.fuel.lower_heat_J_kg },
      gives: { fuel_kg: first.fuel_kg, efficiency: first.efficiency },
      source: 'derived',
    },
    flows(
      `next melt, after ${Math.round(model.question.pause_s / 60)} min, crucible keeping ${Math.round((1 - crucibleAgain) * 100)} % of its heat`,
      again,
    ),
  ];
}

const flows = (what: string, melt: Melt): Step => ({
  formula: `heat of the ${what}, the flue by the share that does not stay: fuel = metal + crucible + stored + shell + lid and floor + openings + flue + unburned`,
  inputs: {
    metal_J: melt.metal_J,
    crucible_J: melt.crucible_J,
    stored_J: melt.stored_J,
    shell_J: melt.shell_J,
    lid_and_floor_J: melt.ends_J,
    openings_J: melt.openings_J,
    flue_J: melt.flue_J,
    unburned_J: melt.unburned_J,
  },
  gives: { fuel_J: melt.fuel_J, time_s: melt.time_s },
  closes: true,
  source: 'derived',
});
