import type { Spread } from '../materials/spread.ts';
import type { SourceId, Standing } from '../sources/source.ts';

/** A rule of thumb: a default that every card names and the asker may override; whatever is computed outranks it. */
export interface SizingRule extends Spread {
  /** As it is read after "I assumed". */
  readonly says: string;
  readonly source: SourceId;
  readonly standing: Standing;
}

export type Fuel = 'gas' | 'charcoal';

const mm = 1e-3;
const rule = (
  says: string,
  [low, typical, high]: readonly [number, number, number],
  unit: number,
  standing: Standing = 'common practice',
): SizingRule =>
  Object.freeze({
    says,
    low: low * unit,
    typical: typical * unit,
    high: high * unit,
    source: standing === 'from memory' ? 'from-memory' : 'common-practice',
    standing,
  });

/** Lengths in m, shares of 1, angles in degrees; m of the vessel's axis where heights are meant. */
export const sizingRules = Object.freeze({
  gap_gas_m: rule('gap round the crucible, where the flame circles', [25, 40, 65], mm),
  gap_charcoal_m: rule('charcoal round the crucible', [50, 75, 100], mm),
  tongs_m: rule('room for the tongs, each side', [20, 30, 45], mm),
  plinth_m: rule('plinth under the crucible, so that the flame passes below', [40, 60, 90], mm),
  plinth_share: rule('plinth as wide as this share of the crucible', [0.6, 0.75, 0.9], 1, 'from memory'),
  bed_m: rule('charcoal under the crucible', [75, 110, 150], mm),
  rim_m: rule('crucible rim below the lid', [25, 50, 90], mm),
  crucible_slimness: rule('crucible height over its outside diameter', [1.1, 1.25, 1.5], 1),
  crucible_wall_m: rule('crucible wall', [9, 14, 22], mm),
  crucible_roundness: rule('room of a crucible over that of a straight one', [0.75, 0.87, 1], 1, 'from memory'),
  crucible_fill: rule('working fill, share of brimful', [0.7, 0.8, 0.85], 1),
  wall_m: rule('hot-face wall', [32, 40, 65], mm),
  behind_m: rule('insulation behind it', [40, 60, 120], mm),
  underfloor_m: rule('a layer of bricks laid flat below the floor', [50, 64, 76], mm, 'from memory'),
  floor_m: rule('hot-face floor', [35, 50, 75], mm),
  lid_m: rule('lid', [35, 50, 75], mm),
  vent_share: rule('vent over bore diameter', [0.2, 0.28, 0.38], 1),
  tuyere_charcoal_m: rule('air tube, inside', [19, 32, 50], mm),
  tuyere_gas_m: rule('burner tube, inside', [25, 40, 60], mm, 'from memory'),
  tuyere_wall_m: rule('wall of the tube', [2, 3, 4], mm, 'from memory'),
  invert_charcoal_m: rule('bottom of the air hole above the floor', [5, 10, 50], mm),
  burner_axis_m: rule('burner axis above the floor', [40, 65, 100], mm),
  tilt_degrees: rule('tuyere rising outward, degrees', [5, 10, 20], 1),
  spill_spare_m: rule('spare above the spill', [10, 10, 10], mm),
  tab_length_m: rule('tabs of the sleeve', [12, 20, 30], mm, 'from memory'),
  tab_width_m: rule('width of a tab', [10, 20, 25], mm, 'from memory'),
  seam_m: rule('overlap at a sheet seam', [15, 25, 40], mm),
  sleeve_sheet_m: rule('sheet of the sleeve', [0.3, 0.5, 0.8], mm, 'from memory'),
  tamping: rule('loose fill lost in tamping, share of volume', [0.1, 0.18, 0.3], 1),
} satisfies Record<string, SizingRule>);

export type RuleName = keyof typeof sizingRules;

/** Below this there is nothing to melt in, m. */
export const leastCrucible_m = 0.04;

/** What one person lifts in an ideal posture: the load constant of the NIOSH lifting equation. */
export const oneLift_kg = 23;

/** People for a lift, by the adverse end of its mass. */
export const peopleFor = ({ lift_kg }: { lift_kg: number }): number => Math.max(1, Math.ceil(lift_kg / oneLift_kg));
