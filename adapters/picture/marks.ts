import type { UnitSystem } from '../../core/quantity/figure.ts';
import { onTape } from '../../core/quantity/tape.ts';
import type { AngleMark, Callout, Drawing, LengthMark, Point } from '../../core/shape/drawing.ts';
import { type Box, between, distance, moved, nearestOf, type Px, type Segment } from './box.ts';
import { linesOf, widthOf } from './letters.ts';
import type { Candidate, Wanted } from './place.ts';

/** How the drawing's metres become px, and how large letters are. */
export interface Measure {
  readonly px_m: number;
  readonly letter: number;
  readonly units: UnitSystem;
}

/** A mark ready to be drawn but for the place of its words. Sizes are in letters, so that they fit any paper. */
export interface Laid extends Wanted {
  readonly arrows: readonly { readonly tip: Px; readonly turn_rad: number }[];
  readonly dot?: Px;
}

export const lineHeight = 1.16;
export const arrowLength = 0.62;

export const toPx = ([x_m, y_m]: Point, { px_m }: Pick<Measure, 'px_m'>): Px => [x_m * px_m, -y_m * px_m];

/** As a tape has them, the reader's units first. */
export const bothSystems = (length_m: number, units: UnitSystem): readonly [lead: string, other: string] =>
  units === 'US'
    ? [onTape(length_m, 'US'), onTape(length_m, 'metric')]
    : [onTape(length_m, 'metric'), onTape(length_m, 'US')];

export function laid(mark: Drawing['marks'][number], measure: Measure): Laid {
  if (mark.kind === 'length') return laidLength(mark, measure);
  return mark.kind === 'angle' ? laidAngle(mark, measure) : laidCallout(mark, measure);
}

function laidLength({ name, from, to, off_m }: LengthMark, measure: Measure): Laid {
  const { letter, units } = measure;
  const [start, end] = [toPx(from, measure), toPx(to, measure)];
  const turn = Math.atan2(end[1] - start[1], end[0] - start[0]);
  const off = off_m * measure.px_m;
  // Left of the way in the drawing's plane; px run downwards, and `aside` points right.
  const [a, b] = [moved(start, turn, 0, -off), moved(end, turn, 0, -off)];
  const length = distance(a, b);
  const outside = length < 3 * arrowLength * letter;
  const tail = outside ? 1.5 * letter : 0;
  const line: Segment = [moved(a, turn, -tail), moved(b, turn, tail)];
  const side = Math.sign(off) * -1;
  const witness = (point: Px): readonly Segment[] =>
    Math.abs(off) < 0.5 * letter
      ? []
      : [[moved(point, turn, 0, side * 0.2 * letter), moved(point, turn, 0, -off + side * 0.3 * letter)]];
  const turned = outside ? Math.PI : 0;
  const values = bothSystems(Math.hypot(to[0] - from[0], to[1] - from[1]), units);
  const forms = lengthForms(name, values);
  return {
    strokes: [line],
    witnesses: [...witness(start), ...witness(end)],
    arrows: [
      { tip: a, turn_rad: turn + Math.PI + turned },
      { tip: b, turn_rad: turn + turned },
    ],
    near: forms.flatMap(({ lines, price }) => alongside(lines, { a, b, turn, tail }, letter, price)),
    far: {
      price: pointedAt,
      candidates: () =>
        forms.flatMap(({ lines, price }) => around(lines, between(a, b, 0.5), letter, { price: price + pointedAt })),
    },
  };
}

/** Words beside their line are read sooner than words with a leader to it. */
const pointedAt = 55;

const lengthForms = (name: string, [lead, other]: readonly [string, string]) =>
  name === ''
    ? [
        { lines: [`${lead} · ${other}`], price: 0 },
        { lines: [lead, other], price: 6 },
      ]
    : [
        { lines: [`${name} ${lead} · ${other}`], price: 0 },
        { lines: [name, `${lead} · ${other}`], price: 6 },
        { lines: [name, lead, other], price: 14 },
      ];

/** Beside the line, nudged along it; past its ends where it is short; level text beside a steep line. */
function alongside(
  lines: readonly string[],
  { a, b, turn, tail }: { a: Px; b: Px; turn: number; tail: number },
  letter: number,
  price: number,
): readonly Candidate[] {
  const [w, h] = halfOf(lines, letter);
  const read = readable(turn);
  const middle = between(a, b, 0.5);
  const length = distance(a, b);
  const slack = length / 2 - w - arrowLength * letter;
  const aside = h + 0.12 * letter;
  const steep = Math.abs(Math.sin(read)) > 0.5;
  // Words on a slant are read last.
  const slanted = Math.min(Math.abs(Math.sin(read)), Math.abs(Math.cos(read))) > 0.03 ? 40 : 0;
  const found: Candidate[] = [];
  const add = (at: Px, turn_rad: number, more: number) =>
    found.push({ lines, box: { middle: at, half: [w, h], turn_rad }, price: price + more });
  if (slack > 0) {
    for (const share of [0, 0.4, -0.4, 0.8, -0.8]) {
      for (const [sign, dear] of [
        [-1, 0],
        [1, 5],
      ] as const) {
        add(
          moved(middle, read, share * slack, sign * aside),
          read,
          Math.abs(share) * 12 + dear + (steep ? 4 : 0) + slanted,
        );
      }
    }
  }
  for (const sign of [1, -1]) {
    const past = length / 2 + tail + 0.3 * letter;
    add(moved(middle, read, sign * (past + w)), read, 16 + (steep ? 64 : 0) + slanted);
    // Level text past the end of a steep line, centred on it.
    if (steep) add(moved(middle, read, sign * (past + h)), 0, 20);
    if (steep)
      for (const share of [0, 0.3, -0.3])
        add(
          moved(moved(middle, read, share * length), 0, sign * (w + 0.3 * letter)),
          0,
          12 + 20 * Math.abs(share) + w / letter,
        );
  }
  return found;
}

