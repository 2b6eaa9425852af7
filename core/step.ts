import type { SourceId } from './sources/source.ts';

/**
 * Named plain numbers in SI. The key carries the unit as its suffix: `thickness_m`, `conductivity_W_mK`,
 * `rise_dK` (a difference) beside `surface_K` (a temperature), `spare` (a plain share of 1).
 */
export type Numbers = Readonly<Record<string, number>>;

/** One step of a calculation, as `why` shows it: the formula, what went in, what came out, where it is from. */
export interface Step {
  /** In symbols of the trade, e.g. `dry mass = volume × dry density × (1 + spare)`. */
  readonly formula: string;
  readonly inputs: Numbers;
  /** One or more results, unit in the key like the inputs. */
  readonly gives: Numbers;
  readonly source: SourceId;
  /** What it gives is known by another way than by the sum of its inputs: the balance shows that they agree. */
  readonly closes?: true;
}

/**
 * What every calculation returns beside its numbers. A function, so that steps cost nothing in the thousand
 * samples of a range and are made only for the answer that is shown.
 */
export interface WithSteps {
  readonly steps: () => readonly Step[];
}
