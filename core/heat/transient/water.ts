/** Free water boils off at 100 °C, once and for all; its heat below that, and its latent heat there. */
/** Vapour that reaches the shell condenses wholly where the shell is this much colder, less and less from there on. */
export const CONDENSES_dK = 5;
export const BOIL_K = 373.15;
export const LATENT_J_kg = 2.256e6;
export const WATER_J_kgK = 4190;
