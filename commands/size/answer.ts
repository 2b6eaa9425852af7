import { AskError } from '../../core/ask-error.ts';
import { findMaterial, findPour } from '../../core/materials/catalogue.ts';
import { exactly } from '../../core/materials/spread.ts';
import type { UnitSystem } from '../../core/quantity/figure.ts';
import { changesFor } from '../../core/shape/changes.ts';
import type { Crucible } from '../../core/shape/crucible.ts';
import { drawForms } from '../../core/shape/draw/forms.ts';
import { drawFurnace } from '../../core/shape/draw/furnace.ts';
import type { Drawing } from '../../core/shape/drawing.ts';
import { floorTop_m, liningRadius_m, vesselRadius_m } from '../../core/shape/profile.ts';
import { type Sized, sizeFurnace } from '../../core/shape/size.ts';
import { sleeveFor } from '../../core/shape/sleeve.ts';
import { drawSleeve } from '../../core/shape/sleeve-drawing.ts';
import { firingDensity_W_m3 } from '../../core/shape/vent.ts';
import type { Answer, AnswerContext } from '../command.ts';
import { calibrated } from '../log/measured.ts';
import { readStack } from '../wall/layers.ts';
import { unfitLining } from '../wall/unfit.ts';
import type { Told } from './fields.ts';
import { figuresOf } from './figures.ts';
import { formsOf } from './forms.ts';
import { handsOver, wallText } from './hand-over.ts';
import { weighByBuckets } from './log.ts';
import type { SharedOptions } from './options.ts';
import type { SizeParts } from './parts.ts';
import { type Materials, readMaterials, sizeQuestion } from './question.ts';
import { assumptionsOf, changeWords, cutList, headlineOf, liningChange, notesOf } from './words.ts';

export interface Asked {
  readonly asked: SizeParts['asked'];
  readonly options: SharedOptions;
  readonly vessel: Told | undefined;
  readonly crucible: Crucible | undefined;
  /** The crucible as typed. */
  readonly said?: string | undefined;
  readonly metal?: string;
}

/** The furnace of a question, whichever of the three it is. */
export function furnaceOf({ options, vessel, crucible, metal }: Asked, units: UnitSystem) {
  const read = readMaterials(options);
  const materials: Materials = metal === undefined ? read : { ...read, metal };
  const { question, hazards } = sizeQuestion(options, { vessel, crucible }, materials, units);
  return { materials, hazards, sized: sizeFurnace(question) };
}

/** The three questions differ in what is known; what follows from it is the same. */
export function sizeAnswer(question: Asked, context: AnswerContext): Answer {
  const { asked, options, vessel, said } = question;
  const { materials, hazards, sized } = furnaceOf(question, context.units);
  const { weighed, found } = weighByBuckets(
    {
      furnace: sized.furnace,
      lining: materials.lining,
      insulation: materials.insulation.id,
      bricks: materials.bricks,
    },
    context.measured,
  );
  const parts: SizeParts = {
    asked,
    options,
    materials,
    sized,
    weighed,
    sleeve: sleeveOf(sized),
    changes: changesFor(sized),
    forms: formsOf(sized, options, context.units),
    rate: rateOf(sized),
    unfit: unfitOf(sized, materials, context.units),
    hazards,
    crucibleSaid: said,
    vesselSaid: vessel?.text,
    units: context.units,
  };
  return calibrated(cardOf(parts, context), found, context.units);
}

function unfitOf(sized: Sized, materials: Materials, units: UnitSystem) {
  const { bore } = sized.furnace;
  return unfitLining(
    {
      layers: readStack(wallText({ sized, materials, units }), units),
      hot_K: findPour(materials.metal).hot_face_K.typical,
      bore_m: 2 * bore.bottom_radius_m,
      height_m: bore.height_m,
    },
    units,
  );
}

/** What does not go into the can is said first: that its tuyere comes out above the rim, and can't be drawn, is no answer. */
function drawn({ furnace, fit }: Sized, units: UnitSystem): readonly Drawing[] {
  try {
    return drawFurnace(furnace, units);
  } catch (error) {
    if (error instanceof AskError && !fit.fits) return [];
    throw error;
  }
}

