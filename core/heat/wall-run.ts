/** What the transient solver takes and gives. Everything per m² of the inner (hot) face; t in s from the start. */

export interface WallLayer {
  readonly thickness_m: number;
  /** Dry density. */
  readonly density_kg_m3: number;
  /** Local conductivity, linear between rows, held beyond them. T rising. */
  readonly conductivity: { readonly T_K: readonly number[]; readonly k_W_mK: readonly number[] };
  /** True (not mean) heat capacity, linear between rows, held beyond them. */
  readonly heat_capacity: { readonly T_K: readonly number[]; readonly c_J_kgK: readonly number[] };
  /** Free water, share of dry mass; it leaves at 100 °C once and for all. */
  readonly water: number;
}

/** Thin outer steel: one temperature. */
export interface WallShell {
  readonly thickness_m: number;
  readonly density_kg_m3: number;
  readonly heat_capacity: WallLayer['heat_capacity'];
}

/** What drives the hot face while a phase lasts. */
export type Drive =
  /**
   * Its temperature, linear between (s, K) points, held before the first and after the last; s from the start of the
   * run. A first point off the wall's temperature is a jump, so are two points at one time.
   */
  | { readonly kind: 'temperature'; readonly points: readonly (readonly [time_s: number, face_K: number])[] }
  /** Heat into it, W/m², as a smooth function of its own temperature: net power, gas film, closed or open bore. */
  | { readonly kind: 'flux'; readonly into_W_m2: (face_K: number) => number };

/** Phases follow one another; the last one ends the run. */
export interface Phase {
  readonly until_s: number;
  readonly drive: Drive;
}

export interface WallInput {
  readonly geometry: 'plane' | 'cylinder' | 'sphere';
  /** Of the hot face; no meaning for a plane. */
  readonly inner_radius_m: number;
  /** Hot side first. */
  readonly layers: readonly WallLayer[];
  readonly shell?: WallShell;
  readonly start_K: number;
  /** Heat leaving the outermost surface, W per m² of that surface, as a smooth rising function of its temperature. */
  readonly outward_W_m2: (surface_K: number) => number;
  readonly phases: readonly Phase[];
  /**
   * Where water that boils goes, the two bounds of what it may do: out at the hot face with its heat (left out, this),
   * or outward, to give its heat back to the shell as long as that is below 100 °C. What condenses there drips off,
   * and its heat counts as that much less lost. It comes in jerks: such a run is to be read at its step ends.
   */
  readonly vapour?: 'hot face' | 'shell';
  /** Stop early, once in the last phase and when the shell has peaked and is below this. */
  readonly until_shell_below_K?: number;
  /** Cells a layer; 24 by default. */
  readonly cells?: number;
  /** Error a step may make anywhere, K; 0.3 by default. Three times as much while water boils. */
  readonly tolerance_dK?: number;
}

export interface WallRun {
  /** Step ends; the first is 0. All arrays have this length. */
  readonly time_s: Float64Array;
  readonly face_K: Float64Array;
  /** Between layer i and i + 1. */
  readonly interfaces_K: readonly Float64Array[];
  /** The outermost surface, steel included. */
  readonly shell_K: Float64Array;
  /** How fast shell and interfaces change at each step end: between steps they run as cubics through these. */
  readonly shell_rate_K_s: Float64Array;
  readonly interface_rates_K_s: readonly Float64Array[];
  /** Heat that has gone in at the hot face, and out at the shell, J per m² of hot face. */
  readonly in_J_m2: Float64Array;
  readonly out_J_m2: Float64Array;
  /** Interpolated between steps, not the largest step end. */
  readonly shell_peak: { readonly time_s: number; readonly T_K: number };
  /** Likewise, for each interface. */
  readonly interface_peaks: readonly { readonly time_s: number; readonly T_K: number }[];
  /** Nodes of the grid, m from the hot face, and the hottest each of them ever was. */
  readonly depth_m: Float64Array;
  readonly hottest_K: Float64Array;
  /** Water left, kg per m² of hot face, at the end. */
  readonly water_left_kg_m2: number;
  /** Above the start, in all that is left at the end; worked out from the temperatures, not from what came in. */
  readonly stored_J_m2: number;
  /** |in − out − stored| over the larger of in and out. Above 1 % the solver throws instead. */
  readonly imbalance: number;
  readonly steps_count: number;
  readonly rejected_count: number;
}
