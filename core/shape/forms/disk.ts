import { formatTape } from '../../quantity/tape.ts';
import type { Line, Point } from '../drawing.ts';
import { length, level, rowOf, upright } from './marks.ts';
import { boxOf, circle } from './outline.ts';
import type { Piece } from './piece.ts';

/** A round sheet, whole or in level strips that lap each other by a length along their upper edge, m. */
export function diskPieces(name: string, radius_m: number, strips: number, overlap_m: number): readonly Piece[] {
  const whole = circle({ radius_m });
  return Array.from({ length: strips }, (_, at): Piece => {
    const [from, seam] = [at, at + 1].map((n) => -radius_m + (2 * radius_m * n) / strips) as [number, number];
    const to = at + 1 === strips ? radius_m : Math.min(radius_m, seam + overlap_m);
    const outline = strips === 1 ? whole : between(whole, from, to);
    const box = boxOf(outline);
    const row = rowOf(box);
    const middle = (from + seam) / 2;
    const words = strips === 1 ? name : `${name}, strip ${at + 1} of ${strips}`;
    const lines: Line[] = [];
    if (to > seam) {
      const half = Math.sqrt(radius_m ** 2 - seam ** 2);
      const points: Point[] = [
        [-half, seam],
        [half, seam],
      ];
      lines.push({ kind: 'line', name: 'seam: the next strip comes here', stroke: 'fold', points });
    }
    return {
      name: words,
      kind: 'disk',
      from: 'mesh',
      outline,
      holes: [],
      lines,
      marks: () => [
        ...(strips === 1
          ? [level('diameter', [-radius_m, radius_m], 0, box.bottom - row)]
          : [
              length('radius', [0, 0], [-Math.sqrt(radius_m ** 2 - middle ** 2), middle]),
              ...(strips === 2 ? [] : [upright('strip', [from, seam], box.left, box.left - row)]),
              ...(from > -radius_m && Math.abs(from) > 1e-6 * radius_m
                ? [upright('', [Math.min(0, from), Math.max(0, from)], 0)]
                : []),
            ]),
        ...(to > seam ? [upright('lap', [seam, to], box.right, box.right + row)] : []),
      ],
      says: (units) =>
        `${words}: a disk ${formatTape(2 * radius_m, units)} across${strips === 1 ? '' : `, cut in ${strips} strips`}`,
    };
  });
}

/** What of an outline lies between two levels. */
function between(outline: readonly Point[], bottom: number, top: number): readonly Point[] {
  return cut(cut(outline, bottom, 1), top, -1);
}

/** What of a convex outline lies on one side of a level: above it (1) or below it (−1). */
function cut(outline: readonly Point[], level_m: number, side: 1 | -1): readonly Point[] {
  const keeps = ([, y]: Point): boolean => side * (y - level_m) >= 0;
  return outline.flatMap((point, at): readonly Point[] => {
    const next = outline[(at + 1) % outline.length]!;
    const kept = keeps(point) ? [point] : [];
    if (keeps(point) === keeps(next)) return kept;
    const share = (level_m - point[1]) / (next[1] - point[1]);
    return [...kept, [point[0] + share * (next[0] - point[0]), level_m]];
  });
}
