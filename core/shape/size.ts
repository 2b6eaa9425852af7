import { AskError } from '../ask-error.ts';
import { vessels } from '../materials/catalogue.ts';
import type { UnitSystem } from '../quantity/figure.ts';
import type { WithSteps } from '../step.ts';
import { type Crucible, crucibleFromSizes } from './crucible.ts';
import { checkFit, type Fit } from './fit.ts';
import type { Furnace, VesselShape } from './furnace.ts';
import { fitToPropose, flare, floorTop_m, liningRadius_m, liningTop_m, shapeOf, vesselRadius_m } from './profile.ts';
import { type Fuel, leastCrucible_m, sizingRules } from './rules.ts';
import { noBore, refuseDish, refuseLid, refuseWideCrucible } from './size-refusals.ts';
import { layOutSteps, rateStep } from './size-steps.ts';
import { radians, spillDepth_m, type Tuyere, tangentTuyere } from './tuyere.ts';
import { firingDensity_W_m3, type Vent, ventFor } from './vent.ts';
import { frustumVolume_m3 } from './volume.ts';

/** What the asker named; everything else follows from rules, or is computed. At least a vessel or a crucible. */
export interface SizeQuestion {
  readonly fuel: Fuel;
  readonly vessel?: VesselShape;
  readonly crucible?: Crucible;
  /** The wall follows the vessel's taper; straight otherwise. */
  readonly taper?: boolean;
  readonly wall_m?: number;
  readonly floor_m?: number;
  readonly underfloor_m?: number;
  readonly lid_m?: number;
  readonly gap_m?: number;
  readonly rim_m?: number;
  /** Least insulation wanted all round. */
  readonly behind_m?: number;
  readonly plinth_m?: number;
  readonly tube_m?: number;
  readonly tilt_rad?: number;
  readonly vent_m?: number;
  readonly rate_W?: number;
  readonly flue_K: number;
  /** They lead the words of a refusal. */
  readonly units?: UnitSystem;
}

/** The thicknesses and spaces that were taken, typed or by rule. */
export interface Measures {
  readonly wall_m: number;
  readonly floor_m: number;
  readonly underfloor_m: number;
  readonly lid_m: number;
  readonly gap_m: number;
  readonly rim_m: number;
  readonly behind_m: number;
  readonly plinth_m: number;
  readonly bed_m: number;
  readonly tube_m: number;
}

export interface Sized extends WithSteps {
  readonly question: SizeQuestion;
  readonly furnace: Furnace;
  readonly measures: Measures;
  readonly crucible: Crucible;
  readonly tuyere: Tuyere;
  readonly vent: Vent;
  readonly bore_m3: number;
  readonly rate_W: number;
  readonly fit: Fit;
}

/**
 * A furnace from what is known of it: from a vessel, from a crucible, or from both.
 * Bore = crucible + 2 gaps; height = plinth or bed + crucible + rim space; vessel = bore + 2 (wall + insulation).
 * @throws AskError where nothing can be built: no bore left, crucible wider than the vessel, a lid over the rim.
 */
export function sizeFurnace(question: SizeQuestion): Sized {
  const { vessel, crucible } = question;
  if (vessel && crucible) return layOut(question, vessel, crucible, measuresOf(question, 0));
  if (vessel) return fillVessel(question, vessel);
  if (crucible) return roundCrucible(question, crucible);
  throw new AskError({
    code: 'missing',
    what: 'neither a vessel nor a crucible is known',
    expected: 'one of them, with its size',
    example: 'size can 20 gal',
  });
}

/** Rules at their typical ends, or drawn towards their low ends by `squeeze` (0 to 1) where a vessel is small. */
function measuresOf(question: SizeQuestion, squeeze: number): Measures {
  const gas = question.fuel === 'gas';
  const by = ({ low, typical }: { low: number; typical: number }) => typical - squeeze * (typical - low);
  return {
    wall_m: question.wall_m ?? by(sizingRules.wall_m),
    floor_m: question.floor_m ?? by(sizingRules.floor_m),
    underfloor_m: question.underfloor_m ?? by(sizingRules.underfloor_m),
    lid_m: question.lid_m ?? by(sizingRules.lid_m),
    gap_m: question.gap_m ?? by(gas ? sizingRules.gap_gas_m : sizingRules.gap_charcoal_m),
    rim_m: question.rim_m ?? by(sizingRules.rim_m),
    behind_m: question.behind_m ?? by(sizingRules.behind_m),
    plinth_m: question.plinth_m ?? (gas ? by(sizingRules.plinth_m) : 0),
    bed_m: gas || question.plinth_m !== undefined ? 0 : by(sizingRules.bed_m),
    tube_m: question.tube_m ?? by(gas ? sizingRules.tuyere_gas_m : sizingRules.tuyere_charcoal_m),
  };
}

