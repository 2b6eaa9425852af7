/** A quantity at both ends of a step, and how fast it changes there. */
export interface Span {
  readonly step_s: number;
  readonly from_K: number;
  readonly from_rate: number;
  readonly to_K: number;
  readonly to_rate: number;
}

/** Cubic through both ends with their slopes, at a share of the step. */
export function cubicAt({ step_s, from_K, from_rate, to_K, to_rate }: Span, share: number): number {
  const back = 1 - share;
  return (
    back * back * ((1 + 2 * share) * from_K + share * step_s * from_rate) +
    share * share * ((1 + 2 * back) * to_K - back * step_s * to_rate)
  );
}

/** Share of the step at which the cubic has its top, where it rises at the start and falls at the end. */
export function topShare({ step_s, from_K, from_rate, to_K, to_rate }: Span): number | undefined {
  if (!(from_rate > 0 && to_rate < 0)) return undefined;
  const mean = (to_K - from_K) / step_s;
  // Slope at share x: a x² + b x + c, positive at 0, negative at 1: one root between.
  const a = 3 * (from_rate + to_rate) - 6 * mean;
  const b = 6 * mean - 4 * from_rate - 2 * to_rate;
  const c = from_rate;
  const root = Math.sqrt(Math.max(b * b - 4 * a * c, 0));
  // c > 0 and a + b + c < 0 leave one of these two inside; the form without cancellation.
  const share = (2 * c) / (-b + root);
  return share > 0 && share < 1 ? share : undefined;
}
