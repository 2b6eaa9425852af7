import type { LengthMark, Point } from '../drawing.ts';
import type { Box } from './outline.ts';

/** Room for one row of dimensions beside a drawing, m: a share of its size, more where many words shrink it. */
export const rowOf = ({ left, right, bottom, top }: Box, share = 0.055): number =>
  share * Math.max(right - left, top - bottom);

export const length = (name: string, from: Point, to: Point, off_m = 0): LengthMark => ({
  kind: 'length',
  name,
  from,
  to,
  off_m,
});

/** Level dimension at a height of its own: `line` is where its line runs. */
export const level = (name: string, [from, to]: readonly [number, number], at: number, line = at): LengthMark =>
  length(name, [from, at], [to, at], line - at);

/** Upright dimension, read from below: `line` is where its line runs. */
export const upright = (name: string, [from, to]: readonly [number, number], at: number, line = at): LengthMark =>
  length(name, [at, from], [at, to], at - line);
