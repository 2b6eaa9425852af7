import type { Doubt } from '../../core/doubt/sample.ts';
import type { BlastInput, BlastPoint } from '../../core/fire/air/operating-point.ts';
import type { AnswerContext } from '../command.ts';
import type { BlastOptions } from './options.ts';
import type { BlastKey, BlastQuestion, Burning } from './question.ts';

export interface BlastParts {
  readonly question: BlastQuestion;
  readonly options: BlastOptions;
  readonly context: AnswerContext;
  readonly input: BlastInput;
  readonly point: BlastPoint;
  readonly burning: Burning;
  readonly fuel_kg_s: number;
  readonly power_W: number;
  readonly needed_m3_s: number | undefined;
  /** What a valve must take so that no more than the need gets through. */
  readonly valve_Pa: number | undefined;
  /** The most helpful first; at least one. */
  readonly gains: readonly Gain[];
  readonly doubt: Doubt<BlastKey, BlastOutput>;
  /** Share of the samples in which the need is met. */
  readonly met: number | undefined;
}

export type BlastOutput = 'flow' | 'need' | 'cover' | 'fuel' | 'power' | 'pressure';

/** What one change would do. */
export interface Gain {
  readonly change: 'pipe' | 'tuyere' | 'flow' | 'pressure';
  readonly says: string;
  /** More air, as a share of what gets through now. */
  readonly gain: number;
}
