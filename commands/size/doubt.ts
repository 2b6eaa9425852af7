import { findMaterial } from '../../core/materials/catalogue.ts';
import type { SiUnit, UnitSystem } from '../../core/quantity/figure.ts';
import { type WeightDraw, weightModel } from '../../core/shape/weights.ts';
import type { Doubted } from '../command.ts';
import { type Asked, furnaceOf } from './answer.ts';

/** Weights and what is to be bought; sizes are what they are said to be. What is of one material or vessel names it. */
export function sizeDoubt(asked: Asked, units: UnitSystem): Doubted {
  const { sized, materials } = furnaceOf(asked, units);
  const lining = findMaterial(materials.lining).name;
  const fill = materials.insulation.name;
  const names: Readonly<Record<keyof WeightDraw, string>> = {
    lining_kg_m3: `how densely ${lining} is rammed`,
    water: `water in fresh ${lining}`,
    vessel: `the real size of ${sized.furnace.vessel.name}`,
    insulation_kg_m3: `density of ${fill}`,
    settling: `how hard ${fill} is tamped`,
  };
  const keys = Object.keys(names) as (keyof WeightDraw)[];
  const { spreads, weights } = weightModel({
    furnace: sized.furnace,
    lining: materials.lining,
    insulation: materials.insulation.id,
    bricks: materials.bricks,
  });
  return {
    inputs: Object.fromEntries(keys.map((key) => [names[key], spreads[key]])),
    units: Object.fromEntries(keys.map((key) => [names[key], drawUnits[key]])),
    samples: 500,
    model: (draw) => {
      const found = weights(Object.fromEntries(keys.map((key) => [key, draw[names[key]]!])) as unknown as WeightDraw);
      return {
        'size.pot_dry': found.pot_dry_kg,
        'size.pot_wet': found.pot_wet_kg,
        'size.lid_dry': found.lid_dry_kg,
        'size.lid_wet': found.lid_wet_kg,
        'size.lift': found.pot_dry_kg,
        'size.whole': found.whole_kg,
        'size.insulation_volume': found.insulation_m3,
        'size.insulation_mass': found.insulation_kg,
        'size.insulation_loose': found.loose_m3,
      };
    },
  };
}

const drawUnits: Readonly<Record<keyof WeightDraw, SiUnit>> = {
  lining_kg_m3: 'kg/m3',
  water: '1',
  vessel: '1',
  insulation_kg_m3: 'kg/m3',
  settling: '1',
};
