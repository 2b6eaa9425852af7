import type { UnitSystem } from '../../quantity/figure.ts';
import { formatTape } from '../../quantity/tape.ts';
import type { Callout, Drawing, LengthMark, Line, Point } from '../drawing.ts';
import type { Hole } from './hole.ts';
import { length, level, rowOf, upright } from './marks.ts';
import { type Box, boxOf, chordsOf } from './outline.ts';
import type { Piece } from './piece.ts';
import { type Cone, flatten, leanOf, sectorOf } from './sector.ts';

export interface Shell {
  readonly name: string;
  /** In mid-thickness of the mesh. */
  readonly cone: Cone;
  readonly hole: Hole;
  /** Level up the axis to be marked on the form: the top of the floor. */
  readonly floor_m?: number;
}

/**
 * A shell as flat panels that share the turn, each with the lap added as a length along its right edge. The hole is in
 * the middle of the first, so that the seams are as far from it as they can be. Lengths in m. Derived.
 * @throws AskError as `sectorOf`.
 */
export function shellPieces(shell: Shell, panels: number, overlap_m: number): readonly Piece[] {
  return Array.from({ length: panels }, (_, at) => panel(shell, { at, panels, overlap_m }));
}

interface Cut {
  readonly at: number;
  readonly panels: number;
  readonly overlap_m: number;
}

function panel(shell: Shell, { at, panels, overlap_m }: Cut): Piece {
  const { cone, hole, name } = shell;
  const { slant_m, inner_radius_m, outer_radius_m, angle_rad } = sectorOf(cone);
  const half = Math.PI / panels;
  const on = (turn_rad: number, along_m: number): Point => flatten(cone, { turn_rad, along_m });
  const perHeight = slant_m / cone.height_m;
  const [low, high] = [on(half, 0), on(half, slant_m)];
  const lap = ([x, y]: Point): Point => [
    x + (overlap_m * (high[1] - low[1])) / slant_m,
    y - (overlap_m * (high[0] - low[0])) / slant_m,
  ];
  const across = (along_m: number): readonly Point[] => {
    const lean = Math.abs(leanOf(cone));
    const count = lean === 0 ? 1 : chordsOf({ radius_m: outer_radius_m, turn_rad: angle_rad / panels });
    return Array.from({ length: count + 1 }, (_, n) => on(-half + (2 * half * n) / count, along_m));
  };
  const [bottom, top] = [across(0), across(slant_m)];
  const laps = overlap_m > 0 ? [lap(low), lap(high)] : [];
  const outline = [...bottom, ...laps, ...top.toReversed()];
  const lines: Line[] = [
    { kind: 'line', name: 'seam: the other edge comes here', stroke: 'fold', points: [low, high] },
  ];
  const floorLine = shell.floor_m === undefined ? [] : across(shell.floor_m * perHeight);
  if (floorLine.length > 0) lines.push({ kind: 'line', name: 'top of the floor', stroke: 'fold', points: floorLine });
  const hasHole = at === 0;
  const holeEdge = hole.edge.map(({ turn_rad, up_m }) => on(turn_rad - hole.middle_rad, up_m * perHeight));
  const straight = angle_rad === 0;
  const about = { bottom, top, low, high, lapped: lap(low), slant_m, straight, overlap_m };
  const words = panels === 1 ? name : `${name}, panel ${at + 1} of ${panels}`;
  return {
    name: words,
    kind: straight ? 'rectangle' : 'sector',
    from: 'mesh',
    outline,
    holes: hasHole ? [holeEdge] : [],
    lines,
    marks: (units) => [
      ...(straight ? rectangleMarks(shell, about) : sectorMarks(about, floorLine[0])),
      ...(straight ? [] : [swing({ inner_radius_m, outer_radius_m, angle_rad: angle_rad / panels }, about, units)]),
      ...(hasHole ? holeMarks(hole, holeEdge, about) : []),
    ],
    says: (units) => saysOf(words, about, hasHole ? holeEdge : undefined, units),
  };
}

interface Around {
  readonly bottom: readonly Point[];
  readonly top: readonly Point[];
  readonly low: Point;
  readonly high: Point;
  readonly lapped: Point;
  readonly slant_m: number;
  readonly straight: boolean;
  readonly overlap_m: number;
}

const boxAround = ({ bottom, top, lapped }: Around) => boxOf([...bottom, ...top, lapped]);

function rectangleMarks({ floor_m }: Shell, about: Around): Drawing['marks'] {
  const { low, lapped, slant_m, overlap_m } = about;
  const box = boxAround(about);
  const row = rowOf(box);
  return [
    level('once round', [box.left, low[0]], 0, -2 * row),
    ...(overlap_m > 0 ? [level('lap', [low[0], lapped[0]], 0, -row)] : []),
    upright('height', [0, slant_m], box.left, box.left - row),
    ...(floor_m === undefined ? [] : [upright('floor', [0, floor_m], box.right, box.right + row)]),
  ];
}

