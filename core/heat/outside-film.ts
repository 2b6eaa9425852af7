/**
 * Nusselt numbers of the outside of a furnace, each as published. Rayleigh and Reynolds numbers with the length the
 * docstring names, air at the film temperature.
 */

/**
 * Still air beside a vertical plate, or a cylinder with D/L ≥ 35/Gr^¼. Length: height. Ra < 1e12.
 * Churchill and Chu 1975, by way of `ht`.
 */
export function verticalPlateNusselt({ rayleigh, prandtl }: { rayleigh: number; prandtl: number }): number {
  return (0.825 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2;
}

/** Hot plate facing up, laminar: 1e4 < Ra < 1e7. Length: area over perimeter. McAdams, by way of `ht`. */
export const upLaminarNusselt = (rayleigh: number): number => 0.54 * rayleigh ** 0.25;

/** Hot plate facing up, turbulent: 1e7 < Ra < 1e11. Length: area over perimeter. McAdams, by way of `ht`. */
export const upTurbulentNusselt = (rayleigh: number): number => 0.15 * Math.cbrt(rayleigh);

/** Hot plate facing down: 1e5 < Ra < 1e10; ours stay below 1e8. Length: area over perimeter. McAdams, by way of `ht`. */
export const downNusselt = (rayleigh: number): number => 0.27 * rayleigh ** 0.25;

/** Wind across a cylinder. Length: diameter. Re Pr > 0.2. Churchill and Bernstein 1977, by way of `ht`. */
export function crossedCylinderNusselt({ reynolds, prandtl }: { reynolds: number; prandtl: number }): number {
  return (
    0.3 +
    ((0.62 * Math.sqrt(reynolds) * Math.cbrt(prandtl)) / (1 + (0.4 / prandtl) ** (2 / 3)) ** 0.25) *
      (1 + (reynolds / 282_000) ** (5 / 8)) ** (4 / 5)
  );
}

/**
 * Wind along a plate, laminar (Pohlhausen) and turbulent (Petukhov and Popov) parts added as squares, since outdoor
 * wind is never calm enough to stay laminar. Length: along the wind. 10 < Re < 1e7. Gnielinski's sum, from memory.
 */
export function plateAlongNusselt({ reynolds, prandtl }: { reynolds: number; prandtl: number }): number {
  if (reynolds === 0) return 0;
  const laminar = 0.664 * Math.sqrt(reynolds) * Math.cbrt(prandtl);
  const turbulent = (0.037 * reynolds ** 0.8 * prandtl) / (1 + 2.443 * reynolds ** -0.1 * (prandtl ** (2 / 3) - 1));
  return Math.hypot(laminar, turbulent);
}
