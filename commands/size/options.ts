import { z } from 'zod';
import { fuelKind } from '../flame/fuel.ts';
import { choice, quantity, text } from '../options.ts';
import { told } from './fields.ts';

const size = { metric: 'cm', US: 'in' };
const thin = { metric: 'mm', US: 'in' };
const length = (
  label: string,
  [min, max]: readonly [number, number],
  usual: { readonly metric: string; readonly US: string },
  plainUnit = thin,
) => quantity({ label, dimensions: ['length'], plainUnit, usual, min, max }).optional();
const usually = (metric: string, US: string) => ({ metric, US });

/** What all three questions take beside their subject. */
const shared = {
  metal: text({ label: 'metal you will melt', most: 40 }).optional(),
  fuel: fuelKind('fuel').optional(),
  lining: text({ label: 'hot face, by name', most: 60 }).optional(),
  wall: length('hot-face wall, thick', [0.003, 0.3], usually('40 mm', '1 1/2 in')),
  floor: length('hot-face floor, thick', [0.003, 0.3], usually('50 mm', '2 in')),
  lid: length('lid, thick', [0.003, 0.3], usually('50 mm', '2 in')),
  gap: length('free round the crucible', [0.005, 0.5], usually('40 mm', '1 1/2 in')),
  insulation: text({ label: 'insulation, by name', most: 60 }).optional(),
  behind: length('insulation wanted behind the wall, at least', [0, 0.5], usually('60 mm', '2 1/2 in')),
  under: length('bricks under the floor, thick', [0, 0.3], usually('64 mm', '2 1/2 in')),
  plinth: length('plinth, high', [0, 0.5], usually('60 mm', '2 1/2 in')),
  rim: length('crucible rim below the lid', [0, 0.5], usually('50 mm', '2 in')),
  tuyere: length('air or burner tube, inside', [0.005, 0.2], usually('32 mm', '1 1/4 in')),
  tilt: text({ label: 'tuyere rising outward, degrees', most: 20 }).optional(),
  rate: quantity({
    label: 'firing rate',
    dimensions: ['power'],
    plainUnit: { metric: 'kW', US: 'Btu/h' },
    min: 200,
    max: 1e6,
  }).optional(),
  vent: length('vent in the lid, across', [0.005, 1], usually('8 cm', '3 in'), size),
  form: choice({ label: 'forms', choices: ['mesh', 'card'] }).optional(),
  roll: length('width of the mesh roll', [0.1, 3], usually('60 cm', '24 in'), size),
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