/** Chords and rises, which a string and a straight edge can set out even where the radius is longer than the yard. */
function sectorMarks(about: Around, floor: Point | undefined): Drawing['marks'] {
  const { bottom, top, low, lapped, slant_m, overlap_m } = about;
  const box = boxAround(about);
  const row = rowOf(box);
  const [from, to] = [bottom[0]!, top[0]!];
  return [
    level('across', [from[0], low[0]], low[1], box.bottom - 2 * row),
    level('across', [to[0], top.at(-1)![0]], to[1], box.top + row),
    rise(low[1], 0, box.right + 2 * row),
    rise(to[1], slant_m, box.right + row),
    length('edge', from, to, 1.4 * row),
    ...(floor === undefined ? [] : [length('floor', from, floor, 0.5 * row)]),
    ...(overlap_m > 0 ? [length('lap', low, lapped, -row)] : []),
  ];
}

/** How far the middle of an edge stands off the straight line between its ends. */
const rise = (chord: number, arc: number, line: number): LengthMark =>
  upright('rise', [Math.min(chord, arc), Math.max(chord, arc)], 0, line);

function swing(
  { inner_radius_m, outer_radius_m, angle_rad }: { inner_radius_m: number; outer_radius_m: number; angle_rad: number },
  about: Around,
  units: UnitSystem,
): Callout {
  const box = boxAround(about);
  const degrees = ((angle_rad * 180) / Math.PI).toFixed(1);
  return {
    kind: 'callout',
    text: `arcs about one point: radius ${formatTape(inner_radius_m, units)} and ${formatTape(outer_radius_m, units)}, over ${degrees}° without the lap`,
    at: about.top[Math.floor(about.top.length / 4)]!,
    words: [box.left + (box.right - box.left) * 0.1, box.top + 2 * rowOf(box)],
  };
}

function holeMarks(hole: Hole, edge: readonly Point[], about: Around): Drawing['marks'] {
  const box = boxOf(edge);
  const row = rowOf(boxAround(about));
  const left = about.bottom[0]![0];
  const middle = (box.bottom + box.top) / 2;
  const note = (text: string, at: Point, rows: number): Callout => ({
    kind: 'callout',
    text,
    at,
    words: [box.right + 2 * row, box.top + rows * row],
  });
  return [
    ...(about.straight ? [level('to the hole', [left, box.left], middle)] : []),
    level('hole, wide', [box.left, box.right], box.top, box.top + row),
    ...(hole.notch ? [] : [upright('edge to hole', [0, box.bottom], 0, box.left - 0.5 * row)]),
    upright('hole, tall', [box.bottom, box.top], (box.left + box.right) / 2, box.right + row),
    ...(hole.grazes ? [grazedMark(edge, box, row)] : []),
    ...(about.straight ? [] : [note('the middle of the hole is on the middle of the sheet', [0, box.top], 3)]),
    ...(hole.notch ? [note('the hole runs out at the edge: cut a notch', [0, 0], 3)] : []),
  ];
}

/** The straight end of a hole whose tube grazes the side. */
function grazedMark(edge: readonly Point[], { left, right }: Box, row: number): LengthMark {
  const [first, last] = [edge[0]!, edge.at(-1)!];
  const [low, high] = Math.abs(last[1] - first[1]) > 1e-6 ? [first, last] : endsAtMost(edge);
  const aside = low[0] > (left + right) / 2 ? -0.45 * row : 0.45 * row;
  return length('straight edge', low, high, aside);
}

/** Lower and upper end of the edge at the largest turn: the turns run out and back. */
function endsAtMost(edge: readonly Point[]): readonly [Point, Point] {
  const half = edge.length / 2;
  return [edge[half - 1]!, edge[half]!];
}

function saysOf(name: string, about: Around, hole: readonly Point[] | undefined, units: UnitSystem): string {
  const { bottom, top, slant_m, straight, overlap_m } = about;
  const size = (value: number): string => formatTape(value, units);
  const wide = (edge: readonly Point[]): number => edge.at(-1)![0] - edge[0]![0];
  const sheet = straight
    ? `a rectangle ${size(wide(bottom))} by ${size(slant_m)}`
    : `part of a ring, ${size(wide(bottom))} straight across below, ${size(wide(top))} above, ${size(slant_m)} along the edge`;
  const lap = overlap_m > 0 ? `, and ${size(overlap_m)} of lap` : '';
  if (hole === undefined) return `${name}: ${sheet}${lap}`;
  const box = boxOf(hole);
  return `${name}: ${sheet}${lap}; tuyere hole ${size(box.right - box.left)} wide and ${size(box.top - box.bottom)} tall, ${box.bottom > 1e-9 ? `${size(box.bottom)} above the lower edge` : 'open at the lower edge'}`;
}
