import type { Step, WithSteps } from '../../step.ts';
import type { AsFired } from '../fuel/fuel-as-fired.ts';
import { CO_J_mol } from '../gas/flue.ts';
import { oxidiser, oxidiserMolarMass_kg_mol } from '../gas/mixture.ts';
import { within } from '../within.ts';

const DRY = oxidiser();

export interface BedAir extends WithSteps {
  /** Dry air for a kilogram of fuel as fired. */
  readonly air_kg_kg: number;
  /** Set free by it; what CO takes away is not in it. */
  readonly heat_J_kg: number;
}

/**
 * Air and heat of a kilogram of any fuel of whose carbon a share leaves as CO: oxygen = need − s·C/2, heat = lower heat
 * − s·C·283 kJ/mol. Share 0…1, excess air 0…3. With pure carbon it is `carbonAirNeed` and `carbonHeat_J_kg`.
 * Source: atom and heat balance, derived.
 * @throws AskError `out-of-range`.
 */
export function bedAir({
  fuel,
  co_share,
  excess_air,
}: {
  readonly fuel: AsFired;
  readonly co_share: number;
  readonly excess_air: number;
}): BedAir {
  within({ co_share }, { low: 0, high: 1, example: '40%' });
  within({ excess_air }, { low: 0, high: 3, example: '10%' });
  const oxygen_mol = (fuel.oxygen_need_mol - (co_share * fuel.C_mol) / 2) * (1 + excess_air);
  const air_kg_kg = (oxygen_mol / DRY.O2) * oxidiserMolarMass_kg_mol(DRY);
  const heat_J_kg = fuel.lower_heat_J_kg - co_share * fuel.C_mol * CO_J_mol;
  return {
    air_kg_kg,
    heat_J_kg,
    steps: (): readonly Step[] => [
      {
        formula: 'air per fuel = (oxygen need − share as CO × carbon / 2) × (1 + excess air) ÷ oxygen in air',
        inputs: { co_share, excess_air, ash: fuel.ash, moisture: fuel.moisture },
        gives: { air_per_fuel_count: air_kg_kg },
        source: 'derived',
      },
      {
        formula: 'heat set free = lower heat − share as CO × carbon × 283 kJ/mol',
        inputs: { lower_heat_J_kg: fuel.lower_heat_J_kg, co_share },
        gives: { heat_J_kg },
        source: fuel.fuel.lower_heat_J_kg.source,
      },
    ],
  };
}
