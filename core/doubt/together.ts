import type { SourceId, Standing } from '../sources/source.ts';
import { haltonColumn } from './halton.ts';
import { normalAt, normalShare } from './normal.ts';

/**
 * Of two inputs one goes with the other, for a physical reason: a denser brick conducts more. Judged where no source
 * gives the number.
 */
export interface Tie<K extends string> {
  readonly input: K;
  readonly goesWith: K;
  /** Spearman's correlation of their ranks, −1 to 1. */
  readonly rank: number;
  readonly why: string;
  readonly source: SourceId;
  readonly standing: Standing | 'judged';
}

/**
 * Shares (0 to 1) at which each input is drawn, one column an input: Halton's own, and for an input that goes with
 * another the two of them joined by a Gaussian copula, z = r·z(other) + √(1 − r²)·z(own) with r = 2 sin(π ρ / 6) for a
 * rank correlation ρ. Each column stays evenly spread, so that what is drawn alone is drawn as before. An input goes with
 * one other at most (the first that is said), which makes any set of ties possible; ties to inputs that are not drawn do nothing.
 * @throws RangeError for a rank beyond ±1 and for ties that go in a ring.
 */
export function shareColumns<K extends string>(
  names: readonly K[],
  ties: readonly Tie<K>[],
  count: number,
): readonly Float64Array[] {
  const dimensionOf = new Map(names.map((name, dimension) => [name, dimension]));
  const tieOf = new Map<K, Tie<K>>();
  for (const tie of ties) {
    if (!(Math.abs(tie.rank) <= 1)) throw new RangeError(`rank of ${tie.input}: from −1 to 1, not ${tie.rank}.`);
    if (dimensionOf.has(tie.input) && dimensionOf.has(tie.goesWith) && !tieOf.has(tie.input)) tieOf.set(tie.input, tie);
  }
  const done = new Map<K, Float64Array>();
  const columnOf = (name: K, behind: readonly K[]): Float64Array => {
    const known = done.get(name);
    if (known) return known;
    if (behind.includes(name)) throw new RangeError(`ties go in a ring: ${[...behind, name].join(' → ')}.`);
    const own = haltonColumn(dimensionOf.get(name)!, count);
    const tie = tieOf.get(name);
    const column = tie ? joined(own, columnOf(tie.goesWith, [...behind, name]), tie.rank, count) : own;
    done.set(name, column);
    return column;
  };
  return names.map((name) => columnOf(name, []));
}

/** At ρ = 0 and ±1 it is the one column or the other itself, to the last digit. */
function joined(own: Float64Array, other: Float64Array, rank: number, count: number): Float64Array {
  if (rank === 0) return own;
  if (rank === 1) return other;
  if (rank === -1) return other.map((share) => 1 - share);
  const r = 2 * Math.sin((Math.PI * rank) / 6);
  const rest = Math.sqrt(1 - r * r);
  return Float64Array.from({ length: count }, (_, at) =>
    normalShare(r * normalAt(other[at]!) + rest * normalAt(own[at]!)),
  );
}
