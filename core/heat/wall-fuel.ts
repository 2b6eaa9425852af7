import { findFuel } from '../fire/fuel/fuel.ts';
import type { Spread } from '../materials/spread.ts';

export const comparedFuels = ['charcoal', 'propane'] as const;
export type ComparedFuel = (typeof comparedFuels)[number];

/**
 * What a small fire leaves inside a furnace at about 1000 °C, W: a propane burner of 0.5–2 kg/h or a blown charcoal
 * bed of 1–3 kg/h, of whose 6–26 kW a third to a half stays behind. From memory; the rest goes up the vent.
 */
export const smallFire_W: Spread = Object.freeze({ low: 2500, typical: 6000, high: 12_000 });

export const heatOfFuel_J_kg = (fuel: ComparedFuel): number => findFuel(fuel).lower_heat_J_kg.typical;

/** Fuel whose whole heat is this much: mass = heat / lower heating value. A real fire burns two to three times that. */
export const fuelFor_kg = (heat_J: number, fuel: ComparedFuel): number => heat_J / heatOfFuel_J_kg(fuel);
