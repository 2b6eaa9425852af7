import type { SiUnit, UnitSystem } from '../../core/quantity/figure.ts';
import type { Assumption } from '../card.ts';

export type Comparison = 'at most' | 'at least' | 'about';

/** A statement as it was understood: one figure of one or two questions, and the number it is held against. */
export interface Claimed {
  /** Question lines: one, or two where the claim is about a difference or a share between them. */
  readonly lines: readonly [string] | readonly [string, string];
  /** Id of the figure. */
  readonly figure: string;
  /** What the figure is, in the words of the claim: `the fuel burned`. */
  readonly of: string;
  readonly compare: Comparison;
  /** Of the figure, of the first less the second, or of the first over the second. */
  readonly kind: 'value' | 'difference' | 'share';
  readonly value: number;
  readonly unit: SiUnit;
  readonly system: UnitSystem | undefined;
  /** A hand depends on it: judged by the adverse end. */
  readonly careful?: true;
  readonly assumed: readonly Assumption[];
}
