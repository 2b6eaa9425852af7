import { AskError } from '../ask-error.ts';
import { formatBoth } from '../quantity/format.ts';
import type { Crucible } from './crucible.ts';
import type { VesselShape } from './furnace.ts';
import { flare, vesselRadius_m } from './profile.ts';
import { leastCrucible_m, sizingRules } from './rules.ts';
import type { Measures, SizeQuestion } from './size.ts';

const mm = (length_m: number) => `${Math.round(length_m * 1000)} mm`;
const both = (length_m: number) => formatBoth(length_m, 'm', 'metric');

/** @throws AskError where a vessel is more a dish than a can. */
export function refuseDish(vessel: VesselShape): void {
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
export function refuseWideCrucible(vessel: VesselShape, { shape }: Crucible, { wall_m, underfloor_m }: Measures): void {
  const crucible_m = 2 * shape.outside_radius_m;
  const narrowest_m = 2 * Math.min(vesselRadius_m(vessel, underfloor_m), vessel.top_radius_m);
  if (crucible_m >= narrowest_m) {
    throw new AskError({
      code: 'impossible',
      what: `the crucible is ${both(crucible_m)} across, the vessel only ${both(narrowest_m)} inside at its narrowest`,
      expected: 'a crucible less than half as wide as the vessel, or a wider vessel',
      example: `${mm(narrowest_m * 0.35)} x ${mm(narrowest_m * 0.45)}`,
      option: 'crucible',
    });
  }
  const left_m = narrowest_m - 2 * wall_m;
  if (left_m > crucible_m) return;
  throw new AskError({
    code: 'impossible',
    what: `walls of ${both(wall_m)} leave a bore of ${both(Math.max(0, left_m))} in a vessel of ${both(narrowest_m)}; the crucible is ${both(crucible_m)}`,
    expected: `a wall of ${mm(sizingRules.wall_m.low)} to ${mm(sizingRules.wall_m.high)} that leaves room for the crucible`,
    example: mm(sizingRules.wall_m.low),
    option: 'wall',
  });
}

/** @throws AskError for a lid that was asked for thicker than its room, where a usual one would go in. */
export function refuseLid(lid_m: number, room_m: number): void {
  if (lid_m <= room_m || room_m < sizingRules.lid_m.low) return;
  throw new AskError({
    code: 'impossible',
    what: `a lid of ${both(lid_m)} hits the vessel's own lid: ${both(room_m)} is left above the lining`,
    expected: `${mm(sizingRules.lid_m.low)} to ${mm(room_m)}`,
    example: `${Math.floor(room_m * 1000)} mm`,
    option: 'lid',
  });
}

/** Why nothing is left of a vessel. */
export function noBore(question: SizeQuestion, vessel: VesselShape, measures: Measures): AskError {
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
    example: narrow && question.wall_m !== undefined ? mm(sizingRules.wall_m.low) : 'size can 20 gal',
    option: narrow && question.wall_m !== undefined ? 'wall' : 'vessel',
  });
}
