/**
 * A furnace as it will be built. Radii from its axis; heights from the vessel's inside bottom unless the name says
 * otherwise; all in m and rad. Made by `sizeFurnace`, read by weights, forms, drawings and the wall.
 */
export interface Furnace {
  readonly vessel: VesselShape;
  readonly crucible: CrucibleShape;
  /** Insulation, bricks or sand between the vessel's bottom and the hot floor. */
  readonly underfloor_m: number;
  /** Hot-face floor. Its top is at `underfloor_m + floor_m`. */
  readonly floor_m: number;
  readonly bore: BoreShape;
  /** Hot-face wall, square to the axis. */
  readonly wall_m: number;
  /** Plinth under the crucible, from the floor's top; height 0 where a charcoal bed carries it. */
  readonly plinth: { readonly radius_m: number; readonly height_m: number };
  /** Charcoal under the crucible; 0 for gas. */
  readonly bed_m: number;
  /** From the crucible's rim to the lid. */
  readonly rim_m: number;
  readonly lid: LidShape;
  readonly tuyere: TuyereShape;
}

/** Inside sizes of what holds the furnace. `wall_m` is its sheet. */
export interface VesselShape {
  readonly name: string;
  readonly bottom_radius_m: number;
  readonly top_radius_m: number;
  readonly height_m: number;
  readonly wall_m: number;
  /** A vessel that exists, or one worked out because none was given. */
  readonly given: boolean;
  /** Share by which its sizes may differ from these; none where the asker measured it. */
  readonly tolerance?: number;
}

export interface CrucibleShape {
  readonly outside_radius_m: number;
  readonly height_m: number;
  readonly wall_m: number;
  /** What is poured from it, m³. */
  readonly working_m3: number;
}

/** The room inside the hot face, from the floor's top to the rim: straight unless the form is tapered. */
export interface BoreShape {
  readonly bottom_radius_m: number;
  readonly top_radius_m: number;
  readonly height_m: number;
}

export interface LidShape {
  readonly radius_m: number;
  readonly thickness_m: number;
  readonly vent_radius_m: number;
}

export interface TuyereShape {
  /** Inside and outside of the pipe or sleeve through the wall. */
  readonly bore_radius_m: number;
  readonly outer_radius_m: number;
  /** Lowest edge of the hole at the bore, above the floor's top. */
  readonly invert_m: number;
  /** Axis off the furnace's axis, in plan: 0 is radial, bore radius − bore_radius_m is tangent. */
  readonly offset_m: number;
  /** Rising outward; 0 is level. */
  readonly tilt_rad: number;
  /** In plan, from the bore's surface to the lining's outside, and on to the vessel's outside. */
  readonly through_lining_m: number;
  readonly through_all_m: number;
}
