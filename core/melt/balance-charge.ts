/**
 * Metal and crucible as one lump whose heat rises evenly from cold to the pour: its melting is spread over the way. It is
 * heated as from the hot face; the flame is hotter, which errs to the slow side.
 */
export interface Charge {
  /** From cold to the pour. */
  readonly metal_J: number;
  readonly crucible_J: number;
  /** Outside of the crucible that sees the fire. */
  readonly crucible_m2: number;
  readonly film_W_m2K: number;
  readonly start_K: number;
  readonly pour_K: number;
}

/** How far the lump lags behind a furnace that climbs: heat ÷ (rise × film × area). Source: lumped capacity. */
export const lag_s = ({ metal_J, crucible_J, crucible_m2, film_W_m2K, start_K, pour_K }: Charge): number =>
  (metal_J + crucible_J) / ((pour_K - start_K) * film_W_m2K * crucible_m2);

/** The hot face rises in a straight line for this share of the time it takes to heat up, then is held for the rest. */
export const RISE = 2 / 3;

/** Heating up at full blast, see `RISE`. */
export interface Climb {
  readonly from_K: number;
  readonly to_K: number;
  readonly climb_s: number;
}

/**
 * The lump as the furnace is up to heat: T = from + slope (t − lag) + (start − from + slope × lag) e^(−t/lag) as the face
 * rises, of lag dT/dt = face − T; then it closes the gap as e^(−t/lag). Source: derived.
 */
export function chargeAfterClimb_K(charge: Charge, { from_K, to_K, climb_s }: Climb): number {
  const lag = lag_s(charge);
  if (!(lag > 0)) return to_K;
  const rise_s = RISE * climb_s;
  const slope = (to_K - from_K) / rise_s;
  const risen_K = from_K + slope * (rise_s - lag) + (charge.start_K - from_K + slope * lag) * Math.exp(-rise_s / lag);
  return to_K - (to_K - risen_K) * Math.exp(-(climb_s - rise_s) / lag);
}

/** Its share of the way from cold to the pour, 0 to 1: what is hotter is not counted. */
export const shareOfWay = ({ start_K, pour_K }: Charge, T_K: number): number =>
  Math.min(1, Math.max(0, (T_K - start_K) / (pour_K - start_K)));

/** How long after that it takes to the pour: lag × ln((face − then) ÷ (face − pour)). Source: derived. */
export function holdToPour_s(charge: Charge, climb: Climb): number {
  const after_K = chargeAfterClimb_K(charge, climb);
  if (after_K >= charge.pour_K) return 0;
  return lag_s(charge) * Math.log((climb.to_K - after_K) / (climb.to_K - charge.pour_K));
}
