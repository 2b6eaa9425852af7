import { AskError } from '../../ask-error.ts';
import type { UnitSystem } from '../../quantity/figure.ts';
import { formatTape } from '../../quantity/tape.ts';
import type { Furnace } from '../furnace.ts';
import type { Cone } from './sector.ts';

/** A straight tube that runs level or rising outward, beside or through the axis of a shell. m, rad. */
export interface Tube {
  readonly radius_m: number;
  /** Its axis off the shell's axis, in plan. */
  readonly offset_m: number;
  readonly tilt_rad: number;
  /** One point of the tube's axis: how far out in plan along the tube, and how high above the shell's bottom edge. */
  readonly out_m: number;
  readonly up_m: number;
}

/** A place on a shell: round from the direction of the tube, and up the axis from the bottom edge. */
export interface Place {
  readonly turn_rad: number;
  readonly up_m: number;
}

export interface Hole {
  readonly edge: readonly Place[];
  /** From the tube's direction to the middle of the hole. */
  readonly middle_rad: number;
  /** The tube leaves along the shell's side: the hole ends in a straight edge, and the lining beside it in a feather. */
  readonly grazes: boolean;
  /** The hole runs out at the bottom edge: a notch. */
  readonly notch: boolean;
}

const POINTS = 48;
const HALVINGS = 60;

/**
 * The hole a tube makes where it enters a shell, from the shell's quadrant towards the tube (|turn| ≤ 90°). On each
 * upright line of the shell the places at the tube's radius from the tube's axis are the two roots of a quadratic;
 * the hole ends where they meet, or where the tube touches the shell's side. Exact for cylinders and cones. Derived.
 * @throws AskError `impossible` where the tube misses the shell or leaves it over the top edge; `units` lead its words.
 */
export function holeOf(cone: Cone, tube: Tube, units: UnitSystem = 'metric'): Hole {
  const lineAt = crossing(cone, tube);
  const meets = (turn_rad: number): boolean => lineAt(turn_rad).inside >= 0;
  const axis = axisTurn_rad(cone, tube, units);
  const end = (limit: number): number => {
    if (meets(limit)) return limit;
    let [inside, outside] = [axis, limit];
    for (let n = 0; n < HALVINGS; n++) {
      const middle = (inside + outside) / 2;
      if (meets(middle)) inside = middle;
      else outside = middle;
    }
    return inside;
  };
  const [low, high] = [end(-Math.PI / 2), end(Math.PI / 2)];
  // Closer together at the ends, where the edge turns back on itself.
  const turns = Array.from(
    { length: POINTS + 1 },
    (_, n) => low + ((high - low) * (1 - Math.cos((Math.PI * n) / POINTS))) / 2,
  );
  const pairs = turns.map((turn_rad) => ({ turn_rad, ups: lineAt(turn_rad).ups }));
  const lowest = Math.min(...pairs.map(({ ups }) => ups[0]));
  const highest = Math.max(...pairs.map(({ ups }) => ups[1]));
  if (highest >= cone.height_m || highest <= 0) throw misses(cone, highest, units);
  const up = (up_m: number): number => Math.max(0, up_m);
  return {
    edge: [
      ...pairs.map(({ turn_rad, ups }) => ({ turn_rad, up_m: up(ups[0]) })),
      ...pairs.toReversed().map(({ turn_rad, ups }) => ({ turn_rad, up_m: up(ups[1]) })),
    ],
    middle_rad: (low + high) / 2,
    grazes: high === Math.PI / 2 || low === -Math.PI / 2,
    notch: lowest <= 0,
  };
}

function misses({ height_m }: Cone, highest_m: number, units: UnitSystem): AskError {
  return new AskError({
    code: 'impossible',
    what: `the tuyere's hole would reach ${formatTape(highest_m, units)} up a form that is ${formatTape(height_m, units)} tall`,
    expected: 'a hole that leaves a rim of form above it: a lower tuyere, less tilt or a narrower one',
    example: '1 in',
    option: 'tuyere',
  });
}

interface Crossing {
  /** Below 0 where the line misses the tube. */
  readonly inside: number;
  readonly ups: readonly [number, number];
}

/** On the shell's upright line at a turn: where it enters and leaves the tube, or comes nearest to it. */
function crossing(cone: Cone, tube: Tube): (turn_rad: number) => Crossing {
  const widening = (cone.top_radius_m - cone.bottom_radius_m) / cone.height_m;
  const [along, rise] = [Math.cos(tube.tilt_rad), Math.sin(tube.tilt_rad)];
  return (turn_rad) => {
    const [cos, sin] = [Math.cos(turn_rad), Math.sin(turn_rad)];
    // From the tube's point to the line's foot, and the line's direction.
    const foot = [
      cone.bottom_radius_m * cos - tube.out_m,
      cone.bottom_radius_m * sin - tube.offset_m,
      -tube.up_m,
    ] as const;
    const way = [widening * cos, widening * sin, 1] as const;
    const footAlong = foot[0] * along + foot[2] * rise;
    const wayAlong = way[0] * along + way[2] * rise;
    const a = way[0] ** 2 + way[1] ** 2 + 1 - wayAlong ** 2;
    const half = foot[0] * way[0] + foot[1] * way[1] + foot[2] - footAlong * wayAlong;
    const c = foot[0] ** 2 + foot[1] ** 2 + foot[2] ** 2 - footAlong ** 2 - tube.radius_m ** 2;
    const inside = half ** 2 - a * c;
    const reach = Math.sqrt(Math.max(0, inside));
    return { inside, ups: [(-half - reach) / a, (-half + reach) / a] };
  };
}

/** Turn at which the tube's axis meets the shell: asin(offset / radius there). */
function axisTurn_rad(cone: Cone, { offset_m, tilt_rad, out_m, up_m }: Tube, units: UnitSystem): number {
  const widening = (cone.top_radius_m - cone.bottom_radius_m) / cone.height_m;
  let radius = cone.bottom_radius_m + widening * up_m;
  for (let n = 0; n < 30; n++) {
    const out = Math.sqrt(Math.max(0, radius ** 2 - offset_m ** 2));
    radius = cone.bottom_radius_m + widening * (up_m + (out - out_m) * Math.tan(tilt_rad));
  }
  if (Math.abs(offset_m) < radius) return Math.asin(offset_m / radius);
  throw new AskError({
    code: 'impossible',
    what: `a tuyere ${formatTape(Math.abs(offset_m), units)} off the middle misses a form ${formatTape(2 * radius, units)} across`,
    expected: 'an offset below half the bore',
    example: '1 in',
    option: 'tuyere',
  });
}

/**
 * The furnace's tuyere as a tube of any radius round its axis, heights from the floor's top. The axis meets the bore
 * at √(R² − e²) in plan; there its height is invert + inside radius / cos(tilt). Derived.
 */
export function tubeOf({ bore, tuyere }: Pick<Furnace, 'bore' | 'tuyere'>, radius_m: number): Tube {
  const { offset_m, tilt_rad, invert_m, bore_radius_m } = tuyere;
  const up_m = invert_m + bore_radius_m / Math.cos(tilt_rad);
  const widening = (bore.top_radius_m - bore.bottom_radius_m) / bore.height_m;
  const out_m = Math.sqrt(Math.max(0, (bore.bottom_radius_m + widening * up_m) ** 2 - offset_m ** 2));
  return { radius_m, offset_m, tilt_rad, out_m, up_m };
}
