import { brimfulOf_m3, type Crucible } from '../shape/crucible.ts';
import type { CrucibleShape } from '../shape/furnace.ts';
import { sizingRules } from '../shape/rules.ts';

/** m² of the outside that the fire reaches: the side and the bottom of a straight pot. Derived. */
export const outsideArea_m2 = ({ outside_radius_m: R, height_m: H }: CrucibleShape): number =>
  2 * Math.PI * R * H + Math.PI * R ** 2;

/**
 * Mass of the empty pot: (roundness × π R² H − room) × density: taper and round bottom take the same share outside as
 * inside. m, kg/m³. Derived; the roundness is from memory.
 */
export function crucibleMass_kg({ shape, density_kg_m3 }: { shape: CrucibleShape; density_kg_m3: number }): number {
  const { outside_radius_m, height_m } = shape;
  const solid_m3 = sizingRules.crucible_roundness.typical * Math.PI * outside_radius_m ** 2 * height_m;
  return (solid_m3 - brimfulOf_m3(shape)) * density_kg_m3;
}

/** Heat to bring the pot from cold to the pour: m c (pour − cold), J, with the mean heat capacity of that range. */
export const crucibleHeat_J = ({
  mass_kg,
  heat_capacity_J_kgK,
  from_K,
  pour_K,
}: {
  mass_kg: number;
  heat_capacity_J_kgK: number;
  from_K: number;
  pour_K: number;
}): number => mass_kg * heat_capacity_J_kgK * (pour_K - from_K);

/**
 * The same pot with another wall: of a measured pot the outside stays and the room changes; of one that followed from
 * what it pours, the room stays.
 */
export function withWall(
  { shape, brimful_m3 }: Pick<Crucible, 'shape' | 'brimful_m3'>,
  wall_m: number,
  measured: boolean,
): Pick<Crucible, 'shape' | 'brimful_m3'> {
  const slimmer_m = measured ? 0 : shape.wall_m - wall_m;
  const changed = {
    outside_radius_m: shape.outside_radius_m - slimmer_m,
    height_m: shape.height_m - slimmer_m,
    wall_m,
  };
  const room_m3 = measured ? brimfulOf_m3(changed) : brimful_m3;
  return { shape: { ...changed, working_m3: (shape.working_m3 / brimful_m3) * room_m3 }, brimful_m3: room_m3 };
}
