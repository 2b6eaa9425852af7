import type { Area, Drawing, Line, Point } from '../../core/shape/drawing.ts';
import { type Bounds, type Box, boundsOf, cornersOf, type Px, reachAcross, type Segment } from './box.ts';
import { footOf, margin_px } from './foot.ts';
import { filled } from './hatch.ts';
import { linesOf, sans } from './letters.ts';
import { arrowLength, type Laid, laid, lineHeight, type Measure, toPx } from './marks.ts';
import { type Candidate, placed } from './place.ts';
import { strokeOf } from './stroke.ts';
import { element, escaped, named, short } from './svg.ts';
import { type Colours, coloursOf, heading_px, layout_px, letter_px, type PictureLook } from './theme.ts';

/** The tallest a drawing may be before it is made smaller than the page is wide. */
const tallest_px = 1250;

/** A drawing to scale with its dimensions in both systems, a scale bar and a legend. */
export function drawingSvg(drawing: Drawing, { units, theme, width_px = layout_px }: PictureLook): string {
  const colours = coloursOf(theme);
  const room = { width: layout_px - 2 * margin_px, height: tallest_px };
  const fit = fitted(drawing, units, room);
  const width = Math.max(layout_px, fit.bounds.right - fit.bounds.left + 2 * margin_px);
  const title = linesOf(drawing.title, heading_px, width - 2 * margin_px, { bold: true });
  const top = margin_px + title.length * heading_px * lineHeight + 14;
  const picture = { x: (width - fit.bounds.left - fit.bounds.right) / 2, y: top - fit.bounds.top };
  const below = top + fit.bounds.bottom - fit.bounds.top + 22;
  const foot = footOf(drawing, fit.measure, { top: below, width, colours });
  const height = Math.ceil(foot.bottom + margin_px);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${short(width)} ${height}" width="${width_px}" height="${short((height * width_px) / width)}" role="img" font-family="${sans}, sans-serif" font-size="${letter_px}">`,
    named(drawing.title, drawing.alt),
    element('rect', { width, height, fill: colours.page }),
    ...title.map((line, at) =>
      element(
        'text',
        {
          x: margin_px,
          y: margin_px + (at + 0.8) * heading_px * lineHeight,
          'font-size': heading_px,
          'font-weight': 'bold',
          fill: colours.ink,
        },
        escaped(line),
      ),
    ),
    element(
      'g',
      { transform: `translate(${short(picture.x)} ${short(picture.y)})` },
      shapesSvg(drawing, fit.measure, colours) + marksSvg(fit, colours),
    ),
    foot.svg,
    '</svg>\n',
  ].join('\n');
}

export interface Fitted {
  readonly measure: Measure;
  readonly marks: readonly Laid[];
  readonly labels: readonly Candidate[];
  readonly bounds: Bounds;
}

/** All marks with their words in place, at one scale; `also` is what a place of words costs for a reason of the page's own. */
export function arranged(drawing: Drawing, measure: Measure, also?: (box: Box) => number): Fitted {
  const marks = drawing.marks.map((mark) => laid(mark, measure));
  const outlines = drawing.shapes.map((shape) =>
    outlinesOf(shape).map((outline) => outline.map((point) => toPx(point, measure))),
  );
  const edges = outlines.flat().flatMap((outline) => edgesOf(outline, measure.letter / 2));
  const labels = placed(marks, edges, also);
  const bounds = boundsOf([
    ...outlines.flat(2),
    ...marks.flatMap(({ strokes: lines, witnesses = [] }) => [...lines, ...witnesses].flat()),
    ...labels.flatMap(({ box }) => cornersOf(box)),
  ]);
  return { measure, marks, labels, bounds };
}

/** Room left empty that nobody sees; each step towards less sets all words anew. */
const wellFilled = 0.06;

/** Words keep their size whatever the scale, so the scale that fills the room is sought in a few steps. */
export function fitted(drawing: Drawing, units: Measure['units'], room: { width: number; height: number }): Fitted {
  const body = boundsOf(drawing.shapes.flatMap((shape) => outlinesOf(shape)).flat());
  const [width_m, height_m] = [Math.max(body.right - body.left, 1e-4), Math.max(body.bottom - body.top, 1e-4)];
  let px_m = 0.7 * Math.min(room.width / width_m, room.height / height_m);
  let best: { fit: Fitted; miss: number } | undefined;
  for (let step = 0; step < 5; step++) {
    const fit = arranged(
      drawing,
      { px_m, letter: letter_px, units },
      beyond(((body.left + body.right) / 2) * px_m, room.width),
    );
    const [width, height] = [fit.bounds.right - fit.bounds.left, fit.bounds.bottom - fit.bounds.top];
    const filling = Math.max(width / room.width, height / room.height);
    const miss = filling > 1 ? 3 * (filling - 1) : 1 - filling;
    if (!best || miss < best.miss) best = { fit, miss };
    if (miss < wellFilled) break;
    const left = (have: number, used: number, body_m: number) =>
      Math.max(have - (used - body_m * px_m), 0.3 * have) / body_m;
    const next = Math.min(left(room.width, width, width_m), left(room.height, height, height_m));
    // The same scale would only be arranged the same again.
    if (next === px_m) break;
    px_m = next;
  }
  return best!.fit;
}

/** Words beyond the page's width make it wider, and so every letter smaller: dearer than words in two lines. */
const beyond =
  (middle: number, width: number) =>
  (box: Box): number => {
    const over = Math.max(0, Math.abs(box.middle[0] - middle) + reachAcross(box) - width / 2);
    return over === 0 ? 0 : 10 + over / 5;
  };

