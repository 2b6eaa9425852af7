import type { UnitSystem } from '../../quantity/figure.ts';
import { formatTape } from '../../quantity/tape.ts';
import type { Callout, Drawing, Point } from '../drawing.ts';
import { level, rowOf, upright } from '../forms/marks.ts';
import type { Box } from '../forms/outline.ts';
import type { Furnace } from '../furnace.ts';
import { insulationEnds_m, liningRadius_m, vesselRadius_m } from '../profile.ts';
import type { Levels, Seen } from './section-levels.ts';
import { same } from './words.ts';

/** Labels are wide beside a tall thin body, which makes it small on the page. */
const ROW = 0.085;

export function levelMarks(
  furnace: Furnace,
  { floor, rim, lidTop, bottomOut, topOut }: Levels,
  box: Box,
): Drawing['marks'] {
  const { vessel, bore, lid, wall_m, underfloor_m } = furnace;
  const row = rowOf(box, ROW);
  const above = (name: string, half: number, at: number, rows: number) =>
    level(name, [-half, half], at, box.top + rows * row);
  const below = (name: string, half: number, at: number, rows: number) =>
    level(name, [-half, half], at, box.bottom - rows * row);
  const full = Math.min(rim, vessel.height_m);
  const ends = insulationEnds_m(furnace);
  const lidAsLining = same(lid.radius_m, topOut);
  const straight = same(bottomOut, topOut);
  return [
    above('vent', lid.vent_radius_m, lidTop, 1),
    ...(same(ends.bottom_m, ends.top_m)
      ? []
      : [level('insulation', [-vesselRadius_m(vessel, full), -liningRadius_m(furnace, full)], full, box.top + row)]),
    ...(straight ? [] : [above('bore, top', bore.top_radius_m, rim, 2)]),
    ...(straight ? [] : [above(lidAsLining ? 'lining and lid' : 'lining, top', topOut, rim, 3)]),
    ...(lidAsLining ? [] : [above('lid', lid.radius_m, lidTop, straight ? 2 : 4)]),
    ...(same(vessel.bottom_radius_m, vessel.top_radius_m)
      ? []
      : [above('vessel, top', vessel.top_radius_m, vessel.height_m, straight ? 3 : 5)]),
    level('insulation', [-vesselRadius_m(vessel, underfloor_m), -bottomOut], underfloor_m, box.bottom - row),
    level('wall', [bore.bottom_radius_m, bore.bottom_radius_m + wall_m], floor, box.bottom - row),
    below(straight ? 'bore' : 'bore, bottom', bore.bottom_radius_m, floor, 2),
    below(straight ? (lidAsLining ? 'lining and lid' : 'lining') : 'lining, bottom', bottomOut, underfloor_m, 3),
    below(
      same(vessel.bottom_radius_m, vessel.top_radius_m) ? 'vessel' : 'vessel, bottom',
      vessel.bottom_radius_m,
      0,
      4,
    ),
  ];
}

export function uprightMarks(
  furnace: Furnace,
  { floor, foot, rim, lidTop, ownLid }: Levels,
  box: Box,
  tube: Seen,
): Drawing['marks'] {
  const { vessel, bore, lid, underfloor_m, bed_m } = furnace;
  const row = rowOf(box, ROW);
  const { start, end, axis, leaves, tilt } = tube;
  const corner: Point = [leaves, axis(leaves)];
  const left = (rows: number): number => box.left - rows * row;
  return [
    ...(underfloor_m > 0 ? [upright('below floor', [0, underfloor_m], -liningRadius_m(furnace, 0), left(1))] : []),
    upright('floor', [underfloor_m, floor], -bore.bottom_radius_m, left(1)),
    ...(foot > floor ? [upright(bed_m > 0 ? 'charcoal' : 'plinth', [floor, foot], 0, left(1))] : []),
    upright('height', [floor, rim], -bore.top_radius_m, left(2)),
    upright('lid', [rim, lidTop], -lid.radius_m, left(2)),
    ...(ownLid === undefined ? [] : [upright('to own lid', [lidTop, ownLid], -lid.radius_m, left(1))]),
    upright('vessel', [0, vessel.height_m], -vessel.top_radius_m, left(3)),
    ...(tube.axis(start) - tube.bore > floor
      ? [upright('hole above floor', [floor, axis(start) - tube.bore], start, end + row)]
      : []),
    ...(tilt > 0
      ? [{ kind: 'angle', name: 'tilt', corner, from: [end, corner[1]], to: [end, axis(end)] } as const]
      : []),
  ];
}

export interface Section {
  readonly furnace: Furnace;
  readonly levels: Levels;
  readonly box: Box;
  readonly tube: Seen;
  readonly units: UnitSystem;
}

export function callouts({ furnace, levels, box, tube, units }: Section): readonly Callout[] {
  const { crucible, tuyere, bore, rim_m, vessel } = furnace;
  const { foot, rim, lidTop, ownLid } = levels;
  const size = (length_m: number) => formatTape(length_m, units);
  const row = rowOf(box, ROW);
  const right = box.right + row;
  const callout = (text: string, at: Point, up: number): Callout => ({ kind: 'callout', text, at, words: [right, up] });
  const aside = size(Math.abs(tuyere.offset_m));
  const words = tuyere.offset_m === 0 ? 'tuyere' : `tuyere, ${aside} behind this cut`;
  return [
    callout(
      `crucible ${size(2 * crucible.outside_radius_m)} across, ${size(crucible.height_m)} tall`,
      [crucible.outside_radius_m - crucible.wall_m / 2, foot + 0.8 * crucible.height_m],
      rim,
    ),
    callout(
      `${size(rim_m)} free above the crucible`,
      [(crucible.outside_radius_m + bore.top_radius_m) / 2, rim - rim_m / 2],
      lidTop + row,
    ),
    ...(ownLid === undefined ? [] : [callout('own lid', [0.8 * vessel.top_radius_m, ownLid], ownLid + row)]),
    callout(words, [tube.end - 0.02, tube.axis(tube.end - 0.02) + tube.bore / 2], rim - 2.2 * row),
  ];
}
