/** Solids of revolution that furnaces are made of. Lengths in m, volumes in m³. Exact. */

/** Frustum of a cone (a cylinder when the radii agree): π h (R² + R r + r²) / 3. */
export function frustumVolume_m3({
  lower_radius_m: lower,
  upper_radius_m: upper,
  height_m,
}: {
  lower_radius_m: number;
  upper_radius_m: number;
  height_m: number;
}): number {
  return (Math.PI * height_m * (lower ** 2 + lower * upper + upper ** 2)) / 3;
}

/** Straight ring: π (R² − r²) h. */
export function ringVolume_m3({
  outer_radius_m: outer,
  inner_radius_m: inner,
  height_m,
}: {
  outer_radius_m: number;
  inner_radius_m: number;
  height_m: number;
}): number {
  return Math.PI * (outer ** 2 - inner ** 2) * height_m;
}

/** Spherical dish of rim radius a and depth h: π h (3 a² + h²) / 6. */
export function dishVolume_m3({
  rim_radius_m: rim,
  depth_m: depth,
}: {
  rim_radius_m: number;
  depth_m: number;
}): number {
  return (Math.PI * depth * (3 * rim ** 2 + depth ** 2)) / 6;
}
