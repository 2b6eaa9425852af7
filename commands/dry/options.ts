import { z } from 'zod';
import { places } from '../../core/dry/data/weather.ts';
import { choice, type OptionMeta, quantity, reading, text } from '../options.ts';
import { readFace } from './face.ts';

const size = { metric: 'cm', US: 'in' };
const degrees = { metric: '°C', US: '°F' };
const lining: OptionMeta = { label: 'lining, hot side first', kind: 'text' };

export const dryOptions = z.strictObject({
  layers: reading(({ text: typed, system }) => readFace(typed, system ?? 'metric'))
    .meta({ ...lining })
    .optional(),
  thickness: quantity({
    label: 'thickness of the lining',
    dimensions: ['length'],
    plainUnit: { metric: 'mm', US: 'in' },
    min: 0.0005,
    max: 0.5,
  }).optional(),
  recipe: text({ label: 'recipe', most: 60 }).optional(),
  amount: quantity({
    label: 'how much lining',
    dimensions: ['volume', 'mass'],
    plainUnit: { metric: 'L', US: 'cu ft' },
    min: 1e-5,
    max: 2000,
  }).optional(),
  bore: quantity({ label: 'bore', dimensions: ['length'], plainUnit: size, min: 0.02, max: 3 }).optional(),
  height: quantity({ label: 'lined height', dimensions: ['length'], plainUnit: size, min: 0.02, max: 3 }).optional(),
  open: choice({ label: 'open to the air', choices: ['bore only', 'both sides'] }).optional(),
  where: choice({ label: 'where it dries', choices: places.map(({ id }) => id) }).optional(),
  air: quantity({
    label: 'air, mean of day and night',
    dimensions: ['temperature'],
    plainUnit: degrees,
    min: 233,
    max: 318,
  }).optional(),
  humidity: quantity({
    label: 'humidity of the air',
    dimensions: ['fraction'],
    plainUnit: { metric: '%', US: '%' },
    min: 0.05,
    max: 1,
  }).optional(),
  wind: choice({ label: 'wind', choices: ['indoors', 'calm', 'breezy', 'windy'] }).optional(),
  cover: choice({ label: 'under a cloth', choices: ['at first', 'throughout'] }).optional(),
  from: text({ label: 'rammed or cast on', most: 20 }).optional(),
  weighed: text({ label: 'weighings, oldest first', most: 300 }).optional(),
  happened: choice({ label: 'what came between', choices: ['rained', 'late', 'steams', 'dry'] }).optional(),
  on: text({ label: 'the day it happened', most: 20 }).optional(),
  heat: choice({ label: 'fired by', choices: ['thermometer', 'charcoal'] }).optional(),
  hot: quantity({
    label: 'working temperature',
    dimensions: ['temperature'],
    plainUnit: degrees,
    max: 2000,
  }).optional(),
  within: quantity({
    label: 'time you have for the first fire',
    dimensions: ['time'],
    plainUnit: { metric: 'h', US: 'h' },
    min: 600,
    max: 2_592_000,
  }).optional(),
});

export type DryOptions = z.infer<typeof dryOptions>;
