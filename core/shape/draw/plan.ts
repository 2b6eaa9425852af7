import type { UnitSystem } from '../../quantity/figure.ts';
import { formatTape } from '../../quantity/tape.ts';
import type { Area, Drawing, Line, Matter, Point } from '../drawing.ts';
import { holeOf, tubeOf } from '../forms/hole.ts';
import { length, level, rowOf, upright } from '../forms/marks.ts';
import { boxOf, circle } from '../forms/outline.ts';
import type { Furnace } from '../furnace.ts';
import { floorTop_m, liningRadius_m, vesselRadius_m } from '../profile.ts';
import { angleToRadius_rad, degrees } from '../tuyere.ts';

/** Circles of the furnace where the tuyere's axis meets the bore, m. */
interface Rings {
  readonly bore: number;
  readonly lining: number;
  readonly vessel: number;
  readonly outside: number;
}

function ringsOf(furnace: Furnace): Rings {
  const { vessel, wall_m, tuyere } = furnace;
  const up = floorTop_m(furnace) + tuyere.invert_m + tuyere.bore_radius_m / Math.cos(tuyere.tilt_rad);
  const lining = liningRadius_m(furnace, up);
  const inside = vesselRadius_m(vessel, up);
  return { bore: lining - wall_m, lining, vessel: inside, outside: inside + vessel.wall_m };
}

/** The furnace cut level through the tuyere, from above: the tuyere runs to the right, its offset upwards. m. */
export function planDrawing(furnace: Furnace, units: UnitSystem): Drawing {
  const size = (length_m: number) => formatTape(length_m, units);
  const { tuyere } = furnace;
  const rings = ringsOf(furnace);
  const end = rings.outside * 1.25;
  const shapes = [...ringShapes(furnace, rings), ...tubeShapes(furnace, rings, end), ...axes(furnace, rings, end)];
  const turn = degrees(angleToRadius_rad({ bore_radius_m: rings.bore, offset_m: tuyere.offset_m }));
  return {
    id: 'plan',
    title: 'The furnace at the tuyere, from above',
    alt: `The tuyere, ${size(2 * tuyere.bore_radius_m)} inside and ${size(2 * tuyere.outer_radius_m)} outside, enters a bore ${size(2 * rings.bore)} across with its middle ${size(Math.abs(tuyere.offset_m))} off the furnace's, ${turn.toFixed(0)}° to the radius. In plan it is ${size(tuyere.through_lining_m)} through the lining and ${size(tuyere.through_all_m)} to the outside of the vessel.`,
    shapes,
    marks: marksOf(furnace, rings, end, units),
  };
}

const area = (
  name: string,
  matter: Matter,
  outline: readonly Point[],
  holes: readonly (readonly Point[])[] = [],
): Area => ({
  kind: 'area',
  name,
  matter,
  outline,
  holes,
});

function ringShapes({ vessel, plinth, bed_m, crucible }: Furnace, rings: Rings): readonly (Area | Line)[] {
  const round = (radius_m: number): readonly Point[] => circle({ radius_m });
  const closed = round(crucible.outside_radius_m);
  return [
    area(vessel.name, 'shell', round(rings.outside), [round(rings.vessel)]),
    area('insulation', 'insulation', round(rings.vessel), [round(rings.lining)]),
    area('hot-face lining', 'hot face', round(rings.lining), [round(rings.bore)]),
    ...(bed_m > 0 ? [area('charcoal', 'charcoal', round(rings.bore))] : []),
    ...(plinth.height_m > 0 ? [area('hot-face lining', 'hot face', round(plinth.radius_m))] : []),
    { kind: 'line', name: 'crucible above', stroke: 'hidden', points: [...closed, closed[0]!] },
  ];
}

const CHORDS = 12;
/** As in the section: labels are wide beside a small body. */
const ROW = 0.085;

/** Where a line along the tube at `aside` from the furnace's middle meets the bore; at its side where it passes by. */
const onBore = (bore: number, aside: number): Point => [Math.sqrt(Math.max(0, bore ** 2 - aside ** 2)), aside];