/** A crucible narrower than this share of the vessel is a waste of it: then the walls go thinner first. */
const leastShare = 0.3;

/** The largest crucible that leaves the wall, the insulation and the lid their room. */
function fillVessel(question: SizeQuestion, vessel: VesselShape): Sized {
  for (const squeeze of [0, 0.5, 1]) {
    const measures = measuresOf(question, squeeze);
    const diameter_m = largestCrucible_m(vessel, measures, question.taper ?? false);
    const enough = squeeze === 1 ? leastCrucible_m : Math.max(leastCrucible_m, leastShare * 2 * vessel.bottom_radius_m);
    if (diameter_m < enough) continue;
    const slimness = sizingRules.crucible_slimness.typical;
    return layOut(question, vessel, crucibleFromSizes({ diameter_m, height_m: slimness * diameter_m }), measures);
  }
  throw noBore(question, vessel, measuresOf(question, 1));
}

function largestCrucible_m(vessel: VesselShape, measures: Measures, taper: boolean): number {
  const { underfloor_m, floor_m, lid_m, plinth_m, bed_m, rim_m, wall_m, behind_m, gap_m } = measures;
  const slimness = sizingRules.crucible_slimness.typical;
  const tall_m = vessel.height_m - underfloor_m - floor_m - lid_m - Math.max(plinth_m, bed_m) - rim_m;
  const narrowest_m = taper
    ? vesselRadius_m(vessel, underfloor_m + floor_m)
    : Math.min(vesselRadius_m(vessel, underfloor_m), vesselRadius_m(vessel, vessel.height_m - lid_m));
  return Math.min(2 * (narrowest_m - behind_m - wall_m - gap_m), tall_m / slimness);
}

/** The smallest catalogue vessel that takes it even at the small end of its tolerance; where none does, one of its own size. */
function roundCrucible(question: SizeQuestion, crucible: Crucible): Sized {
  const measures = measuresOf(question, 0);
  for (const vessel of proposable) {
    if (2 * vessel.bottom_radius_m <= 2 * crucible.shape.outside_radius_m + 2 * measures.wall_m) continue;
    if (vessel.height_m <= measures.lid_m + crucible.shape.height_m + measures.underfloor_m + measures.floor_m)
      continue;
    const sized = layOut(question, vessel, crucible, measures);
    if (sized.fit.sure) return sized;
  }
  const { shape } = crucible;
  const radius_m = (shape.outside_radius_m + measures.gap_m + measures.wall_m + measures.behind_m) / (1 - ownSlack);
  const stack_m =
    measures.underfloor_m +
    measures.floor_m +
    Math.max(measures.plinth_m, measures.bed_m) +
    shape.height_m +
    measures.rim_m +
    measures.lid_m;
  const own: VesselShape = {
    name: 'a drum of your own',
    bottom_radius_m: radius_m,
    top_radius_m: radius_m,
    height_m: stack_m / (1 - ownSlack),
    wall_m: 0.001,
    given: false,
  };
  return layOut(question, own, crucible, measures);
}

/** Made to measure, with this much to spare. */
const ownSlack = 0.02;

const proposable: readonly VesselShape[] = fitToPropose(vessels).map(shapeOf);

