import type { Drive } from '../wall-run.ts';

type Points = Extract<Drive, { kind: 'temperature' }>['points'];

/**
 * Face temperature at a time: linear between the points, held before the first and after the last. Of two points at
 * one time (a jump) the later holds from then on.
 */
export function faceAt(points: Points, time_s: number): number {
  const next = points.findIndex(([at]) => at > time_s);
  if (next === 0) return points[0]![1];
  if (next === -1) return points.at(-1)![1];
  const [from_s, from_K] = points[next - 1]!;
  const [to_s, to_K] = points[next]!;
  return from_K + ((to_K - from_K) * (time_s - from_s)) / (to_s - from_s);
}

/** Just before a time: differs from `faceAt` where the programme jumps. */
export function faceUpTo(points: Points, time_s: number): number {
  const next = points.findIndex(([at]) => at >= time_s);
  if (next === 0) return points[0]![1];
  if (next === -1) return points.at(-1)![1];
  const [from_s, from_K] = points[next - 1]!;
  const [to_s, to_K] = points[next]!;
  return from_K + ((to_K - from_K) * (time_s - from_s)) / (to_s - from_s);
}

/** Times inside a phase at which the slope changes or the face jumps: a step has to end on each; the last is its end. */
export function stopsOf(drive: Drive, from_s: number, until_s: number): readonly number[] {
  const kinks = drive.kind === 'temperature' ? drive.points.map(([at]) => at) : [];
  return [...new Set(kinks.filter((at) => at > from_s && at < until_s)), until_s];
}
