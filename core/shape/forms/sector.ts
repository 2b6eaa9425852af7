import { AskError } from '../../ask-error.ts';
import type { UnitSystem } from '../../quantity/figure.ts';
import { formatTape } from '../../quantity/tape.ts';
import type { Point } from '../drawing.ts';

/** A straight or tapered shell by its radii at both ends and its height along the axis, m. */
export interface Cone {
  readonly bottom_radius_m: number;
  readonly top_radius_m: number;
  readonly height_m: number;
}

/** The flat of a tapered shell: part of a ring. A straight one has angle 0 and radii without end. */
export interface Sector {
  readonly slant_m: number;
  readonly inner_radius_m: number;
  readonly outer_radius_m: number;
  readonly angle_rad: number;
}

/** Height of the shell measured along its side: s = √(h² + (R − r)²), m. */
export const slant_m = ({ bottom_radius_m, top_radius_m, height_m }: Cone): number =>
  Math.hypot(height_m, top_radius_m - bottom_radius_m);

/** Sine of the side's lean: (R − r) / s; positive where the top is wider. */
export const leanOf = (cone: Cone): number => (cone.top_radius_m - cone.bottom_radius_m) / slant_m(cone);

/**
 * Flat pattern of a frustum: slant s = √(h² + (R − r)²), sheet radii R s / (R − r) and r s / (R − r), angle
 * 2 π (R − r) / s. Valid for radii and height above 0. Derived (the side of a cone unrolls without stretching).
 * @throws AskError `impossible` where the taper has closed to a point or past it before an end of the shell; `units`
 * lead its words.
 */
export function sectorOf(cone: Cone, units: UnitSystem = 'metric'): Sector {
  refuseBeyondCone(cone, units);
  const [small, large] = [cone.bottom_radius_m, cone.top_radius_m].sort((a, b) => a - b) as [number, number];
  const lean = Math.abs(leanOf(cone));
  return {
    slant_m: slant_m(cone),
    inner_radius_m: small / lean,
    outer_radius_m: large / lean,
    angle_rad: 2 * Math.PI * lean,
  };
}

function refuseBeyondCone({ bottom_radius_m, top_radius_m, height_m }: Cone, units: UnitSystem): void {
  const radii = [bottom_radius_m, top_radius_m];
  if (height_m > 0 && radii.every((radius) => radius > 0 && Number.isFinite(radius)) && Number.isFinite(height_m))
    return;
  const widest = Math.max(...radii);
  const [narrowest] = radii.sort((a, b) => a - b) as [number, number];
  const size = (length_m: number) => formatTape(length_m, units);
  const what =
    height_m > 0 && widest > 0
      ? `a form ${size(2 * widest)} across at one end and ${size(height_m)} tall closes to a point before its other end, where it would be ${size(2 * narrowest)} across`
      : `a form ${size(2 * widest)} across and ${size(height_m)} tall cannot be built`;
  throw new AskError({
    code: 'impossible',
    what,
    expected: 'less taper: both ends wider than nothing, and some height between them',
    example: 'taper=no',
    option: 'taper',
  });
}

/** sin x / x, whole at 0. */
const sinc = (x: number): number => (Math.abs(x) < 1e-4 ? 1 - x ** 2 / 6 : Math.sin(x) / x);

/**
 * Where a point of the shell lies in its flat pattern, seen from outside: `turn_rad` round the axis from the middle
 * of the pattern, `along_m` up the side from the bottom edge. The pattern's middle line is x = 0, its bottom edge
 * meets it at y = 0. Written without the sheet radius, so that a straight shell is no special case:
 * x = ρ α sinc(k α), y = along − ρ α² k sinc²(k α / 2) / 2, with radius ρ at that place and lean k. Derived.
 */
export function flatten(cone: Cone, { turn_rad, along_m }: { turn_rad: number; along_m: number }): Point {
  const lean = leanOf(cone);
  const radius = cone.bottom_radius_m + lean * along_m;
  return [
    radius * turn_rad * sinc(lean * turn_rad),
    along_m - (radius * turn_rad ** 2 * lean * sinc((lean * turn_rad) / 2) ** 2) / 2,
  ];
}

/**
 * Sheet needed to bend a hoop of inside diameter D from thickness t: π (D + t), the line in mid-thickness that bending
 * neither stretches nor shortens. Valid for t well below D. Derived; sheet-metal practice for wide bends.
 */
export const bentLength_m = ({ inside_diameter_m, sheet_m }: { inside_diameter_m: number; sheet_m: number }): number =>
  Math.PI * (inside_diameter_m + sheet_m);
