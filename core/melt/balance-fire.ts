import type { AsFired } from '../fire/fuel/fuel-as-fired.ts';
import { availableHeat } from '../fire/gas/available-heat.ts';
import { flueGas } from '../fire/gas/flue.ts';
import { type AirRatio, airNeed } from '../fire/gas/mixture.ts';
import { REFERENCE_K } from '../fire/gas/nasa.ts';

/** What one kilogram of fuel leaves in the furnace, for any flue temperature. Shares of its lower heat. */
export interface Fire {
  readonly fuel: AsFired;
  readonly air_kg_kg: number;
  /** Leaves as CO and H2. */
  readonly unburned: number;
  /** Left in the furnace with the flue gas this hot. */
  readonly left: (flue_K: number) => number;
  /** Its mean while the flue climbs evenly from one temperature to the other. */
  readonly meanLeft: (from_K: number, to_K: number) => number;
}

/** Colder no flue is taken to be: below, its water would condense. */
export const COLDEST_FLUE_K = REFERENCE_K;

/**
 * Air with which a share of the carbon leaves as CO and nothing else is short: φ = need ÷ (need − share × C/2), in moles of
 * oxygen. Source: atom balance.
 */
export function ratioForCo({ oxygen_need_mol, C_mol }: AsFired, co_share: number): AirRatio {
  return { equivalence_ratio: oxygen_need_mol / (oxygen_need_mol - (co_share * C_mol) / 2) };
}

/**
 * Available heat of `availableHeat` as a cubic through four of its values up to `hottest_K`: within 0.1 point of it there,
 * and quick enough to be summed over a melt a thousand times.
 */
export function fireOf(input: {
  readonly fuel: AsFired;
  readonly ratio: AirRatio;
  readonly air_K: number;
  readonly hottest_K: number;
}): Fire {
  const { fuel, ratio, air_K, hottest_K } = input;
  // Chebyshev's points: the cubic strays least.
  const nodes = [0, 1, 2, 3].map(
    (at) => COLDEST_FLUE_K + ((hottest_K - COLDEST_FLUE_K) * (1 - Math.cos(((2 * at + 1) * Math.PI) / 8))) / 2,
  );
  const flue = flueGas({ fuel, ratio });
  const found = nodes.map((flue_K) => availableHeat({ fuel, ratio, air_K, flue_K, flue }));
  const slopes = dividedDifferences(
    nodes,
    found.map(({ share_of_lower }) => share_of_lower),
  );
  const left = (flue_K: number): number => {
    const T = Math.max(flue_K, COLDEST_FLUE_K);
    return slopes.reduceRight((sum, slope, at) => sum * (T - nodes[at]!) + slope, 0);
  };
  return {
    fuel,
    air_kg_kg: airNeed(fuel, ratio).kg_kg,
    unburned: found[0]!.loss.unburned_J_kg / fuel.lower_heat_J_kg,
    left,
    meanLeft: (from_K, to_K) => {
      const start_K = Math.max(from_K, COLDEST_FLUE_K);
      const end_K = Math.max(to_K, COLDEST_FLUE_K);
      // Gauss's two points: exact for a cubic.
      const middle = (start_K + end_K) / 2;
      const off = (end_K - start_K) / 2 / Math.sqrt(3);
      return (left(middle - off) + left(middle + off)) / 2;
    },
  };
}

/** Newton's form of the polynomial through the points. */
function dividedDifferences(x: readonly number[], y: readonly number[]): readonly number[] {
  const slopes = [...y];
  for (let order = 1; order < x.length; order++)
    for (let at = x.length - 1; at >= order; at--)
      slopes[at] = (slopes[at]! - slopes[at - 1]!) / (x[at]! - x[at - order]!);
  return slopes;
}
