import type { Spread } from '../../core/materials/spread.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import type { Change } from '../../core/shape/changes.ts';
import type { Forms } from '../../core/shape/forms/forms.ts';
import type { Sized } from '../../core/shape/size.ts';
import type { Sleeve } from '../../core/shape/sleeve.ts';
import type { Weighed } from '../../core/shape/weights.ts';
import type { UnfitLining } from '../wall/unfit.ts';
import type { SharedOptions } from './options.ts';
import type { Materials } from './question.ts';

/** Everything that was worked out, for the card. */
export interface SizeParts {
  readonly asked: 'can' | 'crucible' | 'melt';
  readonly options: SharedOptions;
  readonly materials: Materials;
  readonly sized: Sized;
  readonly weighed: Weighed;
  readonly sleeve: Sleeve;
  readonly changes: readonly Change[];
  readonly forms: Forms | undefined;
  /** Firing rate with its judged range; exact where it was typed. */
  readonly rate: Spread;
  /** Where the lining does not stand the metal. */
  readonly unfit: UnfitLining | undefined;
  /** Facts of the vessel. */
  readonly hazards: readonly string[];
  /** As typed; `undefined` where it followed from the rest. */
  readonly crucibleSaid: string | undefined;
  readonly vesselSaid: string | undefined;
  readonly units: UnitSystem;
}

/** A length as it can be typed: `1.57 in`, `40 mm`. */
export const typedLength = (length_m: number, units: UnitSystem): string =>
  units === 'US' ? `${decimals(length_m / 0.0254, 2)} in` : `${decimals(length_m * 1000, 1)} mm`;

const decimals = (value: number, most: number): string => String(Number(value.toFixed(most)));
