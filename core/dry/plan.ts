/** One dated step on the way from a wet lining to its first fire: plain data for a table, a checklist or a reminder. */
export interface PlanStep {
  /** Stable within a plan: `cover`, `open`, `weigh`, `fill`, `warm`, `fire`, `look`. */
  readonly id: string;
  /** Whole days after the day it was rammed or cast. */
  readonly day_offset: number;
  /** Midday UTC of that calendar day: the hour is the reader's affair. */
  readonly at: Date;
  readonly what: string;
  readonly doneWhen: string;
  /** What must be true before this step is begun. A reminder of it repeats them. */
  readonly holds: readonly string[];
  /** Facts of `core/hazard` that hold while this is done. */
  readonly facts: readonly string[];
}
