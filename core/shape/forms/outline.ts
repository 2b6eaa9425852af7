import type { Point } from '../drawing.ts';

/** What a chord may lie off its arc, m: finer than anyone scribes, and smooth to the eye. */
const CHORD_OFF_m = 0.0001;
const FEWEST_CHORDS = 2;

/** Chords that keep within 0.1 mm of an arc: n = turn / (4 asin √(off / (2 radius))). Radius > 0, m; turn in rad. */
export function chordsOf({ radius_m, turn_rad }: { radius_m: number; turn_rad: number }): number {
  const step = 4 * Math.asin(Math.sqrt(Math.min(CHORD_OFF_m / radius_m, 0.25) / 2));
  return Math.max(FEWEST_CHORDS, Math.ceil(Math.abs(turn_rad) / step));
}

/** Points of an arc, both ends included; turns counted from x towards y, rad. */
export function arc({
  centre: [x, y],
  radius_m,
  from_rad,
  to_rad,
}: {
  centre: Point;
  radius_m: number;
  from_rad: number;
  to_rad: number;
}): readonly Point[] {
  const count = chordsOf({ radius_m, turn_rad: to_rad - from_rad });
  return Array.from({ length: count + 1 }, (_, at): Point => {
    const turn = from_rad + ((to_rad - from_rad) * at) / count;
    return [x + radius_m * Math.cos(turn), y + radius_m * Math.sin(turn)];
  });
}

/** A circle as a closed outline, its last point not repeated; a corner on each axis, so that its box is true. */
export function circle({ centre: [x, y] = [0, 0], radius_m }: { centre?: Point; radius_m: number }): readonly Point[] {
  const count = 4 * chordsOf({ radius_m, turn_rad: Math.PI / 2 });
  return Array.from({ length: count }, (_, at): Point => {
    const turn = (2 * Math.PI * at) / count;
    return [x + radius_m * Math.cos(turn), y + radius_m * Math.sin(turn)];
  });
}

export function rectangle({ left, bottom, right, top }: Box): readonly Point[] {
  return [
    [left, bottom],
    [right, bottom],
    [right, top],
    [left, top],
  ];
}

/** Upright box round points, m. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

export function boxOf(points: readonly Point[]): Box {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return { left, right, bottom, top };
}

/** Area within a closed outline, m² (Gauss's sum over its corners). Derived. */
export function areaWithin_m2(outline: readonly Point[]): number {
  let twice = 0;
  outline.forEach(([x, y], at) => {
    const [nextX, nextY] = outline[(at + 1) % outline.length]!;
    twice += x * nextY - nextX * y;
  });
  return Math.abs(twice) / 2;
}
