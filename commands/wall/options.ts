import { z } from 'zod';
import { choice, type OptionMeta, quantity, reading, text } from '../options.ts';
import { readStack, refuseInsideOut } from './layers.ts';

const size = { metric: 'cm', US: 'in' };
const hours = { metric: 'h', US: 'h' };

const layers: OptionMeta = { label: 'layers, hot side first', kind: 'text' };

export const wallOptions = z.strictObject({
  layers: reading(({ text: typed, system }) => {
    const stack = readStack(typed, system ?? 'metric');
    refuseInsideOut(stack.layers);
    return stack;
  }).meta({ ...layers }),
  bore: quantity({ label: 'bore', dimensions: ['length'], plainUnit: size, min: 0.02, max: 3 }).optional(),
  height: quantity({ label: 'heated height', dimensions: ['length'], plainUnit: size, min: 0.02, max: 3 }).optional(),
  hot: quantity({
    label: 'hot face',
    dimensions: ['temperature'],
    plainUnit: { metric: '°C', US: '°F' },
    max: 2000,
  }).optional(),
  metal: text({ label: 'metal you will melt', most: 40 }).optional(),
  ramp: quantity({
    label: 'getting there',
    dimensions: ['time'],
    plainUnit: hours,
    min: 60,
    max: 172_800,
  }).optional(),
  hold: quantity({
    label: 'holding it there',
    dimensions: ['time'],
    plainUnit: hours,
    min: 0,
    max: 172_800,
  }).optional(),
  after: text({ label: 'lid once the fire is out: lid on, lid off, lid off 30 min', most: 40 }).optional(),
  finish: text({ label: "shell's finish", most: 40 }).optional(),
  wind: choice({ label: 'wind', choices: ['indoors', 'calm', 'breezy', 'windy'] }).optional(),
  air: quantity({
    label: 'air',
    dimensions: ['temperature'],
    plainUnit: { metric: '°C', US: '°F' },
    min: 233,
    max: 333,
  }).optional(),
  damp: quantity({
    label: 'water left in the hot face, of its dry weight',
    dimensions: ['fraction'],
    plainUnit: { metric: '%', US: '%' },
    min: 0,
    max: 0.6,
  }).optional(),
  shell: quantity({
    label: "shell's sheet",
    dimensions: ['length'],
    plainUnit: { metric: 'mm', US: 'in' },
    min: 0,
    max: 0.02,
  }).optional(),
  lid: text({ label: 'lid, as layers', most: 200 }).optional(),
  floor: text({ label: 'floor, as layers', most: 200 }).optional(),
  vent: quantity({ label: 'vent in the lid', dimensions: ['length'], plainUnit: size, min: 0, max: 1 }).optional(),
});

export type WallOptions = z.infer<typeof wallOptions>;
