import { z } from 'zod';
import { fuelKind } from '../flame/fuel.ts';
import { choice, quantity, text } from '../options.ts';
import { told } from './fields.ts';

const size = { metric: 'cm', US: 'in' };
const thin = { metric: 'mm', US: 'in' };
const length = (label: string, min: number, max: number, plainUnit = thin) =>
  quantity({ label, dimensions: ['length'], plainUnit, min, max }).optional();

/** What all three questions take beside their subject. */
const shared = {
  metal: text({ label: 'metal you will melt', most: 40 }).optional(),
  fuel: fuelKind('fuel').optional(),
  lining: text({ label: 'hot face, by name', most: 60 }).optional(),
  wall: length('hot-face wall, thick', 0.003, 0.3),
  floor: length('hot-face floor, thick', 0.003, 0.3),
  lid: length('lid, thick', 0.003, 0.3),
  gap: length('free round the crucible', 0.005, 0.5),
  insulation: text({ label: 'insulation, by name', most: 60 }).optional(),
  behind: length('insulation wanted behind the wall, at least', 0, 0.5),
  under: length('bricks under the floor, thick', 0, 0.3),
  plinth: length('plinth, high', 0, 0.5),
  rim: length('crucible rim below the lid', 0, 0.5),
  tuyere: length('air or burner tube, inside', 0.005, 0.2),
  tilt: text({ label: 'tuyere rising outward, degrees', most: 20 }).optional(),
  rate: quantity({
    label: 'firing rate',
    dimensions: ['power'],
    plainUnit: { metric: 'kW', US: 'Btu/h' },
    min: 200,
    max: 1e6,
  }).optional(),
  vent: length('vent in the lid, across', 0.005, 1, size),
  form: choice({ label: 'forms', choices: ['mesh', 'card'] }).optional(),
  roll: length('width of the mesh roll', 0.1, 3, size),
  taper: choice({ label: 'wall follows the taper', choices: ['no', 'yes'] }).optional(),
};

const crucible = told({ label: 'crucible' });
const vessel = told({ label: 'vessel' });

export const canOptions = z.strictObject({ vessel, crucible: crucible.optional(), ...shared });
export const crucibleOptions = z.strictObject({ crucible, vessel: vessel.optional(), ...shared });
export const meltOptions = z.strictObject({
  melt: told({ label: 'melt' }),
  vessel: vessel.optional(),
  ...shared,
});

export type SharedOptions = Omit<z.infer<typeof canOptions>, 'vessel' | 'crucible'>;
