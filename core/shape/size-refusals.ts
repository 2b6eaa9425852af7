import { AskError } from '../ask-error.ts';
import type { UnitSystem } from '../quantity/figure.ts';
import { formatBoth } from '../quantity/format.ts';
import type { Crucible } from './crucible.ts';
import type { VesselShape } from './furnace.ts';
import { flare, vesselRadius_m } from './profile.ts';
import { leastCrucible_m, sizingRules } from './rules.ts';
import type { Measures, SizeQuestion } from './size.ts';

/** As it would be typed, in whole millimetres or quarters of an inch, never more than it is. */
const typed = (length_m: number, units: UnitSystem): string =>
  units === 'US' ? `${Math.floor((length_m / inch_m) * 4 + 1e-6) / 4} in` : `${Math.floor(length_m * 1000 + 1e-6)} mm`;
const inch_m = 0.0254;
const bothIn =
  (units: UnitSystem) =>
  (length_m: number): string =>
    formatBoth(length_m, 'm', units);

/** @throws AskError where a vessel is more a dish than a can. */
export function refuseDish(vessel: VesselShape, units: UnitSystem): void {
  const both = bothIn(units);
  if (Math.abs(flare(vessel)) < 1) return;
  throw new AskError({
    code: 'impossible',
    what: `from ${both(2 * vessel.bottom_radius_m)} to ${both(2 * vessel.top_radius_m)} over ${both(vessel.height_m)} it widens by more than its height on each side: a dish, and no cone that a wall could follow`,
    expected: 'bottom / top x height, with a half-angle below 45°',
    example: '15 in / 17 in x 22 in',
    option: 'vessel',
  });
}

/** @throws AskError where the crucible, or the crucible and the walls, are wider than the vessel. */
export function refuseWideCrucible(
  vessel: VesselShape,
  { shape }: Crucible,
  { wall_m, underfloor_m }: Measures,
  units: UnitSystem,
): void {
  const both = bothIn(units);
  const crucible_m = 2 * shape.outside_radius_m;
  const narrowest_m = 2 * Math.min(vesselRadius_m(vessel, underfloor_m), vessel.top_radius_m);
  const smaller = {
    expected: 'a crucible less than half as wide as the vessel, or a wider vessel',
    example: `${typed(narrowest_m * 0.35, units)} x ${typed(narrowest_m * 0.45, units)}`,
    option: 'crucible',
  };
  if (crucible_m >= narrowest_m) {
    throw new AskError({
      code: 'impossible',
      what: `the crucible is ${both(crucible_m)} across, the vessel only ${both(narrowest_m)} inside at its narrowest`,
      ...smaller,
    });
  }
  const left_m = narrowest_m - 2 * wall_m;
  if (left_m > crucible_m) return;
  const { low, high, typical } = sizingRules.wall_m;
  // A thinner wall is offered where one would do.
  const thinner = [typical, low].find((one) => one < wall_m && narrowest_m - 2 * one > crucible_m);
  throw new AskError({
    code: 'impossible',
    what: `walls of ${both(wall_m)} leave a bore of ${both(Math.max(0, left_m))} in a vessel of ${both(narrowest_m)}; the crucible is ${both(crucible_m)}`,
    ...(thinner === undefined
      ? smaller
      : {
          expected: `a wall of ${both(low)} to ${both(high)} that leaves room for the crucible`,
          example: typed(thinner, units),
          option: 'wall',
        }),
  });
}

/** @throws AskError for a lid that was asked for thicker than its room, where a usual one would go in. */
export function refuseLid(lid_m: number, room_m: number, units: UnitSystem): void {
  const both = bothIn(units);
  if (lid_m <= room_m || room_m < sizingRules.lid_m.low) return;
  throw new AskError({
    code: 'impossible',
    what: `a lid of ${both(lid_m)} hits the vessel's own lid: ${both(room_m)} is left above the lining`,
    expected: `${both(sizingRules.lid_m.low)} to ${both(room_m)}`,
    example: typed(room_m, units),
    option: 'lid',
  });
}

/** Why nothing is left of a vessel. */
export function noBore(question: SizeQuestion, vessel: VesselShape, measures: Measures): AskError {
  const units = question.units ?? 'metric';
  const both = bothIn(units);
  const inside_m = 2 * Math.min(vesselRadius_m(vessel, measures.underfloor_m), vessel.top_radius_m);
  const walls_m = measures.wall_m + measures.behind_m;
  const left_m = inside_m - 2 * walls_m;
  const stack_m =
    measures.underfloor_m + measures.floor_m + measures.lid_m + measures.rim_m + measures.plinth_m + measures.bed_m;
  const narrow = left_m - 2 * measures.gap_m < leastCrucible_m;
  return new AskError({
    code: 'impossible',
    what: narrow
      ? `${both(measures.wall_m)} of wall and ${both(measures.behind_m)} of insulation leave a bore of ${both(Math.max(0, left_m))} in a vessel of ${both(inside_m)}, with a gap of ${both(measures.gap_m)} to keep free round the crucible: no crucible is left`
      : `floor, lid and spaces take ${both(stack_m)} of a vessel ${both(vessel.height_m)} high: no crucible is left`,
    expected: narrow ? 'a wider vessel, or thinner walls' : 'a taller vessel',
    example: narrow && question.wall_m !== undefined ? typed(sizingRules.wall_m.typical, units) : '20 gal can',
    option: narrow && question.wall_m !== undefined ? 'wall' : 'vessel',
  });
}
