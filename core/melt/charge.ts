export interface ChargeQuestion {
  readonly mass_kg: number;
  /** What is poured from the crucible, and what it holds to the brim. */
  readonly working_m3: number;
  readonly brimful_m3: number;
  readonly liquid_kg_m3: number;
  readonly solid_kg_m3: number;
  /** Bulk density of the scrap over that of the solid. */
  readonly bulk: number;
}

export interface Charge {
  /** Liquid that the working fill holds. */
  readonly holds_kg: number;
  readonly pours: number;
  /** In one pour, all pours alike. */
  readonly each_kg: number;
  /** Cold scrap to the rim. */
  readonly first_kg: number;
  /** Times scrap is put in for one pour, the first included. */
  readonly charges: number;
}

/** More additions than this are hours of feeding: the count stops there. */
export const MOST_CHARGES = 60;

/**
 * How a mass goes through a crucible: holds = working volume × liquid density; scrap fills the room above the liquid at
 * its bulk density, melts down, and is topped up until one pour is in it. m³, kg, kg/m³. Derived.
 */
export function planCharge(question: ChargeQuestion): Charge {
  const { mass_kg, working_m3, brimful_m3, liquid_kg_m3, solid_kg_m3, bulk } = question;
  const holds_kg = working_m3 * liquid_kg_m3;
  // A melt that was sized to fill the pot fills it: rounding must not ask for a second pour.
  const pours = Math.max(1, Math.ceil(mass_kg / holds_kg - 1e-6));
  const each_kg = mass_kg / pours;
  const loose_kg_m3 = bulk * solid_kg_m3;
  const first_kg = Math.min(each_kg, brimful_m3 * loose_kg_m3);
  let charges = 1;
  for (let in_kg = first_kg; in_kg < each_kg * (1 - 1e-6) && charges < MOST_CHARGES; charges++)
    in_kg += Math.min(each_kg - in_kg, (brimful_m3 - in_kg / liquid_kg_m3) * loose_kg_m3);
  return { holds_kg, pours, each_kg, first_kg, charges };
}
