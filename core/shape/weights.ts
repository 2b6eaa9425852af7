import { type Range, sampleDoubt } from '../doubt/sample.ts';
import { findMaterial } from '../materials/catalogue.ts';
import { exactly, type Spread } from '../materials/spread.ts';
import type { Step, WithSteps } from '../step.ts';
import type { Furnace } from './furnace.ts';
import { floorTop_m, liningRadius_m, liningTop_m, vesselRadius_m } from './profile.ts';
import { sizingRules } from './rules.ts';
import { frustumVolume_m3, ringVolume_m3 } from './volume.ts';

export interface Volumes {
  readonly wall_m3: number;
  readonly floor_m3: number;
  readonly lid_m3: number;
  readonly plinth_m3: number;
  /** Bricks under the floor. */
  readonly underfloor_m3: number;
  /** Between lining and vessel, from its bottom to the lining's rim, as it stands: tamped. */
  readonly insulation_m3: number;
}

/** Exact volumes of the bodies; the tuyere's hole is left in (about 1 % of the wall). */
export function volumesOf(furnace: Furnace): Volumes {
  const { vessel, bore, wall_m, lid, plinth, underfloor_m } = furnace;
  const top_m = liningTop_m(furnace);
  const foot_m = liningRadius_m(furnace, underfloor_m);
  const atFloor_m = liningRadius_m(furnace, floorTop_m(furnace));
  const wallOutside_m3 = frustumVolume_m3({
    lower_radius_m: atFloor_m,
    upper_radius_m: bore.top_radius_m + wall_m,
    height_m: bore.height_m,
  });
  const room_m3 = frustumVolume_m3({
    lower_radius_m: bore.bottom_radius_m,
    upper_radius_m: bore.top_radius_m,
    height_m: bore.height_m,
  });
  const floor_m3 = frustumVolume_m3({ lower_radius_m: foot_m, upper_radius_m: atFloor_m, height_m: furnace.floor_m });
  const underfloor_m3 = Math.PI * foot_m ** 2 * underfloor_m;
  const filled_m = Math.min(top_m, vessel.height_m);
  const inside_m3 = frustumVolume_m3({
    lower_radius_m: vessel.bottom_radius_m,
    upper_radius_m: vesselRadius_m(vessel, filled_m),
    height_m: filled_m,
  });
  return Object.freeze({
    wall_m3: wallOutside_m3 - room_m3,
    floor_m3,
    lid_m3: ringVolume_m3({
      outer_radius_m: lid.radius_m,
      inner_radius_m: lid.vent_radius_m,
      height_m: lid.thickness_m,
    }),
    plinth_m3: Math.PI * plinth.radius_m ** 2 * plinth.height_m,
    underfloor_m3,
    insulation_m3: Math.max(0, inside_m3 - wallOutside_m3 - floor_m3 - underfloor_m3),
  });
}

export interface WeighQuestion {
  readonly furnace: Furnace;
  /** Catalogue ids. */
  readonly lining: string;
  readonly insulation: string;
  readonly bricks: string;
  /** Where they were measured on this build; the catalogue's otherwise. */
  readonly densities?: { readonly lining_kg_m3: Spread; readonly insulation_kg_m3: Spread };
}

/** One draw of what is in doubt; factors of 1 where the key has no unit. */
export interface WeightDraw {
  readonly lining_kg_m3: number;
  readonly water: number;
  readonly vessel: number;
  readonly insulation_kg_m3: number;
  readonly settling: number;
}

export interface Weights {
  readonly pot_dry_kg: number;
  readonly pot_wet_kg: number;
  readonly lid_dry_kg: number;
  readonly lid_wet_kg: number;
  readonly insulation_m3: number;
  readonly insulation_kg: number;
  /** What has to be bought, before it is tamped. */
  readonly loose_m3: number;
  readonly whole_kg: number;
}

export interface Weighed extends WithSteps {
  readonly volumes: Volumes;
  readonly typical: Weights;
  readonly ranges: Readonly<Record<keyof Weights, Range | undefined>>;
  readonly loose: boolean;
  readonly movesMost: { readonly input: string; readonly share: number } | undefined;
}

const names = {
  lining_kg_m3: 'how densely the lining is rammed',
  water: 'water in the fresh mix',
  vessel: 'the real size of the vessel',
  insulation_kg_m3: 'density of the insulation',
  settling: 'how hard the fill is tamped',
} as const;

const steel_kg_m3 = 7850;

/** Dry and wet weights, insulation to buy: typical, and the central 95 % over densities, water, tamping and vessel size. */
export function weigh(question: WeighQuestion): Weighed {
  const prepared = weightModel(question);
  const typicalDraw = Object.fromEntries(
    Object.entries(prepared.spreads).map(([name, { typical }]) => [name, typical]),
  ) as unknown as WeightDraw;
  const inputs = Object.fromEntries(
    Object.entries(names).map(([key, name]) => [name, prepared.spreads[key as keyof WeightDraw]]),
  ) as Record<(typeof names)[keyof typeof names], Spread>;
  // Pot and lid share one density, so that one sampled range serves both, each scaled to its volume.
  const { ranges: sampled, movesMost } = sampleDoubt({
    inputs,
    model: (values) => {
      const draw = prepared.weights({
        lining_kg_m3: values[names.lining_kg_m3],
        water: values[names.water],
        vessel: values[names.vessel],
        insulation_kg_m3: values[names.insulation_kg_m3],
        settling: values[names.settling],
      });
      return {
        dry: draw.pot_dry_kg,
        wet: draw.pot_wet_kg,
        insulation_m3: draw.insulation_m3,
        insulation_kg: draw.insulation_kg,
        loose_m3: draw.loose_m3,
        whole_kg: draw.whole_kg,
      };
    },
    samples: 500,
  });
  const { volumes } = prepared;
  const lidShare = volumes.lid_m3 / (volumes.wall_m3 + volumes.floor_m3);
  const scaled = (range: Range | undefined) => range && { low: range.low * lidShare, high: range.high * lidShare };
  const ranges = Object.freeze({
    pot_dry_kg: sampled.dry,
    pot_wet_kg: sampled.wet,
    lid_dry_kg: scaled(sampled.dry),
    lid_wet_kg: scaled(sampled.wet),
    insulation_m3: sampled.insulation_m3,
    insulation_kg: sampled.insulation_kg,
    loose_m3: sampled.loose_m3,
    whole_kg: sampled.whole_kg,
  });
  const typical = Object.freeze(prepared.weights(typicalDraw));
  return Object.freeze({
    volumes: prepared.volumes,
    typical,
    ranges,
    loose: prepared.loose,
    movesMost: movesMost.whole_kg,
    steps: () => steps(prepared.volumes, typicalDraw, typical),
  });
}

