import { brimfulOf_m3 } from '../crucible.ts';
import type { Furnace } from '../furnace.ts';
import { floorTop_m, liningRadius_m, liningTop_m, vesselRadius_m } from '../profile.ts';
import { spillDepth_m } from '../tuyere.ts';

/** Heights above the vessel's inside bottom, and the lining's outside radius at both ends. m */
export interface Levels {
  readonly floor: number;
  /** What the crucible stands on. */
  readonly foot: number;
  readonly rim: number;
  readonly lidTop: number;
  readonly fill: number;
  readonly spill: number;
  /** Where a vessel that has a lid of its own is closed by it; none where the furnace's lid stands out. */
  readonly ownLid: number | undefined;
  readonly bottomOut: number;
  readonly topOut: number;
}

/** Less room than this under its own lid is no line of its own on the page. */
const SHOWN_m = 0.01;

export function levelsOf(furnace: Furnace): Levels {
  const { vessel, plinth, bed_m, bore, crucible, lid } = furnace;
  const floor = floorTop_m(furnace);
  const rim = liningTop_m(furnace);
  const spill_m = spillDepth_m({
    spill_m3: brimfulOf_m3(crucible),
    bore_radius_m: bore.bottom_radius_m,
    plinth_radius_m: plinth.height_m > 0 ? plinth.radius_m : 0,
    plinth_height_m: plinth.height_m,
  });
  return {
    floor,
    foot: floor + Math.max(plinth.height_m, bed_m),
    rim,
    lidTop: rim + lid.thickness_m,
    ownLid: vessel.given && vessel.height_m > rim + lid.thickness_m + SHOWN_m ? vessel.height_m : undefined,
    fill: fillOf(furnace),
    spill: floor + spill_m,
    bottomOut: liningRadius_m(furnace, furnace.underfloor_m),
    topOut: liningRadius_m(furnace, rim),
  };
}

/** Depth of the metal in a crucible drawn straight. */
function fillOf({ crucible }: Furnace): number {
  const inside = crucible.outside_radius_m - crucible.wall_m;
  return Math.min(crucible.height_m - crucible.wall_m, crucible.working_m3 / (Math.PI * inside ** 2));
}

/** The tuyere as it is seen from the side: `start` on the bore, `end` clear of the vessel. */
export interface Seen {
  readonly start: number;
  readonly end: number;
  readonly leaves: number;
  readonly bore: number;
  readonly outer: number;
  readonly tilt: number;
  /** Height of its axis over x. */
  readonly axis: (x: number) => number;
}

export function tubeSeen({ bore, vessel, tuyere }: Furnace, { floor }: Levels): Seen {
  const { offset_m, tilt_rad, invert_m, bore_radius_m, outer_radius_m, through_all_m } = tuyere;
  const up = floor + invert_m + bore_radius_m / Math.cos(tilt_rad);
  const widening = (bore.top_radius_m - bore.bottom_radius_m) / bore.height_m;
  const start = Math.sqrt(Math.max(0, (bore.bottom_radius_m + widening * (up - floor)) ** 2 - offset_m ** 2));
  return {
    start,
    end: Math.max(vesselRadius_m(vessel, up) + vessel.wall_m, start + through_all_m) + 0.45 * vessel.bottom_radius_m,
    leaves: vesselRadius_m(vessel, up) + vessel.wall_m,
    bore: bore_radius_m / Math.cos(tilt_rad),
    outer: outer_radius_m / Math.cos(tilt_rad),
    tilt: tilt_rad,
    axis: (x) => up + (x - start) * Math.tan(tilt_rad),
  };
}
