import type { Step } from '../step.ts';
import type { Furnace } from './furnace.ts';
import { insulationEnds_m } from './profile.ts';
import type { Fuel } from './rules.ts';
import { firingDensity_W_m3 } from './vent.ts';

/** The firing rate, where none was given. */
export const rateStep = (fuel: Fuel, bore_m3: number, firing_rate_W: number): Step => ({
  formula: 'judged heat for the room of the bore: firing rate = bore × heat per m3',
  inputs: { bore_m3, heat_per_m3_W: firingDensity_W_m3[fuel].typical },
  gives: { firing_rate_W },
  source: 'common-practice',
});

/** How the room and what stands round it follow from the crucible. */
export function layOutSteps(furnace: Furnace, gap_m: number): readonly Step[] {
  const { vessel, crucible, bore, wall_m, plinth, bed_m, rim_m } = furnace;
  const { bottom_m, top_m } = insulationEnds_m(furnace);
  const under_m = Math.max(plinth.height_m, bed_m);
  return [
    {
      formula: 'bore = crucible outside diameter + 2 × gap',
      inputs: { crucible_outside_diameter_m: 2 * crucible.outside_radius_m, gap_m },
      gives: { bore_m: 2 * bore.bottom_radius_m },
      source: 'derived',
    },
    {
      formula: 'room inside: height = plinth or bed + crucible height + rim space',
      inputs: { plinth_or_bed_m: under_m, crucible_height_m: crucible.height_m, rim_space_m: rim_m },
      gives: { height_m: bore.height_m },
      source: 'derived',
    },
    {
      formula: 'insulation = vessel inside radius at that height − (bore radius + wall)',
      inputs: {
        vessel_radius_at_bottom_m: vessel.bottom_radius_m,
        vessel_radius_at_top_m: vessel.top_radius_m,
        bore_radius_m: bore.bottom_radius_m,
        wall_m,
      },
      gives: { at_the_foot_m: bottom_m, at_the_rim_m: top_m },
      source: 'derived',
    },
  ];
}
