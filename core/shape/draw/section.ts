import { brimfulOf_m3 } from '../crucible.ts';
import type { Area, Callout, Drawing, Line, Matter, Point } from '../drawing.ts';
import { level, rowOf, upright } from '../forms/marks.ts';
import { type Box, boxOf, rectangle } from '../forms/outline.ts';
import type { Furnace } from '../furnace.ts';
import { floorTop_m, insulationEnds_m, liningRadius_m, liningTop_m, vesselRadius_m } from '../profile.ts';
import { degrees, spillDepth_m } from '../tuyere.ts';
import { same, size } from './words.ts';

/**
 * The furnace cut upright through its axis, beside the tuyere. The tuyere runs behind the cut by its offset and is seen
 * from the side, so that its tilt, its heights and its length through the wall are true. m, x from the axis, y from
 * the vessel's inside bottom.
 */
export function sectionDrawing(furnace: Furnace): Drawing {
  const levels = levelsOf(furnace);
  const tube = tubeSeen(furnace, levels);
  const shapes = [
    ...wallShapes(furnace, levels),
    ...tubeShapes(tube),
    ...insideShapes(furnace, levels),
    ...lidShapes(furnace, levels),
    ...lines(furnace, levels, tube),
  ];
  const box = boxOf(shapes.flatMap((shape) => (shape.kind === 'area' ? shape.outline : [])));
  const { bore, wall_m, lid, tuyere, vessel } = furnace;
  const { bottom_m, top_m } = insulationEnds_m(furnace);
  return {
    id: 'section',
    title: 'The furnace, cut through its middle',
    alt: `A ${vessel.name}, ${size(2 * vessel.bottom_radius_m)} across inside at the bottom, ${size(2 * vessel.top_radius_m)} at the top and ${size(vessel.height_m)} tall, holds a lining ${size(wall_m)} thick round a bore ${size(2 * bore.bottom_radius_m)} across and ${size(bore.height_m)} high, with ${size(bottom_m)} of insulation round it at the bottom and ${size(top_m)} at the top. The lid is ${size(lid.thickness_m)} thick with a vent of ${size(2 * lid.vent_radius_m)}. The tuyere comes in ${size(tuyere.invert_m)} above the floor and rises outward by ${degrees(tuyere.tilt_rad).toFixed(0)}°.`,
    shapes,
    marks: [
      ...levelMarks(furnace, levels, box),
      ...uprightMarks(furnace, levels, box, tube),
      ...callouts(furnace, levels, box, tube),
    ],
  };
}

interface Levels {
  readonly floor: number;
  /** What the crucible stands on. */
  readonly foot: number;
  readonly rim: number;
  readonly lidTop: number;
  readonly fill: number;
  readonly spill: number;
  readonly bottomOut: number;
  readonly topOut: number;
}

