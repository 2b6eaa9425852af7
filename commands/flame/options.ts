import { z } from 'zod';
import { quantity, text } from '../options.ts';

const degrees = { metric: '°C', US: '°F' };
const percent = { metric: '%', US: '%' };
const share = (label: string, min: number, max: number) =>
  quantity({ label, dimensions: ['fraction'], plainUnit: percent, min, max }).optional();

export const flameOptions = z.strictObject({
  fuel: text({ label: 'fuel', most: 60 }),
  excess: share('excess air, below zero for a rich flame', -0.6, 5),
  reads: share('oxygen that a meter reads in the dry flue', 0, 0.205),
  flue: quantity({
    label: 'gas as it leaves the furnace',
    dimensions: ['temperature'],
    plainUnit: degrees,
    min: 290,
    max: 2100,
  }).optional(),
  hot: quantity({
    label: 'hot face, where the flue is not known',
    dimensions: ['temperature'],
    plainUnit: degrees,
    min: 400,
    max: 2100,
  }).optional(),
  air: quantity({
    label: 'air blown in',
    dimensions: ['temperature'],
    plainUnit: degrees,
    min: 235,
    max: 1500,
  }).optional(),
  oxygen: share('oxygen in the air blown in', 0.15, 1),
  humidity: share('relative humidity outside', 0, 1),
  ash: share('ash, of the mass as fired', 0, 0.6),
  moisture: share('water, of the mass as fired', 0, 0.6),
});

export type FlameOptions = z.infer<typeof flameOptions>;
