import type { Furnace } from './furnace.ts';
import { insulationEnds_m, liningTop_m, vesselRadius_m } from './profile.ts';
import { sizingRules } from './rules.ts';

/** One thing that has to be there: how much there is, how much there has to be. m. */
export interface Check {
  readonly of: 'width' | 'height' | 'tongs';
  readonly says: string;
  readonly room_m: number;
  readonly least_m: number;
  readonly holds: boolean;
  /** With the vessel at the small end of its tolerance. */
  readonly sure: boolean;
}

export interface Fit {
  readonly fits: boolean;
  /** Also with a vessel at the small end of its tolerance. */
  readonly sure: boolean;
  readonly checks: readonly Check[];
  readonly insulation: { readonly bottom_m: number; readonly top_m: number };
  /** Between the furnace lid's top and the vessel's own lid; below 0 it stands out. */
  readonly headroom_m: number;
  /** Between crucible and bore where it is narrowest. */
  readonly tongs_m: number;
}

const slack = 1e-9;

/** Does it go in, at the vessel's narrowest and under its own lid, and do the tongs go round the crucible? */
export function checkFit(
  furnace: Furnace,
  { behind_m = sizingRules.behind_m.low }: { behind_m?: number | undefined } = {},
): Fit {
  const { vessel, bore, crucible } = furnace;
  const insulation = insulationEnds_m(furnace);
  const narrowest_m = Math.min(insulation.bottom_m, insulation.top_m);
  const top_m = liningTop_m(furnace);
  const headroom_m = vessel.height_m - top_m - furnace.lid.thickness_m;
  const tongs_m = Math.min(bore.bottom_radius_m, bore.top_radius_m) - crucible.outside_radius_m;
  const smaller = (length_m: number) => (vessel.tolerance ?? 0) * length_m;
  const checks: readonly Check[] = [
    check('width', 'insulation at the narrowest', narrowest_m, behind_m, smaller(vesselRadius_m(vessel, top_m))),
    check('height', "room under the vessel's own lid", headroom_m, 0, smaller(vessel.height_m)),
    check('tongs', 'room for the tongs each side', tongs_m, sizingRules.tongs_m.low, 0),
  ];
  return Object.freeze({
    fits: checks.every(({ holds }) => holds),
    sure: checks.every(({ sure }) => sure),
    checks: Object.freeze(checks),
    insulation,
    headroom_m,
    tongs_m,
  });
}

const check = (of: Check['of'], says: string, room_m: number, least_m: number, less_m: number): Check =>
  Object.freeze({
    of,
    says,
    room_m,
    least_m,
    holds: room_m >= least_m - slack,
    sure: room_m - less_m >= least_m - slack,
  });