/** The same without its range: for tests and for comparisons. */
export const weighTypical = (question: WeighQuestion): Weights => {
  const { spreads, weights } = weightModel(question);
  return weights({
    lining_kg_m3: spreads.lining_kg_m3.typical,
    water: spreads.water.typical,
    vessel: 1,
    insulation_kg_m3: spreads.insulation_kg_m3.typical,
    settling: spreads.settling.typical,
  });
};

/** Weights for any draw of what they depend on: spreads to draw from, and what a draw comes to. */
export function weightModel({ furnace, lining, insulation, bricks, densities }: WeighQuestion) {
  const volumes = volumesOf(furnace);
  const tolerance = furnace.vessel.tolerance ?? 0;
  const body = findMaterial(lining).properties;
  const fill = findMaterial(insulation).properties;
  const loose = fill.settling !== undefined;
  const spreads: Readonly<Record<keyof WeightDraw, Spread>> = {
    lining_kg_m3: body.density_kg_m3 ?? { low: 1700, typical: 1850, high: 2000 },
    water: body.mixing_water ?? { low: 0.04, typical: 0.07, high: 0.1 },
    vessel: { low: 1 - tolerance, typical: 1, high: 1 + tolerance },
    insulation_kg_m3: (loose ? fill.loose_density_kg_m3 : undefined) ?? fill.density_kg_m3 ?? exactly(100),
    settling: loose ? (fill.settling ?? sizingRules.tamping) : exactly(0),
    ...densities,
  };
  const solids_m3 = volumes.wall_m3 + volumes.floor_m3;
  const { bottom_radius_m, top_radius_m, height_m, wall_m } = furnace.vessel;
  const filled_m = Math.min(liningTop_m(furnace), height_m);
  const top_m = vesselRadius_m(furnace.vessel, filled_m);
  const inside_m3 = frustumVolume_m3({ lower_radius_m: bottom_radius_m, upper_radius_m: top_m, height_m: filled_m });
  const shell_kg =
    steel_kg_m3 * wall_m * Math.PI * ((bottom_radius_m + top_radius_m) * height_m + bottom_radius_m ** 2);
  const fixed_kg =
    shell_kg +
    volumes.underfloor_m3 * (findMaterial(bricks).properties.density_kg_m3?.typical ?? 560) +
    volumes.plinth_m3 * spreads.lining_kg_m3.typical;
  const weights = ({ lining_kg_m3, water, vessel, insulation_kg_m3, settling }: WeightDraw): Weights => {
    const pot_dry_kg = solids_m3 * lining_kg_m3;
    const lid_dry_kg = volumes.lid_m3 * lining_kg_m3;
    // The lining keeps its sizes; only the vessel round it is wider or narrower than listed.
    const insulation_m3 = Math.max(0, volumes.insulation_m3 + inside_m3 * (vessel ** 2 - 1));
    const loose_m3 = insulation_m3 / (1 - settling);
    const insulation_kg = loose_m3 * insulation_kg_m3;
    return {
      pot_dry_kg,
      pot_wet_kg: pot_dry_kg * (1 + water),
      lid_dry_kg,
      lid_wet_kg: lid_dry_kg * (1 + water),
      insulation_m3,
      insulation_kg,
      loose_m3,
      whole_kg: pot_dry_kg + lid_dry_kg + insulation_kg + fixed_kg,
    };
  };
  return { volumes, spreads, weights, loose };
}

function steps(volumes: Volumes, draw: WeightDraw, typical: Weights): readonly Step[] {
  const { wall_m3, floor_m3, lid_m3, insulation_m3 } = volumes;
  return [
    {
      formula: 'lining: frustum of its outside less the room inside; floor and lid: their disks',
      inputs: {},
      gives: { wall_m3, floor_m3, lid_m3 },
      source: 'derived',
    },
    {
      formula: 'pot dry = wall and floor × density; pot wet = pot dry × (1 + water)',
      inputs: { wall_and_floor_m3: wall_m3 + floor_m3, density_kg_m3: draw.lining_kg_m3, water: draw.water },
      gives: { pot_dry_kg: typical.pot_dry_kg, pot_wet_kg: typical.pot_wet_kg, lid_dry_kg: typical.lid_dry_kg },
      source: 'derived',
    },
    {
      formula:
        'loose fill for the room between vessel and lining: loose = room ÷ (1 − settling); insulation = loose × density',
      inputs: { room_m3: insulation_m3, settling: draw.settling, density_kg_m3: draw.insulation_kg_m3 },
      gives: { loose_m3: typical.loose_m3, insulation_kg: typical.insulation_kg },
      source: 'derived',
    },
  ];
}
