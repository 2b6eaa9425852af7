/** A body that a hand can lie on: effusivity tells how fast it gives its heat up. */
export interface Body {
  readonly conductivity_W_mK: number;
  readonly density_kg_m3: number;
  readonly heat_capacity_J_kgK: number;
}

/** √(k ρ c), W √s/(m² K). Derived. */
export const effusivity = ({ conductivity_W_mK, density_kg_m3, heat_capacity_J_kgK }: Body): number =>
  Math.sqrt(conductivity_W_mK * density_kg_m3 * heat_capacity_J_kgK);

/**
 * Temperature two thick bodies take where they meet, at once and as long as both stay thick: mean of their
 * temperatures weighted by effusivity. Derived; a thin sheet cools under the hand and does less than this says.
 */
export const contactTemperature_K = (
  one: { readonly T_K: number; readonly effusivity: number },
  other: { readonly T_K: number; readonly effusivity: number },
): number => (one.effusivity * one.T_K + other.effusivity * other.T_K) / (one.effusivity + other.effusivity);

/** Bare skin at rest: 34 °C, 1200 W √s/(m² K), from memory. */
export const skin = Object.freeze({ T_K: 307.15, effusivity: 1200 });
