import { AskError } from '../ask-error.ts';
import type { UnitSystem } from '../quantity/figure.ts';
import { formatBoth } from '../quantity/format.ts';
import type { Step, WithSteps } from '../step.ts';
import type { TuyereShape } from './furnace.ts';

export const degrees = (angle_rad: number): number => (angle_rad * 180) / Math.PI;
export const radians = (angle: number): number => (angle * Math.PI) / 180;

/** Axis off the furnace's axis where the tube's outer side touches the bore: e = R − d/2. m. */
export const tangentOffset_m = ({
  bore_radius_m,
  tube_radius_m,
}: {
  bore_radius_m: number;
  tube_radius_m: number;
}): number => bore_radius_m - tube_radius_m;

/** In plan, along a line at an offset from the axis, from one circle to a wider one: √(Ro² − e²) − √(R² − e²). m. */
export const planLength_m = ({
  inner_radius_m,
  outer_radius_m,
  offset_m,
}: {
  inner_radius_m: number;
  outer_radius_m: number;
  offset_m: number;
}): number => Math.sqrt(outer_radius_m ** 2 - offset_m ** 2) - Math.sqrt(inner_radius_m ** 2 - offset_m ** 2);

/** The hole a tangent tube cuts in the bore, laid flat: arc R acos((R − d) ÷ R) long, d ÷ cos(tilt) high. m. */
export const slotOnBore = ({
  bore_radius_m: R,
  tube_radius_m: r,
  tilt_rad,
}: {
  bore_radius_m: number;
  tube_radius_m: number;
  tilt_rad: number;
}): { readonly arc_m: number; readonly height_m: number } => ({
  arc_m: R * Math.acos((R - 2 * r) / R),
  height_m: (2 * r) / Math.cos(tilt_rad),
});

/** Angle between the tube and the radius where its axis meets the bore: asin(e ÷ R). rad. */
export const angleToRadius_rad = ({ bore_radius_m, offset_m }: { bore_radius_m: number; offset_m: number }): number =>
  Math.asin(offset_m / bore_radius_m);

/** Depth of a spill over a flat floor round a plinth: V ÷ (π (R² − r²)) while it stays below the plinth's top. m. */
export function spillDepth_m({
  spill_m3,
  bore_radius_m,
  plinth_radius_m,
  plinth_height_m,
}: {
  spill_m3: number;
  bore_radius_m: number;
  plinth_radius_m: number;
  plinth_height_m: number;
}): number {
  const round = Math.PI * (bore_radius_m ** 2 - plinth_radius_m ** 2);
  const depth_m = spill_m3 / round;
  if (depth_m <= plinth_height_m) return depth_m;
  return plinth_height_m + (spill_m3 - round * plinth_height_m) / (Math.PI * bore_radius_m ** 2);
}

export interface TuyereQuestion {
  readonly tube_radius_m: number;
  readonly tube_wall_m: number;
  readonly bore_radius_m: number;
  readonly lining_radius_m: number;
  /** Outside of the vessel at the tuyere's height. */
  readonly vessel_radius_m: number;
  /** Where the hole's lowest edge would be by the rule. */
  readonly invert_m: number;
  readonly spill_depth_m: number;
  readonly spare_m: number;
  /** By the rule; steeper where the spill asks for it, up to `steepest_rad`. */
  readonly tilt_rad: number;
  readonly steepest_rad: number;
  /** Typed by the asker: kept, and judged. */
  readonly tilt_given: boolean;
  /** They lead the words of a refusal. */
  readonly units?: UnitSystem;
}

export interface Tuyere extends WithSteps {
  readonly shape: TuyereShape;
  readonly slot: { readonly arc_m: number; readonly height_m: number };
  readonly to_radius_rad: number;
  /** Lowest edge where the tube leaves the vessel, above the floor's top. */
  readonly outside_invert_m: number;
  readonly spill_depth_m: number;
  readonly holds: boolean;
  /** What it would take at this tilt. */
  readonly needed_invert_m: number;
  /** What it would take at this invert, below 60°; NaN where there is none. */
  readonly needed_tilt_rad: number;
  readonly raised: boolean;
}

/**
 * A tangent tuyere that keeps a spill inside: the tilt at which its lowest edge outside stands above the pool by the
 * spare; where the steepest tilt is not enough, the hole is raised.
 * @throws AskError `refused` for a tube that slopes down outward, `impossible` where it is wider than the bore takes.
 */
