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

/** Half sizes of the upright box around a turned one. */
function uprightOf({ half, turn_rad }: Box): Px {
  if (turn_rad === 0) return half;
  const [w, h] = half;
  const [cos, sin] = [Math.abs(Math.cos(turn_rad)), Math.abs(Math.sin(turn_rad))];
  return [w * cos + h * sin, w * sin + h * cos];
}

/** No corner is further from the middle. */
const reachOf = ({ half: [w, h] }: Box): number => w + h;

/** Two boxes overlap unless an axis of one of them separates them. */
export function overlaps(one: Box, other: Box): boolean {
  if (distance(one.middle, other.middle) > reachOf(one) + reachOf(other)) return false;
  if (one.turn_rad === 0 && other.turn_rad === 0) {
    const [x, y] = [Math.abs(one.middle[0] - other.middle[0]), Math.abs(one.middle[1] - other.middle[1])];
    return x < one.half[0] + other.half[0] && y < one.half[1] + other.half[1];
  }
  return !separates(one, other) && !separates(other, one);
}

function separates(box: Box, other: Box): boolean {
  const { left, right, top, bottom } = boundsOf(cornersOf(other).map((corner) => seenFrom(box, corner)));
  const [w, h] = box.half;
  return left >= w || right <= -w || top >= h || bottom <= -h;
}

/** Whether a line passes through a box: what is left of it after the box's four sides have cut it. */
export function crosses(box: Box, [from, to]: Segment): boolean {
  const [x, y] = box.middle;
  const [wide, tall] = uprightOf(box);
  if (Math.min(from[0], to[0]) > x + wide || Math.max(from[0], to[0]) < x - wide) return false;
  if (Math.min(from[1], to[1]) > y + tall || Math.max(from[1], to[1]) < y - tall) return false;
  const [a, b] = [seenFrom(box, from), seenFrom(box, to)];
  let [first, last] = [0, 1];
  for (const axis of [0, 1] as const) {
    const step = b[axis] - a[axis];
    const [enter, leave] = [-box.half[axis], box.half[axis]].map((side) => side - a[axis]) as [number, number];
    if (Math.abs(step) < 1e-9) {
      if (enter > 0 || leave < 0) return false;
      continue;
    }
    const ends = [enter / step, leave / step];
    first = Math.max(first, Math.min(...ends));
    last = Math.min(last, Math.max(...ends));
  }
  return first < last;
}

export function meet([a, b]: Segment, [c, d]: Segment): boolean {
  const side = (p: Px, q: Px, r: Px) => (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** Whether one line lies on another, so that nobody could tell the two apart. */
export function liesOn([a, b]: Segment, [c, d]: Segment): boolean {
  const length = distance(c, d);
  if (length === 0) return false;
  const [x, y] = [(d[0] - c[0]) / length, (d[1] - c[1]) / length];
  const seen = ([px, py]: Px): Px => [(px - c[0]) * x + (py - c[1]) * y, (py - c[1]) * x - (px - c[0]) * y];
  const [from, to] = [seen(a), seen(b)];
  if (Math.abs(from[1]) > 1 || Math.abs(to[1]) > 1) return false;
  return Math.min(from[0], to[0]) < length && Math.max(from[0], to[0]) > 0;
}

/** The point of the box's edge that is nearest; undefined where the point lies inside. */
export function nearestOf(box: Box, point: Px): Px | undefined {
  const [x, y] = seenFrom(box, point);
  const [w, h] = box.half;
  if (Math.abs(x) < w && Math.abs(y) < h) return undefined;
  const clamp = (value: number, most: number) => Math.max(-most, Math.min(most, value));
  return moved(box.middle, box.turn_rad, clamp(x, w), clamp(y, h));
}