function layOut(question: SizeQuestion, vessel: VesselShape, crucible: Crucible, measures: Measures): Sized {
  const { wall_m, floor_m, underfloor_m, lid_m, gap_m, rim_m, plinth_m, bed_m } = measures;
  const { shape } = crucible;
  const slope = question.taper ? flare(vessel) : 0;
  const { units = 'metric' } = question;
  refuseDish(vessel, units);
  refuseWideCrucible(vessel, crucible, measures, units);
  const height_m = Math.max(plinth_m, bed_m) + shape.height_m + rim_m;
  const bottom_radius_m = shape.outside_radius_m + gap_m + (slope < 0 ? -slope * height_m : 0);
  const bore = Object.freeze({ bottom_radius_m, top_radius_m: bottom_radius_m + slope * height_m, height_m });
  const partly = { underfloor_m, floor_m, bore, wall_m };
  const top_m = liningTop_m(partly);
  if (question.lid_m !== undefined) refuseLid(question.lid_m, vessel.height_m - top_m, units);
  const plinth = Object.freeze({
    radius_m: sizingRules.plinth_share.typical * shape.outside_radius_m,
    height_m: plinth_m,
  });
  const tuyere = tuyereOf({ question, vessel, crucible, measures, partly, plinth });
  const bore_m3 = frustumVolume_m3({
    lower_radius_m: bore.bottom_radius_m,
    upper_radius_m: bore.top_radius_m,
    height_m,
  });
  const rate_W = question.rate_W ?? firingDensity_W_m3[question.fuel].typical * bore_m3;
  const vent = ventFor({
    rate_W,
    flue_K: question.flue_K,
    fuel: question.fuel,
    bore_m: 2 * bore.top_radius_m,
    ...(question.vent_m === undefined ? {} : { diameter_m: question.vent_m }),
  });
  const furnace: Furnace = Object.freeze({
    vessel,
    crucible: shape,
    underfloor_m,
    floor_m,
    bore,
    wall_m,
    plinth,
    bed_m,
    rim_m,
    lid: Object.freeze({
      radius_m: liningRadius_m(partly, top_m),
      thickness_m: lid_m,
      vent_radius_m: vent.diameter_m / 2,
    }),
    tuyere: tuyere.shape,
  });
  return Object.freeze({
    question,
    furnace,
    measures,
    crucible,
    tuyere,
    vent,
    bore_m3,
    rate_W,
    fit: checkFit(furnace, { behind_m: question.behind_m }),
    steps: () => [
      ...crucible.steps(),
      ...layOutSteps(furnace, gap_m),
      ...tuyere.steps(),
      ...(question.rate_W === undefined ? [rateStep(question.fuel, bore_m3, rate_W)] : []),
      ...vent.steps(),
    ],
  });
}

interface TuyereParts {
  readonly question: SizeQuestion;
  readonly vessel: VesselShape;
  readonly crucible: Crucible;
  readonly measures: Measures;
  readonly partly: Pick<Furnace, 'underfloor_m' | 'floor_m' | 'bore' | 'wall_m'>;
  readonly plinth: Furnace['plinth'];
}

function tuyereOf({ question, vessel, crucible, measures, partly, plinth }: TuyereParts): Tuyere {
  const { invert_charcoal_m, burner_axis_m, spill_spare_m, tilt_degrees, tuyere_wall_m } = sizingRules;
  const tube_radius_m = measures.tube_m / 2;
  const invert_m =
    question.fuel === 'gas' ? Math.max(0, burner_axis_m.typical - tube_radius_m) : invert_charcoal_m.typical;
  const z_m = floorTop_m(partly) + invert_m + tube_radius_m;
  const lining_radius_m = liningRadius_m(partly, z_m);
  return tangentTuyere({
    tube_radius_m,
    tube_wall_m: tuyere_wall_m.typical,
    bore_radius_m: lining_radius_m - partly.wall_m,
    lining_radius_m,
    vessel_radius_m: Math.max(lining_radius_m, vesselRadius_m(vessel, z_m)) + vessel.wall_m,
    invert_m,
    spill_depth_m: spillDepth_m({
      spill_m3: crucible.brimful_m3,
      bore_radius_m: partly.bore.bottom_radius_m,
      plinth_radius_m: plinth.height_m > 0 ? plinth.radius_m : 0,
      plinth_height_m: plinth.height_m,
    }),
    spare_m: spill_spare_m.typical,
    tilt_rad: question.tilt_rad ?? radians(tilt_degrees.typical),
    steepest_rad: radians(tilt_degrees.high),
    tilt_given: question.tilt_rad !== undefined,
    units: question.units ?? 'metric',
  });
}