export const outlinesOf = (shape: Area | Line): readonly (readonly Point[])[] =>
  shape.kind === 'area' ? [close(shape.outline), ...(shape.holes ?? []).map(close)] : [shape.points];

const close = (outline: readonly Point[]): readonly Point[] => [...outline, ...outline.slice(0, 1)];

/** Edges for the collision pass; chords of a curve are joined until they are worth looking at. */
function edgesOf(outline: readonly Px[], least: number): readonly Segment[] {
  const edges: Segment[] = [];
  let from = outline[0];
  for (const [at, to] of outline.entries()) {
    if (!from || (Math.hypot(to[0] - from[0], to[1] - from[1]) < least && at < outline.length - 1)) continue;
    edges.push([from, to]);
    from = to;
  }
  return edges;
}

export const pathOf = (outlines: readonly (readonly Px[])[], end: string): string =>
  outlines.map((points) => `M${points.map(([x, y]) => `${short(x)} ${short(y)}`).join('L')}${end}`).join('');

export function shapesSvg({ shapes }: Drawing, measure: Measure, colours: Colours): string {
  return shapes
    .map((shape) => {
      if (shape.kind === 'area') {
        const outlines = [shape.outline, ...(shape.holes ?? [])].map((outline) =>
          outline.map((point) => toPx(point, measure)),
        );
        return filled(outlines, shape.matter, colours);
      }
      const d = pathOf([shape.points.map((point) => toPx(point, measure))], '');
      return element('path', { d, ...strokeOf(shape.stroke, colours, measure.letter) });
    })
    .join('\n');
}

/** The same without fills and hatches: a pattern to cut along saves its ink. */
export function shapeLinesSvg({ shapes }: Drawing, measure: Measure, colours: Colours): string {
  return shapes
    .map((shape) => {
      const d = pathOf(
        outlinesOf(shape).map((outline) => outline.map((point) => toPx(point, measure))),
        '',
      );
      return element('path', {
        d,
        ...strokeOf(shape.kind === 'line' ? shape.stroke : 'cut', colours, measure.letter / 2),
      });
    })
    .join('\n');
}

/** Lines first, then the plates under the words, then the words: nothing runs through a letter. */
export function marksSvg({ marks, labels, measure: { letter } }: Fitted, { measure: ink, page }: Colours): string {
  const thin = 0.065 * letter;
  const leaders = labels.flatMap(({ leader }) => (leader ? [leader] : []));
  const lines = pathOf([...marks.flatMap((mark) => (mark.dot ? [] : mark.strokes)), ...leaders], '');
  const witnesses = pathOf(
    marks.flatMap((mark) => mark.witnesses ?? []),
    '',
  );
  const arrows = marks
    .flatMap((mark) => mark.arrows.map(({ tip, turn_rad }) => arrowSvg(tip, turn_rad, letter)))
    .join('');
  const dots = marks.flatMap(({ dot }) =>
    dot ? [element('circle', { cx: dot[0], cy: dot[1], r: 0.2 * letter, fill: ink })] : [],
  );
  return [
    element('path', { d: lines, fill: 'none', stroke: page, 'stroke-width': thin * 3.4, 'stroke-opacity': 0.75 }),
    element('path', { d: lines + witnesses, fill: 'none', stroke: ink, 'stroke-width': thin }),
    element('path', { d: arrows, fill: ink }),
    ...dots,
    ...labels.map(({ box: { middle, half, turn_rad } }) =>
      element('rect', {
        x: -half[0],
        y: -half[1],
        width: 2 * half[0],
        height: 2 * half[1],
        rx: 0.2 * letter,
        fill: page,
        'fill-opacity': 0.88,
        transform: placeOf(middle, turn_rad),
      }),
    ),
    wordsSvg(labels, letter, ink),
  ].join('\n');
}

const placeOf = ([x, y]: Px, turn_rad: number): string =>
  `translate(${short(x)} ${short(y)})${turn_rad === 0 ? '' : ` rotate(${short((turn_rad * 180) / Math.PI)})`}`;

/** No space between the lines: in one text element it would push them off their middle. */
function wordsSvg(labels: readonly Candidate[], letter: number, fill: string): string {
  const look = { 'text-anchor': 'middle', 'font-size': letter, fill };
  const linesAt = ({ lines }: Candidate, [x, y]: Px): string =>
    lines
      .map((line, at) =>
        element('tspan', { x, y: y + ((at - (lines.length - 1) / 2) * lineHeight + 0.36) * letter }, escaped(line)),
      )
      .join('');
  const level = labels.filter(({ box }) => box.turn_rad === 0);
  const turned = labels.filter(({ box }) => box.turn_rad !== 0);
  return [
    ...(level.length > 0
      ? [element('text', look, level.map((label) => linesAt(label, label.box.middle)).join(''))]
      : []),
    ...turned.map((label) =>
      element('text', { ...look, transform: placeOf(label.box.middle, label.box.turn_rad) }, linesAt(label, [0, 0])),
    ),
  ].join('\n');
}

function arrowSvg([x, y]: Px, turn_rad: number, letter: number): string {
  const [long, wide] = [arrowLength * letter, 0.17 * letter];
  const at = (along: number, aside: number): string => {
    const [cos, sin] = [Math.cos(turn_rad), Math.sin(turn_rad)];
    return `${short(x - along * cos - aside * sin)} ${short(y - along * sin + aside * cos)}`;
  };
  return `M${at(0, 0)}L${at(long, wide)}L${at(long, -wide)}Z`;
}