function levelsOf(furnace: Furnace): Levels {
  const { plinth, bed_m, bore, crucible, lid } = furnace;
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

/** Labels are wide beside a tall thin body, which makes it small on the page. */
const ROW = 0.085;

const area = (name: string, matter: Matter, outline: readonly Point[]): Area => ({
  kind: 'area',
  name,
  matter,
  outline,
});

/** A cup cut through its axis: outer and inner side, each by its radius and height at foot and rim. */
function cup(outer: readonly [Point, Point], inner: readonly [Point, Point]): readonly Point[] {
  const mirrored = ([x, y]: Point): Point => [-x, y];
  const [foot, rim] = outer;
  const [floor, mouth] = inner;
  const half = [foot, rim, mouth, floor];
  return [...half, ...half.toReversed().map(mirrored)];
}

function wallShapes(furnace: Furnace, { floor, rim, bottomOut, topOut }: Levels): readonly Area[] {
  const { vessel, bore, underfloor_m } = furnace;
  const filled = Math.min(rim, vessel.height_m);
  const sheet = vessel.wall_m;
  return [
    area(
      vessel.name,
      'shell',
      cup(
        [
          [vessel.bottom_radius_m + sheet, -sheet],
          [vessel.top_radius_m + sheet, vessel.height_m],
        ],
        [
          [vessel.bottom_radius_m, 0],
          [vessel.top_radius_m, vessel.height_m],
        ],
      ),
    ),
    area(
      'insulation',
      'insulation',
      cup(
        [
          [vessel.bottom_radius_m, 0],
          [vesselRadius_m(vessel, filled), filled],
        ],
        [
          [bottomOut, underfloor_m],
          [liningRadius_m(furnace, filled), filled],
        ],
      ),
    ),
    area(
      'hot-face lining',
      'hot face',
      cup(
        [
          [bottomOut, underfloor_m],
          [topOut, rim],
        ],
        [
          [bore.bottom_radius_m, floor],
          [bore.top_radius_m, rim],
        ],
      ),
    ),
  ];
}

function insideShapes({ plinth, crucible }: Furnace, { floor, foot, fill }: Levels): readonly Area[] {
  const { outside_radius_m: out, wall_m, height_m } = crucible;
  const inside = out - wall_m;
  const bottom = foot + wall_m;
  return [
    ...(plinth.height_m > 0
      ? [
          area(
            'hot-face lining',
            'hot face',
            rectangle({ left: -plinth.radius_m, right: plinth.radius_m, bottom: floor, top: foot }),
          ),
        ]
      : []),
    area(
      'crucible',
      'crucible',
      cup(
        [
          [out, foot],
          [out, foot + height_m],
        ],
        [
          [inside, bottom],
          [inside, foot + height_m],
        ],
      ),
    ),
    area('metal', 'metal', rectangle({ left: -inside, right: inside, bottom, top: bottom + fill })),
  ];
}

function lidShapes({ lid }: Furnace, { rim, lidTop }: Levels): readonly Area[] {
  return [
    { left: -lid.radius_m, right: -lid.vent_radius_m },
    { left: lid.vent_radius_m, right: lid.radius_m },
  ].map((sides) => area('hot-face lining', 'hot face', rectangle({ ...sides, bottom: rim, top: lidTop })));
}

/** The tuyere as it is seen from the side: `start` on the bore, `end` clear of the vessel. */
interface Seen {
  readonly start: number;
  readonly end: number;
  readonly leaves: number;
  readonly bore: number;
  readonly outer: number;
  readonly tilt: number;
  /** Height of its axis over x. */
  readonly axis: (x: number) => number;
}

function tubeSeen({ bore, vessel, tuyere }: Furnace, { floor }: Levels): Seen {
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

function tubeShapes({ start, end, bore, outer, axis }: Seen): readonly Area[] {
  const between = (low: number, high: number): readonly Point[] => [
    [start, axis(start) + low],
    [end, axis(end) + low],
    [end, axis(end) + high],
    [start, axis(start) + high],
  ];
  return [
    area('tuyere, open inside', 'hollow', between(-bore, bore)),
    area('tuyere', 'sleeve', between(-outer, -bore)),
    area('tuyere', 'sleeve', between(bore, outer)),
  ];
}

function lines({ bore }: Furnace, { spill, lidTop, floor }: Levels, tube: Seen): readonly Line[] {
  const { start, end, axis, tilt } = tube;
  // Into the tube as far as the pool climbs it.
  const low = axis(start) - tube.bore;
  const climbs = spill <= low ? start : tilt > 0 ? start + (spill - low) / Math.tan(tilt) : end;
  const radius = bore.bottom_radius_m + ((bore.top_radius_m - bore.bottom_radius_m) * (spill - floor)) / bore.height_m;
  const right = Math.max(radius, Math.min(climbs, end));
  return [
    {
      kind: 'line',
      name: 'middle',
      stroke: 'axis',
      points: [
        [0, -0.02],
        [0, lidTop + 0.02],
      ],
    },
    {
      kind: 'line',
      name: '',
      stroke: 'axis',
      points: [
        [start, axis(start)],
        [end, axis(end)],
      ],
    },
    {
      kind: 'line',
      name: 'spill of a full crucible',
      stroke: 'hidden',
      points: [
        [-radius, spill],
        [right, spill],
      ],
    },
  ];
}

function levelMarks(furnace: Furnace, { floor, rim, lidTop, bottomOut, topOut }: Levels, box: Box): Drawing['marks'] {
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

function uprightMarks(furnace: Furnace, { floor, foot, rim, lidTop }: Levels, box: Box, tube: Seen): Drawing['marks'] {
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
    upright('vessel', [0, vessel.height_m], -vessel.top_radius_m, left(3)),
    ...(tube.axis(start) - tube.bore > floor
      ? [upright('hole above floor', [floor, axis(start) - tube.bore], start, end + row)]
      : []),
    ...(tilt > 0
      ? [{ kind: 'angle', name: 'tilt', corner, from: [end, corner[1]], to: [end, axis(end)] } as const]
      : []),
  ];
}

function callouts(furnace: Furnace, { foot, spill, rim, lidTop }: Levels, box: Box, tube: Seen): readonly Callout[] {
  const { crucible, tuyere, bore, rim_m } = furnace;
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
    callout(words, [tube.end - 0.02, tube.axis(tube.end - 0.02) + tube.bore / 2], rim - 2.2 * row),
    callout('a full crucible, spilt, stands this high', [bore.bottom_radius_m * 0.9, spill], spill - 5 * row),
  ];
}
