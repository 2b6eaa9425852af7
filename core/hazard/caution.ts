import type { SourceId, Standing } from '../sources/source.ts';

export type Severity = 'danger' | 'caution' | 'note';

/** What can hurt, as a card shows it. */
export interface Caution {
  readonly id: string;
  readonly severity: Severity;
  /** What to do or not to do, in one or two plain sentences. */
  readonly text: string;
  /** Why, with the number where there is one. */
  readonly reason: string;
  readonly source: SourceId;
  readonly standing: Standing;
  /** This question itself triggers the danger: it leads the card. */
  readonly leads: boolean;
}

/** What is being done, as data: facts that hold (`hot-work`, `dry-powder`, `galvanised`, …) and numbers in SI. */
export interface Situation {
  readonly facts: readonly string[];
  /** E.g. `shell_K`, `lift_kg`, `moisture`: the adverse end of a range, never its typical value. */
  readonly numbers?: Readonly<Record<string, number>>;
}
