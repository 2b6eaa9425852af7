import type { Spread } from '../../materials/spread.ts';
import type { Fuel } from './fuel.ts';
import { dryAshFreeHeat_J_kg, EVAPORATION_J_kg } from './fuel-as-fired.ts';

/**
 * Lower heat of the dry, ash-free matter with its range, J/kg. The poor end of the heat as fired goes with the most ash
 * and water, the good end with the least, so that ash and moisture can be sampled beside it without counting them twice.
 * Source: mass and heat balance, derived.
 */
export function dryAshFreeSpread_J_kg(fuel: Fuel): Spread {
  const { lower_heat_J_kg, ash, moisture } = fuel;
  const typical = dryAshFreeHeat_J_kg(fuel);
  const at = (end: 'low' | 'high', other: 'low' | 'high'): number =>
    (lower_heat_J_kg[end] + moisture[other] * EVAPORATION_J_kg) / (1 - ash[other] - moisture[other]);
  const ends = [typical, at('low', 'high'), at('high', 'low')];
  return { low: Math.min(...ends), typical, high: Math.max(...ends) };
}

/** What `asFired` makes of a dry, ash-free heat: heat × (1 − ash − moisture) − moisture × heat of evaporation. J/kg. */
export const heatAsFired_J_kg = ({ dry_J_kg, ash, moisture }: { dry_J_kg: number; ash: number; moisture: number }) =>
  dry_J_kg * (1 - ash - moisture) - moisture * EVAPORATION_J_kg;
