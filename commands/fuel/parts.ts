import type { AsFired } from '../../core/fire/fuel/fuel-as-fired.ts';
import type { Balance } from '../../core/melt/balance.ts';
import type { StagedMelt } from '../../core/melt/fuel-staging.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import type { AnswerContext } from '../command.ts';
import type { UnfitLining } from '../wall/unfit.ts';
import type { FuelOptions } from './options.ts';
import type { AskedFuel } from './question.ts';

/** Everything that was worked out, for the card. */
export interface FuelParts {
  readonly asked: AskedFuel;
  readonly options: FuelOptions;
  readonly balance: Balance;
  readonly burnt: AsFired;
  readonly staged: StagedMelt | undefined;
  /** Where the wall does not stand its hot face. */
  readonly unfit: UnfitLining | undefined;
  readonly ashRoom_kg: number;
  readonly units: UnitSystem;
  readonly context: AnswerContext;
}
