import type { Step, WithSteps } from '../step.ts';
import type { Point } from './drawing.ts';
import { sizingRules } from './rules.ts';

export interface SleeveQuestion {
  /** Outside of the tube that it stands round. */
  readonly tube_radius_m: number;
  readonly offset_m: number;
  readonly tilt_rad: number;
  readonly lining_radius_m: number;
  /** Inside of the vessel at the tuyere's height. */
  readonly vessel_radius_m: number;
  readonly sheet_m?: number;
}

export interface Sleeve extends WithSteps {
  /** The sheet to cut: along the sleeve, tabs included, and round it, overlap included. */
  readonly sheet: { readonly length_m: number; readonly width_m: number };
  /** Once round it, without the seam's overlap. */
  readonly round_m: number;
  readonly tabs_count: number;
  readonly tab_length_m: number;
  /** Edge on the lining and edge at the vessel, laid flat: x round the sleeve from its lowest line, y along it. */
  readonly at_lining: readonly Point[];
  readonly at_vessel: readonly Point[];
}

/**
 * Along a tube's axis, from the plane through the furnace's axis, where a line of its surface meets an upright cylinder:
 * s = (√(Ro² − y²) + w sin β) ÷ cos β, with y = e + r sin φ and w = −r cos φ, φ counted from the lowest line.
 * The furnace's cone is taken as a cylinder of its radius at this height. m, rad; needs e + r < Ro. Derived.
 */
export function saddle_m({
  angle_rad,
  tube_radius_m: r,
  offset_m: e,
  tilt_rad: tilt,
  cylinder_radius_m: Ro,
}: {
  angle_rad: number;
  tube_radius_m: number;
  offset_m: number;
  tilt_rad: number;
  cylinder_radius_m: number;
}): number {
  const aside = e + r * Math.sin(angle_rad);
  const up = -r * Math.cos(angle_rad);
  return (Math.sqrt(Math.max(0, Ro ** 2 - aside ** 2)) + up * Math.sin(tilt)) / Math.cos(tilt);
}

const pointsRound = 72;

/** A sheet cylinder round the tuyere, from the lining to the vessel, that keeps loose fill out; tabs to both curves. */
export function sleeveFor(question: SleeveQuestion): Sleeve {
  const { tab_length_m, tab_width_m, seam_m, sleeve_sheet_m } = sizingRules;
  const sheet_m = question.sheet_m ?? sleeve_sheet_m.typical;
  const round_m = Math.PI * (2 * question.tube_radius_m + sheet_m);
  const edge = (cylinder_radius_m: number): readonly Point[] =>
    Array.from({ length: pointsRound + 1 }, (_, at): Point => {
      const angle_rad = (2 * Math.PI * at) / pointsRound;
      return [(round_m * at) / pointsRound, saddle_m({ ...question, angle_rad, cylinder_radius_m })];
    });
  const lining = edge(question.lining_radius_m);
  const vessel = edge(question.vessel_radius_m);
  const start_m = Math.min(...lining.map(([, y]) => y));
  const end_m = Math.max(...vessel.map(([, y]) => y));
  const from = (points: readonly Point[]): readonly Point[] =>
    Object.freeze(points.map(([x, y]): Point => [x, y - start_m]));
  const sheet = Object.freeze({
    length_m: end_m - start_m + 2 * tab_length_m.typical,
    width_m: round_m + seam_m.typical,
  });
  const tabs_count = Math.max(8, Math.ceil(round_m / tab_width_m.typical));
  return Object.freeze({
    sheet,
    round_m,
    tabs_count,
    tab_length_m: tab_length_m.typical,
    at_lining: from(lining),
    at_vessel: from(vessel),
    steps: (): readonly Step[] => [
      {
        formula:
          'sleeve sheet, along it the longest line between the two curves + 2 tabs: round = π × (2 × tube radius + sheet) + seam',
        inputs: { tube_radius_m: question.tube_radius_m, sheet_m, tab_m: tab_length_m.typical, seam_m: seam_m.typical },
        gives: { round_m: sheet.width_m, along_m: sheet.length_m, tabs_count },
        source: 'derived',
      },
    ],
  });
}
