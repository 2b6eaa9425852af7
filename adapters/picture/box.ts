/** A point of the picture, px, y down. */
export type Px = readonly [x: number, y: number];
export type Segment = readonly [Px, Px];

/** A rectangle about its middle, turned clockwise as SVG turns. */
export interface Box {
  readonly middle: Px;
  readonly half: Px;
  readonly turn_rad: number;
}

export interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const distance = ([ax, ay]: Px, [bx, by]: Px): number => Math.sqrt((bx - ax) ** 2 + (by - ay) ** 2);
export const between = ([ax, ay]: Px, [bx, by]: Px, share: number): Px => [
  ax + (bx - ax) * share,
  ay + (by - ay) * share,
];

/** `along` px in the direction `turn_rad` and `aside` px to the right of it. */
export function moved([x, y]: Px, turn_rad: number, along: number, aside = 0): Px {
  const [cos, sin] = [Math.cos(turn_rad), Math.sin(turn_rad)];
  return [x + along * cos - aside * sin, y + along * sin + aside * cos];
}

export const cornersOf = ({ middle, half: [w, h], turn_rad }: Box): readonly Px[] =>
  [
    [-w, -h],
    [w, -h],
    [w, h],
    [-w, h],
  ].map(([along, aside]) => moved(middle, turn_rad, along!, aside!));

/** Of no points: a point. */
export function boundsOf(points: Iterable<Px>): Bounds {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return left <= right ? { left, top, right, bottom } : { left: 0, top: 0, right: 0, bottom: 0 };
}

/** The point as the box sees it: from its middle, along its own axes. */
const seenFrom = ({ middle, turn_rad }: Box, [x, y]: Px): Px =>
  turn_rad === 0 ? [x - middle[0], y - middle[1]] : moved([0, 0], -turn_rad, x - middle[0], y - middle[1]);

/** How far it reaches to either side of its middle. */
export const reachAcross = ({ half, turn_rad }: Box): number =>
  turn_rad === 0 ? half[0] : half[0] * Math.abs(Math.cos(turn_rad)) + half[1] * Math.abs(Math.sin(turn_rad));

/** No corner is further from the middle. */
const reachOf = ({ half }: Box): number => half[0] + half[1];

/** Two boxes overlap unless an axis of one of them separates them. */
export function overlaps(one: Box, other: Box): boolean {
  const x = Math.abs(one.middle[0] - other.middle[0]);
  const y = Math.abs(one.middle[1] - other.middle[1]);
  const reach = reachOf(one) + reachOf(other);
  if (x > reach || y > reach) return false;
  if (one.turn_rad === 0 && other.turn_rad === 0) {
    return x < one.half[0] + other.half[0] && y < one.half[1] + other.half[1];
  }
  return !separates(one, other) && !separates(other, one);
}

/** Along its own axes a turned rectangle reaches as far as its half sides, each by its share of the turn. */
function separates(box: Box, other: Box): boolean {
  const turn = other.turn_rad - box.turn_rad;
  const cos = Math.abs(Math.cos(turn));
  const sin = Math.abs(Math.sin(turn));
  const seen = seenFrom(box, other.middle);
  return (
    Math.abs(seen[0]) >= box.half[0] + other.half[0] * cos + other.half[1] * sin ||
    Math.abs(seen[1]) >= box.half[1] + other.half[0] * sin + other.half[1] * cos
  );
}

/**
 * Whether a line passes through a box: what is left of it after the box's four sides have cut it. Asked a hundred
 * thousand times for one drawing: numbers are read by index, since taking pairs apart makes an iterator each time.
 */
export function crosses({ middle, half, turn_rad }: Box, line: Segment): boolean {
  const from = line[0];
  const to = line[1];
  const w = half[0];
  const h = half[1];
  let ax = from[0] - middle[0];
  let ay = from[1] - middle[1];
  let bx = to[0] - middle[0];
  let by = to[1] - middle[1];
  const reach = w + h;
  if ((ax > reach && bx > reach) || (ax < -reach && bx < -reach)) return false;
  if ((ay > reach && by > reach) || (ay < -reach && by < -reach)) return false;
  if (turn_rad !== 0) {
    const cos = Math.cos(turn_rad);
    const sin = Math.sin(turn_rad);
    const a = ax * cos + ay * sin;
    const b = bx * cos + by * sin;
    ay = ay * cos - ax * sin;
    by = by * cos - bx * sin;
    ax = a;
    bx = b;
  }
  return Math.max(enters(ax, bx, w), enters(ay, by, h), 0) < Math.min(leaves(ax, bx, w), leaves(ay, by, h), 1);
}

/** Share of the way from a to b at which a slab of ±half is left; before the start where it is never in it. */
function leaves(a: number, b: number, half: number): number {
  if (Math.abs(b - a) < 1e-9) return Math.abs(a) < half ? Infinity : -Infinity;
  return ((b > a ? half : -half) - a) / (b - a);
}

/** The share at which it is entered. */
function enters(a: number, b: number, half: number): number {
  return Math.abs(b - a) < 1e-9 ? -Infinity : ((b > a ? -half : half) - a) / (b - a);
}

export function meet(one: Segment, other: Segment): boolean {
  return parts(one, other) && parts(other, one);
}

/** Whether the ends of the other lie on either side of the line through this one. */
function parts(line: Segment, other: Segment): boolean {
  const from = line[0];
  const x = line[1][0] - from[0];
  const y = line[1][1] - from[1];
  const side = (point: Px) => x * (point[1] - from[1]) - y * (point[0] - from[0]);
  return side(other[0]) * side(other[1]) < 0;
}

/** Whether one line lies on another, so that nobody could tell the two apart. */
export function liesOn(one: Segment, other: Segment): boolean {
  const start = other[0];
  const length = distance(start, other[1]);
  if (length === 0) return false;
  const x = (other[1][0] - start[0]) / length;
  const y = (other[1][1] - start[1]) / length;
  const aside = (point: Px) => (point[1] - start[1]) * x - (point[0] - start[0]) * y;
  if (Math.abs(aside(one[0])) > 1 || Math.abs(aside(one[1])) > 1) return false;
  const along = (point: Px) => (point[0] - start[0]) * x + (point[1] - start[1]) * y;
  const [from, to] = [along(one[0]), along(one[1])];
  return Math.min(from, to) < length && Math.max(from, to) > 0;
}

/** The point of the box's edge that is nearest; undefined where the point lies inside. */
export function nearestOf(box: Box, point: Px): Px | undefined {
  const [x, y] = seenFrom(box, point);
  const [w, h] = box.half;
  if (Math.abs(x) < w && Math.abs(y) < h) return undefined;
  const clamp = (value: number, most: number) => Math.max(-most, Math.min(most, value));
  return moved(box.middle, box.turn_rad, clamp(x, w), clamp(y, h));
}