function tubeShapes({ tuyere }: Furnace, { bore }: Rings, end: number): readonly Area[] {
  const { offset_m, bore_radius_m, outer_radius_m } = tuyere;
  const strip = (low: number, high: number): readonly Point[] => {
    const from = offset_m + low;
    const to = offset_m + high;
    const trimmed = Array.from({ length: CHORDS + 1 }, (_, n) => onBore(bore, from + ((to - from) * n) / CHORDS));
    return [[end, from], [end, to], ...trimmed.toReversed()];
  };
  return [
    area('tuyere, open inside', 'hollow', strip(-bore_radius_m, bore_radius_m)),
    area('tuyere', 'sleeve', strip(-outer_radius_m, -bore_radius_m)),
    area('tuyere', 'sleeve', strip(bore_radius_m, outer_radius_m)),
  ];
}

function axes({ tuyere }: Furnace, rings: Rings, end: number): readonly Line[] {
  const { offset_m } = tuyere;
  const [x, y] = onBore(rings.bore, offset_m);
  const out = (rings.outside * 1.1) / rings.bore;
  const far = rings.outside * 1.08;
  return [
    {
      kind: 'line',
      name: 'middle lines',
      stroke: 'axis',
      points: [
        [-far, 0],
        [far, 0],
      ],
    },
    {
      kind: 'line',
      name: '',
      stroke: 'axis',
      points: [
        [0, -far],
        [0, far],
      ],
    },
    {
      kind: 'line',
      name: '',
      stroke: 'axis',
      points: [
        [x, y],
        [end, y],
      ],
    },
    ...(offset_m === 0
      ? []
      : [
          {
            kind: 'line',
            name: '',
            stroke: 'axis',
            points: [
              [0, 0],
              [x * out, y * out],
            ],
          } as const,
        ]),
  ];
}

/** The hole to cut in the vessel's side, in words: it is measured on the vessel, not in this plane. */
function vesselHole(furnace: Furnace, units: UnitSystem): string {
  const { vessel, tuyere } = furnace;
  const size = (length_m: number) => formatTape(length_m, units);
  const tube = tubeOf(furnace, tuyere.outer_radius_m);
  const cone = {
    bottom_radius_m: vessel.bottom_radius_m + vessel.wall_m,
    top_radius_m: vessel.top_radius_m + vessel.wall_m,
    height_m: vessel.height_m,
  };
  const { edge } = holeOf(cone, { ...tube, up_m: tube.up_m + floorTop_m(furnace) }, units);
  const { left, right, bottom, top } = boxOf(edge.map(({ turn_rad, up_m }) => [turn_rad, up_m] as const));
  const radius = vesselRadius_m(vessel, (bottom + top) / 2) + vessel.wall_m;
  return `hole in the vessel: ${size((right - left) * radius)} round by ${size(top - bottom)} up, from ${size(bottom)} above its bottom`;
}

function marksOf(furnace: Furnace, rings: Rings, end: number, units: UnitSystem): Drawing['marks'] {
  const size = (length_m: number) => formatTape(length_m, units);
  const { tuyere } = furnace;
  const { offset_m, bore_radius_m, outer_radius_m } = tuyere;
  const box = boxOf([...circle({ radius_m: rings.outside }), [end, offset_m]]);
  const row = rowOf(box, ROW);
  const meets = onBore(rings.bore, offset_m);
  const [x] = meets;
  const through = (radius: number): number => Math.sqrt(radius ** 2 - offset_m ** 2);
  const low = onBore(rings.bore, offset_m - bore_radius_m);
  const high = onBore(rings.bore, Math.min(rings.bore, offset_m + bore_radius_m));
  const reach = rings.outside - rings.bore;
  const out = (rings.bore + reach) / rings.bore;
  return [
    ...(offset_m === 0 ? [] : [upright('offset', [Math.min(0, offset_m), Math.max(0, offset_m)], 0, box.left - row)]),
    level('through lining', [x, through(rings.lining)], offset_m, box.top + row),
    level('through all', [x, through(rings.outside)], offset_m, box.top + 2 * row),
    {
      kind: 'callout',
      text: `tuyere ${size(2 * bore_radius_m)} inside, ${size(2 * outer_radius_m)} outside`,
      at: [end * 0.97, offset_m + (bore_radius_m + outer_radius_m) / 2],
      words: [end, offset_m + 3 * row],
    },
    {
      kind: 'callout',
      text: vesselHole(furnace, units),
      at: [through(rings.outside), offset_m],
      words: [rings.outside, -0.7 * rings.outside],
    },
    length('slot in the bore', low, high, 0.6 * row),
    ...(offset_m === 0
      ? []
      : [
          {
            kind: 'angle',
            name: 'to the radius',
            corner: meets,
            from: [x + reach, offset_m],
            to: [x * out, offset_m * out],
          } as const,
        ]),
  ];
}
