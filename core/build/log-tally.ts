import type { Datum } from '../materials/material.ts';
import type { Step, WithSteps } from '../step.ts';
import { anyLife, lives } from './log-data.ts';

/** What a tally reads of a burn, oldest first. */
export interface CountedBurn {
  readonly time_s?: number;
  /** Depth lost of the hot face since it was new, at its thinnest. */
  readonly worn_m?: number;
}

export interface Tally extends WithSteps {
  readonly burns: number;
  /** Of the burns that were timed. */
  readonly hot_s: number;
  readonly timed: number;
  /** Burns that such a hot face stands, judged. */
  readonly life: Datum;
  /** Depth lost a burn, the straight line through nothing lost at none; nothing where it was never measured. */
  readonly wear_m?: number;
  /** Burns from now until a third of the thickness is gone, which is when practice rams anew; none below zero. */
  readonly left_burns?: number;
}

/** Of its thickness, from memory. */
const wornOut = 1 / 3;

/**
 * The life of a lining so far: wear a burn = Σ n w ÷ Σ n² over the burns at which w was measured, n burns after it was
 * new. Source: least squares, derived; lives are judged.
 */
export function tally({
  burns,
  face,
}: {
  readonly burns: readonly CountedBurn[];
  readonly face?: { readonly material: string; readonly thickness_m?: number };
}): Tally {
  const timed = burns.flatMap(({ time_s }) => (time_s === undefined ? [] : [time_s]));
  const hot_s = timed.reduce((sum, one) => sum + one, 0);
  const worn = burns.flatMap(({ worn_m }, index) => (worn_m === undefined ? [] : [{ after: index + 1, worn_m }]));
  const sum_m = worn.reduce((sum, { after, worn_m }) => sum + after * worn_m, 0);
  const squares = worn.reduce((sum, { after }) => sum + after ** 2, 0);
  const wear_m = squares > 0 ? sum_m / squares : undefined;
  const thickness_m = face?.thickness_m;
  const life = lives.find(({ materials }) => face && materials.includes(face.material))?.burns ?? anyLife;
  const left_burns =
    wear_m !== undefined && wear_m > 0 && thickness_m !== undefined
      ? Math.max(0, (thickness_m * wornOut) / wear_m - burns.length)
      : undefined;
  return {
    burns: burns.length,
    hot_s,
    timed: timed.length,
    life,
    ...(wear_m === undefined ? {} : { wear_m }),
    ...(left_burns === undefined ? {} : { left_burns }),
    steps: (): readonly Step[] =>
      wear_m === undefined
        ? []
        : [
            {
              formula: 'wear a burn = Σ burns so far × depth lost ÷ Σ (burns so far)², over the measured ones',
              inputs: { sum_of_burns_and_depths_m: sum_m, sum_of_squares_count: squares },
              gives: { wear_a_burn_m: wear_m },
              source: 'derived',
            },
            ...(left_burns === undefined || thickness_m === undefined
              ? []
              : [
                  {
                    formula: 'burns left = thickness ÷ 3 ÷ wear a burn − burns so far, none below zero',
                    inputs: { thickness_m, wear_a_burn_m: wear_m, burns_so_far_count: burns.length },
                    gives: { burns_left_count: left_burns },
                    source: 'common-practice',
                  },
                ]),
          ],
  };
}