function rateOf({ question, rate_W, bore_m3 }: Sized) {
  if (question.rate_W !== undefined) return exactly(rate_W);
  const { low, high } = firingDensity_W_m3[question.fuel];
  return { low: low * bore_m3, typical: rate_W, high: high * bore_m3 };
}

function sleeveOf({ furnace }: Sized) {
  const { tuyere, vessel } = furnace;
  const z_m = floorTop_m(furnace) + tuyere.invert_m + tuyere.bore_radius_m;
  const lining_radius_m = liningRadius_m(furnace, z_m);
  return sleeveFor({
    tube_radius_m: tuyere.outer_radius_m,
    offset_m: tuyere.offset_m,
    tilt_rad: tuyere.tilt_rad,
    lining_radius_m,
    vessel_radius_m: Math.max(lining_radius_m, vesselRadius_m(vessel, z_m)),
  });
}

function cardOf(parts: SizeParts, context: AnswerContext): Answer {
  const { sized, weighed, materials, options, units } = parts;
  const pour = findPour(materials.metal);
  const knownMetal = options.metal !== undefined || parts.asked === 'melt';
  return {
    headline: headlineOf(parts),
    figures: figuresOf(parts),
    table: cutList(parts),
    drawings: [
      ...drawn(sized, units),
      drawSleeve(parts.sleeve, units),
      ...(parts.forms ? drawForms(parts.forms, units) : []),
    ],
    notes: [...notesOf(parts), ...(parts.forms?.advice ?? [])],
    assumed: assumptionsOf(parts),
    doubt: weighed.movesMost
      ? `for the weight, ${weighed.movesMost.input} (${Math.round(weighed.movesMost.share * 100)} % of its spread)`
      : 'nothing that was sampled',
    sources: ['derived', 'common-practice', 'from-memory', 'niosh-lifting'],
    working: [...sized.steps(), ...parts.sleeve.steps(), ...weighed.steps(), ...(parts.forms?.steps() ?? [])],
    handsOver: handsOver(parts),
    hazards: {
      facts: [
        'shell-not-computed',
        'lift',
        ...parts.hazards.flatMap((fact) => (fact === 'cylinder' ? ['cylinder', 'cylinder-cutting'] : [fact])),
        ...(options.form === 'card' ? [] : ['mesh']),
        options.fuel === 'charcoal' ? 'charcoal' : 'propane',
        ...findMaterial(materials.lining).hazards,
        ...materials.insulation.hazards,
        ...(parts.unfit ? ['lining-short'] : []),
        // Nothing is poured here, and what is lifted is the furnace: not a pot of metal at arm's length.
        ...(knownMetal ? pour.hazards.filter((fact) => fact !== 'molten-metal') : []),
      ],
      numbers: { lift_kg: weighed.ranges.whole_kg?.high ?? weighed.typical.whole_kg },
    },
    next: nextLines(parts, context),
  };
}

function nextLines(parts: SizeParts, { commands }: AnswerContext): NonNullable<Answer['next']> {
  const { sized, changes, asked, options } = parts;
  const known = (name: string) => commands.some((one) => one.name === name);
  const relined = liningChange(parts);
  const mending = changes.filter(({ option }) => asked !== 'melt' || option !== 'crucible').slice(0, 2);
  // What asks this question again stands before what asks another one about it.
  return [
    ...(relined === undefined ? [] : [{ label: 'in a lining that stands it', line: `again ${relined}` }]),
    ...mending.map((change) => ({ label: change.says, line: `again ${changeWords(change, parts)}` })),
    ...(asked === 'can' && mending.length === 0
      ? [{ label: 'with another crucible', line: 'again crucible=5 in x 6 in' }]
      : []),
    options.fuel === 'charcoal'
      ? { label: 'the same for gas', line: 'again fuel=gas' }
      : { label: 'the same for charcoal', line: 'again fuel=charcoal' },
    ...(sized.fit.fits && known('wall') ? [{ label: 'how hot does the shell get', line: 'wall for=last' }] : []),
    { label: 'the mix for wall, floor and lid', line: 'mix for=last' },
  ];
}
