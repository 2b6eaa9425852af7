import type { UnitSystem } from '../quantity/figure.ts';
import { formatTape } from '../quantity/tape.ts';
import type { Drawing, LengthMark, Line, Point } from './drawing.ts';
import type { Sleeve } from './sleeve.ts';

/**
 * The sleeve's sheet laid flat, full size: the curve that stands on the lining below, the one at the vessel above, each
 * with its tabs beyond it, the seam's overlap at the right. x round the sleeve from its lowest line, y along it; words lead
 * with `units`.
 */
export function drawSleeve(sleeve: Sleeve, units: UnitSystem): Drawing {
  const { round_m, sheet, tabs_count, tab_length_m: tab_m } = sleeve;
  const lining = withSeam(sleeve.at_lining, round_m, sheet.width_m).map(([x, y]): Point => [x, y + tab_m]);
  const vessel = withSeam(sleeve.at_vessel, round_m, sheet.width_m).map(([x, y]): Point => [x, y + tab_m]);
  const moved = (points: readonly Point[], up_m: number) => points.map(([x, y]): Point => [x, y + up_m]);
  const lower = moved(lining, -tab_m);
  const upper = moved(vessel, tab_m);
  const outline = [...lower, ...upper.toReversed()];
  const cuts = Array.from({ length: tabs_count + 1 }, (_, at) => (round_m * at) / tabs_count).flatMap((x) =>
    [at(lining, x), at(vessel, x) + tab_m].map(
      (y): Line => ({
        kind: 'line',
        name: 'cut',
        stroke: 'cut',
        points: [
          [x, y - tab_m],
          [x, y],
        ],
      }),
    ),
  );
  const folds = [lining, vessel].map((points): Line => ({ kind: 'line', name: 'fold', stroke: 'fold', points }));
  const row_m = 0.08 * Math.max(sheet.length_m, sheet.width_m);
  const middle_m = round_m / 2;
  const size = (length_m: number) => formatTape(length_m, units);
  return {
    id: 'sleeve',
    title: 'Sleeve round the tuyere, flat',
    alt: `A sheet ${size(sheet.width_m)} round by ${size(sheet.length_m)} along; ${tabs_count} tabs of ${size(tab_m)} at each end, beyond the curves that meet lining and vessel.`,
    shapes: [
      { kind: 'area', name: 'sheet', matter: 'sheet', outline },
      { kind: 'line', name: 'cut', stroke: 'cut', points: [...outline, ...outline.slice(0, 1)] },
      ...folds,
      ...cuts,
    ],
    marks: [
      mark('once round', [0, 0], [round_m, 0], -row_m),
      mark('overlap', [round_m, 0], [sheet.width_m, 0], -row_m),
      mark('whole sheet', [0, 0], [0, sheet.length_m], row_m),
      mark('lowest line', [0, at(lining, 0)], [0, at(vessel, 0)], -row_m / 2),
      mark('top line', [middle_m, at(lining, middle_m)], [middle_m, at(vessel, middle_m)], 0),
      mark(
        'tab',
        [sheet.width_m, at(vessel, sheet.width_m)],
        [sheet.width_m, at(vessel, sheet.width_m) + tab_m],
        -row_m,
      ),
      {
        kind: 'callout',
        text: 'stands on the lining',
        at: [round_m / 4, at(lining, round_m / 4)],
        words: [round_m / 4, -2.2 * row_m],
      },
      {
        kind: 'callout',
        text: 'meets the vessel',
        at: [(3 * round_m) / 4, at(vessel, (3 * round_m) / 4)],
        words: [(3 * round_m) / 4, sheet.length_m + 1.2 * row_m],
      },
    ],
    fullSize: true,
  };
}

const mark = (name: string, from: Point, to: Point, off_m: number): LengthMark => ({
  kind: 'length',
  name,
  from,
  to,
  off_m,
});

/** A curve that closes goes on over the seam as it began. */
function withSeam(points: readonly Point[], round_m: number, width_m: number): readonly Point[] {
  const over = points.slice(1).map(([x, y]): Point => [x + round_m, y]);
  const kept = over.filter(([x]) => x < width_m);
  return [...points, ...kept, [width_m, at(points, width_m - round_m)]];
}

/** Height of a curve at a place, straight between its points. */
function at(points: readonly Point[], x: number): number {
  const next = points.findIndex(([one]) => one >= x - 1e-12);
  const [x1, y1] = points[Math.max(0, next)] ?? [0, 0];
  const [x0, y0] = points[Math.max(0, next - 1)] ?? [x1, y1];
  return x1 === x0 ? y1 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}