/** Text that reads from below or from the right, never upside down. */
function readable(turn: number): number {
  let read = turn;
  while (read > Math.PI / 2 - 1e-6) read -= Math.PI;
  while (read < -Math.PI / 2 - 1e-6) read += Math.PI;
  return read;
}

const nothing = { price: Infinity, candidates: () => [] };
const rings = [1, 2, 3.2, 4.6, 6.2, 8, 10, 13, 17];
const ways = 16;

/** Level text on rings around a point, with a leader to it. */
function around(
  lines: readonly string[],
  target: Px,
  letter: number,
  { price = 0, centre = target }: { price?: number; centre?: Px } = {},
): readonly Candidate[] {
  const half = halfOf(lines, letter);
  const at = (middle: Px, far: number): Candidate => {
    const box: Box = { middle, half, turn_rad: 0 };
    const edge = nearestOf(box, target);
    const reach = edge ? distance(edge, target) / letter : 0;
    return { lines, box, price: price + 3 * far + reach, ...(edge ? { leader: [edge, target] } : {}) };
  };
  const found: Candidate[] = centre === target ? [] : [at(centre, 0)];
  for (const ring of rings) {
    for (let way = 0; way < ways; way++) {
      const turn = (way / ways) * 2 * Math.PI;
      const reach: Px = [ring * letter + half[0] * Math.abs(Math.cos(turn)), ring * letter + half[1]];
      const free: Px = centre === target ? reach : [ring * letter * 0.8, ring * letter * 0.8];
      found.push(at([centre[0] + free[0] * Math.cos(turn), centre[1] + free[1] * Math.sin(turn)], ring));
    }
  }
  return found;
}

function laidAngle({ name, corner, from, to }: AngleMark, measure: Measure): Laid {
  const { letter } = measure;
  const [c, f, t] = [corner, from, to].map((point) => toPx(point, measure)) as [Px, Px, Px];
  const start = Math.atan2(f[1] - c[1], f[0] - c[0]);
  let sweep = Math.atan2(t[1] - c[1], t[0] - c[0]) - start;
  while (sweep > Math.PI) sweep -= 2 * Math.PI;
  while (sweep <= -Math.PI) sweep += 2 * Math.PI;
  const radius = Math.max(1.5 * letter, Math.min(distance(c, f), distance(c, t)) * 0.7);
  const on = (share: number): Px => moved(c, start + share * sweep, radius);
  const steps = 24;
  const arc = Array.from({ length: steps }, (_, at): Segment => [on(at / steps), on((at + 1) / steps)]);
  const legs: readonly Segment[] = [
    [c, moved(c, start, radius * 1.08)],
    [c, moved(c, start + sweep, radius * 1.08)],
  ];
  const degrees = `${Number(((Math.abs(sweep) * 180) / Math.PI).toFixed(1))}°`;
  const turn = Math.sign(sweep) * (Math.PI / 2);
  const roomy = Math.abs(sweep) * radius > 3 * arrowLength * letter;
  return {
    strokes: arc,
    witnesses: legs,
    arrows: roomy
      ? [
          { tip: on(0), turn_rad: start - turn },
          { tip: on(1), turn_rad: start + sweep + turn },
        ]
      : [],
    near: around([name === '' ? degrees : `${name} ${degrees}`], on(0.5), letter),
    far: nothing,
  };
}

const calloutLetters = 14;
/** A number stays on the line of its fraction and its unit. */
const unbroken = (text: string): string => text.replace(/(?<=\d) (?=\d+\/|in\b|mm\b)/g, '\u00a0');

function laidCallout({ text, at, words }: Callout, measure: Measure): Laid {
  const { letter } = measure;
  const [target, stand] = [toPx(at, measure), toPx(words, measure)];
  const lines = linesOf(unbroken(text), letter, calloutLetters * letter);
  const half = halfOf(lines, letter);
  // Words on what they are about need no leader.
  const onIt = { lines, box: { middle: target, half, turn_rad: 0 }, price: 0 };
  if (distance(target, stand) < letter) {
    return { strokes: [], arrows: [], near: [onIt, ...around(lines, target, letter, { price: 20 })], far: nothing };
  }
  const [w] = half;
  const aside = stand[0] - target[0];
  const centre: Px = [stand[0] + (Math.abs(aside) < letter ? 0 : Math.sign(aside) * w), stand[1]];
  return {
    strokes: [[moved(target, 0, -4), moved(target, 0, 4)]],
    arrows: [],
    dot: target,
    near: around(lines, target, letter, { centre }),
    far: nothing,
  };
}

/** Half width and height of a label with a little air. */
function halfOf(lines: readonly string[], letter: number): Px {
  const width = Math.max(...lines.map((line) => widthOf(line, letter)));
  return [width / 2 + 0.2 * letter, (lines.length * lineHeight * letter) / 2];
}