export function tangentTuyere(question: TuyereQuestion): Tuyere {
  const { tube_radius_m, tube_wall_m, bore_radius_m, lining_radius_m, vessel_radius_m } = question;
  if (question.tilt_rad < 0) throw drain(question.tilt_rad);
  if (2 * tube_radius_m >= bore_radius_m) throw tooWide(2 * tube_radius_m, bore_radius_m, question.units ?? 'metric');
  const offset_m = tangentOffset_m({ bore_radius_m, tube_radius_m });
  const along = (outer_radius_m: number) => planLength_m({ inner_radius_m: bore_radius_m, outer_radius_m, offset_m });
  const through_lining_m = along(lining_radius_m);
  const through_all_m = along(vessel_radius_m);
  const wanted_m = question.spill_depth_m + question.spare_m;
  const needed_tilt_rad = Math.atan(Math.max(0, wanted_m - question.invert_m) / through_all_m);
  const tilt_rad = question.tilt_given
    ? question.tilt_rad
    : Math.min(question.steepest_rad, Math.max(question.tilt_rad, needed_tilt_rad));
  const needed_invert_m = Math.max(question.invert_m, wanted_m - through_all_m * Math.tan(tilt_rad));
  const raised = !question.tilt_given && needed_invert_m > question.invert_m + 1e-9;
  const invert_m = raised ? needed_invert_m : question.invert_m;
  const outside_invert_m = invert_m + through_all_m * Math.tan(tilt_rad);
  const slot = slotOnBore({ bore_radius_m, tube_radius_m, tilt_rad });
  const to_radius_rad = angleToRadius_rad({ bore_radius_m, offset_m });
  const shape: TuyereShape = Object.freeze({
    bore_radius_m: tube_radius_m,
    outer_radius_m: tube_radius_m + tube_wall_m,
    invert_m,
    offset_m,
    tilt_rad,
    through_lining_m,
    through_all_m,
  });
  return Object.freeze({
    shape,
    slot,
    to_radius_rad,
    outside_invert_m,
    spill_depth_m: question.spill_depth_m,
    holds: outside_invert_m >= wanted_m - 1e-9,
    needed_invert_m,
    needed_tilt_rad,
    raised,
    steps: (): readonly Step[] => [
      {
        formula: 'the tube touches the bore: offset = bore radius − tube radius',
        inputs: { bore_radius_m, tube_radius_m },
        gives: { offset_m },
        source: 'derived',
      },
      {
        formula:
          'length in plan: through lining = √(lining radius² − offset²) − √(bore radius² − offset²); through all = √(vessel radius² − offset²) − √(bore radius² − offset²)',
        inputs: { lining_radius_m, vessel_radius_m, bore_radius_m, offset_m },
        gives: { through_lining_m, through_all_m },
        source: 'derived',
      },
      {
        formula: 'lowest edge, above spill depth and spare: edge outside = edge at bore + length × tan(tilt degrees)',
        inputs: { edge_at_bore_m: invert_m, length_m: through_all_m, tilt_degrees_count: degrees(tilt_rad) },
        gives: { edge_outside_m: outside_invert_m, wanted_m },
        source: 'derived',
      },
    ],
  });
}

const drain = (tilt_rad: number) =>
  new AskError({
    code: 'refused',
    what: `a tuyere that falls ${Number(Math.abs(degrees(tilt_rad)).toPrecision(3))}° outward is a drain: a spill runs out along it, over your feet and the hose`,
    expected: 'rising outward, 5 to 20°',
    example: '10',
    option: 'tilt',
  });

function tooWide(tube_m: number, bore_radius_m: number, units: UnitSystem): AskError {
  const both = (length_m: number) => formatBoth(length_m, 'm', units);
  const usual_m = Math.min(0.032, bore_radius_m / 3);
  return new AskError({
    code: 'impossible',
    what: `a tube of ${both(tube_m)} can't meet a bore of ${both(2 * bore_radius_m)} at a tangent: it would reach past its middle`,
    expected: `less than half the bore, ${both(bore_radius_m)}`,
    example: units === 'US' ? `${Math.floor((usual_m / 0.0254) * 8) / 8} in` : `${Math.floor(usual_m * 1000)} mm`,
    option: 'tuyere',
  });
}
