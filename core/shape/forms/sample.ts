import type { Furnace } from '../furnace.ts';

const inch = 0.0254;
const bore = 4.5 * inch;
const lining = 6 * inch;
const tube = 0.75 * inch;
const offset = bore - tube;
const along = (radius: number): number => Math.sqrt(radius ** 2 - offset ** 2) - Math.sqrt(bore ** 2 - offset ** 2);

/** A tapered can with a straight lining, for tests; made-up sizes. */
export const sampleFurnace: Furnace = Object.freeze({
  vessel: {
    name: 'steel can, 20 gal',
    bottom_radius_m: (15.25 / 2) * inch,
    top_radius_m: (17.5 / 2) * inch,
    height_m: 22 * inch,
    wall_m: 0.0005,
    given: true,
  },
  crucible: { outside_radius_m: 3 * inch, height_m: 8 * inch, wall_m: 0.014, working_m3: 0.0017 },
  underfloor_m: 2 * inch,
  floor_m: 2 * inch,
  bore: { bottom_radius_m: bore, top_radius_m: bore, height_m: 12.4 * inch },
  wall_m: 1.5 * inch,
  plinth: { radius_m: 2.5 * inch, height_m: 2.4 * inch },
  bed_m: 0,
  rim_m: 2 * inch,
  lid: { radius_m: 6.5 * inch, thickness_m: 2 * inch, vent_radius_m: 1.25 * inch },
  tuyere: {
    bore_radius_m: tube,
    outer_radius_m: 0.95 * inch,
    invert_m: 1.2 * inch,
    offset_m: offset,
    tilt_rad: (10 * Math.PI) / 180,
    through_lining_m: along(lining),
    through_all_m: along(7.9 * inch),
  },
});
