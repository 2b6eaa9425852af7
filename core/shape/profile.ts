import type { Datum } from '../materials/material.ts';
import { brimful_m3, type Vessel } from '../materials/vessel.ts';
import type { Furnace, VesselShape } from './furnace.ts';

/** How much a vessel's radius grows per height. */
export const flare = ({ bottom_radius_m, top_radius_m, height_m }: VesselShape): number =>
  (top_radius_m - bottom_radius_m) / height_m;

/** Inside radius of a vessel at a height above its bottom, held beyond its ends. m. */
export const vesselRadius_m = (vessel: VesselShape, z_m: number): number =>
  vessel.bottom_radius_m + flare(vessel) * Math.min(Math.max(z_m, 0), vessel.height_m);

/** Height of the hot floor's top, m. */
export const floorTop_m = ({ underfloor_m, floor_m }: Pick<Furnace, 'underfloor_m' | 'floor_m'>): number =>
  underfloor_m + floor_m;

/** Height of the lining's rim, m. */
export const liningTop_m = (furnace: Pick<Furnace, 'underfloor_m' | 'floor_m' | 'bore'>): number =>
  floorTop_m(furnace) + furnace.bore.height_m;

/** Outside radius of the lining at a height: the bore's line, the wall's thickness further out. m. */
export function liningRadius_m(
  furnace: Pick<Furnace, 'underfloor_m' | 'floor_m' | 'bore' | 'wall_m'>,
  z_m: number,
): number {
  const { bottom_radius_m, top_radius_m, height_m } = furnace.bore;
  const slope = (top_radius_m - bottom_radius_m) / height_m;
  return bottom_radius_m + furnace.wall_m + slope * (z_m - floorTop_m(furnace));
}

/** Room between lining and vessel at a height; below 0 the lining does not go in. m. */
export const insulation_m = (furnace: Furnace, z_m: number): number =>
  vesselRadius_m(furnace.vessel, z_m) - liningRadius_m(furnace, z_m);

/** Both are straight lines, so the narrowest is at an end of the lining: its foot or its rim (or the vessel's). m. */
export function insulationEnds_m(furnace: Furnace): { readonly bottom_m: number; readonly top_m: number } {
  return {
    bottom_m: insulation_m(furnace, furnace.underfloor_m),
    top_m: insulation_m(furnace, Math.min(liningTop_m(furnace), furnace.vessel.height_m)),
  };
}

const toleranceOf = ({ low, typical }: Datum): number => 1 - low / typical;

/** What of a catalogue vessel can hold a furnace: a dished top is cut off, a dished bottom is filled under the floor. */
export function shapeOf(vessel: Vessel): VesselShape {
  const bottom_m = vessel.inside_bottom_m.typical;
  const top_m = vessel.inside_top_m.typical;
  const top_dish_m = vessel.ends === 'dished both' ? top_m / 4 : 0;
  return Object.freeze({
    name: vessel.name,
    bottom_radius_m: bottom_m / 2,
    top_radius_m: top_m / 2,
    height_m: vessel.inside_height_m.typical - top_dish_m,
    wall_m: vessel.wall_m.typical,
    given: true,
    tolerance: Math.max(toleranceOf(vessel.inside_bottom_m), toleranceOf(vessel.inside_top_m)),
  });
}

/** Catalogue vessels that a first-time builder may be told to get: open, of bare or painted steel; smallest first. */
export const fitToPropose = (vessels: readonly Vessel[]): readonly Vessel[] =>
  vessels.filter(({ hazards }) => hazards.length === 0).toSorted((a, b) => brimful_m3(a) - brimful_m3(b));
