import { z } from 'zod';
import { choice, quantity, text } from '../options.ts';

const lengthUnit = { metric: 'cm', US: 'in' };

export const mixOptions = z.strictObject({
  amount: quantity({
    label: 'amount',
    dimensions: ['volume', 'mass'],
    plainUnit: { metric: 'L', US: 'cu ft' },
    min: 1e-5,
    max: 2000,
  }).optional(),
  recipe: text({ label: 'recipe', most: 60 }).optional(),
  ratio: text({ label: 'own ratio', most: 120 }).optional(),
  outside: quantity({
    label: 'ring, outside diameter',
    dimensions: ['length'],
    plainUnit: lengthUnit,
    min: 0.02,
    max: 5,
  }).optional(),
  inside: quantity({
    label: 'ring, inside diameter',
    dimensions: ['length'],
    plainUnit: lengthUnit,
    min: 0.005,
    max: 5,
  }).optional(),
  height: quantity({
    label: 'ring, height',
    dimensions: ['length'],
    plainUnit: lengthUnit,
    min: 0.005,
    max: 5,
  }).optional(),
  damp: quantity({
    label: 'damp clay',
    dimensions: ['fraction'],
    plainUnit: { metric: '%', US: '%' },
    min: 0,
    max: 0.6,
  }).optional(),
  spare: quantity({
    label: 'spare',
    dimensions: ['fraction'],
    plainUnit: { metric: '%', US: '%' },
    min: 0,
    max: 0.5,
  }).optional(),
  ram: choice({ label: 'rammed how', choices: ['hard', 'light'] }).optional(),
  as: choice({ label: 'stands as', choices: ['hot face', 'backup', 'outer layer'] }).optional(),
  metal: text({ label: 'metal you will melt', most: 40 }).optional(),
  have: text({ label: 'what you have, by commas', most: 200 }).optional(),
  tub: quantity({
    label: 'tub or mixer',
    dimensions: ['mass', 'volume'],
    plainUnit: { metric: 'kg', US: 'lb' },
    min: 0.2,
    max: 1000,
  }).optional(),
  prices: text({ label: 'your bags and prices', most: 200 }).optional(),
});

export type MixOptions = z.infer<typeof mixOptions>;
