import type { UnitSystem } from '../../quantity/figure.ts';
import { formatTape } from '../../quantity/tape.ts';
import type { Area, Drawing, Line, Matter, Point } from '../drawing.ts';
import { boxOf, rectangle } from '../forms/outline.ts';
import type { Furnace } from '../furnace.ts';
import { insulationEnds_m, liningRadius_m, vesselRadius_m } from '../profile.ts';
import { degrees } from '../tuyere.ts';
import { type Levels, levelsOf, type Seen, tubeSeen } from './section-levels.ts';
import { callouts, levelMarks, uprightMarks } from './section-marks.ts';

/**
 * The furnace cut upright through its axis, beside the tuyere. The tuyere runs behind the cut by its offset and is seen
 * from the side, so that its tilt, its heights and its length through the wall are true. m, x from the axis, y from
 * the vessel's inside bottom.
 */
export function sectionDrawing(furnace: Furnace, units: UnitSystem): Drawing {
  const size = (length_m: number) => formatTape(length_m, units);
  const levels = levelsOf(furnace);
  const tube = tubeSeen(furnace, levels);
  const shapes = [
    ...wallShapes(furnace, levels),
    ...bedShapes(furnace, levels),
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
    alt: `A ${vessel.name}, ${size(2 * vessel.bottom_radius_m)} across inside at the bottom, ${size(2 * vessel.top_radius_m)} at the top and ${size(vessel.height_m)} tall, holds a lining ${size(wall_m)} thick round a bore ${size(2 * bore.bottom_radius_m)} across and ${size(bore.height_m)} high, with ${size(bottom_m)} of insulation round it at the bottom and ${size(top_m)} at the top${furnace.underfloor_m > 0 ? `, on ${size(furnace.underfloor_m)} of brick laid flat` : ''}. The lid is ${size(lid.thickness_m)} thick with a vent of ${size(2 * lid.vent_radius_m)}. The tuyere comes in ${size(tuyere.invert_m)} above the floor and rises outward by ${degrees(tuyere.tilt_rad).toFixed(0)}°. A full crucible, spilt, would stand ${size(levels.spill - levels.floor)} deep on the floor.`,
    shapes,
    marks: [
      ...levelMarks(furnace, levels, box),
      ...uprightMarks(furnace, levels, box, tube),
      ...callouts({ furnace, levels, box, tube, units }),
    ],
  };
}

const boreRadius_m = ({ bottom_radius_m, top_radius_m, height_m }: Furnace['bore'], up_m: number): number =>
  bottom_radius_m + ((top_radius_m - bottom_radius_m) * up_m) / height_m;

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
    // What the floor and the pot stand on: nothing loose.
    ...(underfloor_m > 0
      ? [
          area(
            'brick, laid flat',
            'brick',
            rectangle({ left: -bottomOut, right: bottomOut, bottom: 0, top: underfloor_m }),
          ),
        ]
      : []),
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

/** How far up the crucible its charcoal is drawn: the fire is kept about so high, nothing is computed from it. */
const HEAPED = 0.25;

/** The bed that carries the crucible, and what stands round its foot. The crucible is drawn over it. */
function bedShapes({ bed_m, bore, crucible }: Furnace, { floor, foot, rim }: Levels): readonly Area[] {
  if (bed_m === 0) return [];
  const top = Math.min(foot + HEAPED * crucible.height_m, rim);
  const radius = boreRadius_m(bore, top - floor);
  return [
    area('charcoal', 'charcoal', [
      [-bore.bottom_radius_m, floor],
      [bore.bottom_radius_m, floor],
      [radius, top],
      [-radius, top],
    ]),
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

function lines({ bore, vessel }: Furnace, { spill, lidTop, floor, ownLid }: Levels, tube: Seen): readonly Line[] {
  const { start, end, axis, tilt } = tube;
  // Into the tube as far as the pool climbs it.
  const low = axis(start) - tube.bore;
  const climbs = spill <= low ? start : tilt > 0 ? start + (spill - low) / Math.tan(tilt) : end;
  const radius = boreRadius_m(bore, spill - floor);
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
    ...(ownLid === undefined
      ? []
      : [
          {
            kind: 'line',
            name: '',
            stroke: 'hidden',
            points: [
              [-vessel.top_radius_m, ownLid],
              [vessel.top_radius_m, ownLid],
            ],
          } as const,
        ]),
  ];
}
