import type { Doubt } from '../../core/doubt/sample.ts';
import type { Regulator } from '../../core/fire/data/regulators.ts';
import type { MixingTube } from '../../core/fire/propane/entrainment.ts';
import type { FlameHolding } from '../../core/fire/propane/flame-holding.ts';
import type { AnswerContext } from '../command.ts';
import type { BurnerOptions } from './options.ts';
import type { BurnerKey, BurnerQuestion } from './question.ts';
import type { BottleDraw, BurnerPoint } from './work.ts';

export type BurnerOutput = 'flow' | 'jet' | 'pressure' | 'air' | 'lasts' | 'steady' | 'drawn';

export interface Tube {
  readonly bore_m: number;
  /** Chosen for the balanced air, where none was given. */
  readonly chosen: boolean;
  readonly mixing: MixingTube;
  readonly holding: FlameHolding;
  /** Air drawn, of the balanced. */
  readonly air: number;
}

export interface BurnerParts {
  readonly question: BurnerQuestion;
  readonly options: BurnerOptions;
  readonly context: AnswerContext;
  readonly point: BurnerPoint;
  readonly regulator: Regulator;
  readonly tube: Tube | undefined;
  readonly draw: BottleDraw;
  readonly doubt: Doubt<BurnerKey, BurnerOutput>;
}

/** Below it a flame without other air is rich beyond doubt of the model. */
export const RICH = 0.95;
