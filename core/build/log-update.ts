import type { Tie } from '../doubt/together.ts';
import type { Line } from './log-line.ts';

/** Inputs in standard deviations from their middle: what is known of them, and where their draws have been moved. */
export interface Belief {
  readonly mean: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** Of a draw as it was: moved = mean + map × draw. */
  readonly map: readonly (readonly number[])[];
  /** Readings that were taken, their errors made independent of one another and 1. */
  readonly taken: readonly Whitened[];
}

interface Whitened {
  readonly model: string | undefined;
  readonly modelError: number;
  readonly weights: readonly number[];
  readonly own: number;
  readonly slopes: readonly number[];
  readonly surplus: number;
}

export interface Found {
  readonly belief: Belief;
  readonly off: number;
  readonly used: boolean;
  /** As the reading met them: what was known, its error beside the errors it shares with earlier ones, the gain. */
  readonly before: {
    readonly estimate: number;
    readonly spread: number;
    readonly error: number;
    readonly gain: number;
  };
}

/** Nothing read: inputs apart from each other unless they go together (see `core/doubt/together.ts`). */
export function begin(names: readonly string[], together: readonly Tie<string>[] = []): Belief {
  const identity = names.map((_, row) => names.map((_, column): number => (row === column ? 1 : 0)));
  const covariance = identity.map((row) => [...row]);
  for (const { input, goesWith, rank } of together) {
    const [a, b] = [names.indexOf(input), names.indexOf(goesWith)];
    if (a === -1 || b === -1) continue;
    covariance[a]![b] = covariance[b]![a] = 2 * Math.sin((Math.PI * rank) / 6);
  }
  return { mean: names.map(() => 0), covariance, map: identity, taken: [] };
}

/** No reading is more exact than this share of what it is read against: it keeps the arithmetic finite. */
const EXACT = 1e-9;

/**
 * One reading more. Errors of the model that readings share are taken out first (the next row of Cholesky's factor of
 * their covariance), so that what is left is independent; then gain = C h ÷ (hᵀ C h + 1), and the draws by
 * 1 − α × gain × hᵀ, α = 1 ÷ (1 + √(1 ÷ (hᵀ C h + 1))).
 */
export function take(
  belief: Belief,
  {
    value,
    error,
    model,
    line,
    most,
  }: {
    readonly value: number;
    readonly error: number;
    readonly model?: { readonly name: string; readonly error: number };
    readonly line: Line;
    readonly most: number;
  },
): Found {
  const { mean, covariance, map, taken } = belief;
  const modelError = model?.error ?? 0;
  const least = EXACT * Math.max(Math.hypot(...line.slopes), Math.abs(value) * EXACT, Number.MIN_VALUE);
  const variance = Math.max(error ** 2 + line.bend ** 2 + modelError ** 2, least ** 2);
  const weights: number[] = [];
  for (const one of taken) {
    const shared = model && one.model === model.name ? modelError * one.modelError : 0;
    const before = one.weights.reduce((sum, weight, at) => sum + weight * weights[at]!, 0);
    weights.push((shared - before) / one.own);
  }
  const own = Math.sqrt(Math.max(variance - dot(weights, weights), least ** 2));
  const plain = (one: number, others: readonly number[]) => (one - dot(weights, others)) / own;
  const slopes = line.slopes.map((slope, at) =>
    plain(
      slope,
      taken.map((one) => one.slopes[at]!),
    ),
  );
  const surplus = plain(
    value - line.at,
    taken.map((one) => one.surplus),
  );
  const known = covariance.map((row) => dot(row, slopes));
  const total = dot(slopes, known) + 1;
  const innovation = surplus - dot(slopes, mean);
  const off = Math.abs(innovation) / Math.sqrt(total);
  const before = {
    estimate: value - own * innovation,
    spread: own * Math.sqrt(Math.max(0, total - 1)),
    error: own,
    gain: (total - 1) / total,
  };
  if (!(off <= most)) return { belief, off, used: false, before };
  const gain = known.map((one) => one / total);
  const alpha = 1 / (1 + Math.sqrt(1 / total));
  const pulled = map[0]?.map((_, column) =>
    dot(
      slopes,
      map.map((row) => row[column]!),
    ),
  );
  return {
    off,
    used: true,
    before,
    belief: {
      mean: mean.map((one, at) => one + gain[at]! * innovation),
      covariance: covariance.map((row, at) => row.map((one, to) => one - total * gain[at]! * gain[to]!)),
      map: map.map((row, at) => row.map((one, to) => one - alpha * gain[at]! * pulled![to]!)),
      taken: [...taken, { model: model?.name, modelError, weights, own, slopes, surplus }],
    },
  };
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, one, at) => sum + one * b[at]!, 0);
