import type { Doubt } from '../../core/doubt/sample.ts';
import type { BlastGains, BlastInput, BlastPoint } from '../../core/fire/operating-point.ts';
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
  readonly gains: BlastGains;
  readonly doubt: Doubt<BlastKey, BlastOutput>;
  /** Share of the samples in which the need is met. */
  readonly met: number | undefined;
}

export type BlastOutput = 'flow' | 'need' | 'cover' | 'fuel' | 'power' | 'pressure';

/** What each change is called. */
export const changes: Readonly<Record<BlastGains['best'], string>> = {
  wider_pipe: 'a pipe half as wide again',
  wider_tuyere: 'a tuyere half as wide again',
  twice_free_flow: 'a blower of twice the free flow',
  twice_pressure: 'a blower of twice the pressure',
};
